import { z } from '@hono/zod-openapi';
import type { ImportRemark, ImportReport } from '../../register/csv/import-report.ts';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import { RECORD_KINDS } from '../../register/record-store.ts';
import type { KindFile } from './rows-as-file.ts';

/** Most rows that one request may write. */
const MOST_ROWS = 1000;

const columnsText = RECORD_KINDS.map(
  (kind) => `**${kind}**: ${RECORD_FIELDS[kind].flatMap(({ columns }) => columns).join(', ')}`,
).join('\n\n');

/** Rows of a kind, as they are sent. */
const rows = z
  .array(z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])))
  .min(1)
  .max(MOST_ROWS)
  .describe('each by the columns of the CSV file of its kind, units in their names');

const how = {
  preview: z.boolean().default(false).describe('true: only say what would be created or changed'),
  sure: z
    .boolean()
    .default(false)
    .describe('true: take what is doubtful as it is, as a reading that speaks against another'),
};

/** Rows of one kind. */
export const rowsSchema = z.object({ rows, ...how }).openapi('RecordRows', { description: columnsText });

/** Rows of several kinds, which refer to each other. */
export const rowsByKindSchema = z
  .object({
    records: z.partialRecord(z.enum(RECORD_KINDS), rows).describe('by kind; the columns are those of RecordRows'),
    ...how,
  })
  .refine(({ records }) => Object.keys(records).length > 0, 'send rows of one kind at least')
  .refine(
    ({ records }) => Object.values(records).reduce((sum, each) => sum + each.length, 0) <= MOST_ROWS,
    `send at most ${MOST_ROWS} rows in all`,
  )
  .openapi('RecordRowsByKind');

const remarkSchema = z.object({
  kind: z.enum(RECORD_KINDS),
  row: z.number().int().nullable(),
  field: z.string(),
  value: z.string(),
  reason: z.string(),
});

/** What was, or would be, written. */
export const writtenSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    created: z.number().int(),
    changed: z.number().int(),
    unchanged: z.number().int(),
    changes: z.array(
      z.object({
        kind: z.enum(RECORD_KINDS),
        ref: z.string(),
        change: z.enum(['created', 'changed']),
        columns: z.array(z.string()).describe('that differ'),
      }),
    ),
    doubts: z.array(remarkSchema).describe('what was taken though it is doubtful'),
  })
  .openapi('RecordsWritten');

/** Something that an import says of a row, with the kind and the place of the row as they were sent. */
export function remarkOf(files: readonly KindFile[], { file, line, column, value, reason }: ImportRemark) {
  const found = files.find(({ name }) => name === file) ?? files[0]!;
  return { kind: found.kind, row: found.rowOn(line), field: column, value, reason };
}

/** The report of an import as it is answered. */
export function writtenOf(files: readonly KindFile[], report: ImportReport): z.infer<typeof writtenSchema> {
  const sum = (of: 'created' | 'changed' | 'unchanged'): number =>
    [...new Set(files.map(({ kind }) => kind))].reduce((all, kind) => all + report.counts[kind][of], 0);
  return {
    applied: report.applied,
    created: sum('created'),
    changed: sum('changed'),
    unchanged: sum('unchanged'),
    changes: report.changes.map(({ kind, ref, change, columns }) => ({ kind, ref, change, columns: [...columns] })),
    doubts: report.warnings.map((warning) => remarkOf(files, warning)),
  };
}
