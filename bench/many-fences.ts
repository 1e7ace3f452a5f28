import { sql } from 'kysely';
import { importCsv } from '../src/register/csv/import-csv.ts';
import { remarkText } from '../src/register/csv/import-report.ts';
import type { Register } from '../src/register/database.ts';
import type { Clock } from '../src/service/clock.ts';
import { isoUtc } from '../src/service/clock.ts';
import { runSweep } from '../src/service/run-sweep.ts';
import { copyRows } from './copied-rows.ts';
import { fencesCsv, recordFiles, surroundings } from './made-up-fences.ts';
import { fewVisits, manyVisits } from './many-visits.ts';

/** Fences that are really imported and swept; all others are their copies. */
const SWEPT = 200;
/** Copies of each site and owner, so that a site holds tens of fences and a few owners hold hundreds. */
const SITES = 1_500;
const OWNERS = 3_000;
/** Most notices that wait, notices for the office, and messages that left, copied from those of the fences swept. */
const NOTICES = 30_000;
const MESSAGES = 20_000;
/** Changes of standing that the last sweep found. */
const CHANGES = 2_000;

async function importAll(register: Register, files: readonly { readonly name: string; readonly text: string }[]) {
  const report = await importCsv(register, files, {
    acceptValid: false,
    dryRun: false,
    today: '2026-11-25',
    now: '2026-11-25T12:00:00Z',
  });
  if (report.faults.length > 0) throw new Error(report.faults.slice(0, 3).map(remarkText).join('\n'));
}

const rowsOf = async ({ db }: Register, table: string): Promise<number> =>
  (await sql<{ count: number }>`select count(*) as count from ${sql.table(table)}`.execute(db)).rows[0]!.count;

/**
 * A register of so many fences: a small one is imported, swept, planned and its plan accepted; then its rows, forecasts, records,
 * visits, notices and messages with it, are copied under other refs over 1,500 sites and 3,000 owners. Snap speeds of copies are
 * spread by a factor from 0.5 to 1.5 and their standing follows from it, so that lists have something to order; their stored
 * seasons stay those of the fence copied.
 */
export async function manyFences(register: Register, count: number, now: Clock): Promise<void> {
  await importAll(register, surroundings());
  const small = Math.min(SWEPT, count);
  await importAll(register, [{ name: 'fences.csv', text: fencesCsv(small) }, ...recordFiles(small)]);
  await runSweep(register, { now });
  await fewVisits(register, now);
  const { db } = register;
  const copies = Math.ceil(count / SWEPT) - 1;
  if (copies < 1) return;
  const ofSites = Math.floor(SITES / (await rowsOf(register, 'sites')));
  const ofOwners = Math.floor(OWNERS / (await rowsOf(register, 'owners')));
  const ref = "row.ref || '.' || copy.n";
  const owner = `row.owner_ref || '.' || (1 + (copy.n * 17 + row.place * row.place) % ${ofOwners})`;
  const fence = { fence_ref: "row.fence_ref || '.' || copy.n" };
  const others = { copies, most: count - SWEPT };
  await db.transaction().execute(async (tx) => {
    const inside: Register = { ...register, db: tx };
    const named = { ref, name: "row.name || ' ' || copy.n" };
    await copyRows(inside, 'sites', named, { copies: ofSites, most: SITES });
    await copyRows(inside, 'owners', named, { copies: ofOwners, most: OWNERS });
    const site = `row.site_ref || '.' || (1 + (copy.n * 31 + row.place) % ${ofSites})`;
    await copyRows(inside, 'fences', { ref, site_ref: site, owner_ref: owner }, others);
    const factor = '(0.5 + ((copy.n * 7919 + row.place * 104729) % 1000) / 1000.0)';
    const snap = `row.snap_mps * ${factor}`;
    const share = `(${snap} / row.design_gust_mps)`;
    await copyRows(
      inside,
      'forecasts',
      {
        ...fence,
        input_hash: "'copied'",
        snap_mps: snap,
        once_in_years: `row.once_in_years * ${factor}`,
        standing: `case when ${share} < 0.6 then 'short from new' when ${share} < 1 then 'short' when ${share} < 1.1 then 'closing' else 'clear' end`,
      },
      others,
    );
    for (const table of ['inspections', 'works', 'storm_outcomes'])
      await copyRows(inside, table, { ref, ...fence }, others);
    await copyRows(
      inside,
      'readings',
      { inspection_ref: "row.inspection_ref || '.' || copy.n" },
      { copies, most: 2 * count },
    );
    const some = { copies, most: Math.min(NOTICES, count - SWEPT) };
    await copyRows(inside, 'notices', { ...fence, owner_ref: owner }, some);
    await copyRows(inside, 'office_notices', fence, some);
    await sql`insert into standing_changes
        (fence_ref, sweep_id, at, standing_before, standing_after, snap_mps, design_gust_mps, causes)
      select fence_ref, sweep_id, computed_at, 'clear', standing, snap_mps, design_gust_mps, '["the year turned"]'
      from forecasts where standing <> 'clear' and instr(fence_ref, '.') > 0 limit ${CHANGES}`.execute(tx);
    await sql`insert into outbox
        (message_id, owner_ref, channel, envelope_from, envelope_to, subject, raw, sha256, state, sent_at, created_at)
      with recursive message(n) as (select 1 union all select n + 1 from message where n < ${Math.min(MESSAGES, count)}),
        owner as (select ref, row_number() over (order by ref) as place from owners)
      select 'made-up-' || n, owner.ref, case n % 50 when 1 then 'letter' else 'mail' end, 'office@example.org',
        'owner@example.org', 'Fence ' || n || ' goes short', zeroblob(2000), '',
        case when n % 50 = 1 then 'to print' when n % 20 = 0 then 'parked' else 'sent' end,
        ${isoUtc(now())}, ${isoUtc(now())} from message join owner on owner.place = 1 + n % ${OWNERS}`.execute(tx);
  });
  await manyVisits(register, { now, fenceCopies: copies, siteCopies: ofSites });
}
