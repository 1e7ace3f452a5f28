import { describe, expect, it } from 'vitest';
import { ORDINARY_GROUPS } from '../../src/notify/matter-groups.ts';
import type { Register } from '../../src/register/database.ts';
import { listNoticesOfFence } from '../../src/register/notice-store.ts';
import { listOutbox } from '../../src/register/outbox.ts';
import { listOwnerAnswers } from '../../src/register/owner-answer-store.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { newOwnerLink } from '../../src/service/owner-links.ts';
import { changePreferences, unsubscribe } from '../../src/service/owner-preferences.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { importFiles } from '../register/made-up-register.ts';
import { fenceRegister, JANUARY, SENDER } from './fence-register.ts';

const now = () => JANUARY;
const old = { ref: 'F-1', installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
const FOUND = [
  { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nI,F-1,2026-11-20,Nell Fox,awl-or-probe\n' },
  { name: 'readings.csv', text: 'inspection,post,broken\nI,3,yes\n' },
] as const;

const linkOf = async ({ db }: Register) =>
  (
    await newOwnerLink(
      db,
      { ownerRef: 'ANN', scopes: ['preferences'], days: 1 },
      { publicUrl: 'https://fences.example.org', now },
    )
  ).link;

async function wishing(register: Register, change: Parameters<typeof changePreferences>[2]['change']) {
  return changePreferences(register, await linkOf(register), { change, kind: 'preferences' }, now);
}

const compose = (register: Register, days = 0) =>
  composeNotices(register, { now: () => JANUARY.plus({ days }), sender: SENDER });

/** A mark of F-1 that is to be told, as a sweep would have decided it. */
async function crossMark({ db }: Register): Promise<void> {
  await db
    .insertInto('notices')
    .values({
      fence_ref: 'F-1',
      owner_ref: 'ANN',
      matter: 'two thirds',
      occasion: 'as built',
      facts: '{}',
      sweep_id: 1,
      created_at: '2027-01-15T12:00:00.000Z',
    })
    .execute();
}

const told = async (register: Register) =>
  (await listNoticesOfFence(register, 'F-1')).map(({ matter, outboxId, voidReason }) => ({
    matter,
    is: outboxId !== null ? 'told' : voidReason === null ? 'waits' : voidReason,
  }));

describe('what an owner wants to be written about', () => {
  it('is all that is told: the rest is void with the reason, and stays so', async () => {
    const register = await fenceRegister({ fences: [old] });
    await wishing(register, { muted: ['marks'] });
    await runSweep(register, { now });
    await crossMark(register);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    const notices = await told(register);
    expect(notices.find(({ matter }) => matter === 'short')?.is).toBe('told');
    const marks = notices.filter(({ matter }) => matter === 'two thirds' || matter.startsWith('once'));
    expect(marks.length).toBeGreaterThan(0);
    expect(new Set(marks.map(({ is }) => is))).toEqual(new Set(['the owner does not want to be told of it']));
    await wishing(register, { muted: [] });
    expect(await compose(register, 1)).toMatchObject({ mails: 0 });
  });

  it('leaves no mail where nothing of it is wanted', async () => {
    const register = await fenceRegister({ fences: [old] });
    await unsubscribe(register, await linkOf(register), now);
    await runSweep(register, { now });
    expect(await compose(register)).toEqual({ mails: 0, letters: 0, failures: [] });
    expect((await told(register)).every(({ is }) => is === 'the owner does not want to be told of it')).toBe(true);
  });

  it('never keeps danger back, unless that was turned off by itself', async () => {
    const stopped = await fenceRegister({ fences: [old] });
    expect((await importFiles(stopped, FOUND)).faults).toEqual([]);
    await unsubscribe(stopped, await linkOf(stopped), now);
    await wishing(stopped, { pausedUntil: '2027-06-30' });
    await runSweep(stopped, { now });
    expect(await compose(stopped)).toMatchObject({ mails: 1 });
    expect((await listOutbox(stopped, { limit: 9 }))[0]?.subject).toContain('keep away');

    const off = await fenceRegister({ fences: [old] });
    await importFiles(off, FOUND);
    await unsubscribe(off, await linkOf(off), now);
    await wishing(off, { muted: ['danger', ...ORDINARY_GROUPS] });
    await runSweep(off, { now });
    expect(await compose(off)).toMatchObject({ mails: 0 });
  });

  it('waits through a pause, its last day too, and is told by what is so after it', async () => {
    const register = await fenceRegister({ fences: [old] });
    await wishing(register, { pausedUntil: '2027-01-20' });
    await runSweep(register, { now });
    expect(await compose(register)).toMatchObject({ mails: 0 });
    expect(new Set((await told(register)).map(({ is }) => is))).toEqual(new Set(['waits']));
    expect(await compose(register, 5)).toMatchObject({ mails: 0 });
    expect(await compose(register, 6)).toMatchObject({ mails: 1 });
  });

  it('holds for mails that wait for their turn: what is not wanted any more does not leave', async () => {
    const register = await fenceRegister({
      owners: [{}, { ref: 'BEA' }],
      fences: [old, { ...old, ref: 'F-2', ownerRef: 'BEA' }],
    });
    await runSweep(register, { now });
    await crossMark(register);
    expect(await compose(register)).toMatchObject({ mails: 2 });
    await wishing(register, { muted: ['marks'] });
    const states = async () =>
      (await listOutbox(register, { limit: 9 })).map(({ ownerRef, state }) => `${ownerRef} ${state}`).sort();
    // it tells that the fence is short too, which is wanted
    expect(await states()).toEqual(['ANN queued', 'BEA queued']);
    await unsubscribe(register, await linkOf(register), now);
    expect(await states()).toEqual(['ANN cancelled', 'BEA queued']);
  });

  it('is noted once, however often it is said', async () => {
    const register = await fenceRegister({ fences: [old] });
    const link = await linkOf(register);
    expect(await unsubscribe(register, link, now)).toBe('changed');
    expect(await unsubscribe(register, link, now)).toBe('unchanged');
    expect(await wishing(register, { language: 'es' })).toBe('changed');
    expect(await wishing(register, { language: 'es' })).toBe('unchanged');
    const answers = await listOwnerAnswers(register.db, {});
    expect(answers.map(({ kind }) => kind)).toEqual(['preferences', 'unsubscribed']);
    expect(JSON.parse(answers[0]!.detail)).toMatchObject({ before: { language: 'en' }, after: { language: 'es' } });
  });
});
