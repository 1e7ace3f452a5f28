import { createRoute, z } from '@hono/zod-openapi';
import { type AcceptResult, acceptSeasonPlan, previewAcceptance } from '../../service/accept-season-plan.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { actFields, idempotencyHeader, jsonAnswer, jsonBody, preview } from './api-schemas.ts';
import { noPlan, numberParam } from './plans-api.ts';
import { tokenName } from './token-name.ts';

const acceptedSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    plan: z.number().int(),
    created: z.number().int(),
    moved: z.number().int(),
    kept: z.number().int(),
    cancelled: z.number().int(),
    ownersToTell: z.number().int().optional().describe('of a preview: owners who would be told of visits'),
  })
  .openapi('PlanAccepted');

function notAccepted(context: PageContext, number: number, result: Exclude<AcceptResult, { kind: 'accepted' }>): never {
  if (result.kind === 'no such plan') return apiProblem(context, noPlan(number)) as never;
  const { plan } = result;
  return apiProblem(context, {
    status: 409,
    title: result.kind === 'accepted before' ? 'Accepted before' : 'Begun already',
    what:
      result.kind === 'accepted before'
        ? `season plan ${number} is ${plan.state} since ${plan.acceptedAt}; nothing was changed`
        : `the first week of season plan ${number} begins on ${plan.firstWeek}, and it is ${result.today}; nothing was changed`,
    wayOut: 'make another plan and accept that',
  }) as never;
}

/** The accepting of a season plan. */
export function addPlanAccepting(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/plans/{number}/accept',
      tags: ['Season plans'],
      summary: 'Accepts a plan: its visits become proposed ones, laid out on days, and owners are told',
      request: {
        params: numberParam,
        headers: idempotencyHeader,
        body: jsonBody(z.object({ ...actFields, preview })),
      },
      responses: {
        200: jsonAnswer(acceptedSchema, 'how many visits came of it, or for a preview would come'),
        404: problemAnswer('no such plan'),
        409: problemAnswer('it was accepted before, or its first week has begun'),
      },
    }),
    async (context) => {
      const { number } = context.req.valid('param');
      const { because, preview: onlyLook } = context.req.valid('json');
      const seen = onlyLook ? await previewAcceptance(register, { number, now: clock }) : null;
      const result =
        seen?.result ?? (await acceptSeasonPlan(register, { number, now: clock, by: tokenName(context), because }));
      if (result.kind !== 'accepted') return notAccepted(context, number, result);
      const { created, moved, kept, cancelled } = result.visits;
      return answered(context, acceptedSchema, {
        applied: !onlyLook,
        plan: number,
        created: created.length,
        moved: moved.length,
        kept: kept.length,
        cancelled: cancelled.length,
        ...(seen === null ? {} : { ownersToTell: seen.ownersToTell }),
      });
    },
  );
}
