import { createRoute, z } from '@hono/zod-openapi';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import { listVisits, readVisit, visitHistory } from '../../register/visit-store.ts';
import { listVisitHours, returnedFences, visitEntries } from '../../register/visit-work-store.ts';
import { VISIT_STATES } from '../../season/visit/visit.ts';
import { cancelVisit, confirmVisit, missVisit, type VisitChangeResult } from '../../service/change-visit.ts';
import { doVisit } from '../../service/do-visit.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { actFields, idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { cursorText, readCursor } from './cursor.ts';
import { BAD_CURSOR } from './fences-api.ts';
import { tokenName } from './token-name.ts';
import { day, visitDetailSchema, visitSchema } from './visit-schemas.ts';

const uidParam = z.object({ uid: z.string().min(1).max(200) });
type VisitJson = z.infer<typeof visitSchema>;

const noVisit = (uid: string) =>
  notThere(
    `there is no visit ${JSON.stringify(uid)}`,
    'GET /api/v1/visits lists them; the uid is compared letter by letter',
  );

const changedSchema = z
  .object({ visit: visitSchema, doubts: z.array(z.string()).describe('what speaks against it, taken all the same') })
  .openapi('VisitChanged');

const changeAnswers = {
  200: jsonAnswer(changedSchema, 'the visit as it is now'),
  404: problemAnswer('no such visit'),
  409: problemAnswer('its state, a rule or the hours speak against it: nothing was changed'),
};

function answerChange(context: PageContext, uid: string, result: VisitChangeResult): Response {
  if (result.kind === 'no such visit') return apiProblem(context, noVisit(uid));
  if (result.kind === 'changed') {
    return context.json({ visit: result.visit as unknown as VisitJson, doubts: [...result.doubts] }, 200);
  }
  return refusedChange(context, result.reasons, result.kind === 'asked');
}

const refusedChange = (context: PageContext, reasons: readonly string[], mayBeSure: boolean): Response =>
  apiProblem(context, {
    status: 409,
    title: mayBeSure ? 'Something speaks against it' : 'That cannot be done',
    what: `${reasons.join('; ')}; nothing was changed`,
    wayOut: mayBeSure ? 'send it otherwise, or with `sure: true`' : 'look at the visit: GET /api/v1/visits/{uid}',
  });

