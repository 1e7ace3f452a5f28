import { createRoute, z } from '@hono/zod-openapi';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import { type DoRequest, doVisit, previewDone } from '../../service/do-visit.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { actFields, day, idempotencyHeader, jsonAnswer, jsonBody, preview } from './api-schemas.ts';
import { tokenName } from './token-name.ts';
import { noVisit, refusedChange, uidParam } from './visit-answers.ts';
import { visitSchema, visitWorksSchema } from './visit-schemas.ts';

const didSchema = z.object({
  kind: z.enum(CATALOGUE_KINDS),
  posts: z.union([z.literal('all'), z.array(z.number().int().positive())]).default('all'),
});

const askedSchema = z
  .object({
    ...actFields,
    day: day('the day on which it was done'),
    only: z.array(z.string()).optional().describe('fences at which something was done; all unless given'),
    except: z.array(z.string()).default([]).describe('fences at which nothing was done'),
    personHours: z
      .union([z.number().positive(), z.record(z.string(), z.number().positive())])
      .optional()
      .describe('of the whole visit, or fence by fence, without the way [h]'),
    did: z
      .record(z.string(), z.array(didSchema))
      .default({})
      .describe('what was done otherwise than planned, by fence'),
    inspections: z.record(z.string(), z.string()).default({}).describe('refs of inspections, by fence'),
    sure: z.boolean().default(false).describe('take hours that are far off those planned'),
    preview,
  })
  .openapi('VisitToBeDone');

const doneSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    visit: visitSchema,
    done: z.array(
      z.object({
        fenceRef: z.string(),
        works: z.array(visitWorksSchema),
        personHours: z.number().nullable().describe('without the way; null where nobody said [h]'),
        worksRefs: z.array(z.string()).describe('refs of the works that are entered'),
        inspectionRef: z.string().nullable(),
        notes: z.array(z.string()).describe('what turned out otherwise than it was asked for'),
      }),
    ),
    returned: z.array(z.string()).describe('fences that go back to the plan'),
  })
  .openapi('VisitDone');

/** The hours of a request: of the whole visit, fence by fence, or of neither. */
function hoursOf(personHours: z.infer<typeof askedSchema>['personHours']): DoRequest['hours'] {
  if (personHours === undefined) return { kind: 'none' };
  return typeof personHours === 'number'
    ? { kind: 'visit', personHours }
    : { kind: 'fences', personHours: new Map(Object.entries(personHours)) };
}

/** What was done of a visit. */
export function addVisitDone(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/visits/{uid}/done',
      tags: ['Visits'],
      summary: 'Enters what was done of a visit: works, inspections, hours',
      description: 'Inspections are entered before, by PUT /api/v1/records, and named here.',
      request: { params: uidParam, headers: idempotencyHeader, body: jsonBody(askedSchema) },
      responses: {
        200: jsonAnswer(doneSchema, 'what was, or for a preview would be, entered'),
        404: problemAnswer('no such visit'),
        409: problemAnswer('refused or doubtful: nothing was stored'),
      },
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      const body = context.req.valid('json');
      const work = body.preview ? previewDone : doVisit;
      const result = await work(register, {
        uid,
        now: clock,
        day: body.day,
        only: body.only ?? null,
        except: body.except,
        hours: hoursOf(body.personHours),
        changed: new Map(Object.entries(body.did)),
        inspections: new Map(Object.entries(body.inspections)),
        sure: body.sure,
        by: tokenName(context),
        because: body.because,
      });
      if (result.kind === 'no such visit') return apiProblem(context, noVisit(uid)) as never;
      if (result.kind !== 'done') return refusedChange(context, result.reasons, result.kind === 'asked') as never;
      const { visit, done, returned } = result;
      return answered(context, doneSchema, {
        applied: !body.preview,
        visit,
        done: done.map(({ fenceRef, works, personHours, worksRefs, inspectionRef, notes }) => ({
          fenceRef,
          works,
          personHours,
          worksRefs,
          inspectionRef,
          notes,
        })),
        returned,
      });
    },
  );
}
