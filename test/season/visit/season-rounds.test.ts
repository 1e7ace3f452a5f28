import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../src/season/plan/mip-solver.ts';
import { changedVisit } from '../../../src/season/visit/change-visit.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import { hoursByWeek } from '../../../src/season/visit/visits-that-stand.ts';
import { mondayOf } from '../../../src/season/visit/week-of-day.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { strictestRules } from '../../../src/season/works-window.ts';
import { loadPlanSolver } from '../../../src/service/plan-solver.ts';
import { addDays } from '../../../src/units/calendar-day.ts';
import { uniforms } from '../plan/made-up-problem.ts';
import { hoursOnOf, type MadeUpSeason, madeUpSeason, planAndAccept, TODAY } from './made-up-season.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadPlanSolver();
});

const isOpen = ({ state }: Visit): boolean => state === 'proposed' || state === 'confirmed';
const fencesOf = (visits: readonly Visit[]): readonly string[] =>
  visits.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef));
const hoursOf = ({ items, travelPersonHours }: Visit): number =>
  items.reduce((sum, { personHours }) => sum + personHours, travelPersonHours);

/** No crew over its hours in any week, nor on any day that single visits fill. */
function keepsHours(season: MadeUpSeason, visits: readonly Visit[]): void {
  const hoursOn = hoursOnOf(season);
  const byWeek = new Map<string, number>();
  const byDay = new Map<string, number>();
  for (const visit of visits) {
    for (const [monday, hours] of hoursByWeek(visit, hoursOn)) {
      const slot = `${visit.crewRef} ${monday}`;
      byWeek.set(slot, (byWeek.get(slot) ?? 0) + hours);
    }
    if (visit.firstDay !== visit.lastDay) continue;
    const slot = `${visit.crewRef} ${visit.firstDay}`;
    byDay.set(slot, (byDay.get(slot) ?? 0) + hoursOf(visit));
  }
  for (const [slot, hours] of byWeek) {
    const [crew, monday] = slot.split(' ') as [string, string];
    const there = [0, 1, 2, 3, 4].reduce((sum, day) => sum + hoursOn(crew, addDays(monday, day)), 0);
    expect(hours, slot).toBeLessThanOrEqual(there + 1e-5);
  }
  for (const [slot, hours] of byDay) {
    const [crew, day] = slot.split(' ') as [string, string];
    expect(hours, slot).toBeLessThanOrEqual(hoursOn(crew, day) + 1e-5);
  }
}

/** Nothing on a day off, before a locate notice runs out, on frozen ground, or too late for its footings to cure. */
function keepsRules(season: MadeUpSeason, visits: readonly Visit[]): void {
  const hoursOn = hoursOnOf(season);
  for (const { uid, crewRef, siteRef, firstDay, lastDay, items } of visits) {
    expect(mondayOf(lastDay), uid).toBe(mondayOf(firstDay));
    expect(hoursOn(crewRef, firstDay), uid).toBeGreaterThan(0);
    expect(hoursOn(crewRef, lastDay), uid).toBeGreaterThan(0);
    for (const { fenceRef, works } of items) {
      const fence = season.fences.find(({ candidates }) => candidates.fenceRef === fenceRef)!;
      const { opensOn, frozen } = fence.calendar;
      const rules = strictestRules(
        works.map(({ kind }) => kind),
        SHIPPED_CATALOGUE,
      );
      expect(fence.siteRef).toBe(siteRef);
      expect(firstDay >= addDays(TODAY, rules.locateNoticeDays), `${uid} ${fenceRef} locate`).toBe(true);
      expect(lastDay <= addDays(opensOn, -Math.max(1, rules.cureDays)), `${uid} ${fenceRef} cure`).toBe(true);
      const inFrost = frozen !== null && firstDay.slice(5) <= frozen.closes;
      expect(inFrost && rules.notOnFrozenGround, `${uid} ${fenceRef} frost`).toBe(false);
      const licensed = season.crews
        .find(({ ref }) => ref === crewRef)!
        .times.members.some(({ skills }) => skills.length > 0);
      expect(licensed || !rules.licensedApplicator, `${uid} ${fenceRef} licence`).toBe(true);
    }
  }
}

describe('a season of plans, promises and visits that come to nothing, over random registers', () => {
  it('keeps hours, deadlines, notices and promises, moves nothing that is promised and loses no fence', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const season = madeUpSeason(seed);
        const next = uniforms(seed + 1);
        let visits: readonly Visit[] = [];
        for (let planId = 1; planId <= 3; planId += 1) {
          const before = new Map(visits.map((visit) => [visit.uid, visit]));
          const round = planAndAccept(season, visits, { solver, planId });
          const open = round.visits.filter(isOpen);
          const proposed = open.filter(({ state }) => state === 'proposed');
          keepsHours(season, open);
          keepsRules(season, proposed);
          expect(round.plan.brokenPromises).toEqual([]);
          // a fence has one visit at most, and none that was planned for this season gets lost
          expect(new Set(fencesOf(open)).size).toBe(fencesOf(open).length);
          const planned = new Set(round.plan.visits.flatMap(({ items }) => items.map(({ jobRef }) => jobRef)));
          const dropped = round.accepted.withoutDays.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef));
          expect([...fencesOf(open), ...dropped].sort()).toEqual([...planned].sort());
          // those that were missed or called off are in the plan's problem again, as if nothing had been said
          for (const job of round.problem.jobs) {
            if (fencesOf([...before.values()].filter(isOpen)).includes(job.ref)) continue;
            expect([job.promised, job.previous]).toEqual([null, null]);
          }
          expect(round.problem.jobs).toHaveLength(season.fences.length);
          for (const visit of round.visits) {
            const old = before.get(visit.uid);
            if (!old) continue;
            if (old.state !== 'proposed') expect(visit).toBe(old);
            expect(visit.sequence - old.sequence).toBe(Number(visit !== old));
          }
          const at = `2027-01-06T1${planId}:00:00.000Z`;
          visits = round.visits.map((visit) => {
            const dice = isOpen(visit) ? next() : 1;
            if (dice < 0.25) return changedVisit(visit, { state: 'confirmed' }, at);
            if (dice < 0.35) return changedVisit(visit, { state: 'missed' }, at);
            if (dice < 0.45) return changedVisit(visit, { state: 'cancelled' }, at);
            return visit;
          });
        }
      }),
      { numRuns: 25 },
    );
  });

  it('changes nothing where nothing has changed: the same plan again keeps every visit to the day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const season = madeUpSeason(seed);
        const first = planAndAccept(season, [], { solver, planId: 1 });
        const again = planAndAccept(season, first.visits, { solver, planId: 2 });
        const { kept, moved, created, cancelled } = again.accepted;
        expect([moved, created, cancelled]).toEqual([[], [], []]);
        expect(kept).toHaveLength(first.accepted.created.length);
        expect(again.visits).toEqual(first.visits);
      }),
      { numRuns: 20 },
    );
  });
});
