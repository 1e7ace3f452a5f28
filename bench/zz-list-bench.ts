import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { importCsv } from '/work/main/src/register/csv/import-csv.ts';
import { openRegister } from '/work/main/src/register/database.ts';
import { listFences } from '/work/main/src/register/fence-list.ts';
import { fencesCsv, surroundings } from '/work/main/bench/made-up-fences.ts';
const folder = mkdtempSync(join(tmpdir(), 'lb-'));
const r = await openRegister(join(folder, 'r.sqlite'));
const imp = async (files: any) => { const rep = await importCsv(r, files, { acceptValid: false, dryRun: false, today: '2026-11-25', now: '2026-11-25T12:00:00Z' }); if (!rep.applied) throw new Error(JSON.stringify(rep.faults.slice(0,3))); };
await imp(surroundings()); await imp([{ name: 'fences.csv', text: fencesCsv(10000) }]);
await sql`insert into sweeps (id, as_of, model_version, settings, state, started_at) values (1,'2026-11-25','x','{}','finished','2026-11-25T12:00:00Z')`.execute(r.db);
await sql`insert into forecasts (fence_ref, sweep_id, input_hash, model_version, computed_at, season_one, generation, standing, ends_standing, short_season, snap_mps, lean_mps, design_gust_mps, once_in_years, told_marks, detail)
 select ref, 1, 'h','x','2026-11-25T12:00:00Z','2027','as built', case rowid%4 when 0 then 'clear' when 1 then 'closing' when 2 then 'short' else 'short from new' end, 'clear', cast(2027+rowid%30 as text), 30+(rowid*7)%40, 40, 50, 10+rowid%50, '[]', replace(hex(zeroblob(8000)),'0','x') from fences`.execute(r.db);
const base = { text: '', siteRef: null, standing: null, sort: 'standing', descending: false, page: 1 } as const;
for (const [name, q] of Object.entries({ first: base, last: { ...base, page: 200 }, ref: { ...base, sort: 'ref', page: 100 }, owner: {...base, sort:'owner'}, site: {...base, sort:'site'}, snap: {...base, sort:'snap'}, short: {...base, standing:'short'}, text: { ...base, text: 'B-0001' } }) as any) {
  await listFences(r, q as any);
  const cpu = process.cpuUsage(); const t = performance.now();
  for (let i = 0; i < 8; i++) await listFences(r, q as any);
  const c = process.cpuUsage(cpu);
  console.log(name, ((performance.now() - t) / 8).toFixed(1), 'ms wall', ((c.user + c.system) / 8000).toFixed(1), 'ms cpu');
}
await r.close(); rmSync(folder, { recursive: true });
