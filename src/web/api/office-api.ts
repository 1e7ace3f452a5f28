import { createRoute, z } from '@hono/zod-openapi';
import { isMatter, MATTER_RULES, OWNER_MATTERS } from '../../notify/matter-rules.ts';
import { holdMatter, listHeldMatters } from '../../register/holding.ts';
import { officeNoticesAfter, settleOfficeNotice } from '../../register/office-notices.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, idParam, jsonAnswer, jsonBody, pageOf, pageQuery, settledSchema } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';
import { tokenName } from './token-name.ts';

const officeSchema = pageOf(
  z
    .object({
      id: z.number().int(),
      fenceRef: z.string(),
      siteName: z.string(),
      matter: z.string(),
      occasion: z.string().describe('what it is told once for'),
      createdAt: z.string(),
    })
    .openapi('OfficeNotice'),
);
const mattersSchema = z
  .object({ rows: z.array(z.object({ matter: z.string(), held: z.boolean() })) })
  .openapi('HeldMatters');
const HOLDABLE = OWNER_MATTERS.filter((matter) => MATTER_RULES[matter].mayBeHeld);

/** What is for the office itself, and which matters it has held for its release. */
export function addOffice(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/notices/office',
      tags: ['Notices'],
      summary: 'What the sweep found for the office itself and nobody has settled, oldest first',
      request: { query: z.object(pageQuery) },
      responses: {
        200: jsonAnswer(officeSchema, 'a page of notices'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor } = context.req.valid('query');
      const place = readOn(cursor, 1);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const rows = await officeNoticesAfter(register, Number(place.after?.[0] ?? 0), limit);
      return answered(context, officeSchema, { rows, next: nextAfter(rows, limit, ({ id }) => [id]) });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/notices/office/{id}/settle',
      tags: ['Notices'],
      summary: 'Notes one of them as settled',
      request: { params: idParam, headers: idempotencyHeader },
      responses: {
        200: jsonAnswer(settledSchema, 'its number'),
        404: problemAnswer('no such notice is open'),
      },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const settled = await settleOfficeNotice(register, id, { at: isoUtc(clock()), by: tokenName(context) });
      if (settled) return answered(context, settledSchema, { settled: id });
      const problem = notThere(`no notice ${id} is open`, 'GET /api/v1/notices/office lists those that are');
      return apiProblem(context, problem) as never;
    },
  );

  const matters = async () => {
    const held = new Set(await listHeldMatters(register));
    return { rows: HOLDABLE.map((matter) => ({ matter, held: held.has(matter) })) };
  };
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/notices/matters',
      tags: ['Notices'],
      summary: 'The matters that can be held for the release of the office, and which are',
      responses: { 200: jsonAnswer(mattersSchema, 'every matter that can be') },
    }),
    async (context) => answered(context, mattersSchema, await matters()),
  );

  api.openapi(
    createRoute({
      method: 'put',
      path: '/api/v1/notices/matters',
      tags: ['Notices'],
      summary: 'Says which matters are held from now on; what is held by then stays held until it is released',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(z.object({ held: z.array(z.enum(HOLDABLE)).describe('these, and no other') })),
      },
      responses: { 200: jsonAnswer(mattersSchema, 'as it is now') },
    }),
    async (context) => {
      const wanted = new Set<string>(context.req.valid('json').held);
      const at = isoUtc(clock());
      for (const { matter, held } of (await matters()).rows) {
        if (isMatter(matter) && wanted.has(matter) !== held) await holdMatter(register, matter, wanted.has(matter), at);
      }
      return answered(context, mattersSchema, await matters());
    },
  );
}
