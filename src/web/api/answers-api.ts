import { createRoute, z } from '@hono/zod-openapi';
import { listOwnerAnswers, settleOwnerAnswer } from '../../register/owner-answer-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, idempotencyHeader, idParam, jsonAnswer, pageOf, pageQuery, settledSchema } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';
import { tokenName } from './token-name.ts';

const KINDS = ['read', 'day chosen', 'quote accepted', 'call wanted', 'preferences', 'unsubscribed'] as const;

const answersSchema = pageOf(
  z
    .object({
      id: z.number().int(),
      ownerRef: z.string(),
      ownerName: z.string().nullable().describe('null where the owner is no longer in the register'),
      linkId: z.number().int(),
      kind: z.enum(KINDS),
      subject: z
        .string()
        .describe('ref of the fence, uid of the visit, number of the quote; empty where it is about none'),
      detail: deepSchema.describe('what was said'),
      at: z.string(),
      settledAt: z.string().nullable().describe('null while the office has something to do about it'),
      settledBy: z.string(),
    })
    .openapi('OwnerAnswer'),
);

/** What is said in an answer, kept as JSON; nothing where it says nothing. */
const detailOf = (text: string): Record<string, unknown> => {
  const said: unknown = text === '' ? {} : JSON.parse(text);
  return typeof said === 'object' && said !== null ? { ...said } : { said };
};

/** What owners answered by their links. */
export function addAnswers(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/answers',
      tags: ['Owners'],
      summary: 'What owners answered, the newest first: read, chosen days, accepted quotes, calls wanted, wishes',
      request: {
        query: z.object({
          ...pageQuery,
          open: z
            .enum(['true', 'false'])
            .default('false')
            .describe('true: only those the office has something to do about'),
          owner: z.string().optional().describe('ref of an owner'),
          kind: z.enum(KINDS).optional(),
        }),
      },
      responses: {
        200: jsonAnswer(answersSchema, 'a page of answers'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, open, owner, kind } = context.req.valid('query');
      const place = readOn(cursor, 1);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const rows = await listOwnerAnswers(register.db, {
        open: open === 'true',
        ...(owner === undefined ? {} : { ownerRef: owner }),
        ...(kind === undefined ? {} : { kind }),
        ...(place.after === null ? {} : { before: Number(place.after[0]) }),
        limit,
      });
      return answered(context, answersSchema, {
        rows: rows.map((row) => ({ ...row, detail: detailOf(row.detail) })),
        next: nextAfter(rows, limit, ({ id }) => [id]),
      });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/answers/{id}/settle',
      tags: ['Owners'],
      summary: 'Notes that the office has dealt with an answer',
      request: { params: idParam, headers: idempotencyHeader },
      responses: { 200: jsonAnswer(settledSchema, 'its number'), 404: problemAnswer('no such answer is open') },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const settled = await settleOwnerAnswer(register.db, id, { at: isoUtc(clock()), by: tokenName(context) });
      if (settled) return answered(context, settledSchema, { settled: id });
      const problem = notThere(`no answer ${id} is open`, 'GET /api/v1/answers?open=true lists those that are');
      return apiProblem(context, problem) as never;
    },
  );
}
