import { type CalendarDay, dayFromNumber, dayNumber, yearOf } from '../units/calendar-day.ts';
import type { FenceFacts, InstallDate } from './fence-facts.ts';
import { openingDay, seasonLabel } from './season-calendar.ts';

/** Number of seasons that are forecast, season 1 included. */
const SEASONS_AHEAD = 30;

/** One date at which a fence's state is taken. */
export interface SeasonDay {
  /** `new` for the installation. */
  readonly label: string;
  /** 1 = running or next to open; null = at installation. */
  readonly season: number | null;
  readonly day: CalendarDay;
}

/** The middle of an install date range. */
export const middleDay = (date: InstallDate): CalendarDay =>
  dayFromNumber(Math.floor((dayNumber(date.earliest) + dayNumber(date.latest)) / 2));

/**
 * The dates at which a fence is forecast: at installation, at each season opening since, and at the openings of seasons
 * 1 to 30. States are taken at the opening; for season 1, where it is running and something was done or found (or the fence
 * was installed) since it opened, at the latest of those days, so that it shows at once.
 * @param seasonOneYear calendar year in which season 1 opens
 */
export function seasonDays(facts: FenceFacts, seasonOneYear: number): readonly SeasonDay[] {
  const { seasonWindow } = facts.site;
  const installed = middleDay(facts.installed);
  const days: SeasonDay[] = [{ label: 'new', season: null, day: installed }];
  for (let year = yearOf(installed); year < seasonOneYear; year += 1) {
    const day = openingDay(seasonWindow, year);
    if (day > installed) days.push({ label: seasonLabel(seasonWindow, year), season: year - seasonOneYear + 1, day });
  }
  const secondOpens = openingDay(seasonWindow, seasonOneYear + 1);
  const events = [...facts.works, ...facts.inspections, ...facts.outcomes].map(({ day }) => day);
  const firstState = [openingDay(seasonWindow, seasonOneYear), installed, ...events]
    .filter((day) => day < secondOpens)
    .sort()
    .at(-1)!;
  for (let season = 1; season <= SEASONS_AHEAD; season += 1) {
    const year = seasonOneYear + season - 1;
    const day = season === 1 ? firstState : openingDay(seasonWindow, year);
    days.push({ label: seasonLabel(seasonWindow, year), season, day });
  }
  return days;
}
