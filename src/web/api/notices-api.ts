import { createRoute, z } from '@hono/zod-openapi';
import { MATTER_RULES, type Matter } from '../../notify/matter-rules.ts';
import { listHeldNotices, releaseHeldNotices } from '../../register/held-notices.ts';
import { listOfficeNotices, settleOfficeNotice } from '../../register/office-notices.ts';
import { listOutbox } from '../../register/outbox.ts';
import { listOwnerAnswers, settleOwnerAnswer } from '../../register/owner-answer-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { writeMessages } from '../../service/sweep-register.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { deepSchema, idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { cursorText, readCursor } from './cursor.ts';
import { BAD_CURSOR } from './fences-api.ts';
import { tokenName } from './token-name.ts';

const MATTERS = Object.keys(MATTER_RULES) as [Matter, ...Matter[]];
const LONGEST_SENTENCE = 600;

const releaseSchema = z
  .object({
    all: z.boolean().default(false).describe('true: everything that is held'),
    matter: z.enum(MATTERS).optional(),
    owner: z.string().optional().describe('ref of an owner'),
    ids: z.array(z.number().int().positive()).min(1).optional(),
    sentence: z
      .string()
      .max(LONGEST_SENTENCE)
      .optional()
      .describe('words of the office, put between the greeting and the facts'),
  })
  .refine(
    ({ all, matter, owner, ids }) => all !== (matter !== undefined || owner !== undefined || ids !== undefined),
    'say either `all`, or which: by matter, owner or ids',
  )
  .openapi('Release');

/** Notices: what is held, the releasing of it, what is for the office, and the outbox. */
export function addNotices(api: Api, { register, clock, config }: AppParts): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/notices/held',
      tags: ['Notices'],
      summary: 'What waits until the office releases it',
      request: { query: z.object({ matter: z.enum(MATTERS).optional(), owner: z.string().optional() }) },
      responses: { 200: jsonAnswer(z.object({ rows: z.array(deepSchema) }), 'every notice that is held') },
    }),
    async (context) => {
      const { matter, owner } = context.req.valid('query');
      const rows = await listHeldNotices(register, {
        ...(matter === undefined ? {} : { matter }),
        ...(owner === undefined ? {} : { ownerRef: owner }),
      });
      return context.json({ rows } as never, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/notices/release',
      tags: ['Notices'],
      summary: 'Releases held notices; their messages are written at once, what is no longer so is made void',
      request: { headers: idempotencyHeader, body: jsonBody(releaseSchema) },
      responses: {
        200: jsonAnswer(deepSchema, 'how many notices, owners, mails and letters'),
        404: problemAnswer('none of these is held'),
      },
    }),
    async (context) => {
      const { matter, owner, ids, sentence } = context.req.valid('json');
      const filter = {
        ...(matter === undefined ? {} : { matter }),
        ...(owner === undefined ? {} : { ownerRef: owner }),
        ...(ids === undefined ? {} : { ids }),
      };
      const covering = sentence?.replace(/\s+/g, ' ').trim();
      const released = await releaseHeldNotices(register, filter, { at: isoUtc(clock()), covering: covering || null });
      if (released.notices === 0) {
        const problem = notThere('none of these is held', 'GET /api/v1/notices/held lists what is');
        return apiProblem(context, problem) as never;
      }
      const composed = await writeMessages(register, { now: clock, sender: config });
      return context.json({ ...released, ...composed } as never, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/notices/office',
      tags: ['Notices'],
      summary: 'What the sweep found for the office itself',
      responses: { 200: jsonAnswer(z.object({ rows: z.array(deepSchema) }), 'every one that is open') },
    }),
    async (context) => context.json({ rows: await listOfficeNotices(register) } as never, 200),
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/notices/office/{id}/settle',
      tags: ['Notices'],
      summary: 'Notes one of them as settled',
      request: { params: z.object({ id: z.coerce.number().int().positive() }), headers: idempotencyHeader },
      responses: {
        200: jsonAnswer(z.object({ settled: z.number().int() }), 'its number'),
        404: problemAnswer('no such notice is open'),
      },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const settled = await settleOfficeNotice(register, id, { at: isoUtc(clock()), by: tokenName(context) });
      if (settled) return context.json({ settled: id }, 200);
      const problem = notThere(`no notice ${id} is open`, 'GET /api/v1/notices/office lists those that are');
      return apiProblem(context, problem) as never;
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/outbox',
      tags: ['Notices'],
      summary: 'Messages to owners, newest first, without their bytes',
      request: {
        query: z.object({
          ...pageQuery,
          state: z.enum(['queued', 'leased', 'sent', 'parked', 'cancelled', 'to print']).optional(),
        }),
      },
      responses: {
        200: jsonAnswer(pageOf(deepSchema), 'a page of messages'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, state } = context.req.valid('query');
      const before = cursor === undefined ? null : readCursor(cursor, 1);
      if (cursor !== undefined && before === null) return apiProblem(context, BAD_CURSOR) as never;
      const rows = await listOutbox(register, {
        limit,
        ...(state === undefined ? {} : { state }),
        ...(before === null ? {} : { beforeId: Number(before[0]) }),
      });
      const last = rows.at(-1);
      const next = last !== undefined && rows.length === limit ? cursorText([last.id]) : null;
      return context.json({ rows, next } as never, 200);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/answers',
      tags: ['Notices'],
      summary: 'What owners answered, the newest first: read, chosen days, accepted quotes, calls wanted, wishes',
      request: {
        query: z.object({
          open: z
            .enum(['true', 'false'])
            .default('false')
            .describe('true: only those the office has something to do about'),
          limit: z.coerce.number().int().min(1).max(500).default(100),
        }),
      },
      responses: { 200: jsonAnswer(z.object({ rows: z.array(deepSchema) }), 'the newest answers') },
    }),
    async (context) => {
      const { open, limit } = context.req.valid('query');
      return context.json(
        { rows: await listOwnerAnswers(register.db, { open: open === 'true', limit }) } as never,
        200,
      );
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/answers/{id}/settle',
      tags: ['Notices'],
      summary: 'Notes that the office has dealt with an answer',
      request: { params: z.object({ id: z.coerce.number().int().positive() }), headers: idempotencyHeader },
      responses: {
        200: jsonAnswer(z.object({ settled: z.number().int() }), 'its number'),
        404: problemAnswer('no such answer is open'),
      },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const settled = await settleOwnerAnswer(register.db, id, { at: isoUtc(clock()), by: tokenName(context) });
      if (settled) return context.json({ settled: id }, 200);
      const problem = notThere(`no answer ${id} is open`, 'GET /api/v1/answers?open=true lists those that are');
      return apiProblem(context, problem) as never;
    },
  );
}
