/** Confirms the visits of a register one after the other and says so of each; for tests that kill it. */
import { DateTime } from 'luxon';
import { openRegister } from '../../src/register/database.ts';
import { listVisits } from '../../src/register/visit-store.ts';
import { confirmVisit } from '../../src/service/change-visit.ts';

const register = await openRegister(process.argv[2] ?? '');
process.stdout.write('begun\n');
let moment = DateTime.fromISO('2027-05-12T15:00:00Z', { zone: 'utc' });
for (const { uid, firstDay } of await listVisits(register.db, { states: ['proposed'] })) {
  const now = moment;
  moment = moment.plus({ seconds: 1 });
  await confirmVisit(register, {
    uid,
    now: () => now,
    day: firstDay,
    startsAt: '08:30',
    crewRef: null,
    sure: true,
    by: 'Nell',
    because: '',
  });
}
await register.close();
process.stdout.write('done\n');
