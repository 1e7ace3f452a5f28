import { z } from '@hono/zod-openapi';
import type { VisitChangeResult } from '../../service/change-visit.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import { type ApiProblem, apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { jsonAnswer } from './api-schemas.ts';
import { visitChangedSchema } from './visit-schemas.ts';

/** The uid of a visit in an address. */
export const uidParam = z.object({ uid: z.string().min(1).max(200) });

/** That a visit is not there. */
export const noVisit = (uid: string): ApiProblem =>
  notThere(
    `there is no visit ${JSON.stringify(uid)}`,
    'GET /api/v1/visits lists them; the uid is compared letter by letter',
  );

/** How the answers to a change of a visit are declared. */
export const changeAnswers = {
  200: jsonAnswer(visitChangedSchema, 'the visit as it is now, or for a preview as it would be'),
  404: problemAnswer('no such visit'),
  409: problemAnswer('its state, a rule or the hours speak against it: nothing was changed'),
};

/** Answers a change that cannot be, or that is to be confirmed. */
export const refusedChange = (context: PageContext, reasons: readonly string[], mayBeSure: boolean): Response =>
  apiProblem(context, {
    status: 409,
    title: mayBeSure ? 'Something speaks against it' : 'That cannot be done',
    what: `${reasons.join('; ')}; nothing was changed`,
    wayOut: mayBeSure ? 'send it otherwise, or with `sure: true`' : 'look at the visit: GET /api/v1/visits/{uid}',
  });

/** Answers a change of a visit. @param applied false for a preview */
export function answerChange(
  context: PageContext,
  { uid, applied }: { readonly uid: string; readonly applied: boolean },
  result: VisitChangeResult,
): Response {
  if (result.kind === 'no such visit') return apiProblem(context, noVisit(uid));
  if (result.kind !== 'changed') return refusedChange(context, result.reasons, result.kind === 'asked');
  return answered(context, visitChangedSchema, { applied, visit: result.visit, doubts: result.doubts });
}
