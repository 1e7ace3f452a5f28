import { sql } from 'kysely';
import type { RecordOf } from './record-store.ts';
import { type RegisterDb, recordsWhereIn } from './record-store.ts';
import { foldedText } from './text-order.ts';

/** Rows of one page of a list. */
const PAGE_ROWS = 50;

/** One page of a list of owners or of sites. */
export interface RecordPage<K extends 'owners' | 'sites'> {
  readonly records: readonly RecordOf[K][];
  /** How many the text finds, and there are. */
  readonly found: number;
  readonly total: number;
  readonly page: number;
  readonly pages: number;
}

/** What a text is looked for in. */
const SEARCHED = {
  owners: ['ref', 'name', 'email', 'postal_address'],
  sites: ['ref', 'name', 'place', 'region'],
} as const;

/**
 * One page of owners or sites, those that hold a text in their name or place, by name.
 * @param asked page 1 is the first; one past the end is taken as the last; `among`: the refs of the only ones that count
 */
export async function recordPage<K extends 'owners' | 'sites'>(
  db: RegisterDb,
  kind: K,
  asked: { readonly text: string; readonly page: number; readonly among?: readonly string[] | null },
): Promise<RecordPage<K>> {
  const text = foldedText(asked.text.trim());
  const like = `%${text.replaceAll(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
  const all = sql.join(
    SEARCHED[kind].map((column) => sql`coalesce(folded_text(${sql.ref(column)}), '') like ${like} escape '\\'`),
    sql` or `,
  );
  const { among = null } = asked;
  const counted =
    among === null ? sql<boolean>`true` : sql<boolean>`ref in (select value from json_each(${JSON.stringify(among)}))`;
  const where = text === '' ? counted : sql<boolean>`(${all}) and ${counted}`;
  const count = sql<number>`count(*)`.as('count');
  const table: 'owners' | 'sites' = kind;
  const [{ count: total }, { count: found }] = await Promise.all([
    db.selectFrom(table).select(count).where(counted).executeTakeFirstOrThrow(),
    db.selectFrom(table).select(count).where(where).executeTakeFirstOrThrow(),
  ]);
  const pages = Math.max(1, Math.ceil(found / PAGE_ROWS));
  const page = Math.min(Math.max(1, asked.page), pages);
  const rows = await db
    .selectFrom(table)
    .select('ref')
    .where(where)
    .orderBy(sql`natural_key(name)`)
    .orderBy('ref')
    .limit(PAGE_ROWS)
    .offset((page - 1) * PAGE_ROWS)
    .execute();
  const refs = rows.map(({ ref }) => ref);
  const records = new Map((await recordsWhereIn(db, kind, 'ref', refs)).map((record) => [record.ref, record]));
  const ordered = refs.flatMap((ref) => records.get(ref) ?? []) as unknown as readonly RecordOf[K][];
  return { records: ordered, found, total, page, pages };
}
