import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type BetterSqlite3 from 'better-sqlite3';
import { packagePath } from './package-path.ts';
import { addTextFunctions } from './text-order.ts';

const FILE_SHAPE = /^(\d{4})-[a-z0-9-]+\.sql$/;

interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sql: string;
}

function migrationsOnDisk(): readonly Migration[] {
  const folder = packagePath('migrations');
  return readdirSync(folder)
    .filter((name) => FILE_SHAPE.test(name))
    .sort()
    .map((name) => ({ number: Number(name.slice(0, 4)), name, sql: readFileSync(join(folder, name), 'utf8') }));
}

/**
 * Brings the schema up to date: each numbered file of `migrations/` in one immediate transaction with the raise of
 * `user_version`, so that a migration that throws leaves nothing behind and two programs never migrate at once.
 * Throws where the file's version is above the newest migration known here.
 */
export function migrateToLatest(sqlite: BetterSqlite3.Database): void {
  // triggers and views call them
  addTextFunctions(sqlite);
  const migrations = migrationsOnDisk();
  const newest = migrations.at(-1)?.number ?? 0;
  const version = (): number => sqlite.pragma('user_version', { simple: true }) as number;
  if (version() > newest) {
    throw new Error(
      `the register has schema ${version()}, this program knows ${newest}: run the newer program, or restore an older backup`,
    );
  }
  for (const migration of migrations) {
    if (version() >= migration.number) continue;
    sqlite
      .transaction(() => {
        if (version() >= migration.number) return;
        sqlite.exec(migration.sql);
        sqlite.pragma(`user_version = ${migration.number}`);
      })
      .immediate();
  }
}
