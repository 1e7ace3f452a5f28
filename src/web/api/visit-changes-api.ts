import { createRoute, z } from '@hono/zod-openapi';
import { cancelVisit, confirmVisit, missVisit } from '../../service/change-visit.ts';
import type { AppParts } from '../../service/service.ts';
import type { Api } from './api.ts';
import { actFields, day, idempotencyHeader, jsonBody, preview } from './api-schemas.ts';
import { tokenName } from './token-name.ts';
import { answerChange, changeAnswers, uidParam } from './visit-answers.ts';

/** What becomes of a visit before it is done: promised on a day, missed, called off. */
export function addVisitChanges(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
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
            preview,
          }),
        ),
      },
      responses: changeAnswers,
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      const { because, day: promised, startsAt, crew, sure, preview: onlyLook } = context.req.valid('json');
      const result = await confirmVisit(register, {
        uid,
        now: clock,
        day: promised,
        startsAt: startsAt ?? null,
        crewRef: crew ?? null,
        sure,
        onlyLook,
        by: tokenName(context),
        because,
      });
      return answerChange(context, { uid, applied: !onlyLook }, result) as never;
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
          body: jsonBody(z.object({ because: z.string().min(1).max(500).describe('why; kept'), preview })),
        },
        responses: changeAnswers,
      }),
      async (context) => {
        const { uid } = context.req.valid('param');
        const { because, preview: onlyLook } = context.req.valid('json');
        const result = await change(register, { uid, now: clock, onlyLook, by: tokenName(context), because });
        return answerChange(context, { uid, applied: !onlyLook }, result) as never;
      },
    );
  }
}
