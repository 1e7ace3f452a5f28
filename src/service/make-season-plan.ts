import type { Register } from '../register/database.ts';
import { readSettings } from '../register/settings-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { listVisitHours } from '../register/visit-work-store.ts';
import { PLAN_LIMITS } from '../season/plan/plan-limits.ts';
import type { PlanProblem } from '../season/plan/plan-problem.ts';
import { planSeason } from '../season/plan/plan-season.ts';
import type { SeasonPlan } from '../season/plan/season-plan.ts';
import { type PlannedFence, seasonProblem } from '../season/season-problem.ts';
import { type SeasonRisk, seasonRisk } from '../season/season-risk.ts';
import { usefulOptions } from '../season/useful-options.ts';
import { correctedHours, type HoursCorrection, withCorrectedHours } from '../season/visit/corrected-hours.ts';
import {
  type StandingVisits,
  visitsThatStand,
  withoutSpilled,
  withPromises,
} from '../season/visit/visits-that-stand.ts';
import { addDays, type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { loadPlanSolver } from './plan-solver.ts';
import { type KeptVisits, mondayFrom, planCrews, seasonFences, type UnseenFence } from './season-inputs.ts';
import { type CrewInRegister, crewHoursOn, loadCatalogue, loadCrews } from './season-register.ts';

/** Weeks that a plan looks ahead at least and at most; model choice. */
const FEWEST_WEEKS = 8;
const MOST_WEEKS = 30;
const DAYS_PER_WEEK = 7;
/** What it costs to move works that were planned already, a fence, in the register's currency. Source: judgement. */
const CHANGE_PENALTY = 40;
/** Safety time of the search [ms]: counts end it long before. */
const SAFETY_MS = 600_000;

/** How a plan is to be made. */
export interface PlanRequest {
  readonly now: Clock;
  /** Weeks to plan; null: until the last season has opened, 8 to 30. */
  readonly weeks: number | null;
  readonly onProgress: (done: number, total: number) => void;
}

/** A season plan with all that it was made from. */
export interface MadePlan {
  readonly asOf: CalendarDay;
  readonly problem: PlanProblem;
  readonly plan: SeasonPlan;
  readonly risk: SeasonRisk;
  readonly fences: ReadonlyMap<string, PlannedFence>;
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crews: readonly CrewInRegister[];
  readonly unseen: readonly UnseenFence[];
  /** Visits that stood when it was made, and what it keeps of them. */
  readonly standing: StandingVisits;
  /** How hours that crews used have corrected those of the catalogue. */
  readonly hours: readonly HoursCorrection[];
}

/**
 * Weeks from the first Monday on, so many that the last season to open has opened, within limits.
 * @param atLeastTo week that is to be among them where the limits hold it
 */
export function weeksAhead(
  first: CalendarDay,
  wanted: number | null,
  fences: readonly PlannedFence[],
  atLeastTo: CalendarDay = first,
): readonly CalendarDay[] {
  const openings = fences.filter(({ season }) => !season.allYear).map(({ calendar }) => calendar.opensOn);
  const last = [...openings, addDays(atLeastTo, DAYS_PER_WEEK)].reduce(
    (latest, day) => (day > latest ? day : latest),
    first,
  );
  const needed = Math.ceil((dayNumber(last) - dayNumber(first)) / DAYS_PER_WEEK);
  const count = wanted ?? Math.min(MOST_WEEKS, Math.max(FEWEST_WEEKS, needed));
  return Array.from({ length: count }, (_, week) => addDays(first, week * DAYS_PER_WEEK));
}

const keptVisits = ({ promised, previous }: StandingVisits): KeptVisits =>
  new Map(
    [...promised.keys(), ...previous.keys()].map((fenceRef) => [
      fenceRef,
      { promised: promised.get(fenceRef) ?? null, previous: previous.get(fenceRef) ?? null },
    ]),
  );

/**
 * Makes the season plan of the whole register: looks at every fence, weighs what could be done, and fills the crews' weeks.
 * Confirmed visits are kept to the day, proposed ones as far as that costs little; fences that are visited before the plan
 * begins are left out. The catalogue's hours are corrected by those that crews used.
 * Nothing is stored. Blocks its thread while it searches; deterministic for the same register and day.
 */
export async function makeSeasonPlan(register: Register, request: PlanRequest): Promise<MadePlan> {
  const { db } = register;
  const asListed = await loadCatalogue(db);
  const hours = correctedHours(await listVisitHours(db), asListed);
  const catalogue = withCorrectedHours(asListed, hours);
  const crews = await loadCrews(db);
  const { timeZone } = await readSettings(db);
  const asOf = dayInZone(request.now(), timeZone);
  const firstWeek = mondayFrom(addDays(asOf, 1));
  const open = await listVisits(db, { states: ['proposed', 'confirmed'] });
  const standing = visitsThatStand(open, { today: asOf, firstWeek, hoursOn: crewHoursOn(crews) });
  const { fences, sites, unseen } = await seasonFences(register, {
    ...request,
    catalogue,
    kept: keptVisits(standing),
    leaveOut: new Set(standing.visitedBefore.keys()),
  });
  const weeks = weeksAhead(firstWeek, request.weeks, fences);
  const whole = withPromises(
    seasonProblem({
      weeks,
      crews: withoutSpilled(planCrews(crews, sites, weeks), weeks, standing),
      fences,
      catalogue,
      changePenalty: CHANGE_PENALTY,
    }),
    standing,
  );
  const problem = { ...whole, jobs: whole.jobs.map((job) => ({ ...job, options: usefulOptions(job) })) };
  const solver = await loadPlanSolver();
  const stopAt = request.now().toMillis() + SAFETY_MS;
  const plan = planSeason(problem, {
    solver,
    limits: PLAN_LIMITS,
    timeIsOver: () => request.now().toMillis() > stopAt,
  });
  return {
    asOf,
    problem,
    plan,
    risk: seasonRisk(fences, plan.visits),
    fences: new Map(fences.map((fence) => [fence.candidates.fenceRef, fence])),
    siteNames: new Map(sites.map(({ ref, name }) => [ref, name])),
    crews,
    unseen,
    standing,
    hours,
  };
}
