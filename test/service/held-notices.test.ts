import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import type { Register } from '../../src/register/database.ts';
import { listHeldNotices, overviewOfHeld, releaseHeldNotices } from '../../src/register/held-notices.ts';
import { holdMatter, listHeldMatters } from '../../src/register/holding.ts';
import { listNoticesOfFence } from '../../src/register/notice-store.ts';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { siftHeldNotices } from '../../src/service/sift-held-notices.ts';
import { changeFences, fenceRegister, forecastWith, JANUARY, manyFences, SENDER } from './fence-register.ts';

const AT = '2027-01-15T12:00:00.000Z';
const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
const VERDICTS = { standing: 'clear', standingWithMargin: 'clear', shortSeason: null, marksCrossed: [] } as const;
const SHORT = { ...VERDICTS, standing: 'short', standingWithMargin: 'short' } as const;
const CLOSING = { ...VERDICTS, standing: 'closing', standingWithMargin: 'closing' } as const;
const CROSSED = { ...VERDICTS, marksCrossed: [{ mark: 'once in 25', season: '2027' }] } as const;

const compose = (register: Register) => composeNotices(register, { now: () => JANUARY, sender: SENDER });
const held = async (register: Register) =>
  (await listHeldNotices(register)).map(({ matter, held: by }) => [matter, by]);
const release = (register: Register, covering: string | null = null) =>
  releaseHeldNotices(register, {}, { at: AT, covering });

/** Sweeps so many days on with a verdict put by hand. */
async function sweepWith(register: Register, days: number, verdict: Partial<FenceForecast>): Promise<void> {
  await changeFences(register, [{ ref: 'F-000', ...old, trimmerGuards: 'no', yearlyTrimmerCutMm: (days + 1) / 1000 }]);
  const now = () => JANUARY.plus({ days });
  await runSweep(register, { now, forecast: forecastWith(verdict) });
  await siftHeldNotices(register, { now });
}

const oneFence = () => fenceRegister({ fences: manyFences(1, old), holdFirstSweep: 'yes' });

describe('a first sweep', () => {
  it('mails nobody until the office releases what it found', async () => {
    const register = await fenceRegister({ fences: manyFences(3, old), holdFirstSweep: 'yes' });
    await runSweep(register, { now: () => JANUARY });
    expect(await compose(register)).toEqual({ mails: 0, letters: 0, failures: [] });
    expect(await held(register)).toEqual([1, 2, 3].map(() => ['short', 'first sweep']));
    const all = await listHeldNotices(register);
    expect(await overviewOfHeld(register, 10)).toEqual({
      notices: 3,
      owners: 1,
      dangerous: 0,
      newest: Math.max(...all.map(({ id }) => id)),
      first: all,
    });
    await register.db.updateTable('notices').set({ matter: 'dangerous' }).where('id', '=', all[2]!.id).execute();
    const overview = await overviewOfHeld(register, 2);
    expect(overview).toMatchObject({ notices: 3, owners: 1, dangerous: 1 });
    expect(overview.first.map(({ id }) => id)).toEqual([all[2]!.id, all[0]!.id]);
    await register.db.updateTable('notices').set({ matter: 'short' }).where('id', '=', all[2]!.id).execute();
    expect(await release(register)).toEqual({ notices: 3, owners: 1 });
    expect(await compose(register)).toMatchObject({ mails: 3 });
    expect(await held(register)).toEqual([]);
    expect(await release(register)).toEqual({ notices: 0, owners: 0 });
  });

  it('has later news of the same owner wait with it, and lets it through once something was released', async () => {
    const register = await oneFence();
    await sweepWith(register, 0, SHORT);
    await sweepWith(register, 1, { ...SHORT, ...CROSSED, standing: 'short', standingWithMargin: 'short' });
    expect(await held(register)).toEqual([
      ['short', 'first sweep'],
      ['once in 25', 'first sweep'],
    ]);
    const [first] = await listHeldNotices(register);
    await releaseHeldNotices(register, { ids: [first?.id ?? 0] }, { at: AT, covering: null });
    expect(await held(register)).toEqual([['once in 25', 'kept back']]);
    await sweepWith(register, 2, { ...SHORT, endsStanding: 'short', endsStandingWithMargin: 'short' });
    expect(await compose(register)).toMatchObject({ mails: 1 });
    const lines = (await listNoticesOfFence(register, 'F-000')).map(({ matter, outboxId }) => [matter, outboxId]);
    expect(lines).toContainEqual(['ends short', 1]);
  });

  it('holds nothing where the settings say so', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await runSweep(register, { now: () => JANUARY });
    expect(await held(register)).toEqual([]);
  });
});

describe('what is held', () => {
  it('becomes void where it is no longer so, and the owner hears how the fence stands then', async () => {
    const register = await oneFence();
    await sweepWith(register, 0, SHORT);
    await sweepWith(register, 1, CLOSING);
    const [notice] = await listNoticesOfFence(register, 'F-000');
    expect(notice).toMatchObject({ matter: 'short', voidReason: 'it is no longer so: the fence is closing by now' });
    await runSweep(register, { now: () => JANUARY.plus({ days: 2 }), forecast: forecastWith(CLOSING) });
    expect(await held(register)).toEqual([['closing', 'first sweep']]);
    await release(register);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    const [entry] = await listOutbox(register, { limit: 9 });
    expect(entry?.subject).toContain('comes within 3 %');
  });

  it('is told by the newest forecast, after the sentence of the office', async () => {
    const register = await oneFence();
    await sweepWith(register, 0, SHORT);
    await release(register, 'We met at the gate on Monday; here it is in writing.');
    await compose(register);
    const mail = await simpleParser(Buffer.from((await loadOutboxBytes(register, 1))?.raw ?? []));
    expect(mail.text?.replace(/\s+/g, ' ')).toContain(
      'Dear Ann Tidewell, We met at the gate on Monday; here it is in writing. What changed',
    );
    expect(mail.text).not.toContain('We have news of this fence');
  });
});

describe('a matter that the office holds', () => {
  it('waits from then on, and no longer once it is let go', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, VERDICTS);
    await holdMatter(register, 'once in 25', true, AT);
    await holdMatter(register, 'once in 25', true, AT);
    expect(await listHeldMatters(register)).toEqual(['once in 25']);
    await sweepWith(register, 1, CROSSED);
    await sweepWith(register, 2, { ...CROSSED, standing: 'short', standingWithMargin: 'short' });
    expect(await held(register)).toEqual([['once in 25', 'matter']]);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    await holdMatter(register, 'once in 25', false, AT);
    expect(await held(register)).toEqual([['once in 25', 'matter']]);
    await release(register);
    expect(await compose(register)).toMatchObject({ mails: 1 });
  });

  it('is never what is dangerous now, after the first sweep', async () => {
    const register = await oneFence();
    await sweepWith(register, 0, SHORT);
    const found = { broken: [4], leaning: [], closedOff: [], crackedCollars: [], hollow: [] };
    await sweepWith(register, 1, { ...SHORT, found });
    expect(await held(register)).toEqual([['short', 'first sweep']]);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    const [entry] = await listOutbox(register, { limit: 9 });
    expect(entry?.subject).toBe('Fence F-000 at Heron Landing: keep away, post 4 is broken');
    const mail = await simpleParser(Buffer.from((await loadOutboxBytes(register, 1))?.raw ?? []));
    expect(mail.text).toMatch(/^Dangerous now: post 4 is broken\. Keep people away/);
  });
});
