import { importCsv } from '../register/csv/import-csv.ts';
import type { FoundChanges, ImportReport } from '../register/csv/import-report.ts';
import type { Register } from '../register/database.ts';
import {
  addImportDraft,
  type DraftFile,
  type ImportDone,
  isWaiting,
  markDraftImported,
  readImportDraft,
  type WaitingDraft,
} from '../register/import-draft-store.ts';
import { RECORD_KINDS, type RecordKind, storedRow } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { newSecret } from './secret-token.ts';
import type { TaskContext } from './task-context.ts';

/** How long files wait between their preview and their import [h]. */
export const DRAFT_HOURS = 2;

/** Keeps files for their preview, until they are imported, put away, or two hours old. Returns the draft's id. */
export async function keepForImport(
  register: Register,
  files: readonly DraftFile[],
  options: { readonly clock: Clock; readonly by: string },
): Promise<string> {
  const now = options.clock();
  const id = newSecret();
  const expiresAt = isoUtc(now.plus({ hours: DRAFT_HOURS }));
  await addImportDraft(register.db, { id, madeAt: isoUtc(now), madeBy: options.by, expiresAt, files });
  return id;
}

/** The rows that an import left out, file by file with their reasons; null where there are none, or their time is over. */
export async function rowsLeftOut(
  register: Register,
  done: ImportDone,
  clock: Clock,
): Promise<{ readonly id: string; readonly expiresAt: string; readonly files: readonly DraftFile[] } | null> {
  if (done.refusedIn === undefined) return null;
  const draft = await readImportDraft(register.db, done.refusedIn, isoUtc(clock()));
  return draft && isWaiting(draft) ? draft : null;
}

/** What an import would do, in short: another text where it would do anything else. */
function changesPrint({ records, replaced, faults }: FoundChanges): string {
  const rows = RECORD_KINDS.map(<K extends RecordKind>(kind: K) => [
    records[kind].map((record) => storedRow(kind, record)),
    replaced[kind].map((record) => storedRow(kind, record)),
  ]);
  return sha256(canonicalJson([rows, faults.map(canonicalJson).toSorted()]));
}

function doneBy(draft: { readonly files: readonly DraftFile[] }, { counts }: FoundChanges, keptIn: string): ImportDone {
  const touched = RECORD_KINDS.filter((kind) => Object.values(counts[kind]).some((count) => count > 0));
  const refusedRows = touched.reduce((sum, kind) => sum + counts[kind].refused, 0);
  return {
    files: draft.files.map(({ name }) => name),
    counts: Object.fromEntries(touched.map((kind) => [kind, counts[kind]])),
    refusedRows,
    ...(refusedRows > 0 ? { refusedIn: keptIn } : {}),
  };
}

/** What files would do to the register, and its print for `importDraft`. */
interface ImportPreview {
  readonly report: ImportReport;
  readonly print: string;
}

/** Looks what files would do; nothing is written. */
export async function previewImport(
  { register, now: clock, onProgress }: TaskContext,
  files: readonly DraftFile[],
): Promise<ImportPreview> {
  const { timeZone } = await readSettings(register.db);
  const now = clock();
  const today = dayInZone(now, timeZone);
  const report = await importCsv(register, files, {
    acceptValid: true,
    dryRun: true,
    today,
    now: isoUtc(now),
    onProgress,
  });
  return { report, print: changesPrint(report) };
}

/** What came of an import: `other`: it would do something else than was shown, so nothing was written. */
export type DraftImport =
  | { readonly kind: 'imported'; readonly done: ImportDone }
  | { readonly kind: 'refused' }
  | { readonly kind: 'other' };

/**
 * Imports the files of a draft in one transaction, if that does exactly what its preview showed; rows that are refused are left out
 * only where that is said. Throws where the draft was imported or put away meanwhile; then nothing is written.
 * @param shown print of the preview that a person saw
 */
export async function importDraft(
  { register, now: clock, onProgress }: TaskContext,
  draft: WaitingDraft,
  options: { readonly by: string; readonly shown: string; readonly leaveRefusedOut: boolean },
): Promise<DraftImport> {
  const { timeZone } = await readSettings(register.db);
  const now = clock();
  let other = false;
  let done: ImportDone | null = null;
  const keptIn = newSecret();
  const report = await importCsv(register, draft.files, {
    acceptValid: options.leaveRefusedOut,
    dryRun: false,
    today: dayInZone(now, timeZone),
    now: isoUtc(now),
    onProgress,
    onlyIf: (found) => {
      other = changesPrint(found) !== options.shown;
      return !other;
    },
    afterwards: async (db, found) => {
      done = doneBy(draft, found, keptIn);
      await markDraftImported(db, draft.id, { at: isoUtc(now), by: options.by, done });
    },
  });
  if (other) return { kind: 'other' };
  if (!report.applied || !done) return { kind: 'refused' };
  // the rows left out wait as files of their own, so that they can be fetched, or looked at again once their reason is gone
  if (report.rejected.length > 0) {
    const kept = { id: keptIn, madeAt: isoUtc(now), madeBy: options.by, files: report.rejected };
    await addImportDraft(register.db, { ...kept, expiresAt: isoUtc(now.plus({ hours: DRAFT_HOURS })) });
  }
  return { kind: 'imported', done };
}
