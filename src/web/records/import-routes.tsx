import { Hono } from 'hono';
import {
  type ImportDraft,
  isWaiting,
  listImports,
  putImportDraftAway,
  readImportDraft,
  type WaitingDraft,
} from '../../register/import-draft-store.ts';
import { isoUtc } from '../../service/clock.ts';
import { keepForImport, rowsLeftOut } from '../../service/import-files.ts';
import type { TaskOutput } from '../../service/long-tasks.ts';
import type { WorkAnswer } from '../../service/long-work.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { textField } from '../frame/text-field.ts';
import { sayAtWork } from './at-work-page.tsx';
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

const REFUSED_GONE: Problem = {
  status: 404,
  title: 'These rows are gone',
  what: 'Refused rows are kept for a short time after the import only. What was imported is in the register.',
  wayOut:
    'Bring your file again on the page Import: rows that the register has change nothing, and the refused ones are shown again.',
};

const BACK = { path: '/import', name: 'Import' } as const;
const LOOKING = {
  title: 'Looking what this import would change',
  note: 'Nothing is changed by it. The preview comes here as soon as it is ready.',
  counted: 'rows',
  back: BACK,
} as const;
const IMPORTING = {
  title: 'Importing',
  note: 'All of it is taken or nothing. What became of it is said here, and on the page Import.',
  counted: 'rows',
  back: BACK,
} as const;
const isDone = (draft: ImportDraft): draft is ImportDraft & { readonly done: NonNullable<ImportDraft['done']> } =>
  draft.done !== null;

/** CSV files: brought, looked at, imported. */
export function importRoutes({
  register,
  clock,
  log,
  work,
}: Pick<AppParts, 'register' | 'clock' | 'log' | 'work'>): Hono<PageEnv> {
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

  const preview = async (context: PageContext, draft: WaitingDraft, problem: string | null) => {
    const look = await work.ask(`look at import ${draft.id}`, 'look at import', { draftId: draft.id });
    if (look.kind === 'at work') return sayAtWork(context, { ...LOOKING, progress: look.progress });
    if (look.value === null) return sayProblem(context, GONE);
    return context.html(
      <ImportPreviewPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        draft={draft}
        look={look.value}
        problem={problem}
      />,
      problem === null ? 200 : 409,
    );
  };

  const importKey = (draft: ImportDraft): string => `import ${draft.id}`;

  /** The page of what came of an import, or of how far it is. */
  const outcome = async (
    context: PageContext,
    draft: WaitingDraft,
    imported: WorkAnswer<TaskOutput<'import'>>,
  ): Promise<Response> => {
    if (imported.kind === 'at work') return sayAtWork(context, { ...IMPORTING, progress: imported.progress });
    switch (imported.value.kind) {
      case 'imported':
        log.info({ by: accountName(context.var), ...imported.value.done }, 'files were imported');
        return context.redirect(`/import/${draft.id}`, 303);
      case 'gone':
        return sayProblem(context, GONE);
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
    if (draft && isWaiting(draft)) {
      const begun = await work.fetch(importKey(draft), 'import');
      return begun ? outcome(context, draft, begun) : preview(context, draft, null);
    }
    if (!draft || !isDone(draft)) return sayProblem(context, GONE);
    return context.html(
      <ImportDonePage
        frame={frameFor(context)}
        formToken={formToken(context)}
        draft={draft}
        leftOut={await rowsLeftOut(register, draft.done, clock)}
      />,
    );
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
    const asked = {
      draftId: draft.id,
      by: accountName(context.var),
      shown: textField(form, 'shown'),
      leaveRefusedOut: textField(form, 'leave_out') === 'yes',
    };
    const imported = await work.act(importKey(draft), 'import', asked);
    // a page that asks again by itself must be one that can be asked for again
    return imported.kind === 'at work'
      ? context.redirect(`/import/${draft.id}`, 303)
      : outcome(context, draft, imported);
  });

  app.get('/import/:id/refused/:index{[0-9]+}', async (context) => {
    const draft = await draftAsked(context);
    const kept = draft && isDone(draft) ? await rowsLeftOut(register, draft.done, clock) : null;
    if (!kept && !(draft && isWaiting(draft))) return sayProblem(context, draft && isDone(draft) ? REFUSED_GONE : GONE);
    const index = Number(context.req.param('index'));
    const file = kept ? kept.files[index] : await work.finish('refused rows', { draftId: draft?.id ?? '', index });
    if (!file) return context.notFound();
    return context.body(file.text, 200, {
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Disposition': `attachment; filename*=UTF-8''${encodeURIComponent(`refused-${file.name}`)}`,
    });
  });
  return app;
}
