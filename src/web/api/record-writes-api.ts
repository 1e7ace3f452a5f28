import { createRoute } from '@hono/zod-openapi';
import { importCsv } from '../../register/csv/import-csv.ts';
import { RECORD_KINDS } from '../../register/record-store.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone, isoUtc } from '../../service/clock.ts';
import { notingEdits } from '../../service/edit-record.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, jsonAnswer, jsonBody } from './api-schemas.ts';
import { remarkOf, rowsByKindSchema, rowsSchema, writtenOf, writtenSchema } from './record-schemas.ts';
import { kindParam } from './records-api.ts';
import { type KindFile, rowsAsFiles } from './rows-as-file.ts';
import { tokenName } from './token-name.ts';

const DESCRIPTION =
  'A row whose ref is known changes that record, one whose ref is not creates it. A field that is left out stays as it is; those that its kind needs are sent each time. Inspections, readings, storm outcomes and works are entered this way too. The next sweep takes it in.';
const answers = {
  200: jsonAnswer(writtenSchema, 'what was, or would be, written'),
  422: problemAnswer('a row is refused: nothing was written'),
};

/** The writing of records, by the checks of an import; who wrote what is kept beside the records. */
export function addRecordWrites(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  const write = async (
    context: PageContext,
    files: readonly KindFile[],
    { preview, sure }: { readonly preview: boolean; readonly sure: boolean },
  ): Promise<never> => {
    const { timeZone } = await readSettings(register.db);
    const now = clock();
    const report = await importCsv(register, files, {
      acceptValid: false,
      dryRun: preview,
      today: dayInZone(now, timeZone),
      now: isoUtc(now),
      questions: sure ? 'warn' : 'refuse',
      afterwards: notingEdits(
        files.map(({ kind }) => kind),
        { at: isoUtc(now), by: tokenName(context) },
      ),
    });
    const { faults } = report;
    if (faults.length === 0) return answered(context, writtenSchema, writtenOf(files, report));
    const asked = faults.some(({ question }) => question === true);
    return apiProblem(context, {
      status: 422,
      title: 'Rows are refused',
      what: `${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}; nothing was written`,
      wayOut: asked
        ? 'correct the rows, or send `sure: true` where they are as they are'
        : 'correct the rows and send them again',
      faults: faults.map((fault) => {
        const { row, ...rest } = remarkOf(files, fault);
        return row === null ? rest : { row, ...rest };
      }),
    }) as never;
  };

  api.openapi(
    createRoute({
      method: 'put',
      path: '/api/v1/records/{kind}',
      tags: ['Records'],
      summary: 'Creates or changes records of a kind, all or none',
      description: DESCRIPTION,
      request: { params: kindParam, headers: idempotencyHeader, body: jsonBody(rowsSchema) },
      responses: answers,
    }),
    (context) => {
      const { kind } = context.req.valid('param');
      const { rows, ...how } = context.req.valid('json');
      return write(context, rowsAsFiles(kind, rows), how);
    },
  );

  api.openapi(
    createRoute({
      method: 'put',
      path: '/api/v1/records',
      tags: ['Records'],
      summary:
        'Creates or changes records of several kinds, all or none: an inspection with its readings, a site with its fences',
      description: DESCRIPTION,
      request: { headers: idempotencyHeader, body: jsonBody(rowsByKindSchema) },
      responses: answers,
    }),
    (context) => {
      const { records, ...how } = context.req.valid('json');
      const files = RECORD_KINDS.flatMap((kind) => {
        const rows = records[kind];
        return rows === undefined ? [] : rowsAsFiles(kind, rows);
      });
      return write(context, files, how);
    },
  );
}
