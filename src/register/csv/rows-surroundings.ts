import { type RecordKind, type RegisterDb, recordsWhereIn } from '../record-store.ts';
import type { ImportFile } from './import-file.ts';
import type { ViewPart } from './register-view.ts';

/** So many rows are judged by what lies around them alone; more are faster judged by the whole register. */
const MOST_ROWS = 200;
/** A register of so few fences is read whole: then a ref that was misspelled can be guessed at. */
const FEW_FENCES = 2_000;

/** Kinds of which there are few in any register. */
const SHORT_KINDS: readonly RecordKind[] = ['catalogue', 'materials', 'crews', 'crew-members', 'days-off'];

/** Where rows of a kind name fences. */
const FENCE_COLUMNS: { readonly [K in RecordKind]?: readonly string[] } = {
  fences: ['ref'],
  posts: ['fence', 'shared_with'],
  works: ['fence'],
  inspections: ['fence'],
  outcomes: ['fence'],
};

function namesIn(files: readonly ImportFile[], kind: RecordKind, column: string): readonly string[] {
  return files.flatMap((file) => {
    const position = file.kind === kind ? file.positions.get(column) : undefined;
    return position === undefined ? [] : file.rows.map(({ cells }) => cells[position] ?? '');
  });
}

/** The fences under which records of these refs are stored: a row may be to take one from there. */
async function fencesOfStored(db: RegisterDb, files: readonly ImportFile[]): Promise<readonly string[]> {
  const inspections = [...namesIn(files, 'inspections', 'ref'), ...namesIn(files, 'readings', 'inspection')];
  const stored = [
    ...(await recordsWhereIn(db, 'works', 'ref', namesIn(files, 'works', 'ref'))),
    ...(await recordsWhereIn(db, 'inspections', 'ref', inspections)),
    ...(await recordsWhereIn(db, 'outcomes', 'ref', namesIn(files, 'outcomes', 'ref'))),
  ];
  return stored.map(({ fenceRef }) => fenceRef);
}

/**
 * The part of a large register by which a few rows are judged as by the whole: the fences that they name or are taken from, with
 * all that is known of those. Null where the whole is to be read.
 */
export async function surroundingsOfRows(db: RegisterDb, files: readonly ImportFile[]): Promise<ViewPart | null> {
  if (files.reduce((sum, { rows }) => sum + rows.length, 0) > MOST_ROWS) return null;
  const { fences } = await db
    .selectFrom('site_standings')
    .select((eb) => eb.fn.coalesce(eb.fn.sum<number>('fences'), eb.lit(0)).as('fences'))
    .executeTakeFirstOrThrow();
  if (fences <= FEW_FENCES) return null;
  const named = (Object.keys(FENCE_COLUMNS) as RecordKind[]).flatMap((kind) =>
    (FENCE_COLUMNS[kind] ?? []).flatMap((column) => namesIn(files, kind, column)),
  );
  const needsOwners = files.some(({ kind }) => kind === 'owners' || kind === 'fences');
  return {
    fences: [...new Set([...named, ...(await fencesOfStored(db, files))])],
    whole: needsOwners ? ['owners', ...SHORT_KINDS] : SHORT_KINDS,
  };
}
