import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { schemaDump, schemaDumpPath } from '../../src/register/dump-schema.ts';
import { temporaryFolder } from './made-up-register.ts';

function inspect<T>(path: string, read: (sqlite: BetterSqlite3.Database) => T): T {
  const sqlite = new BetterSqlite3(path);
  try {
    return read(sqlite);
  } finally {
    sqlite.close();
  }
}

test('an empty file gets the whole schema, foreign keys and the safe journal', async () => {
  const path = join(temporaryFolder(), 'new', 'register.sqlite');
  const register = await openRegister(path);
  const tables = await register.db.introspection.getTables();
  await register.close();
  expect(tables.map(({ name }) => name)).toEqual(
    expect.arrayContaining([
      'owners',
      'climate_zones',
      'sites',
      'fences',
      'posts',
      'works',
      'inspections',
      'readings',
      'storm_outcomes',
      'settings',
    ]),
  );
  expect(inspect(path, (sqlite) => sqlite.pragma('journal_mode', { simple: true }))).toBe('wal');
});

test('every table is strict', async () => {
  const path = join(temporaryFolder(), 'register.sqlite');
  await (await openRegister(path)).close();
  const loose = inspect(path, (sqlite) =>
    sqlite
      .prepare(
        "select name from pragma_table_list where schema = 'main' and type = 'table' and strict = 0 and name not like 'sqlite_%'",
      )
      .all(),
  );
  expect(loose).toEqual([]);
});

test('a file that is up to date is left as it is', async () => {
  const path = join(temporaryFolder(), 'register.sqlite');
  await (await openRegister(path)).close();
  const read = (sqlite: BetterSqlite3.Database): unknown => [
    sqlite.pragma('schema_version', { simple: true }),
    sqlite.pragma('user_version', { simple: true }),
  ];
  const before = inspect(path, read);
  await (await openRegister(path)).close();
  expect(inspect(path, read)).toEqual(before);
});

test('a file with a newer schema is refused and left alone', async () => {
  const path = join(temporaryFolder(), 'register.sqlite');
  inspect(path, (sqlite) => sqlite.pragma('user_version = 9999'));
  await expect(openRegister(path)).rejects.toThrow(
    /^the register has schema 9999, this program knows \d+: run the newer program, or restore an older backup$/,
  );
  expect(inspect(path, (sqlite) => sqlite.pragma('user_version', { simple: true }))).toBe(9999);
});

test('the committed dump is the schema that the migrations leave', () => {
  expect(readFileSync(schemaDumpPath(), 'utf8')).toBe(schemaDump());
});
