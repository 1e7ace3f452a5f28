import { createRoute, z } from '@hono/zod-openapi';
import { planHeadsAfter, readPlan } from '../../register/plan-store.ts';
import type { PlanState } from '../../service/plan-runner.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';
import { planHeadSchema } from './plan-schemas.ts';
import { tokenName } from './token-name.ts';

const plansSchema = pageOf(planHeadSchema);
const wholeSchema = planHeadSchema.extend({ content: deepSchema }).openapi('SeasonPlanWhole');
const makingSchema = z
  .object({
    kind: z.enum(['idle', 'at work', 'made', 'failed']),
    startedAt: z.string().optional().describe('of one at work'),
    by: z.string().optional(),
    progress: deepSchema.optional().describe('fences done of how many'),
    number: z.number().int().optional().describe('of the plan that was made'),
    at: z.string().optional().describe('when it ended'),
    reason: z.string().optional().describe('why it failed; nothing was stored'),
  })
  .openapi('PlanMaking');
const makingNow = (state: PlanState): z.infer<typeof makingSchema> =>
  state.kind === 'at work' ? { ...state, progress: { ...state.progress } } : { ...state };

/** The number of a season plan in an address. */
export const numberParam = z.object({ number: z.coerce.number().int().positive() });
/** That a season plan is not there. */
export const noPlan = (number: number) => notThere(`there is no season plan ${number}`, 'GET /api/v1/plans lists them');

/** Season plans: the making of one, and what was planned. */
export function addPlans(api: Api, { register, planner }: Pick<AppParts, 'register' | 'planner'>): void {
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
        202: jsonAnswer(makingSchema, 'where the making stands'),
        409: problemAnswer('one is at work already'),
      },
    }),
    async (context) => {
      const { weeks } = context.req.valid('json');
      if (planner.begin({ by: tokenName(context), weeks: weeks ?? null })) {
        return answered(context, makingSchema, makingNow(planner.state()), 202);
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
      responses: { 200: jsonAnswer(makingSchema, 'idle, at work, made with its number, or failed with the reason') },
    }),
    (context) => answered(context, makingSchema, makingNow(planner.state())),
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/plans',
      tags: ['Season plans'],
      summary: 'Every season plan that was made, the first made first',
      request: { query: z.object(pageQuery) },
      responses: {
        200: jsonAnswer(plansSchema, 'a page of plans, without what they hold'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor } = context.req.valid('query');
      const place = readOn(cursor, 1);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const rows = await planHeadsAfter(register.db, Number(place.after?.[0] ?? 0), limit);
      return answered(context, plansSchema, { rows, next: nextAfter(rows, limit, ({ number }) => [number]) });
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
        200: jsonAnswer(wholeSchema, 'the plan'),
        404: problemAnswer('no such plan'),
      },
    }),
    async (context) => {
      const { number } = context.req.valid('param');
      const plan = await readPlan(register.db, number);
      if (!plan) return apiProblem(context, noPlan(number)) as never;
      const { content, ...head } = plan;
      return answered(context, wholeSchema, {
        ...head,
        visits: content.visits.length,
        unservedMusts: content.unservedMusts.length,
        content: { ...content },
      });
    },
  );
}
