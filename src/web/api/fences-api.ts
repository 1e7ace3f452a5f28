import { createRoute, z } from '@hono/zod-openapi';
import { TREATMENT_CLASS_KEYS } from '../../decay/treatment-class.ts';
import { cautionsIn } from '../../drawing/cautions.ts';
import { forecastFence } from '../../forecast/forecast-fence.ts';
import { explainForecast } from '../../forecast/reasons.ts';
import { seasonOneYear } from '../../forecast/season-calendar.ts';
import { listFenceStates } from '../../register/fence-states.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone } from '../../service/clock.ts';
import { forecastSettingsOf } from '../../service/run-sweep.ts';
import type { AppParts } from '../../service/service.ts';
import { loadFenceDetail } from '../fences/fence-detail.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, jsonAnswer, pageOf, pageQuery, refParam } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';

const STANDINGS = ['clear', 'closing', 'short', 'short from new'] as const;
const speed = (what: string) => z.number().nullable().describe(`${what} [m/s], 3-second gust at 10 m in exposure C`);

const fenceStateSchema = z
  .object({
    ref: z.string(),
    siteRef: z.string(),
    ownerRef: z.string(),
    secondOwnerRef: z.string().nullable(),
    standing: z.enum(STANDINGS).nullable().describe('null until the fence has been swept, as all that follow'),
    endsStanding: z.enum(STANDINGS).nullable().describe('of its end posts; null where no end is judged apart'),
    shortSeason: z.string().nullable().describe('first season in which it is short; null where none of those ahead'),
    snapMps: speed('snap speed in season 1, middle value'),
    leanMps: speed('lean speed in season 1, middle value'),
    designGustMps: speed('design gust of the site'),
    onceInYears: z.number().nullable().describe('return period of the gust it still holds [a]'),
    computedAt: z.string().nullable().describe('when the sweep computed it, ISO 8601'),
  })
  .openapi('FenceState');

const statesSchema = pageOf(fenceStateSchema);
const year = (what: string) => z.coerce.number().int().min(1900).max(2200).describe(`calendar year ${what}`);

const fenceSchema = z
  .object({
    fence: deepSchema.describe('the record, SI units; see GET /api/v1/records/fences'),
    site: deepSchema.describe('the record of its site'),
    owners: z.array(z.string()).describe('names of the first and the second owner'),
    inspections: z.array(deepSchema).describe('with their readings, by day'),
    outcomes: z.array(deepSchema).describe('of storms, by day'),
    computedAt: z.string().nullable(),
    inputHash: z.string().nullable().describe('SHA-256 over all that the forecast rests on'),
    standing: z.enum(STANDINGS).nullable(),
    endsStanding: z.enum(STANDINGS).nullable(),
    forecast: deepSchema.nullable().describe('season by season; SI units, in every name; null until it was swept'),
    cautions: z.array(z.string()).describe('to be shown with every number of it'),
  })
  .openapi('Fence');

/** That a fence is not there. */
export const notAFence = (ref: string) =>
  notThere(
    `there is no fence with the ref ${JSON.stringify(ref)} here`,
    'refs are compared letter by letter, capitals too; GET /api/v1/fences lists them',
  );

/** Fences: where they stand, what is known of each, and the reasons of a forecast. */
export function addFences(api: Api, { register, clock }: AppParts): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences',
      tags: ['Fences'],
      summary: 'Where the fences stand by the last sweep, in the order of their refs',
      request: {
        query: z.object({
          ...pageQuery,
          site: z.string().optional().describe('ref of a site'),
          owner: z.string().optional().describe('ref of an owner, the first or the second'),
          standing: z.enum(STANDINGS).optional(),
          ends: z.enum(STANDINGS).optional().describe('standing of the end posts, where they are judged apart'),
          treatment: z.enum(TREATMENT_CLASS_KEYS).optional(),
          builtFrom: year('in which it may have been installed, the first').optional(),
          builtTo: year('in which it may have been installed, the last').optional(),
          shortFrom: year('in which the season opens from which on it is short, the first').optional(),
          shortTo: year('in which the season opens from which on it is short, the last').optional(),
          text: z
            .string()
            .max(100)
            .default('')
            .describe("found in the ref, the site's or an owner's name, or the treatment"),
        }),
      },
      responses: {
        200: jsonAnswer(statesSchema, 'a page of fences'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, ...asked } = context.req.valid('query');
      const place = readOn(cursor, 1);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const rows = await listFenceStates(register.db, {
        siteRef: asked.site ?? null,
        ownerRef: asked.owner ?? null,
        standing: asked.standing ?? null,
        endsStanding: asked.ends ?? null,
        treatmentClass: asked.treatment ?? null,
        builtFrom: asked.builtFrom ?? null,
        builtTo: asked.builtTo ?? null,
        shortFrom: asked.shortFrom ?? null,
        shortTo: asked.shortTo ?? null,
        text: asked.text,
        after: place.after && String(place.after[0]),
        limit,
      });
      return answered(context, statesSchema, { rows, next: nextAfter(rows, limit, ({ ref }) => [ref]) });
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}',
      tags: ['Fences'],
      summary: 'One fence: its record, what was seen of it, and its forecast',
      request: { params: refParam },
      responses: { 200: jsonAnswer(fenceSchema, 'the fence'), 404: problemAnswer('no such fence') },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const detail = await loadFenceDetail(register, ref);
      if (!detail) return apiProblem(context, notAFence(ref)) as never;
      const { fence, site, owners, evidence, swept } = detail;
      const body = {
        fence,
        site,
        owners: [...owners],
        inspections: evidence.inspections.map(({ record, readings }) => ({ ...record, readings })),
        outcomes: [...evidence.outcomes],
        computedAt: swept?.stored.computedAt ?? null,
        inputHash: swept?.stored.inputHash ?? null,
        standing: swept?.stored.standing ?? null,
        endsStanding: swept?.stored.endsStanding ?? null,
        forecast: swept?.forecast ?? null,
        cautions: [...cautionsIn('en').all],
      };
      return context.json(body as unknown as z.infer<typeof fenceSchema>, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}/reasons',
      tags: ['Fences'],
      summary: 'How a season of the forecast was reached: every number with its equation, inputs and source',
      request: {
        params: refParam,
        query: z.object({
          season: z.string().optional().describe('label of a season, as `2027`; season 1 unless given'),
          of: z.enum(['line posts', 'ends']).default('line posts'),
        }),
      },
      responses: {
        200: jsonAnswer(deepSchema, 'the chain of reasons'),
        404: problemAnswer('no such fence or season'),
      },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const { season, of } = context.req.valid('query');
      const detail = await loadFenceDetail(register, ref);
      if (!detail) return apiProblem(context, notAFence(ref)) as never;
      const { facts, site } = detail;
      const settings = forecastSettingsOf(await readSettings(register.db));
      const year = seasonOneYear(facts.site.seasonWindow, dayInZone(clock(), site.timeZone));
      const labels = forecastFence(facts, year, settings).seasons.map(({ label }) => label);
      if (season !== undefined && !labels.includes(season)) {
        const problem = notThere(
          `the forecast of fence ${ref} has no season ${JSON.stringify(season)}`,
          `there are ${labels.join(', ')}`,
        );
        return apiProblem(context, problem) as never;
      }
      const reasons = explainForecast(facts, year, settings, {
        which: of,
        ...(season === undefined ? {} : { seasonLabel: season }),
      });
      return context.json({ ...reasons, cautions: cautionsIn('en').all } as Record<string, unknown>, 200);
    },
  );
}
