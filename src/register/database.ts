import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { Kysely } from 'kysely';
import { migrateToLatest } from './migrate.ts';
import { isBusyCode, RegisterDialect } from './register-dialect.ts';
import type { RegisterTables } from './tables.ts';

/** An open register: the only way to the database. Close it when done. */
export interface Register {
  readonly db: Kysely<RegisterTables>;
  readonly path: string;
  close(): Promise<void>;
}

const codeOf = (error: unknown): string => (error as { readonly code?: string } | null)?.code ?? '';

/** True where a statement failed because another program kept the write lock longer than it was waited for. */
export const isRegisterBusy = (error: unknown): boolean => isBusyCode(codeOf(error));

function wayOut(path: string, error: unknown): string | null {
  const code = codeOf(error);
  if (existsSync(path) && statSync(path).isDirectory())
    return 'it is a folder; move the folder away, or name another data folder with --data';
  const folder = dirname(path);
  if ((existsSync(folder) && !statSync(folder).isDirectory()) || code === 'ENOTDIR' || code === 'EEXIST')
    return 'a part of the path is a file and no folder; name another data folder with --data';
  if (code === 'SQLITE_NOTADB')
    return 'it is not a register (not an SQLite database); move the file away, or name another data folder with --data';
  if (code.startsWith('SQLITE_CORRUPT')) return 'the file is damaged; restore a backup of it';
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS' || /^SQLITE_(CANTOPEN|READONLY|PERM)/.test(code))
    return 'this user may not read and write there; give it the right to the file and its folder, or name another data folder with --data';
  if (code === 'SQLITE_FULL' || code === 'ENOSPC') return 'the disk is full; make room on it';
  if (isBusyCode(code)) return 'another program keeps it locked; end that program or try again later';
  return null;
}

/** An error of opening with the path and the way out; one that says both itself stays as it is. */
function openError(path: string, error: unknown): unknown {
  const out = wayOut(path, error);
  const reason = error instanceof Error ? error.message : String(error);
  return out === null ? error : new Error(`cannot open the register at ${path} (${reason}): ${out}`, { cause: error });
}

/**
 * Opens (creating where there is none) the SQLite register at the path and brings its schema up to date.
 * WAL journal, synchronous FULL, foreign keys on; waits up to 15 s for another writer, in which whatever else is asked of it goes on.
 * Throws where the file holds a schema newer than this program knows, and, naming path and way out, where it is no register.
 */
export async function openRegister(path: string): Promise<Register> {
  let opened: BetterSqlite3.Database | null = null;
  try {
    if (path !== ':memory:' && !existsSync(dirname(path))) mkdirSync(dirname(path), { recursive: true });
    opened = new BetterSqlite3(path, { timeout: 15_000 });
    return withSchema(opened, path);
  } catch (error) {
    opened?.close();
    throw openError(path, error);
  }
}

function withSchema(sqlite: BetterSqlite3.Database, path: string): Register {
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.pragma('foreign_keys = ON');
  migrateToLatest(sqlite);
  // from here on the dialect waits, so that a thread that waits can do something else
  sqlite.pragma('busy_timeout = 10');
  const db = new Kysely<RegisterTables>({ dialect: new RegisterDialect(sqlite) });
  return { db, path, close: () => db.destroy() };
}
