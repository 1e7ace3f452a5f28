import { countHeldNotices, countOfficeNotices, countVisits, type HeldCount } from '../register/brief-counts.ts';
import { type DangerousFences, listDangerousFences } from '../register/dangerous-fences.ts';
import type { Register } from '../register/database.ts';
import { countOutbox } from '../register/outbox.ts';
import { listPlanHeads, type PlanHead } from '../register/plan-store.ts';
import { countFencesByRegion, type RegionCounts } from '../register/season-counts.ts';
import {
  type ChangeCount,
  countBetterButDangerous,
  countStandingChanges,
  listStandingChanges,
  type StandingChange,
} from '../register/standing-changes.ts';
import { finishedBefore, type Sweep } from '../register/sweep-store.ts';
import type { OutboxState } from '../register/sweep-tables.ts';
import { listVisits } from '../register/visit-store.ts';
import { type RegionSeason, regionSeason } from '../season/region-season.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import type { Clock } from './clock.ts';
import { officeToday } from './crew-sheets.ts';
import { type HoursAhead, hoursAhead, inFewColumns } from './hours-ahead.ts';
import { type OwnerDays, ownerDaysAhead } from './owner-days.ts';

/** Weeks whose hours the brief shows. */
const WEEKS_SHOWN = 6;
/** Changes of standing that it names; the rest is counted. */
const CHANGES_NAMED = 6;
/** Dangerous fences that it names. */
const DANGERS_NAMED = 5;
/** Days back in which it looks for visits that were missed [d]. */
const MISSED_DAYS = 14;
const REST_OF_WEEK = 6;

/** The fences of a region that share a storm season, and where that stands. */
export interface RegionBrief extends Omit<RegionCounts, 'window'> {
  readonly opens: string;
  readonly closes: string;
  readonly season: RegionSeason;
}

/** Everything that the season brief says. */
export interface SeasonBrief {
  readonly today: CalendarDay;
  /** Recorded dangerous and not dealt with, also what no sweep has seen yet. */
  readonly danger: DangerousFences;
  /** Those that open next first. */
  readonly regions: readonly RegionBrief[];
  readonly changes: {
    readonly counts: readonly ChangeCount[];
    readonly named: readonly StandingChange[];
    /** True where no sweep that was finished before the last one had computed a fence. */
    readonly isFirstSweep: boolean;
    /** Recorded dangerous and standing better, which `counts` and `named` leave out. */
    readonly betterButDangerous: number;
  };
  readonly hours: HoursAhead;
  /** The plan in force, and the newest that was made. */
  readonly plan: { readonly inForce: PlanHead | null; readonly newest: PlanHead | null };
  readonly mail: {
    readonly held: HeldCount;
    readonly office: number;
    readonly outbox: Readonly<Record<OutboxState, number>>;
  };
  /** What owners said of the days of visits to come. */
  readonly ownerDays: OwnerDays;
  readonly visits: {
    readonly thisWeek: readonly Visit[];
    /** Missed within the last two weeks. */
    readonly missed: number;
    /** Promised for days that are past, and nobody has said what became of them. */
    readonly overdue: number;
    readonly toCome: number;
  };
}

const daysAhead = ({ season }: RegionBrief): number =>
  season.kind === 'all year' ? Number.POSITIVE_INFINITY : season.daysToOpening;

/** The regions with where their seasons stand, those that open next first. */
const regionsOf = (counted: readonly RegionCounts[], today: CalendarDay): readonly RegionBrief[] =>
  counted
    .map(({ window, ...counts }) => ({ ...counts, ...window, season: regionSeason(window, today) }))
    .sort((a, b) => daysAhead(a) - daysAhead(b) || (a.region < b.region ? -1 : 1));

/** Gathers the season brief; counts by indexes, loads no forecast. @param sweep the last finished one */
export async function seasonBrief(register: Register, now: Clock, sweep: Sweep | null): Promise<SeasonBrief> {
  const { db } = register;
  const today = await officeToday(register, now);
  const monday = mondayOf(today);
  const plans = await listPlanHeads(db);
  const regions = await countFencesByRegion(register, today);
  return {
    today,
    danger: await listDangerousFences(register, { since: sweep?.startedAt ?? '', most: DANGERS_NAMED }),
    regions: regionsOf(regions, today),
    changes: sweep
      ? {
          counts: await countStandingChanges(register, sweep.id),
          named: await listStandingChanges(register, sweep.id, CHANGES_NAMED),
          isFirstSweep: !(await finishedBefore(register, sweep.id)),
          betterButDangerous: await countBetterButDangerous(register, sweep.id),
        }
      : { counts: [], named: [], isFirstSweep: true, betterButDangerous: 0 },
    hours: inFewColumns(await hoursAhead(register, { today, weeks: WEEKS_SHOWN, regions })),
    plan: { inForce: plans.find(({ state }) => state === 'accepted') ?? null, newest: plans[0] ?? null },
    mail: {
      held: await countHeldNotices(register),
      office: await countOfficeNotices(register),
      outbox: await countOutbox(register),
    },
    ownerDays: await ownerDaysAhead(register, today),
    visits: {
      thisWeek: await listVisits(db, {
        from: monday,
        to: addDays(monday, REST_OF_WEEK),
        states: ['proposed', 'confirmed', 'done', 'missed'],
      }),
      missed: await countVisits(db, { states: ['missed'], from: addDays(today, -MISSED_DAYS), to: null }),
      overdue: await countVisits(db, { states: ['confirmed'], from: null, to: addDays(today, -1), ended: true }),
      toCome: await countVisits(db, { states: ['proposed', 'confirmed'], from: today, to: null }),
    },
  };
}
