import type { ImportRow } from './import-row.ts';
import { nearestName } from './nearest-name.ts';
import type { RegisterView } from './register-view.ts';

/** Kinds that other rows name by their ref, as messages call one of them. */
const NAMES = {
  owners: 'owner',
  'climate-zones': 'climate zone',
  'storm-seasons': 'storm season',
  sites: 'site',
  fences: 'fence',
  inspections: 'inspection',
  crews: 'crew',
  'crew-members': 'crew member',
} as const;

/**
 * Refuses a row that names a record which is neither stored nor among the rows taken; true where it was refused. Rows that
 * only follow a refused row of the same import are left out together.
 */
export function refuseUnknownRef(
  row: ImportRow,
  key: string,
  kind: keyof typeof NAMES,
  ref: string,
  view: RegisterView,
): boolean {
  const known: ReadonlyMap<string, unknown> = view[kind];
  if (known.has(ref)) return false;
  const what = NAMES[kind];
  const refusedAt = view.refusedRows.get(kind)?.get(ref);
  if (refusedAt !== undefined) {
    row.leaveOut(key, `${what} ${ref}`, refusedAt);
    return true;
  }
  const near = known.size <= 2000 && !view.inPart.has(kind) ? nearestName(ref, known.keys()) : null;
  const wayOut = near ? `; did you mean ${near}?` : `; enter the ${what} first, or in the same import`;
  row.refuseKey(key, `no ${what} of that ref, neither in the register nor among the rows taken${wayOut}`);
  return true;
}
