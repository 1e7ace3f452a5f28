import { sql } from 'kysely';
import { importCsv } from '../src/register/csv/import-csv.ts';
import { remarkText } from '../src/register/csv/import-report.ts';
import type { Register } from '../src/register/database.ts';
import type { Clock } from '../src/service/clock.ts';
import { isoUtc } from '../src/service/clock.ts';
import { runSweep } from '../src/service/run-sweep.ts';
import { fencesCsv, surroundings } from './made-up-fences.ts';

/** Fences that are really imported and swept; all others are their copies. */
const SWEPT = 200;
/** Copies of each site and owner, so that a site holds tens of fences and a few owners hold hundreds. */
const SITES = 1_500;
const OWNERS = 3_000;
/** Most notices that wait and messages that left, copied from those of the fences swept. */
const NOTICES = 30_000;
const MESSAGES = 20_000;

async function importAll(register: Register, files: readonly { readonly name: string; readonly text: string }[]) {
  const report = await importCsv(register, files, {
    acceptValid: false,
    dryRun: false,
    today: '2026-11-25',
    now: '2026-11-25T12:00:00Z',
  });
  if (report.faults.length > 0) throw new Error(report.faults.slice(0, 3).map(remarkText).join('\n'));
}

/** Copies rows of a table with some columns made from the number of the copy. */
async function copyRows(
  { db }: Register,
  table: string,
  made: Readonly<Record<string, string>>,
  from: { readonly copies: number; readonly most: number; readonly skip?: readonly string[] },
): Promise<void> {
  const columns = (
    await sql<{ name: string }>`select name from pragma_table_info(${table}) where pk = 0 or type <> 'INTEGER'`.execute(
      db,
    )
  ).rows
    .map(({ name }) => name)
    .filter((name) => !from.skip?.includes(name));
  const values = columns.map((name) => made[name] ?? `row.${name}`);
  await sql`
    with recursive copy(n) as (select 1 union all select n + 1 from copy where n < ${from.copies}),
      numbered as (select *, row_number() over (order by rowid) as place from ${sql.table(table)})
    insert into ${sql.table(table)} (${sql.raw(columns.join(', '))})
    select ${sql.raw(values.join(', '))} from copy cross join numbered as row limit ${from.most}`.execute(db);
}

/**
 * A register of so many fences: a small one is imported and swept, then its rows, forecasts, notices and messages with it, are
 * copied under other refs over 1,500 sites and 3,000 owners. Snap speeds of copies are spread by a factor from 0.5 to 1.5 and their
 * standing follows from it, so that lists have something to order; their stored seasons stay those of the fence copied.
 */
export async function manyFences(register: Register, count: number, now: Clock): Promise<void> {
  await importAll(register, surroundings());
  await importAll(register, [{ name: 'fences.csv', text: fencesCsv(Math.min(SWEPT, count)) }]);
  await runSweep(register, { now });
  const { db } = register;
  const copies = Math.ceil(count / SWEPT) - 1;
  if (copies < 1) return;
  const [{ sites = 1 } = {}] = (await sql<{ sites: number }>`select count(*) as sites from sites`.execute(db)).rows;
  const [{ owners = 1 } = {}] = (await sql<{ owners: number }>`select count(*) as owners from owners`.execute(db)).rows;
  await db.transaction().execute(async (tx) => {
    const inside: Register = { ...register, db: tx };
    const ref = "row.ref || '~' || copy.n";
    await copyRows(
      inside,
      'sites',
      { ref, name: "row.name || ' ' || copy.n" },
      { copies: Math.ceil(SITES / sites), most: SITES },
    );
    await copyRows(
      inside,
      'owners',
      { ref, name: "row.name || ' ' || copy.n" },
      { copies: Math.ceil(OWNERS / owners), most: OWNERS },
    );
    const site = `row.site_ref || '~' || (1 + (copy.n * 31 + row.place) % ${Math.floor(SITES / sites)})`;
    const owner = `row.owner_ref || '~' || (1 + (copy.n * 17 + row.place * row.place) % ${Math.floor(OWNERS / owners)})`;
    await copyRows(
      inside,
      'fences',
      { ref, site_ref: site, owner_ref: owner, installed_earliest: 'row.installed_earliest' },
      { copies, most: count - SWEPT },
    );
    const factor = '(0.5 + ((copy.n * 7919 + row.place * 104729) % 1000) / 1000.0)';
    const snap = `row.snap_mps * ${factor}`;
    const share = `(${snap} / row.design_gust_mps)`;
    await copyRows(
      inside,
      'forecasts',
      {
        fence_ref: "row.fence_ref || '~' || copy.n",
        input_hash: "'copied'",
        snap_mps: snap,
        once_in_years: `row.once_in_years * ${factor}`,
        standing: `case when ${share} < 0.6 then 'short from new' when ${share} < 1 then 'short' when ${share} < 1.1 then 'closing' else 'clear' end`,
      },
      { copies, most: count - SWEPT },
    );
    await copyRows(
      inside,
      'notices',
      { fence_ref: "row.fence_ref || '~' || copy.n", owner_ref: owner },
      { copies, most: Math.min(NOTICES, count - SWEPT) },
    );
    await sql`insert into outbox
        (message_id, owner_ref, channel, envelope_from, envelope_to, subject, raw, sha256, state, sent_at, created_at)
      with recursive message(n) as (select 1 union all select n + 1 from message where n < ${Math.min(MESSAGES, count)}),
        owner as (select ref, row_number() over (order by ref) as place from owners)
      select 'made-up-' || n, owner.ref, 'mail', 'office@example.org',
        'owner@example.org', 'Fence ' || n || ' goes short', zeroblob(2000), '', case n % 20 when 0 then 'parked' else 'sent' end,
        ${isoUtc(now())}, ${isoUtc(now())} from message join owner on owner.place = 1 + n % ${OWNERS}`.execute(tx);
  });
}
