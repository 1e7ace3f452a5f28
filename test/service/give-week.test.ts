import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPlan } from '../../src/register/plan-store.ts';
import { listVisits, readVisit, visitHistory } from '../../src/register/visit-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { mondayOf } from '../../src/season/visit/week-of-day.ts';
import { acceptSeasonPlan } from '../../src/service/accept-season-plan.ts';
import { confirmVisit } from '../../src/service/change-visit.ts';
import type { Clock } from '../../src/service/clock.ts';
import { giveWeek, leaveToPlans, previewGiven } from '../../src/service/give-week.ts';
import { makeSeasonPlan } from '../../src/service/make-season-plan.ts';
import { storeSeasonPlan } from '../../src/service/store-season-plan.ts';
import { CHANGED_AGAIN } from '../../src/service/tell-of-visit.ts';
import { choicesFor } from '../../src/service/week-choices-of.ts';
import { visitingRegister } from './visiting-register.ts';

const at =
  (text: string): Clock =>
  () =>
    DateTime.fromISO(text, { zone: 'utc' });
const NOW = at('2026-11-24T12:00:00Z');
const ACT = { by: 'nell', because: '' };

describe('giving a fence of a visit to another week', { timeout: 120_000 }, () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  const open = (): Promise<readonly Visit[]> => listVisits(sample.register.db, { states: ['proposed', 'confirmed'] });

  async function planAndAccept(now: Clock): Promise<void> {
    const made = await makeSeasonPlan(sample.register, { now, weeks: 8, onProgress: () => undefined });
    const { number } = await storeSeasonPlan(sample.register, made, { now, store: true });
    const result = await acceptSeasonPlan(sample.register, { number: number!, now, ...ACT });
    expect(result.kind).toBe('accepted');
  }

  /** A place that the rules and the hours allow, as late as there is one. */
  async function lastPlace(uid: string, fenceRef: string) {
    const found = await choicesFor(sample.register, { uid, fenceRef, now: NOW });
    if (found.kind === 'refused') throw new Error(found.reason);
    const allowed = found.choices.filter(({ isNow, bars, hoursLeft }) => !isNow && bars.length === 0 && hoursLeft >= 0);
    return { found, place: allowed.at(-1)! };
  }

  const toldOf = (fenceRef: string) =>
    sample.register.db
      .selectFrom('notices')
      .select(['visit_uid', 'matter', 'void_reason'])
      .where('fence_ref', '=', fenceRef)
      .where('visit_uid', 'is not', null)
      .orderBy('id')
      .execute();

  beforeAll(async () => {
    sample = await visitingRegister();
    await sample.register.db.updateTable('owners').set({ enrolled: 1 }).execute();
    await planAndAccept(NOW);
  });
  afterAll(() => sample.remove());

  it('shows what every week costs, the place it has at nothing', async () => {
    const [visit] = await open();
    const { found } = await lastPlace(visit!.uid, visit!.items[0]!.fenceRef);
    const now = found.choices.filter(({ isNow }) => isNow);
    expect(now).toHaveLength(1);
    expect(now[0]).toMatchObject({ cost: 0, crewRef: visit!.crewRef, week: mondayOf(visit!.firstDay) });
    expect(found.choices.length).toBeGreaterThan(8);
    expect(found.choices.some(({ cost }) => cost > 0)).toBe(true);
  });

  it('splits it off a visit of several fences, and lays it out on days of that week', async () => {
    const visit = (await open()).find(({ items }) => items.length > 1)!;
    const { fenceRef } = visit.items[0]!;
    const { place } = await lastPlace(visit.uid, fenceRef);
    const request = { uid: visit.uid, fenceRef, week: place.week, crewRef: place.crewRef, now: NOW, ...ACT };
    const before = await open();
    const preview = await previewGiven(sample.register, request);
    expect(preview).toMatchObject({ kind: 'preview', choice: { cost: place.cost } });
    expect(await open()).toEqual(before);
    const result = await giveWeek(sample.register, request);
    if (result.kind !== 'given') throw new Error(JSON.stringify(result));
    expect(result.visit).toMatchObject({ state: 'proposed', planId: null, crewRef: place.crewRef });
    expect(mondayOf(result.visit.firstDay)).toBe(place.week);
    expect(result.visit.items.map((item) => item.fenceRef)).toEqual([fenceRef]);
    const rest = await readVisit(sample.register.db, visit.uid);
    expect(rest?.items.map((item) => item.fenceRef)).toEqual(visit.items.slice(1).map((item) => item.fenceRef));
    expect(rest?.sequence).toBe(visit.sequence + 1);
    const history = await visitHistory(sample.register.db, result.visit.uid);
    expect(history.at(-1)).toMatchObject({ by: 'nell', because: `fence ${fenceRef} given to this week` });
    const all = (await open()).flatMap(({ items }) => items.map((item) => item.fenceRef));
    expect(new Set(all).size).toBe(all.length);
    const told = await toldOf(fenceRef);
    expect(told.filter(({ void_reason }) => void_reason === null)).toEqual([
      { visit_uid: result.visit.uid, matter: 'visit proposed', void_reason: null },
    ]);
    const others = (await toldOf(visit.items[1]!.fenceRef)).filter(({ void_reason }) => void_reason === null);
    expect(others).toEqual([{ visit_uid: visit.uid, matter: 'visit proposed', void_reason: null }]);
  });

  it('is kept by every plan that is made and accepted after it, until it is left to them again', async () => {
    const given = (await open()).find(({ planId }) => planId === null)!;
    await planAndAccept(at('2026-11-25T12:00:00Z'));
    expect(await readVisit(sample.register.db, given.uid)).toEqual(given);
    expect((await readPlan(sample.register.db, 2))?.content.promised).toContain(given.items[0]!.fenceRef);
    const others = (await open()).filter(({ uid }) => uid !== given.uid).flatMap(({ items }) => items);
    expect(others.map(({ fenceRef }) => fenceRef)).not.toContain(given.items[0]!.fenceRef);
    const left = await leaveToPlans(sample.register, { uid: given.uid, now: NOW, ...ACT });
    expect(left).toMatchObject({ kind: 'left', visit: { planId: 2 } });
    expect(await leaveToPlans(sample.register, { uid: given.uid, now: NOW, ...ACT })).toMatchObject({
      kind: 'refused',
    });
  });

  it('moves the visit itself where it has no other fence', async () => {
    const visit = (await open()).find(({ items, state }) => items.length === 1 && state === 'proposed')!;
    const { fenceRef } = visit.items[0]!;
    const { place } = await lastPlace(visit.uid, fenceRef);
    const result = await giveWeek(sample.register, {
      uid: visit.uid,
      fenceRef,
      week: place.week,
      crewRef: place.crewRef,
      now: NOW,
      ...ACT,
    });
    expect(result).toMatchObject({ kind: 'given', rest: null, visit: { uid: visit.uid, planId: null } });
    const told = await toldOf(fenceRef);
    expect(told.filter(({ void_reason }) => void_reason === null)).toHaveLength(1);
    expect(told.at(-1)).toMatchObject({ visit_uid: visit.uid, void_reason: null });
    expect(told.at(-2)).toMatchObject({ visit_uid: visit.uid, void_reason: CHANGED_AGAIN });
  });

  it('is refused, with the reason, where rules or hours forbid it or the day is promised', async () => {
    const visit = (await open()).find(({ planId, state }) => planId !== null && state === 'proposed')!;
    const { fenceRef } = visit.items[0]!;
    const { found } = await lastPlace(visit.uid, fenceRef);
    const give = (week: string, crewRef: string) =>
      giveWeek(sample.register, { uid: visit.uid, fenceRef, week, crewRef, now: NOW, ...ACT });
    expect(await give(mondayOf(visit.firstDay), visit.crewRef)).toMatchObject({
      reason: 'the fence is in that week already',
    });
    expect(await give('2027-01-04', 'nobody')).toMatchObject({
      reason: expect.stringContaining('cannot do these') as string,
    });
    const barred = found.choices.find(({ bars }) => bars.length > 0);
    if (barred)
      expect(await give(barred.week, barred.crewRef)).toMatchObject({
        reason: expect.stringMatching(/rules/) as string,
      });
    const confirmed = await confirmVisit(sample.register, {
      uid: visit.uid,
      day: visit.firstDay,
      startsAt: null,
      crewRef: null,
      sure: true,
      now: NOW,
      ...ACT,
    });
    expect(confirmed.kind).toBe('changed');
    expect(await choicesFor(sample.register, { uid: visit.uid, fenceRef, now: NOW })).toMatchObject({
      kind: 'refused',
      reason: expect.stringContaining('promised') as string,
    });
    expect(await choicesFor(sample.register, { uid: 'none', fenceRef, now: NOW })).toMatchObject({ kind: 'refused' });
  });
});
