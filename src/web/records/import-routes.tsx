import { Hono } from 'hono';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import { unitsOfRow } from '../../register/csv/export-csv.ts';
import type { ImportReport } from '../../register/csv/import-report.ts';
import type { Register } from '../../register/database.ts';
import {
  type DraftFile,
  type ImportDraft,
  listImports,
  putImportDraftAway,
  readImportDraft,
} from '../../register/import-draft-store.ts';
import { RECORD_KINDS, type RecordKind } from '../../register/record-store.ts';
import { isoUtc } from '../../service/clock.ts';
import { importDraft, keepForImport, previewImport } from '../../service/import-files.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { textField } from '../frame/text-field.ts';
import { changesOf } from './changed-fields.ts';
import { ImportPage } from './import-page.tsx';
import { ImportDonePage, ImportPreviewPage } from './import-preview-page.tsx';
import { sentFiles } from './sent-files.ts';

/** Imports listed below the form. */
const LISTED = 20;

const GONE: Problem = {
  status: 404,
  title: 'These files are gone',
  what: 'They were put away, or kept for longer than a preview lasts. Nothing was changed.',
  wayOut: 'Bring the files again on the page Import.',
};

type Waiting = ImportDraft & { readonly files: readonly DraftFile[] };

const isWaiting = (draft: ImportDraft): draft is Waiting => draft.files !== null;
const isDone = (draft: ImportDraft): draft is ImportDraft & { readonly done: NonNullable<ImportDraft['done']> } =>
  draft.done !== null;

/** In which units each record of a report is shown: those of its site. */
async function unitsFor({ db }: Register, report: ImportReport) {
  const units = new Map<RecordKind, (record: Record<string, unknown>) => ExportUnits>();
  for (const kind of RECORD_KINDS) if (report.replaced[kind].length > 0) units.set(kind, await unitsOfRow(db, kind));
  return (kind: RecordKind, record: object): ExportUnits =>
    units.get(kind)?.(record as Record<string, unknown>) ?? 'metric';
}

/** CSV files: brought, looked at, imported. */
export function importRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const page = async (context: PageContext, said: { readonly problem: string; readonly pasted: string } | null) =>
    context.html(
      <ImportPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        imports={await listImports(db, LISTED)}
        problem={said?.problem ?? null}
        pasted={said?.pasted ?? ''}
      />,
      said ? 400 : 200,
    );

  const preview = async (context: PageContext, draft: Waiting, problem: string | null) => {
    const { report, print } = await previewImport(register, draft.files, clock);
    const { changed, created } = changesOf(report, await unitsFor(register, report));
    return context.html(
      <ImportPreviewPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        draft={draft}
        report={report}
        print={print}
        changed={changed}
        created={created}
        problem={problem}
      />,
      problem === null ? 200 : 409,
    );
  };

  app.get('/import', (context) => page(context, null));

  app.post('/import', async (context) => {
    const form = await context.req.parseBody({ all: true });
    const files = await sentFiles(form);
    if (typeof files === 'string') return page(context, { problem: files, pasted: textField(form, 'pasted') });
    const id = await keepForImport(register, files, { clock, by: accountName(context.var) });
    return context.redirect(`/import/${id}`, 303);
  });

  const draftAsked = (context: PageContext) => readImportDraft(db, context.req.param('id') ?? '', isoUtc(clock()));

  app.get('/import/:id', async (context) => {
    const draft = await draftAsked(context);
    if (draft && isWaiting(draft)) return preview(context, draft, null);
    if (!draft || !isDone(draft)) return sayProblem(context, GONE);
    return context.html(<ImportDonePage frame={frameFor(context)} formToken={formToken(context)} draft={draft} />);
  });

  app.post('/import/:id', async (context) => {
    const draft = await draftAsked(context);
    if (draft && isDone(draft)) return context.redirect(`/import/${draft.id}`, 303);
    if (!draft || !isWaiting(draft)) return sayProblem(context, GONE);
    const form = await context.req.parseBody();
    if (textField(form, 'act') !== 'import') {
      await putImportDraftAway(db, draft.id);
      return context.redirect('/import', 303);
    }
    const by = accountName(context.var);
    const imported = await importDraft(register, draft, {
      clock,
      by,
      shown: textField(form, 'shown'),
      leaveRefusedOut: textField(form, 'leave_out') === 'yes',
    });
    switch (imported.kind) {
      case 'imported':
        log.info({ by, files: imported.done.files, counts: imported.done.counts }, 'files were imported');
        return context.redirect(`/import/${draft.id}`, 303);
      case 'refused':
        return preview(
          context,
          draft,
          'Nothing was changed: some rows cannot be taken. Say that they are to be left out, or correct them.',
        );
      case 'other':
        return preview(
          context,
          draft,
          'Nothing was changed: the register is no longer as it was when you looked. This is what the import would do now.',
        );
    }
  });

  app.get('/import/:id/refused/:index{[0-9]+}', async (context) => {
    const draft = await draftAsked(context);
    if (!draft || !isWaiting(draft)) return sayProblem(context, GONE);
    const { report } = await previewImport(register, draft.files, clock);
    const file = report.rejected[Number(context.req.param('index'))];
    if (!file) return context.notFound();
    return context.body(file.text, 200, {
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Disposition': `attachment; filename*=UTF-8''${encodeURIComponent(`refused-${file.name}`)}`,
    });
  });
  return app;
}
