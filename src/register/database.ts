import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { migrateToLatest } from './migrate.ts';
import type { RegisterTables } from './tables.ts';

/** An open register: the only way to the database. Close it when done. */
export interface Register {
  readonly db: Kysely<RegisterTables>;
  readonly path: string;
  close(): Promise<void>;
}

/**
 * Opens (creating where there is none) the SQLite register at the path and brings its schema up to date.
 * WAL journal, synchronous FULL, foreign keys on; waits up to 15 s for another writer.
 * Throws where the file holds a schema newer than this program knows.
 */
export async function openRegister(path: string): Promise<Register> {
  if (path !== ':memory:' && !existsSync(dirname(path))) mkdirSync(dirname(path), { recursive: true });
  const sqlite = new BetterSqlite3(path, { timeout: 15_000 });
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.pragma('foreign_keys = ON');
  const db = new Kysely<RegisterTables>({ dialect: new SqliteDialect({ database: sqlite }) });
  try {
    migrateToLatest(sqlite);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return { db, path, close: () => db.destroy() };
}
