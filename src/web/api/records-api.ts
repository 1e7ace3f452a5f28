import { createRoute, z } from '@hono/zod-openapi';
import { toJSONSchema as toJsonSchema } from 'zod';
import { editsBefore } from '../../register/record-edit-store.ts';
import { keyLength, RECORD_KINDS, type RecordKind, recordSchema, recordsAfter } from '../../register/record-store.ts';
import { recordNamed } from '../../service/edit-record.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { jsonAnswer, orNull, pageOf, pageQuery } from './api-schemas.ts';
import { BAD_CURSOR, cursorText, nextAfter, readOn } from './cursor.ts';

/** The kind of a record in an address. */
export const kindParam = z.object({ kind: z.enum(RECORD_KINDS) });
const nameParam = kindParam.extend({
  name: z
    .string()
    .min(1)
    .max(300)
    .describe('its ref; of a post or a reading `PR-01 post 3`, of a material `liner gravel`; percent-encoded'),
});

const nameOf = (kind: RecordKind): string => `Record-${kind}`;
const anyRecord = z.record(z.string(), z.unknown()).openapi('Record', {
  anyOf: RECORD_KINDS.map((kind) => ({ $ref: `#/components/schemas/${nameOf(kind)}` })),
});
const recordsPageSchema = pageOf(anyRecord);
const oneSchema = z.object({ kind: z.enum(RECORD_KINDS), name: z.string(), record: anyRecord }).openapi('OneRecord');
const editsSchema = pageOf(
  z
    .object({
      id: z.number().int(),
      at: z.string(),
      by: z.string().describe('account, or program'),
      before: orNull(anyRecord).describe('null: it was made'),
      after: anyRecord,
    })
    .openapi('RecordEdit'),
);

/** Everything that people enter, kind by kind: read on page after page, one by one, and who changed it. */
export function addRecords(api: Api, { register }: Pick<AppParts, 'register'>): void {
  for (const kind of RECORD_KINDS) {
    const schema = toJsonSchema(recordSchema(kind), { unrepresentable: 'any' });
    api.openAPIRegistry.registerComponent('schemas', nameOf(kind), { ...schema, $schema: undefined } as object);
  }
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/records/{kind}',
      tags: ['Records'],
      summary: 'The records of a kind, in the order of their keys',
      request: { params: kindParam, query: z.object(pageQuery) },
      responses: {
        200: jsonAnswer(recordsPageSchema, 'a page of records, SI units, in every name'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { kind } = context.req.valid('param');
      const { limit, cursor } = context.req.valid('query');
      const place = readOn(cursor, keyLength(kind));
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const { rows, last } = await recordsAfter(register.db, kind, { after: place.after, limit });
      return answered(context, recordsPageSchema, {
        rows: rows.map((row) => ({ ...row })),
        next: last !== null && rows.length === limit ? cursorText(last) : null,
      });
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/records/{kind}/{name}',
      tags: ['Records'],
      summary: 'One record of a kind, by its name',
      request: { params: nameParam },
      responses: {
        200: jsonAnswer(oneSchema, 'the record, SI units, in every name'),
        404: problemAnswer('no such record'),
      },
    }),
    async (context) => {
      const { kind, name } = context.req.valid('param');
      const record = await recordNamed(register, kind, name);
      if (record) return answered(context, oneSchema, { kind, name, record: { ...record } });
      const problem = notThere(
        `there is none of the ${kind} named ${JSON.stringify(name)}`,
        `GET /api/v1/records/${kind} lists them; names are compared letter by letter`,
      );
      return apiProblem(context, problem) as never;
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/records/{kind}/{name}/edits',
      tags: ['Records'],
      summary:
        'Who changed a record and how it was before, the newest first; of files that were imported nothing is kept',
      request: { params: nameParam, query: z.object(pageQuery) },
      responses: {
        200: jsonAnswer(editsSchema, 'a page of edits; none where there was none'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { kind, name } = context.req.valid('param');
      const { limit, cursor } = context.req.valid('query');
      const place = readOn(cursor, 1);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const page = { before: place.after === null ? null : Number(place.after[0]), limit };
      const edits = await editsBefore(register.db, { kind, ref: name }, page);
      return answered(context, editsSchema, {
        rows: edits.map(({ id, at, by, before, after }) => ({
          id,
          at,
          by,
          before: before && { ...before },
          after: { ...after },
        })),
        next: nextAfter(edits, limit, ({ id }) => [id]),
      });
    },
  );
}
