import { createRoute, z } from '@hono/zod-openapi';
import { listPlans, readPlan, type StoredPlan } from '../../register/plan-store.ts';
import { acceptSeasonPlan } from '../../service/accept-season-plan.ts';
import type { AppParts } from '../../service/service.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { actFields, deepSchema, idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { cursorText, readCursor } from './cursor.ts';
import { BAD_CURSOR } from './fences-api.ts';
import { tokenName } from './token-name.ts';

const planSchema = z
  .object({
    number: z.number().int(),
    state: z.enum(['made', 'accepted', 'superseded']),
    madeAt: z.string(),
    asOf: z.string(),
    firstWeek: z.string().describe('Monday of the first week that it fills'),
    weeks: z.number().int(),
    modelVersion: z.string(),
    acceptedAt: z.string().nullable(),
    by: z.string(),
    because: z.string(),
  })
  .openapi('SeasonPlan');

const headOf = (plan: StoredPlan): z.infer<typeof planSchema> => {
  const { number, state, madeAt, asOf, firstWeek, weeks, modelVersion, acceptedAt, by, because } = plan;
  return { number, state, madeAt, asOf, firstWeek, weeks, modelVersion, acceptedAt, by, because };
};
const numberParam = z.object({ number: z.coerce.number().int().positive() });
const noPlan = (number: number) => notThere(`there is no season plan ${number}`, 'GET /api/v1/plans lists them');

/** Season plans: what was planned, and the accepting of a plan. */
export function addPlans(api: Api, { register, clock, planner }: AppParts): void {
  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/plans',
      tags: ['Season plans'],
      summary: 'Begins to make a season plan; ask GET /api/v1/plan-making how far it is',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(z.object({ weeks: z.number().int().min(1).max(30).optional().describe('weeks to fill') })),
      },
      responses: {
        202: jsonAnswer(deepSchema, 'where the making stands'),
        409: problemAnswer('one is at work already'),
      },
    }),
    async (context) => {
      const { weeks } = context.req.valid('json');
      if (planner.begin({ by: tokenName(context), weeks: weeks ?? null })) {
        return context.json({ ...planner.state() } as never, 202);
      }
      return apiProblem(context, {
        status: 409,
        title: 'A plan is at work',
        what: 'one plan is made at a time, and one is being made',
        wayOut: 'GET /api/v1/plan-making says how far it is; ask again when it is made',
      }) as never;
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/plan-making',
      tags: ['Season plans'],
      summary: 'Where the making of a season plan stands, or what came of the last one',
      responses: { 200: jsonAnswer(deepSchema, 'idle, at work, made with its number, or failed with the reason') },
    }),
    async (context) => context.json({ ...planner.state() } as never, 200),
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/plans',
      tags: ['Season plans'],
      summary: 'Every season plan that was made, the first made first',
      request: { query: z.object(pageQuery) },
      responses: {
        200: jsonAnswer(pageOf(planSchema), 'a page of plans, without what they hold'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor } = context.req.valid('query');
      const after = cursor === undefined ? [0] : readCursor(cursor, 1);
      if (after === null) return apiProblem(context, BAD_CURSOR) as never;
      const ahead = (await listPlans(register.db)).filter(({ number }) => number > Number(after[0]));
      const rows = ahead.slice(0, limit).map(headOf);
      return context.json({ rows, next: ahead.length > limit ? cursorText([rows.at(-1)!.number]) : null }, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/plans/{number}',
      tags: ['Season plans'],
      summary: 'One season plan: its visits, its bound, what was left out and why',
      request: { params: numberParam },
      responses: {
        200: jsonAnswer(planSchema.extend({ content: deepSchema }).openapi('SeasonPlanWhole'), 'the plan'),
        404: problemAnswer('no such plan'),
      },
    }),
    async (context) => {
      const { number } = context.req.valid('param');
      const plan = await readPlan(register.db, number);
      if (!plan) return apiProblem(context, noPlan(number)) as never;
      return context.json({ ...headOf(plan), content: plan.content } as never, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/plans/{number}/accept',
      tags: ['Season plans'],
      summary: 'Accepts a plan: its visits become proposed ones, laid out on days',
      request: { params: numberParam, headers: idempotencyHeader, body: jsonBody(z.object(actFields)) },
      responses: {
        200: jsonAnswer(
          z
            .object({
              plan: z.number().int(),
              created: z.number().int(),
              moved: z.number().int(),
              kept: z.number().int(),
              cancelled: z.number().int(),
            })
            .openapi('PlanAccepted'),
          'how many visits came of it',
        ),
        404: problemAnswer('no such plan'),
        409: problemAnswer('it was accepted before, or its first week has begun'),
      },
    }),
    async (context) => {
      const { number } = context.req.valid('param');
      const { because } = context.req.valid('json');
      const result = await acceptSeasonPlan(register, { number, now: clock, by: tokenName(context), because });
      switch (result.kind) {
        case 'no such plan':
          return apiProblem(context, noPlan(number)) as never;
        case 'accepted before':
          return apiProblem(context, {
            status: 409,
            title: 'Accepted before',
            what: `season plan ${number} is ${result.plan.state} since ${result.plan.acceptedAt}; nothing was changed`,
            wayOut: 'make another plan and accept that',
          }) as never;
        case 'begun already':
          return apiProblem(context, {
            status: 409,
            title: 'Begun already',
            what: `the first week of season plan ${number} begins on ${result.plan.firstWeek}, and it is ${result.today}; nothing was changed`,
            wayOut: 'make another plan and accept that',
          }) as never;
        case 'accepted': {
          const { created, moved, kept, cancelled } = result.visits;
          return context.json(
            {
              plan: number,
              created: created.length,
              moved: moved.length,
              kept: kept.length,
              cancelled: cancelled.length,
            },
            200,
          );
        }
      }
    },
  );
}
