import { createRoute, z } from '@hono/zod-openapi';
import { OWNER_MATTERS } from '../../notify/matter-rules.ts';
import { holdNoticesAgain, noticesAfter } from '../../register/held-notices.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';

const heldSchema = pageOf(
  z
    .object({
      id: z.number().int(),
      matter: z.string(),
      occasion: z.string().describe('what it is told once for'),
      fenceRef: z.string(),
      siteName: z.string(),
      ownerRef: z.string(),
      ownerName: z.string(),
      held: z.enum(['first sweep', 'large import', 'matter', 'kept back']).describe('why it waits'),
      createdAt: z.string(),
    })
    .openapi('HeldNotice'),
);
const againSchema = z.object({ held: z.number().int().describe('how many of them wait again') });

const heldQuery = z.object({
  ...pageQuery,
  matter: z.enum(OWNER_MATTERS).optional(),
  owner: z.string().optional().describe('ref of an owner'),
});

/** Notices that wait for the office, and those that it has released: both page after page; and the holding of these again. */
export function addHeld(api: Api, { register }: Pick<AppParts, 'register'>): void {
  const list = async (context: PageContext, asked: z.infer<typeof heldQuery>, released: boolean): Promise<never> => {
    const { limit, cursor, matter, owner } = asked;
    const place = readOn(cursor, 3);
    if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
    const [ownerRef, fenceRef, id] = place.after ?? [];
    const rows = await noticesAfter(
      register,
      { released, ...(matter === undefined ? {} : { matter }), ...(owner === undefined ? {} : { ownerRef: owner }) },
      {
        after: place.after === null ? null : { ownerRef: String(ownerRef), fenceRef: String(fenceRef), id: Number(id) },
        limit,
      },
    );
    const next = nextAfter(rows, limit, (notice) => [notice.ownerRef, notice.fenceRef, notice.id]);
    return answered(context, heldSchema, { rows, next });
  };

  for (const [name, released, summary] of [
    ['held', false, 'What waits until the office releases it, by owner, fence and number'],
    ['released', true, 'What was released and has no message yet: it can be held again'],
  ] as const) {
    api.openapi(
      createRoute({
        method: 'get',
        path: `/api/v1/notices/${name}`,
        tags: ['Notices'],
        summary,
        request: { query: heldQuery },
        responses: {
          200: jsonAnswer(heldSchema, 'a page of notices'),
          400: problemAnswer('the question makes no sense'),
        },
      }),
      (context) => list(context, context.req.valid('query'), released),
    );
  }

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/notices/hold-again',
      tags: ['Notices'],
      summary: 'Holds released notices again that have no message yet',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(z.object({ ids: z.array(z.number().int().positive()).min(1).max(10_000) })),
      },
      responses: { 200: jsonAnswer(againSchema, 'those that have a message by now are not among them') },
    }),
    async (context) => {
      const { ids } = context.req.valid('json');
      return answered(context, againSchema, { held: await holdNoticesAgain(register, ids) });
    },
  );
}
