import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import type { CatalogueKind, CatalogueRules } from './catalogue-entry.ts';
import type { WeekBar } from './plan/plan-problem.ts';
import { inSeason } from './storm-season.ts';
import type { WorksCatalogue } from './works-catalogue.ts';

/** The days that rules of works are kept against, at one site. */
export interface WorksCalendar {
  /** The day from which notice can be given. */
  readonly today: CalendarDay;
  /** Opening of the storm season that comes next, after today. */
  readonly opensOn: CalendarDay;
  /** First and last day of frozen ground, `MM-DD`, may wrap the year end; null where the ground does not freeze. */
  readonly frozen: { readonly opens: string; readonly closes: string } | null;
}

/** When works can be done so that they count in the coming season. */
export interface WorksWindow {
  /** First day on which they can be done at all. */
  readonly fromDay: CalendarDay;
  /** Last day on which they are in time for the coming season. */
  readonly latestDay: CalendarDay;
  readonly inTime: boolean;
  /** What keeps them from being in time; null where they are. */
  readonly bar: WeekBar | null;
  /** True where the law may ask for a licensed applicator. */
  readonly licensedApplicator: boolean;
  /** True where a permit may be needed. */
  readonly permit: boolean;
}

/** The rules of works done together: of each the strictest. */
export function strictestRules(kinds: readonly CatalogueKind[], catalogue: WorksCatalogue): CatalogueRules {
  const rules = kinds.map((kind) => catalogue[kind].rules);
  return {
    cureDays: Math.max(0, ...rules.map(({ cureDays }) => cureDays)),
    locateNoticeDays: Math.max(0, ...rules.map(({ locateNoticeDays }) => locateNoticeDays)),
    notOnFrozenGround: rules.some(({ notOnFrozenGround }) => notOnFrozenGround),
    licensedApplicator: rules.some(({ licensedApplicator }) => licensedApplicator),
    permit: rules.some(({ permit }) => permit),
  };
}

const isFrozen = (rules: CatalogueRules, { frozen }: WorksCalendar, day: CalendarDay): boolean =>
  rules.notOnFrozenGround && frozen !== null && inSeason(frozen, day.slice(5));

/** Last day on which works are in time: before the opening, and early enough for a footing to gain strength. */
const lastInTime = (rules: CatalogueRules, { opensOn }: WorksCalendar): CalendarDay =>
  addDays(opensOn, -Math.max(1, rules.cureDays));

/**
 * What bars works on a day: the locate notice, frozen ground, or a footing that would still be gaining strength when the
 * season opens; nothing where they can be done. From the opening on cure time bars nothing: then every week is a risk.
 */
export function barsOn(rules: CatalogueRules, calendar: WorksCalendar, day: CalendarDay): readonly WeekBar[] {
  const bars: WeekBar[] = [];
  if (day < addDays(calendar.today, rules.locateNoticeDays)) bars.push('locate-notice');
  if (day > lastInTime(rules, calendar) && day < calendar.opensOn) bars.push('cure-time');
  if (isFrozen(rules, calendar, day)) bars.push('frozen-ground');
  return bars;
}

/** Days looked through for ground that is not frozen [d]. */
const YEAR_DAYS = 366;

/**
 * First day on which works can be done and last day on which they are in time for the coming season. Throws RangeError where
 * the season opens today or earlier, or the ground is said to be frozen all year.
 */
export function worksWindow(rules: CatalogueRules, calendar: WorksCalendar): WorksWindow {
  const { today, opensOn } = calendar;
  if (opensOn <= today)
    throw new RangeError(`season opens ${opensOn}, not after ${today}; give the opening that comes next`);
  const noticed = addDays(today, rules.locateNoticeDays);
  const thawed = (from: CalendarDay, step: 1 | -1): CalendarDay => {
    for (let days = 0; days <= YEAR_DAYS; days += 1) {
      const day = addDays(from, step * days);
      if (!isFrozen(rules, calendar, day)) return day;
    }
    throw new RangeError('the ground is said to be frozen all year; give the first and last day of frozen ground');
  };
  const fromDay = thawed(noticed, 1);
  const latestDay = thawed(lastInTime(rules, calendar), -1);
  const inTime = fromDay <= latestDay;
  return {
    fromDay,
    latestDay,
    inTime,
    bar: inTime ? null : barOf(rules, calendar, noticed),
    licensedApplicator: rules.licensedApplicator,
    permit: rules.permit,
  };
}

/** What keeps works from being in time: the rule without which they would be, the ground first. */
function barOf(rules: CatalogueRules, calendar: WorksCalendar, noticed: CalendarDay): WeekBar {
  const last = lastInTime(rules, calendar);
  if (noticed <= last) return 'frozen-ground';
  return calendar.today <= last ? 'locate-notice' : 'cure-time';
}
