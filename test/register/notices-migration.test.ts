import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { packagePath } from '../../src/register/package-path.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { temporaryFolder } from './made-up-register.ts';

const MIGRATION = 13;

/** Copies the rows of a table between two files as far as both know its columns. */
function copyTable(to: BetterSqlite3.Database, table: string): void {
  const columns = (schema: string): readonly string[] =>
    to
      .prepare<[], { name: string }>(`select name from pragma_table_info('${table}', '${schema}')`)
      .all()
      .map(({ name }) => name);
  const known = new Set(columns('main'));
  const shared = columns('source')
    .filter((name) => known.has(name))
    .map((name) => `"${name}"`)
    .join(', ');
  to.exec(`insert into main.${table} (${shared}) select ${shared} from source.${table}`);
}

/** A file as the program before left it, with the records of another and some rows beside. */
function registerBefore(path: string, source: string, fill: string): void {
  const sqlite = new BetterSqlite3(path);
  const folder = packagePath('migrations');
  for (const name of readdirSync(folder).sort()) {
    const number = Number(name.slice(0, 4));
    if (!(number < MIGRATION)) continue;
    sqlite.exec(readFileSync(join(folder, name), 'utf8'));
    sqlite.pragma(`user_version = ${number}`);
  }
  sqlite.exec(`attach '${source}' as source`);
  for (const table of ['owners', 'climate_zones', 'sites', 'fences']) copyTable(sqlite, table);
  sqlite.exec(fill);
  sqlite.close();
}

const ROWS = `
insert into sweeps (id, as_of, model_version, settings, state, started_at) values (4, 'then', 'm', '{}', 'finished', 'then');
insert into outbox (id, message_id, owner_ref, channel, envelope_from, envelope_to, subject, raw, sha256, state, attempts, created_at)
  values (7, '<a@b>', 'QUINN', 'mail', 'a@b', 'c@d', 'One', x'0102', 'sha', 'sent', 2, 'then');
insert into notices (id, fence_ref, owner_ref, matter, occasion, facts, sweep_id, outbox_id, void_reason, created_at, held, released_at, covering)
  values (11, 'PR-04', 'QUINN', 'short', 'as built', '{"a":1}', 4, 7, null, 'then', 'first sweep', 'later', 'Our sentence.'),
         (12, 'PR-04', 'QUINN', 'closing', 'as built', '{}', 4, null, 'no longer so', 'then', null, null, null),
         (13, 'PR-02', 'HOA', 'short', 'as built', '{}', 4, null, null, 'then', 'matter', null, null);`;

const rowsOf = (path: string, sql: string): readonly unknown[] => {
  const sqlite = new BetterSqlite3(path);
  try {
    return sqlite.prepare(sql).all();
  } finally {
    sqlite.close();
  }
};
const indexes = (path: string, table: string): readonly unknown[] =>
  rowsOf(
    path,
    `select name, sql from sqlite_master where type = 'index' and tbl_name = '${table}' and sql is not null order by name`,
  );

test('notices and messages stay, with their numbers, what they hold and their indexes', async () => {
  const path = join(temporaryFolder(), 'register.sqlite');
  const sample = await sampleRegister({ swept: false });
  registerBefore(path, sample.register.path, ROWS);
  await sample.remove();
  const before = rowsOf(path, 'select * from notices order by id') as readonly Record<string, unknown>[];
  const messages = rowsOf(path, 'select * from outbox order by id') as readonly Record<string, unknown>[];
  const had = [indexes(path, 'notices'), indexes(path, 'outbox')];
  await (await openRegister(path)).close();
  expect(rowsOf(path, 'select * from notices order by id')).toEqual(
    before.map((row) => ({ ...row, visit_uid: null, plan_number: null })),
  );
  const now = rowsOf(path, 'select * from outbox order by id') as readonly Record<string, unknown>[];
  // later migrations add columns of their own
  for (const [index, row] of messages.entries()) {
    expect(now[index]).toMatchObject({ ...row, posted_by: '', posted_on: null });
  }
  expect(now).toHaveLength(messages.length);
  const has = [indexes(path, 'notices'), indexes(path, 'outbox')];
  for (const [index, those] of had.entries()) expect(has[index]).toEqual(expect.arrayContaining([...those]));
});

test('a notice comes from a sweep, or from a visit or plan, and never from both or neither', async () => {
  const path = join(temporaryFolder(), 'register.sqlite');
  await (await openRegister(path)).close();
  const sqlite = new BetterSqlite3(path);
  sqlite.pragma('foreign_keys = off');
  const insert = (sweep: string, visit: string): void => {
    sqlite.exec(
      `insert into notices (fence_ref, owner_ref, matter, occasion, facts, sweep_id, visit_uid, created_at) values ('F', 'A', 'm', '${sweep} ${visit.length}', '{}', ${sweep}, ${visit}, 'then')`,
    );
  };
  insert('1', 'null');
  insert('null', "'V'");
  expect(() => insert('null', 'null')).toThrow(/CHECK constraint/);
  expect(() => insert('1', "'V'")).toThrow(/CHECK constraint/);
  sqlite.close();
});
