import type { RegisterDb } from './record-store.ts';

/** Sites that a choice on a page lists at most; where there are more, the site is typed. */
const MOST_SITES_CHOSEN = 60;

/** What every record of a kind is called, by ref in the order of the refs. */
export async function namesByRef(db: RegisterDb, kind: 'sites' | 'crews'): Promise<ReadonlyMap<string, string>> {
  const table: 'sites' | 'crews' = kind;
  const rows = await db.selectFrom(table).select(['ref', 'name']).orderBy('ref').execute();
  return new Map(rows.map(({ ref, name }) => [ref, name]));
}

/** The refs of every record of a kind, in their order: to say which is nearest to one that is not there. */
export async function everyRef(db: RegisterDb, kind: 'owners' | 'sites' | 'fences'): Promise<readonly string[]> {
  const table: 'owners' | 'sites' | 'fences' = kind;
  return (await db.selectFrom(table).select('ref').orderBy('ref').execute()).map(({ ref }) => ref);
}

/** The names of all sites by ref, for a choice; null where there are too many to choose from. */
export async function sitesToChoose(db: RegisterDb): Promise<ReadonlyMap<string, string> | null> {
  const some = await db
    .selectFrom('sites')
    .select(['ref', 'name'])
    .orderBy('ref')
    .limit(MOST_SITES_CHOSEN + 1)
    .execute();
  return some.length > MOST_SITES_CHOSEN ? null : new Map(some.map(({ ref, name }) => [ref, name]));
}
