import { sql } from 'kysely';
import type { Register } from './database.ts';

const RECORD_TABLES = ['owners', 'climate_zones', 'sites', 'fences', 'posts', 'works', 'settings'] as const;

/** When any record or setting was last written, ISO 8601; null in an empty register. */
export async function lastRegisterChange(register: Register): Promise<string | null> {
  let newest: string | null = null;
  for (const table of RECORD_TABLES) {
    const row = await register.db
      .selectFrom(table)
      .select(sql<string | null>`max(updated_at)`.as('newest'))
      .executeTakeFirst();
    if (row?.newest && (newest === null || row.newest > newest)) newest = row.newest;
  }
  return newest;
}
