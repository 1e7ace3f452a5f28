import type { CatalogueKind } from '../../../src/season/catalogue-entry.ts';
import { type CrewTimes, personHoursInWeek, personHoursOn } from '../../../src/season/crew-hours.ts';
import type { MipSolver } from '../../../src/season/plan/mip-solver.ts';
import { PLAN_LIMITS } from '../../../src/season/plan/plan-limits.ts';
import type { PlanCrew, PlanProblem } from '../../../src/season/plan/plan-problem.ts';
import { planSeason } from '../../../src/season/plan/plan-season.ts';
import type { SeasonPlan } from '../../../src/season/plan/season-plan.ts';
import { type PlannedFence, seasonProblem } from '../../../src/season/season-problem.ts';
import { usefulOptions } from '../../../src/season/useful-options.ts';
import { type AcceptedVisits, acceptPlan } from '../../../src/season/visit/accept-plan.ts';
import { layOutDays } from '../../../src/season/visit/lay-out-days.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import { visitsOfPlan } from '../../../src/season/visit/visits-of-plan.ts';
import {
  type HoursOn,
  hoursByWeek,
  type StandingVisits,
  visitsThatStand,
  withoutSpilled,
  withPromises,
} from '../../../src/season/visit/visits-that-stand.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { worksCost } from '../../../src/season/works-cost.ts';
import { addDays, type CalendarDay } from '../../../src/units/calendar-day.ts';
import { inspectOf, mondays, plannedFence, worksOf } from '../made-up-planned-fence.ts';
import { uniforms } from '../plan/made-up-problem.ts';

/** A Wednesday; the first Monday after it. */
export const TODAY = '2027-01-06';
export const FIRST_WEEK = '2027-01-11';

/** An office with its crews and fences, all made up. */
export interface MadeUpSeason {
  readonly weeks: readonly CalendarDay[];
  readonly crews: readonly { readonly ref: string; readonly times: CrewTimes; readonly travel: PlanCrew['travel'] }[];
  readonly fences: readonly PlannedFence[];
}

const RECIPES: readonly (readonly Exclude<CatalogueKind, 'inspect'>[])[] = [
  ['post-swap'],
  ['steel-sleeve'],
  ['groundline-treatment'],
  ['footing-reset', 'groundline-treatment'],
  ['rebuild'],
];

/** A season in which every rule bites: few hours, days off, openings near, frozen ground, licences, dangerous posts. */
export function madeUpSeason(seed: number): MadeUpSeason {
  const next = uniforms(seed);
  const whole = (most: number): number => Math.floor(next() * most);
  const weeks = mondays(FIRST_WEEK, 6);
  const sites = Array.from({ length: 3 }, (_, n) => ({
    ref: `site-${n}`,
    opensOn: addDays(FIRST_WEEK, 14 + whole(60)),
    frozen: next() < 0.3 ? { opens: '01-01', closes: `01-${10 + whole(15)}` } : null,
  }));
  const crews = Array.from({ length: 2 }, (_, n) => ({
    ref: `crew-${n}`,
    times: {
      members: Array.from({ length: 1 + whole(3) }, (_none, m) => ({
        ref: `m-${n}-${m}`,
        hoursPerWeek: 20 + whole(21),
        skills: next() < 0.5 ? ['licensed-applicator'] : [],
        languages: [],
        fromDay: null,
        toDay: null,
      })),
      daysOff: Array.from({ length: whole(3) }, () => {
        const firstDay = addDays(FIRST_WEEK, whole(35));
        return { memberRef: next() < 0.5 ? null : `m-${n}-0`, firstDay, lastDay: addDays(firstDay, whole(3)) };
      }),
      weatherReserve: next() < 0.5 ? 0 : 0.15,
    },
    travel: sites.map(({ ref }) => ({ siteRef: ref, personHours: whole(9) / 4, cost: whole(90) })),
  }));
  const fences = Array.from({ length: 5 + whole(8) }, (_, n) => {
    const { ref: siteRef, opensOn, frozen } = sites[whole(sites.length)]!;
    const recipes = RECIPES.filter(() => next() < 0.6);
    const posts = 2 + whole(9);
    const candidates = (recipes.length > 0 ? recipes : [RECIPES[0]!]).map((kinds) => {
      const made = worksOf(kinds);
      const parts = kinds.map((kind) => ({
        kind,
        at: 'all' as const,
        posts: Array.from({ length: posts }, (_none, post) => post + 1),
        postCount: posts,
      }));
      const cost = worksCost(parts, SHIPPED_CATALOGUE);
      const worth = 300 + whole(4000);
      const drop = { thisSeason: worth / 6, toHorizon: worth + cost.price * next(), ifLate: worth / 2 };
      return { ...made, cost, drop, mends: [1], option: { ...made.option, parts, cost } };
    });
    return plannedFence({
      siteRef,
      calendar: { today: TODAY, opensOn, frozen },
      season: { opensOn, closesOn: addDays(opensOn, 180), allYear: false },
      dangerPosts: next() < 0.2 ? [1] : [],
      candidates: {
        fenceRef: `F-${String(n).padStart(2, '0')}`,
        standing: next() < 0.5 ? 'short' : 'clear',
        candidates: next() < 0.5 ? [...candidates, inspectOf()] : candidates,
      },
    });
  });
  return { weeks, crews, fences };
}

