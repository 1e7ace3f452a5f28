import { Hono } from 'hono';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import { unitsOfRow } from '../../register/csv/export-csv.ts';
import type { ImportRemark } from '../../register/csv/import-report.ts';
import { plainCells, type RowCells, recordCells } from '../../register/csv/record-cells.ts';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import { listEdits } from '../../register/record-edit-store.ts';
import { usualUnits } from '../../register/record-pages.ts';
import { listRecords, type RecordKind, type RecordOf, readRecord } from '../../register/record-store.ts';
import { editRecord, recordNamed, recordPrint } from '../../service/edit-record.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { type SentForm, textField } from '../frame/text-field.ts';
import type { ChangedField } from './changed-fields.ts';
import { columnLabel } from './column-words.ts';
import { EDITED_KINDS, recordPath } from './edited-kinds.ts';
import { kindNamed } from './kind-words.ts';
import type { RecordFieldsProps } from './record-fields.tsx';
import { RecordFormPage } from './record-form-page.tsx';
import { RecordPage } from './record-page.tsx';

/** Edits that a record's page shows. */
const EDITS_SHOWN = 20;

const NO_RECORD: Problem = {
  status: 404,
  title: 'No such record',
  what: 'The register has no record of that kind and name.',
  wayOut: 'Names are compared letter by letter, capitals too. The lists under Records show those there are.',
};

interface Form {
  readonly kind: RecordKind;
  readonly name: string | null;
  readonly cells: RowCells;
  readonly opened: string | null;
  readonly units: ExportUnits;
  readonly faults: readonly ImportRemark[];
  readonly clash: readonly ChangedField[] | null;
}

/** The cells of a form: whatever of the kind's columns it sent. */
const sentCells = (kind: RecordKind, form: SentForm): RowCells =>
  Object.fromEntries(
    RECORD_FIELDS[kind]
      .flatMap(({ columns }) => columns)
      .filter((column) => typeof form[column] === 'string')
      .map((column) => [column, textField(form, column).replace(/\r\n?/g, '\n').trim()]),
  );

/** Where what was sent differs from what the register holds. */
const clashOf = (kind: RecordKind, stored: RowCells, sent: RowCells): readonly ChangedField[] =>
  Object.keys(sent)
    .filter((column) => (stored[column] ?? '') !== sent[column])
    .map((column) => ({
      label: columnLabel(kind, column),
      before: stored[column] ?? '',
      after: sent[column] ?? '',
    }));

/** Forms that make and change records of every kind, and the pages of those that have none of their own. */
export function editorRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const kindAsked = (context: PageContext): RecordKind | null => {
    const kind = kindNamed(context.req.param('kind') ?? '');
    return kind && EDITED_KINDS[kind] ? kind : null;
  };

  const refsOf = async (kind: RecordKind): Promise<RecordFieldsProps['refs']> => {
    const choices = async (of: 'climate-zones' | 'storm-seasons' | 'crews') =>
      (await listRecords(db, of)).map(({ ref, name }) => [ref, `${name} (${ref})`] as const);
    if (kind === 'sites')
      return { climate_zone: await choices('climate-zones'), storm_season: await choices('storm-seasons') };
    return kind === 'crew-members' || kind === 'days-off' ? { crew: await choices('crews') } : {};
  };

  /** Units for a new record: those of the site that it, or its fence, is at. */
  const unitsForNew = async (cells: RowCells): Promise<ExportUnits> => {
    const fence = cells.fence ? await readRecord(db, 'fences', cells.fence) : null;
    const site = await readRecord(db, 'sites', fence?.siteRef ?? cells.site ?? '');
    return site?.units ?? usualUnits(db);
  };

  const unitsOf = async <K extends RecordKind>(kind: K, record: RecordOf[K]): Promise<ExportUnits> =>
    [
      'owners',
      'climate-zones',
      'storm-seasons',
      'catalogue',
      'materials',
      'crews',
      'crew-members',
      'days-off',
    ].includes(kind)
      ? usualUnits(db)
      : (await unitsOfRow(db, kind))(record);

  const show = async (context: PageContext, form: Form) =>
    context.html(
      <RecordFormPage
        {...form}
        frame={frameFor(context)}
        formToken={formToken(context)}
        refs={await refsOf(form.kind)}
      />,
      form.clash ? 409 : form.faults.length > 0 ? 400 : 200,
    );

  const found = async (context: PageContext) => {
    const kind = kindAsked(context);
    const name = context.req.param('name') ?? '';
    const record = kind && (await recordNamed(register, kind, name));
    return kind && record ? { kind, name, record, units: await unitsOf(kind, record) } : null;
  };

  app.get('/records/:kind/new', async (context) => {
    const kind = kindAsked(context);
    if (!kind) return sayProblem(context, NO_RECORD);
    const cells = sentCells(kind, context.req.query());
    const form = { kind, name: null, cells, opened: null, faults: [], clash: null };
    return show(context, { ...form, units: await unitsForNew(cells) });
  });

  app.get('/records/:kind/:name', async (context) => {
    const shown = await found(context);
    if (!shown) return sayProblem(context, NO_RECORD);
    const { kind, name, record, units } = shown;
    return context.html(
      <RecordPage
        frame={frameFor(context)}
        kind={kind}
        name={name}
        cells={plainCells(kind, recordCells(kind, record, units))}
        units={units}
        edits={await listEdits(db, kind, name, EDITS_SHOWN)}
        done={context.req.query('saved') === undefined ? null : 'Saved.'}
      />,
    );
  });

  app.get('/records/:kind/:name/edit', async (context) => {
    const shown = await found(context);
    if (!shown) return sayProblem(context, NO_RECORD);
    const { kind, record } = shown;
    const cells = plainCells(kind, recordCells(kind, record, shown.units));
    return show(context, { ...shown, cells, opened: recordPrint(kind, record), faults: [], clash: null });
  });

  const save = async (context: PageContext, kind: RecordKind, name: string | null, units: ExportUnits) => {
    const sent = await context.req.parseBody();
    const cells = sentCells(kind, sent);
    const opened = textField(sent, 'opened_print') || null;
    const by = accountName(context.var);
    const sure = textField(sent, 'confirmed') === 'yes';
    const outcome = await editRecord(register, { kind, cells, opened }, { clock, by, sure });
    const form = { kind, name, cells, opened, units, faults: [], clash: null };
    switch (outcome.kind) {
      case 'refused':
        return show(context, { ...form, faults: outcome.faults });
      case 'changed meanwhile': {
        const stored = plainCells(kind, recordCells(kind, outcome.now, units));
        return show(context, { ...form, opened: recordPrint(kind, outcome.now), clash: clashOf(kind, stored, cells) });
      }
      case 'saved': {
        const saved = outcome.name || name || cells.ref || '';
        if (outcome.after) log.info({ by, kind, ref: saved }, 'a record was changed');
        return context.redirect(`${recordPath(kind, saved)}?saved`, 303);
      }
    }
  };

  app.post('/records/:kind/new', async (context) => {
    const kind = kindAsked(context);
    if (!kind) return sayProblem(context, NO_RECORD);
    const cells = sentCells(kind, await context.req.parseBody());
    return save(context, kind, null, await unitsForNew(cells));
  });

  app.post('/records/:kind/:name/edit', async (context) => {
    const shown = await found(context);
    return shown ? save(context, shown.kind, shown.name, shown.units) : sayProblem(context, NO_RECORD);
  });
  return app;
}
