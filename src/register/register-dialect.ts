import { setTimeout } from 'node:timers/promises';
import type BetterSqlite3 from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  type QueryResult,
  SqliteDialect,
  SqliteDriver,
  type TransactionSettings,
} from 'kysely';

/** How long another writer is waited for [ms]. */
const LONGEST_WAIT_MS = 15_000;
/** Between one try and the next [ms]. */
const WAIT_MS = 25;

/** True for the codes with which SQLite says that another connection has the lock. */
export const isBusyCode = (code: string): boolean => code.startsWith('SQLITE_BUSY');

const isBusy = (error: unknown): boolean => isBusyCode((error as { readonly code?: string } | null)?.code ?? '');

/**
 * Waits for another writer without keeping the thread or the connection: a statement that met a lock has done nothing, so that
 * others go first and it is tried again. Within a transaction nobody else can hold the lock.
 */
class PatientConnection implements DatabaseConnection {
  readonly #inner: DatabaseConnection;
  readonly #database: BetterSqlite3.Database;
  readonly #letOthersGo: () => Promise<void>;

  constructor(inner: DatabaseConnection, database: BetterSqlite3.Database, letOthersGo: () => Promise<void>) {
    this.#inner = inner;
    this.#database = database;
    this.#letOthersGo = letOthersGo;
  }

  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    const until = performance.now() + LONGEST_WAIT_MS;
    for (;;) {
      try {
        return await this.#inner.executeQuery<R>(query);
      } catch (error) {
        if (!isBusy(error) || this.#database.inTransaction || performance.now() > until) throw error;
      }
      await this.#letOthersGo();
    }
  }

  streamQuery<R>(query: CompiledQuery, chunkSize: number): AsyncIterableIterator<QueryResult<R>> {
    return this.#inner.streamQuery<R>(query, chunkSize);
  }
}

/**
 * A transaction takes the write lock as it begins, so that what it has read cannot be overtaken before it writes; one that only
 * reads takes none, and sees the register as it was when it first read.
 */
class RegisterDriver extends SqliteDriver {
  readonly #database: BetterSqlite3.Database;
  #connection: DatabaseConnection | null = null;

  constructor(database: BetterSqlite3.Database) {
    super({ database });
    this.#database = database;
  }

  override async acquireConnection(): Promise<DatabaseConnection> {
    const inner = await super.acquireConnection();
    this.#connection ??= new PatientConnection(inner, this.#database, async () => {
      await super.releaseConnection();
      await setTimeout(WAIT_MS);
      await super.acquireConnection();
    });
    return this.#connection;
  }

  override async beginTransaction(connection: DatabaseConnection, settings?: TransactionSettings): Promise<void> {
    const begin = settings?.accessMode === 'read only' ? 'begin' : 'begin immediate';
    await connection.executeQuery(CompiledQuery.raw(begin));
  }

  /** SQLite itself rolls back on some failures, as on a full disk; a second rollback would hide what went wrong. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** How the register is spoken to. */
export class RegisterDialect extends SqliteDialect {
  readonly #database: BetterSqlite3.Database;

  constructor(database: BetterSqlite3.Database) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): Driver {
    return new RegisterDriver(this.#database);
  }
}
