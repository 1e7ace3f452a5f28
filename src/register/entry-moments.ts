import type { RegisterDb } from './record-store.ts';

type EntryTable = 'inspections' | 'storm_outcomes' | 'works';

/** When each inspection, storm outcome and works of a fence first came into the register (ISO 8601, UTC), by table and ref. */
export async function entryMoments(
  db: RegisterDb,
  fenceRef: string,
): Promise<Readonly<Record<EntryTable, ReadonlyMap<string, string>>>> {
  const of = async (table: EntryTable): Promise<ReadonlyMap<string, string>> => {
    const rows = await db.selectFrom(table).select(['ref', 'created_at']).where('fence_ref', '=', fenceRef).execute();
    return new Map(rows.map(({ ref, created_at: at }) => [ref, at]));
  };
  return { inspections: await of('inspections'), storm_outcomes: await of('storm_outcomes'), works: await of('works') };
}
