import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { CompiledQuery, type DatabaseConnection, type Driver, Kysely, SqliteDialect, SqliteDriver } from 'kysely';
import { migrateToLatest } from './migrate.ts';
import type { RegisterTables } from './tables.ts';
import { foldedText, naturalKey } from './text-order.ts';

/** A transaction takes the write lock as it begins, so that what it has read cannot be overtaken before it writes. */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

class RegisterDialect extends SqliteDialect {
  readonly #database: BetterSqlite3.Database;

  constructor(database: BetterSqlite3.Database) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): Driver {
    return new ImmediateDriver({ database: this.#database });
  }
}

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
  const ofText = (of: (text: string) => string) => (text: unknown) => (typeof text === 'string' ? of(text) : null);
  sqlite.function('folded_text', { deterministic: true }, ofText(foldedText));
  sqlite.function('natural_key', { deterministic: true }, ofText(naturalKey));
  const db = new Kysely<RegisterTables>({ dialect: new RegisterDialect(sqlite) });
  try {
    migrateToLatest(sqlite);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return { db, path, close: () => db.destroy() };
}
