import { createRoute, z } from '@hono/zod-openapi';
import { crewSheets, officeToday } from '../../service/crew-sheets.ts';
import { hoursAhead } from '../../service/hours-ahead.ts';
import { materialsAhead } from '../../service/materials-ahead.ts';
import { seasonBrief } from '../../service/season-brief.ts';
import type { AppParts } from '../../service/service.ts';
import { addDays } from '../../units/calendar-day.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { day, deepSchema, jsonAnswer, refParam } from './api-schemas.ts';
import { briefSchema, hoursSchema, materialsSchema, noCrew } from './season-schemas.ts';

const MOST_WEEKS = 40;
const USUAL_WEEKS = 10;
const MOST_SHEETS = 31;

const sheetsSchema = z
  .object({
    crewName: z.string(),
    sheets: z.array(deepSchema).describe('one for each of the days on which the crew has visits'),
    nextDay: z.string().nullable().describe('first day of its next visit after those; null where none is ahead'),
  })
  .openapi('DaySheets');

/** Where the season stands: the brief, the hours of the crews, materials to order, day sheets. */
export function addSeason(api: Api, { register, clock, view }: Pick<AppParts, 'register' | 'clock' | 'view'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/brief',
      tags: ['Season'],
      summary: 'The season brief: danger, seasons by region, what the last sweep changed, hours, mail, visits',
      responses: { 200: jsonAnswer(briefSchema, 'the brief as of now') },
    }),
    async (context) => {
      const { lastFinished } = await view.sweepStatus();
      const brief = await seasonBrief(register, clock, lastFinished);
      return answered(context, briefSchema, {
        ...brief,
        sweptAt: lastFinished?.finishedAt ?? null,
        regions: brief.regions.map(({ season, ...region }) => ({ ...region, season: { ...season } })),
      });
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/hours',
      tags: ['Season'],
      summary: 'The hours of every crew, week by week: what there is, what visits take, what is left',
      request: {
        query: z.object({
          weeks: z.coerce.number().int().min(1).max(MOST_WEEKS).default(USUAL_WEEKS).describe('from the one that runs'),
        }),
      },
      responses: { 200: jsonAnswer(hoursSchema, 'by week, in the order of the crews') },
    }),
    async (context) => {
      const { weeks } = context.req.valid('query');
      const today = await officeToday(register, clock);
      return answered(context, hoursSchema, await hoursAhead(register, { today, weeks }));
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/materials',
      tags: ['Season'],
      summary: 'What to order for the proposed and confirmed visits that begin between two days',
      request: {
        query: z.object({
          from: day('first day; today unless given').optional(),
          to: day('last day; to the last visit unless given').optional(),
        }),
      },
      responses: { 200: jsonAnswer(materialsSchema, 'by material, in the order of the names') },
    }),
    async (context) => {
      const { from, to } = context.req.valid('query');
      const first = from ?? (await officeToday(register, clock));
      return answered(context, materialsSchema, await materialsAhead(register, first, to ?? null));
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/crews/{ref}/sheets',
      tags: ['Season'],
      summary: "A crew's day sheets: stops in their order, posts, loads, way notes",
      request: {
        params: refParam,
        query: z.object({
          from: day('first day; today unless given').optional(),
          days: z.coerce.number().int().min(1).max(MOST_SHEETS).default(1),
        }),
      },
      responses: {
        200: jsonAnswer(sheetsSchema, 'the days on which it has visits'),
        404: problemAnswer('no such crew'),
      },
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const { from, days } = context.req.valid('query');
      const first = from ?? (await officeToday(register, clock));
      const found = await crewSheets(
        register,
        ref,
        Array.from({ length: days }, (_, index) => addDays(first, index)),
      );
      if (found.kind === 'no crew') return apiProblem(context, noCrew(ref)) as never;
      const { crewName, nextDay } = found;
      return answered(context, sheetsSchema, {
        crewName,
        nextDay,
        sheets: found.sheets.map((sheet) => ({ ...sheet })),
      });
    },
  );
}
