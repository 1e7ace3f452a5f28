import { createRoute, z } from '@hono/zod-openapi';
import { toJSONSchema as toJsonSchema } from 'zod';
import { importCsv } from '../../register/csv/import-csv.ts';
import type { ImportRemark, ImportReport } from '../../register/csv/import-report.ts';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import { keyLength, RECORD_KINDS, type RecordKind, recordSchema, recordsAfter } from '../../register/record-store.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone, isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { cursorText, readCursor } from './cursor.ts';
import { BAD_CURSOR } from './fences-api.ts';
import { type RowsAsFile, rowsAsFile } from './rows-as-file.ts';

/** Most rows that one request may write. */
const MOST_ROWS = 1000;

const kindParam = z.object({ kind: z.enum(RECORD_KINDS) });

const nameOf = (kind: RecordKind): string => `Record-${kind}`;
const anyRecord = z.record(z.string(), z.unknown()).openapi('Record', {
  anyOf: RECORD_KINDS.map((kind) => ({ $ref: `#/components/schemas/${nameOf(kind)}` })),
});

const columnsText = RECORD_KINDS.map(
  (kind) => `**${kind}**: ${RECORD_FIELDS[kind].flatMap(({ columns }) => columns).join(', ')}`,
).join('\n\n');

const rowsSchema = z
  .object({
    rows: z
      .array(z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])))
      .min(1)
      .max(MOST_ROWS)
      .describe('each by the columns of the CSV file of its kind, units in their names'),
    preview: z.boolean().default(false).describe('true: only say what would be created or changed'),
    sure: z
      .boolean()
      .default(false)
      .describe('true: take what is doubtful as it is, as a reading that speaks against another'),
  })
  .openapi('RecordRows', { description: columnsText });

const remarkSchema = z.object({
  row: z.number().int().nullable(),
  field: z.string(),
  value: z.string(),
  reason: z.string(),
});

const writtenSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    created: z.number().int(),
    changed: z.number().int(),
    unchanged: z.number().int(),
    changes: z.array(
      z.object({ ref: z.string(), change: z.enum(['created', 'changed']), columns: z.array(z.string()) }),
    ),
    doubts: z.array(remarkSchema).describe('what was taken though it is doubtful'),
  })
  .openapi('RecordsWritten');

const remarkOf =
  ({ rowOn }: RowsAsFile) =>
  ({ line, column, value, reason }: ImportRemark) => ({ row: rowOn(line), field: column, value, reason });

const writtenOf = (kind: RecordKind, report: ImportReport, file: RowsAsFile) => {
  const { created, changed, unchanged } = report.counts[kind];
  return {
    applied: report.applied,
    created,
    changed,
    unchanged,
    changes: report.changes.map(({ ref, change, columns }) => ({ ref, change, columns: [...columns] })),
    doubts: report.warnings.map(remarkOf(file)),
  };
};

/** Everything that people enter, kind by kind: read on page after page, written by the checks of an import. */
export function addRecords(api: Api, { register, clock }: AppParts): void {
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
        200: jsonAnswer(pageOf(anyRecord), 'a page of records, SI units, in every name'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { kind } = context.req.valid('param');
      const { limit, cursor } = context.req.valid('query');
      const after = cursor === undefined ? null : readCursor(cursor, keyLength(kind));
      if (cursor !== undefined && after === null) return apiProblem(context, BAD_CURSOR) as never;
      const { rows, last } = await recordsAfter(register.db, kind, { after, limit });
      return context.json(
        { rows: [...rows], next: last !== null && rows.length === limit ? cursorText(last) : null },
        200,
      );
    },
  );

  api.openapi(
    createRoute({
      method: 'put',
      path: '/api/v1/records/{kind}',
      tags: ['Records'],
      summary: 'Creates or changes records, all or none',
      description:
        'A row whose ref is known changes that record, one whose ref is not creates it; a field that is left out stays as it is. Inspections, readings, storm outcomes and works are entered this way too. The next sweep takes it in.',
      request: { params: kindParam, headers: idempotencyHeader, body: jsonBody(rowsSchema) },
      responses: {
        200: jsonAnswer(writtenSchema, 'what was, or would be, written'),
        422: problemAnswer('a row is refused: nothing was written'),
      },
    }),
    async (context) => {
      const { kind } = context.req.valid('param');
      const { rows, preview, sure } = context.req.valid('json');
      const file = rowsAsFile(kind, rows);
      const { timeZone } = await readSettings(register.db);
      const report = await importCsv(register, [file], {
        acceptValid: false,
        dryRun: preview,
        today: dayInZone(clock(), timeZone),
        now: isoUtc(clock()),
        questions: sure ? 'warn' : 'refuse',
      });
      if (report.faults.length === 0) return context.json(writtenOf(kind, report, file), 200);
      const asked = report.faults.some(({ question }) => question === true);
      return apiProblem(context, {
        status: 422,
        title: 'Rows are refused',
        what: `${report.faults.length} ${report.faults.length === 1 ? 'fault' : 'faults'}; nothing was written`,
        wayOut: asked
          ? 'correct the rows, or send `sure: true` where they are as they are'
          : 'correct the rows and send them again',
        faults: report.faults.map((fault) => {
          const { row, ...rest } = remarkOf(file)(fault);
          return row === null ? rest : { row, ...rest };
        }),
      }) as never;
    },
  );
}
