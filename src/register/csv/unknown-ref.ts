import type { ImportRow } from './import-row.ts';
import { nearestName } from './nearest-name.ts';

/** Refuses a row that names a record which is neither stored nor among the rows taken; true where it was refused. */
export function refuseUnknownRef(
  row: ImportRow,
  key: string,
  what: string,
  ref: string,
  known: ReadonlyMap<string, unknown>,
): boolean {
  if (known.has(ref)) return false;
  const near = known.size <= 2000 ? nearestName(ref, known.keys()) : null;
  const wayOut = near ? `; did you mean ${near}?` : `; enter the ${what} first, or in the same import`;
  row.refuseKey(key, `no ${what} of that ref, neither in the register nor among the rows taken${wayOut}`);
  return true;
}
