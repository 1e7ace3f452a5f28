import { expect, it } from 'vitest';
import { startChild } from './child-process.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

const VISITS = 100;

it('has every visit that was confirmed in the queue, and no other, when the confirming is killed in the middle', async () => {
  const { register, remove } = await visitingRegister();
  const item = madeUpVisit({ uid: '-' }).items[0]!;
  const visits = Array.from({ length: VISITS }, (_, index) =>
    madeUpVisit({
      uid: `V1-${String(index).padStart(3, '0')}`,
      firstDay: '2027-05-19',
      lastDay: '2027-05-19',
      items: [{ ...item, fenceRef: 'PR-04' }],
    }),
  );
  await storeVisits(register, visits);
  const confirmed = async (): Promise<readonly string[]> =>
    (
      await register.db
        .selectFrom('visit_changes')
        .select(['uid', 'at'])
        .where('state', '=', 'confirmed')
        .orderBy('uid')
        .execute()
    ).map(({ uid, at }) => `${uid} ${at}`);
  const queued = async (): Promise<readonly string[]> =>
    (await register.db.selectFrom('notices').select(['visit_uid', 'created_at']).orderBy('visit_uid').execute()).map(
      (notice) => `${notice.visit_uid} ${notice.created_at}`,
    );
  const child = startChild('./visit-child.ts', register.path);
  await child.line('begun');
  await expect.poll(async () => (await confirmed()).length, { interval: 2, timeout: 30_000 }).toBeGreaterThan(3);
  await child.kill();
  const left = await confirmed();
  expect(left.length).toBeLessThan(VISITS);
  expect(await queued()).toEqual(left);
  // begun again it goes on where it stopped
  await startChild('./visit-child.ts', register.path).line('done');
  expect(await confirmed()).toHaveLength(VISITS);
  expect(await queued()).toEqual(await confirmed());
  await remove();
}, 60_000);
