import { createRoute, z } from '@hono/zod-openapi';
import { loadFenceEvidence } from '../../register/evidence-store.ts';
import { withdrawInspection, withdrawOutcomes } from '../../register/evidence-withdrawal.ts';
import { readRecord } from '../../register/record-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { outcomesOfRef, spreadingOutcome } from '../../service/withdraw-evidence.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, idempotencyHeader, jsonAnswer, jsonBody, preview } from './api-schemas.ts';
import { tokenName } from './token-name.ts';

const withdrawnSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    rows: z.array(
      z.object({
        kind: z.enum(['inspection', 'outcome']),
        ref: z.string(),
        fenceRef: z.string(),
        record: deepSchema.describe('the record as it was; of an inspection with its `readings`'),
        because: z.string(),
        by: z.string(),
        at: z.string(),
      }),
    ),
  })
  .openapi('Withdrawn');

const asked = { ref: z.string().min(1).max(200), because: z.string().trim().min(1).max(2000), preview };

/** The taking back of what was seen: inspections with their readings, storm outcomes. What they said is kept with the reason. */
export function addWithdrawals(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  const { db } = register;
  const actOf = (context: PageContext, because: string) => ({ because, by: tokenName(context), at: isoUtc(clock()) });

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/inspections/withdraw',
      tags: ['Records'],
      summary: 'Takes an inspection back with its readings; what it said is kept with the reason',
      request: { headers: idempotencyHeader, body: jsonBody(z.object(asked)) },
      responses: {
        200: jsonAnswer(withdrawnSchema, 'what was, or for a preview would be, withdrawn'),
        404: problemAnswer('no such inspection'),
      },
    }),
    async (context) => {
      const { ref, because, preview: onlyLook } = context.req.valid('json');
      const act = actOf(context, because);
      const inspection = await readRecord(db, 'inspections', ref);
      if (inspection && onlyLook) {
        const { fenceRef } = inspection;
        const evidence = (await loadFenceEvidence(db, [fenceRef])).get(fenceRef);
        const readings = evidence?.inspections.find(({ record }) => record.ref === ref)?.readings ?? [];
        const row = { kind: 'inspection', ref, fenceRef, record: { ...inspection, readings }, ...act } as const;
        return answered(context, withdrawnSchema, { applied: false, rows: [row] });
      }
      const withdrawal = inspection && (await withdrawInspection(register, ref, act));
      if (withdrawal) return answered(context, withdrawnSchema, { applied: true, rows: [withdrawal] });
      const problem = notThere(
        `there is no inspection ${JSON.stringify(ref)}`,
        'GET /api/v1/records/inspections lists them; nothing was withdrawn',
      );
      return apiProblem(context, problem) as never;
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/outcomes/withdraw',
      tags: ['Records'],
      summary: 'Takes a storm outcome back, or all that one report stored under a ref; what they said is kept',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(
          z.object({
            ...asked,
            sure: z
              .boolean()
              .default(false)
              .describe('true: also where an outcome of all posts that is left would then speak of more posts'),
          }),
        ),
      },
      responses: {
        200: jsonAnswer(withdrawnSchema, 'what was, or for a preview would be, withdrawn'),
        404: problemAnswer('no such outcome'),
        409: problemAnswer('an outcome of all posts that is left would then speak of more posts'),
      },
    }),
    async (context) => {
      const { ref, because, sure, preview: onlyLook } = context.req.valid('json');
      const outcomes = await outcomesOfRef(register, ref);
      if (outcomes.length === 0) {
        const problem = notThere(
          `there is no storm outcome ${JSON.stringify(ref)}`,
          'GET /api/v1/records/outcomes lists them; nothing was withdrawn',
        );
        return apiProblem(context, problem) as never;
      }
      const spreading = sure ? null : await spreadingOutcome(register, outcomes);
      if (spreading !== null) {
        return apiProblem(context, {
          status: 409,
          title: 'Something speaks against it',
          what: `${spreading}; nothing was withdrawn`,
          wayOut: 'take that one back too, or send it with `sure: true`',
        }) as never;
      }
      const act = actOf(context, because);
      const rows = onlyLook
        ? outcomes.map((outcome) => ({
            kind: 'outcome' as const,
            ref: outcome.ref,
            fenceRef: outcome.fenceRef,
            record: { ...outcome },
            ...act,
          }))
        : await withdrawOutcomes(register, outcomes, act);
      return answered(context, withdrawnSchema, { applied: !onlyLook, rows });
    },
  );
}
