import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openRegister } from '../../src/register/database.ts';
import { listFenceRefs } from '../../src/register/fence-facts-store.ts';
import { loadFenceParties } from '../../src/register/fence-parties-store.ts';
import { listOutbox } from '../../src/register/outbox.ts';
import { noticeRecords } from './notice-record.ts';
import { FIRST_NIGHT, simulateYears } from './simulate-years.ts';
import { enteredWorks, visitChanges } from './visit-acts.ts';
import { yearsPage } from './years-page.ts';

const YEARS = 10;
const folder = mkdtempSync(join(tmpdir(), 'stormpale-years-'));
const register = await openRegister(join(folder, 'register.sqlite'));
const seen = await simulateYears(register, {
  years: YEARS,
  mailFolder: join(folder, 'mail'),
  onYear: (year) => process.stderr.write(`year ${year} of ${YEARS}\n`),
});
const refs = (await listFenceRefs(register, null, 1000)).map(({ ref }) => ref);
const parties = await loadFenceParties(register, refs);
const sweeps = (await register.db.selectFrom('sweeps').select('id').where('state', '=', 'finished').execute()).length;
const page = yearsPage({
  years: YEARS,
  from: FIRST_NIGHT.toISODate() ?? '',
  to: FIRST_NIGHT.plus({ days: sweeps - 1 }).toISODate() ?? '',
  fences: refs.length,
  sweeps,
  records: await noticeRecords(register),
  entered: await enteredWorks(register, FIRST_NIGHT.toISODate() ?? ''),
  visits: await visitChanges(register),
  officeMails: (await listOutbox(register, { limit: Number.MAX_SAFE_INTEGER })).filter(
    ({ ownerRef }) => ownerRef === null,
  ).length,
  seen,
  ownersOf: (ref) => (parties.get(ref)?.owners ?? []).map((owner) => owner.ref),
});
await register.close();
rmSync(folder, { recursive: true, force: true });
writeFileSync(new URL('../../docs/ten-years.md', import.meta.url), page);
