import { DateTime } from 'luxon';
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { hashPassword } from '../../src/service/password-hash.ts';
import { trySignIn, waitBeforeTry } from '../../src/service/sign-in.ts';
import { storeAccount } from '../web/accounts/signed-in.ts';
import { sampleRegister } from '../web/sample-register.ts';

const PASSWORD = 'gate latch and hinge';
const BEGIN = DateTime.fromISO('2026-11-26T08:00:00Z', { zone: 'utc' });
let passwordHash: string;
beforeAll(async () => {
  passwordHash = await hashPassword(PASSWORD);
});

async function office() {
  const { register, remove } = await sampleRegister({ swept: false, empty: true });
  onTestFinished(remove);
  await storeAccount(register, () => BEGIN, { name: 'ann', passwordHash });
  let now = BEGIN;
  const attempt = (password: string, address = '203.0.113.1', name = 'ann') =>
    trySignIn(register, { name, password, address }, () => now);
  /** A try that is only counted, as one with a wrong password is; how long it has to wait [s]. */
  const counted = (address = '203.0.113.1', name = 'ann') => waitBeforeTry(register, name, address, now);
  const wait = (seconds: number): void => {
    now = now.plus({ seconds });
  };
  return { register, attempt, counted, wait };
}

describe('wrong tries', () => {
  it('wait twice as long each time, from the fifth on, to a quarter of an hour', async () => {
    const { counted, wait } = await office();
    const waits: number[] = [];
    for (let index = 0; index < 26; index += 1) {
      const seconds = await counted();
      if (seconds === null) continue;
      waits.push(seconds);
      wait(seconds);
    }
    expect(waits).toEqual([2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900]);
  });

  it('are not looked at while they wait, right or not, and are forgotten after a right one', async () => {
    const { register, attempt, counted, wait } = await office();
    for (let index = 0; index < 5; index += 1) await counted();
    expect(await attempt(PASSWORD)).toEqual({ kind: 'wait', seconds: 2 });
    wait(2);
    expect((await attempt(PASSWORD)).kind).toBe('in');
    const left = await register.db.selectFrom('sign_in_failures').selectAll().execute();
    expect(left.map(({ kind, count }) => [kind, count])).toEqual([['address', 5]]);
    for (let index = 0; index < 4; index += 1) expect(await counted()).toBeNull();
    expect((await attempt(PASSWORD)).kind).toBe('in');
  });

  it('of a stranger keep nobody else out, however many there are', async () => {
    const { attempt, counted } = await office();
    for (let stranger = 0; stranger < 50; stranger += 1) {
      for (let index = 0; index < 6; index += 1) await counted(`198.51.100.${stranger}`);
    }
    expect((await attempt(PASSWORD, '203.0.113.1')).kind).toBe('in');
  });

  it('from one address wait whatever the name, after twenty', async () => {
    const { counted } = await office();
    for (let index = 0; index < 21; index += 1) {
      expect(await counted('203.0.113.1', `name-${index}`), String(index)).toBeNull();
    }
    expect(await counted('203.0.113.1', 'name-99')).toBe(2);
    expect(await counted('203.0.113.2', 'name-99')).toBeNull();
  });

  it('at the same moment do not slip through together', async () => {
    const { attempt } = await office();
    const outcomes = await Promise.all(Array.from({ length: 12 }, () => attempt('not it at all')));
    expect(outcomes.filter(({ kind }) => kind === 'wrong')).toHaveLength(5);
    expect(outcomes.filter(({ kind }) => kind === 'wait')).toHaveLength(7);
  });

  it('are forgotten after a day', async () => {
    const { attempt, counted, wait } = await office();
    for (let index = 0; index < 5; index += 1) await counted();
    expect(await counted()).toBe(2);
    wait(25 * 3600);
    for (let index = 0; index < 4; index += 1) expect(await counted()).toBeNull();
    expect((await attempt(PASSWORD)).kind).toBe('in');
  });

  it('leave no name in the register: some type a password there', async () => {
    const { register, attempt } = await office();
    await attempt('ann', '203.0.113.1', PASSWORD);
    const rows = await register.db.selectFrom('sign_in_failures').selectAll().execute();
    expect(JSON.stringify(rows)).not.toContain('latch');
  });
});
