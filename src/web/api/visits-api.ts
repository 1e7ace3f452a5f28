import { createRoute, z } from '@hono/zod-openapi';
import { listVisits, readVisit, visitHistory } from '../../register/visit-store.ts';
import { listVisitHours, returnedFences, visitEntries } from '../../register/visit-work-store.ts';
import { VISIT_STATES } from '../../season/visit/visit.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { day, jsonAnswer, pageOf, pageQuery } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';
import { noVisit, uidParam } from './visit-answers.ts';
import { visitDetailSchema, visitSchema } from './visit-schemas.ts';

const visitsSchema = pageOf(visitSchema);

/** Visits: what is planned and promised, and what became of it. */
export function addVisits(api: Api, { register }: Pick<AppParts, 'register'>): void {
  const { db } = register;
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
          endedBefore: day('no visit that ends on it or later').optional(),
          state: z.enum(VISIT_STATES).optional(),
        }),
      },
      responses: {
        200: jsonAnswer(visitsSchema, 'a page of visits'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, crew, site, from, to, endedBefore, state } = context.req.valid('query');
      const place = readOn(cursor, 3);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const [firstDay, crewRef, uid] = (place.after ?? []).map(String);
      const rows = await listVisits(db, {
        crewRef: crew,
        siteRef: site,
        from,
        to,
        endedBefore,
        states: state === undefined ? undefined : [state],
        after: place.after === null ? undefined : { firstDay: firstDay!, crewRef: crewRef!, uid: uid! },
        limit,
      });
      const next = nextAfter(rows, limit, (visit) => [visit.firstDay, visit.crewRef, visit.uid]);
      return answered(context, visitsSchema, { rows, next });
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
      const visit = await readVisit(db, uid);
      if (!visit) return apiProblem(context, noVisit(uid)) as never;
      const [history, entries, hours, returned] = await Promise.all([
        visitHistory(db, uid),
        visitEntries(db, uid),
        listVisitHours(db, uid),
        returnedFences(db, uid),
      ]);
      return answered(context, visitDetailSchema, {
        visit,
        history,
        entries,
        hours: hours.map((each) => ({ ...each })),
        returned,
      });
    },
  );
}