/** Visits: what is planned and promised, and what became of it. */
export function addVisits(api: Api, { register, clock }: AppParts): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/visits',
      tags: ['Visits'],
      summary: 'Visits, by first day, crew and uid',
      request: {
        query: z.object({
          ...pageQuery,
          crew: z.string().optional(),
          site: z.string().optional(),
          from: day('no visit that ends before it').optional(),
          to: day('no visit that begins after it').optional(),
          state: z.enum(VISIT_STATES).optional(),
        }),
      },
      responses: {
        200: jsonAnswer(pageOf(visitSchema), 'a page of visits'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, crew, site, from, to, state } = context.req.valid('query');
      const after = cursor === undefined ? null : readCursor(cursor, 3);
      if (cursor !== undefined && after === null) return apiProblem(context, BAD_CURSOR) as never;
      const visits = await listVisits(register.db, {
        crewRef: crew,
        siteRef: site,
        from,
        to,
        states: state === undefined ? undefined : [state],
      });
      const begins = after === null ? 0 : visits.findIndex((visit) => isAfter(visit, after));
      const rows = begins < 0 ? [] : visits.slice(begins, begins + limit);
      const last = rows.at(-1);
      const more = last !== undefined && begins + rows.length < visits.length;
      const next = more ? cursorText([last.firstDay, last.crewRef, last.uid]) : null;
      return context.json({ rows: rows as unknown as VisitJson[], next }, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/visits/{uid}',
      tags: ['Visits'],
      summary: 'One visit with its history',
      request: { params: uidParam },
      responses: { 200: jsonAnswer(visitDetailSchema, 'the visit'), 404: problemAnswer('no such visit') },
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      const visit = await readVisit(register.db, uid);
      if (!visit) return apiProblem(context, noVisit(uid)) as never;
      const [history, entries, hours, returned] = await Promise.all([
        visitHistory(register.db, uid),
        visitEntries(register.db, uid),
        listVisitHours(register.db, uid),
        returnedFences(register.db, uid),
      ]);
      return context.json(
        { visit, history, entries, hours, returned } as unknown as z.infer<typeof visitDetailSchema>,
        200,
      );
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/visits/{uid}/confirm',
      tags: ['Visits'],
      summary: 'Promises a visit on a day: no plan moves it from then on',
      request: {
        params: uidParam,
        headers: idempotencyHeader,
        body: jsonBody(
          z.object({
            ...actFields,
            day: day('the day that is promised'),
            startsAt: z
              .string()
              .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'write it as 08:30')
              .optional()
              .describe('local time at the site'),
            crew: z.string().optional().describe('another crew than the plan chose'),
            sure: z.boolean().default(false).describe('take it though rules or hours speak against it'),
          }),
        ),
      },
      responses: changeAnswers,
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      const { because, day: promised, startsAt, crew, sure } = context.req.valid('json');
      const result = await confirmVisit(register, {
        uid,
        now: clock,
        day: promised,
        startsAt: startsAt ?? null,
        crewRef: crew ?? null,
        sure,
        by: tokenName(context),
        because,
      });
      return answerChange(context, uid, result) as never;
    },
  );

  for (const [act, change, summary] of [
    ['miss', missVisit, 'Notes that a visit did not take place: its fences go back to the plan'],
    ['cancel', cancelVisit, 'Calls a visit off: its fences go back to the plan'],
  ] as const) {
    api.openapi(
      createRoute({
        method: 'post',
        path: `/api/v1/visits/{uid}/${act}`,
        tags: ['Visits'],
        summary,
        request: {
          params: uidParam,
          headers: idempotencyHeader,
          body: jsonBody(z.object({ because: z.string().min(1).max(500).describe('why; kept') })),
        },
        responses: changeAnswers,
      }),
      async (context) => {
        const { uid } = context.req.valid('param');
        const { because } = context.req.valid('json');
        const result = await change(register, { uid, now: clock, by: tokenName(context), because });
        return answerChange(context, uid, result) as never;
      },
    );
  }

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/visits/{uid}/done',
      tags: ['Visits'],
      summary: 'Enters what was done of a visit: works, inspections, hours',
      description: 'Inspections are entered before, by PUT /api/v1/records/inspections and /readings, and named here.',
      request: {
        params: uidParam,
        headers: idempotencyHeader,
        body: jsonBody(
          z.object({
            ...actFields,
            day: day('the day on which it was done'),
            only: z.array(z.string()).optional().describe('fences at which something was done; all unless given'),
            except: z.array(z.string()).default([]).describe('fences at which nothing was done'),
            personHours: z
              .union([z.number().positive(), z.record(z.string(), z.number().positive())])
              .optional()
              .describe('of the whole visit, or fence by fence, without the way [h]'),
            did: z
              .record(
                z.string(),
                z.array(
                  z.object({
                    kind: z.enum(CATALOGUE_KINDS),
                    posts: z.union([z.literal('all'), z.array(z.number().int().positive())]).default('all'),
                  }),
                ),
              )
              .default({})
              .describe('what was done otherwise than planned, by fence'),
            inspections: z.record(z.string(), z.string()).default({}).describe('refs of inspections, by fence'),
            sure: z.boolean().default(false).describe('take hours that are far off those planned'),
          }),
        ),
      },
      responses: {
        200: jsonAnswer(
          z
            .object({
              visit: visitSchema,
              done: z.array(z.record(z.string(), z.unknown())),
              returned: z.array(z.string()).describe('fences that go back to the plan'),
            })
            .openapi('VisitDone'),
          'what was entered',
        ),
        404: problemAnswer('no such visit'),
        409: problemAnswer('refused or doubtful: nothing was stored'),
      },
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      const body = context.req.valid('json');
      const { personHours } = body;
      const result = await doVisit(register, {
        uid,
        now: clock,
        day: body.day,
        only: body.only ?? null,
        except: body.except,
        hours:
          personHours === undefined
            ? { kind: 'none' }
            : typeof personHours === 'number'
              ? { kind: 'visit', personHours }
              : { kind: 'fences', personHours: new Map(Object.entries(personHours)) },
        changed: new Map(Object.entries(body.did)),
        inspections: new Map(Object.entries(body.inspections)),
        sure: body.sure,
        by: tokenName(context),
        because: body.because,
      });
      if (result.kind === 'no such visit') return apiProblem(context, noVisit(uid)) as never;
      if (result.kind !== 'done') return refusedChange(context, result.reasons, result.kind === 'asked') as never;
      const { visit, done, returned } = result;
      return context.json({ visit, done, returned } as never, 200);
    },
  );
}

/** Whether a visit comes after a place in the order of the list. */
const isAfter = (visit: { firstDay: string; crewRef: string; uid: string }, after: readonly unknown[]): boolean => {
  const own = [visit.firstDay, visit.crewRef, visit.uid];
  const differs = own.findIndex((part, index) => part !== after[index]);
  return differs >= 0 && own[differs]! > String(after[differs]);
};
