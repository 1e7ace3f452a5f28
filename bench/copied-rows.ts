import { sql } from 'kysely';
import type { Register } from '../src/register/database.ts';

/** How often and how many rows of a table are copied. */
export interface Copies {
  /** Copies of each row. */
  readonly copies: number;
  /** Rows made in all at most. */
  readonly most: number;
  /** Number of the first copy, for a second round under other refs; 1 where nobody says. */
  readonly from?: number;
}

/**
 * Copies rows of a table with some columns made from the number of the copy.
 * @param made SQL by column, over `row` (with its `place` in the table) and `copy.n`
 */
export async function copyRows(
  { db }: Register,
  table: string,
  made: Readonly<Record<string, string>>,
  { copies, most, from = 1 }: Copies,
): Promise<void> {
  const columns = (
    await sql<{ name: string }>`select name from pragma_table_info(${table})
      where not (pk = 1 and type = 'INTEGER' and (select sum(pk > 0) from pragma_table_info(${table})) = 1)`.execute(db)
  ).rows.map(({ name }) => name);
  const values = columns.map((name) => made[name] ?? `row.${name}`);
  await sql`
    with recursive copy(n) as (select ${from} union all select n + 1 from copy where n < ${from + copies - 1}),
      numbered as (select *, row_number() over (order by rowid) as place from ${sql.table(table)} where instr(${sql.raw(columns[0]!)}, '.') = 0)
    insert into ${sql.table(table)} (${sql.raw(columns.join(', '))})
    select ${sql.raw(values.join(', '))} from copy cross join numbered as row limit ${most}`.execute(db);
}
