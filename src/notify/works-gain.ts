import type { FenceForecast } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import type { Works, WorksKind } from '../forecast/works.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { addDays } from '../units/calendar-day.ts';

/** Works entered longer after their day than this are history, not news [d]; model choice. */
const NEWS_FOR_DAYS = 365;
/** Seasons ahead of season 1 at which the gain is told once more: what slows rot gains later, not at once. */
const LATER_SEASONS = 5;

/** Speeds of the posts a fence is judged by, middle values [m/s]. */
interface GainSpeeds {
  readonly snapMps: number;
  readonly leanMps: number;
  /** Some seasons ahead. */
  readonly laterSnapMps: number | null;
}

/** What works gained: the same seasons with them and without them. */
export interface WorksGain {
  readonly works: readonly { readonly kind: WorksKind; readonly day: CalendarDay }[];
  readonly season: string;
  readonly laterSeason: string | null;
  /** Null where the fence cannot be forecast without them: what was seen names posts that they set. */
  readonly without: GainSpeeds | null;
  readonly with: GainSpeeds;
}

/** Works that have been done by the day. */
export const doneBy = (works: readonly Works[], today: CalendarDay): readonly Works[] =>
  works.filter(({ day }) => day <= today);

/**
 * The works that an owner has not been told of: done within the last year, and not on record at the last forecast.
 * @param told refs of the works on record at the last forecast; null where that is not known, and then there are none
 */
export function worksToTell(
  works: readonly Works[],
  told: readonly string[] | null,
  today: CalendarDay,
): readonly Works[] {
  if (told === null) return [];
  const known = new Set(told);
  const oldest = addDays(today, -NEWS_FOR_DAYS);
  return doneBy(works, today).filter(({ ref, day }) => day >= oldest && !known.has(ref));
}

const laterSeason = ({ seasons }: FenceForecast) => seasons.find((each) => each.season === 1 + LATER_SEASONS);

function speedsOf(forecast: FenceForecast): GainSpeeds {
  const group = judgedGroup(seasonOne(forecast));
  const later = laterSeason(forecast);
  return {
    snapMps: group.snapMps.p50,
    leanMps: group.leanMps.p50,
    laterSnapMps: later ? judgedGroup(later).snapMps.p50 : null,
  };
}

/** What works gained, from the forecast with them and the one without them (null where it cannot be made). */
export const worksGain = (
  works: readonly Works[],
  forecast: FenceForecast,
  without: FenceForecast | null,
): WorksGain => ({
  works: works.map(({ kind, day }) => ({ kind, day })).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)),
  season: seasonOne(forecast).label,
  laterSeason: laterSeason(forecast)?.label ?? null,
  without: without && speedsOf(without),
  with: speedsOf(forecast),
});
