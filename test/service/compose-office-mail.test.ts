import { simpleParser } from 'mailparser';
import { expect, it } from 'vitest';
import { cancelMessage, listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { composeOfficeMail } from '../../src/service/compose-office-mail.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { fenceRegister, JANUARY, manyFences, SENDER } from './fence-register.ts';

const after = (days: number) => () => JANUARY.plus({ days });
const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };

it('mails the office once of what is new for it, and not again while nothing is', async () => {
  const register = await fenceRegister({ fences: manyFences(3, old) });
  const office = (days: number) => composeOfficeMail(register, { now: after(days), sender: SENDER });
  // nothing was swept yet, and that is no news of a register so young
  expect(await office(0)).toBe(0);
  await runSweep(register, {
    now: after(0),
    forecast: () => {
      throw new Error('its posts overlap');
    },
  });
  expect(await office(0)).toBe(3);
  const [entry] = await listOutbox(register, { limit: 1 });
  expect(entry).toMatchObject({ ownerRef: null, ownerName: 'the office', envelopeTo: 'office@example.org' });
  expect(entry?.subject).toBe('New for the office: 3 things, fences without a new forecast');
  const mail = await simpleParser(Buffer.from((await loadOutboxBytes(register, 1))!.raw));
  expect(mail.text).toContain('F-000: its posts overlap');
  // the same day, and the next with the same three: no mail
  expect(await office(0)).toBe(0);
  expect(await office(1)).toBe(0);
  await runSweep(register, { now: after(1) });
  await composeNotices(register, { now: after(1), sender: SENDER });
  expect(await office(1)).toBe(0);
  await register.db
    .updateTable('outbox')
    .set({ state: 'parked', last_reply: '550 no such user' })
    .where('owner_ref', 'is not', null)
    .execute();
  expect(await office(2)).toBe(3);
  expect((await listOutbox(register, { limit: 1 }))[0]?.subject).toContain('messages refused for good');
  await cancelMessage(register, 2);
  // nobody swept for days: named once for the outage
  expect(await office(4)).toBe(1);
  expect(await office(5)).toBe(0);
  expect(await office(40)).toBe(0);
});

it('names again what was over and has come again', async () => {
  const register = await fenceRegister({ fences: manyFences(1, old) });
  const failing = () => {
    throw new Error('its posts overlap');
  };
  const night = async (days: number, fails: boolean): Promise<number> => {
    await runSweep(register, { now: after(days), ...(fails ? { forecast: failing } : {}) });
    return composeOfficeMail(register, { now: after(days), sender: SENDER });
  };
  expect(await night(0, true)).toBe(1);
  expect(await night(1, true)).toBe(0);
  expect(await night(2, false)).toBe(0);
  await register.db.updateTable('forecasts').set({ input_hash: 'other' }).execute();
  expect(await night(3, true)).toBe(1);
});

it('writes nothing while the office has not said who it is', async () => {
  const register = await fenceRegister({ fences: manyFences(1, old) });
  await runSweep(register, {
    now: after(0),
    forecast: () => {
      throw new Error('its posts overlap');
    },
  });
  expect(await composeOfficeMail(register, { now: after(0), sender: { ...SENDER, gap: 'no name' } })).toBe(0);
  expect(await listOutbox(register, { limit: 9 })).toEqual([]);
});