/** Hours of the crews of a season, none at the weekend [h]. */
export const hoursOnOf =
  ({ crews }: MadeUpSeason): HoursOn =>
  (crewRef, day) =>
    [0, 6].includes(new Date(`${day}T00:00:00Z`).getUTCDay())
      ? 0
      : personHoursOn(crews.find(({ ref }) => ref === crewRef)!.times, day);

/** A plan and what accepting it made of the visits. */
export interface Round {
  readonly problem: PlanProblem;
  readonly plan: SeasonPlan;
  readonly standing: StandingVisits;
  readonly accepted: AcceptedVisits;
  /** All visits after it, in whatever state. */
  readonly visits: readonly Visit[];
}

/** Makes a plan beside the visits that are there, as the service does, and accepts it. */
export function planAndAccept(
  season: MadeUpSeason,
  visits: readonly Visit[],
  { solver, planId }: { readonly solver: MipSolver; readonly planId: number },
): Round {
  const { weeks, crews, fences } = season;
  const hoursOn = hoursOnOf(season);
  const open = visits.filter(({ state }) => state === 'proposed' || state === 'confirmed');
  const standing = visitsThatStand(open, { today: TODAY, firstWeek: FIRST_WEEK, hoursOn });
  const planned = crews.map(
    ({ ref, times, travel }): PlanCrew => ({
      ref,
      personHoursByWeek: weeks.map((monday) => personHoursInWeek(times, monday)),
      skills: [...new Set(times.members.flatMap(({ skills }) => skills))],
      languages: [],
      travel,
    }),
  );
  const whole = withPromises(
    seasonProblem({
      weeks,
      crews: withoutSpilled(planned, weeks, standing),
      fences: fences
        .filter(({ candidates }) => !standing.visitedBefore.has(candidates.fenceRef))
        .map((fence) => ({
          ...fence,
          promised: standing.promised.get(fence.candidates.fenceRef) ?? null,
          previous: standing.previous.get(fence.candidates.fenceRef) ?? null,
        })),
      catalogue: SHIPPED_CATALOGUE,
      changePenalty: 40,
    }),
    standing,
  );
  const problem = { ...whole, jobs: whole.jobs.map((job) => ({ ...job, options: usefulOptions(job) })) };
  const plan = planSeason(problem, { solver, limits: PLAN_LIMITS, timeIsOver: () => false });
  const byRef = new Map(fences.map((fence) => [fence.candidates.fenceRef, fence]));
  const accepted = acceptPlan({
    planId,
    at: `2027-01-06T0${planId}:00:00.000Z`,
    today: TODAY,
    firstWeek: FIRST_WEEK,
    weekVisits: visitsOfPlan(plan.visits, byRef),
    standing: open,
    doneFences: new Set(),
    layOut: ({ crewRef, monday, beside }, requests) =>
      layOutDays(
        {
          monday,
          personHoursByDay: [0, 1, 2, 3, 4].map((day) => hoursOn(crewRef, addDays(monday, day))),
          taken: beside.map((visit) => ({
            ...visit,
            place: null,
            personHours: hoursByWeek(visit, hoursOn).get(monday) ?? 0,
          })),
        },
        requests.map((request) => ({ ...request, place: null })),
      ),
    newUid: (_, index) => `V${planId}-${index}`,
  });
  const changed = new Map(
    [...accepted.moved, ...accepted.created, ...accepted.cancelled].map((visit) => [visit.uid, visit]),
  );
  const known = new Set(visits.map(({ uid }) => uid));
  return {
    problem,
    plan,
    standing,
    accepted,
    visits: [
      ...visits.map((visit) => changed.get(visit.uid) ?? visit),
      ...accepted.created.filter(({ uid }) => !known.has(uid)),
    ],
  };
}
