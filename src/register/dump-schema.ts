import { writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import BetterSqlite3 from 'better-sqlite3';
import { migrateToLatest } from './migrate.ts';
import { packagePath } from './package-path.ts';

/** Path of the committed dump. */
export const schemaDumpPath = (): string => packagePath('migrations', 'schema.sql');

/** The schema that all migrations leave behind, as SQL text: tables and indexes by name. */
export function schemaDump(): string {
  const sqlite = new BetterSqlite3(':memory:');
  try {
    migrateToLatest(sqlite);
    const rows = sqlite
      .prepare(
        "select sql from sqlite_schema where sql is not null and name not like 'sqlite_%' order by tbl_name, type <> 'table', type, name",
      )
      .all() as readonly { readonly sql: string }[];
    const version = sqlite.pragma('user_version', { simple: true }) as number;
    const head = `-- Schema after migration ${version}, written by src/register/dump-schema.ts: do not edit.\n`;
    return `${head}\n${rows.map((row) => `${row.sql};\n`).join('\n')}`;
  } finally {
    sqlite.close();
  }
}

if (argv[1] === fileURLToPath(import.meta.url)) writeFileSync(schemaDumpPath(), schemaDump());
