import type { FenceFacts } from '../forecast/fence-facts.ts';
import { type FenceForecast, seasonOne } from '../forecast/fence-forecast.ts';
import { fenceStates, stateOn } from '../forecast/fence-state.ts';
import { foundPosts, foundRemarks } from '../forecast/found-posts.ts';
import type { CalendarDay } from '../units/calendar-day.ts';

const foundOn = (facts: FenceFacts, day: CalendarDay): readonly string[] =>
  foundRemarks(stateOn(fenceStates(facts), day));

/** The day of the last record, or of season 1 where that is later. */
function latestDay({ inspections, outcomes, works }: FenceFacts, forecast: FenceForecast): CalendarDay {
  const days = [...inspections, ...outcomes, ...works].map(({ day }) => day);
  return days.reduce((last, day) => (day > last ? day : last), seasonOne(forecast).day);
}

/** True where a post is recorded broken, leaning or closed off and not mended since, as of the last record. */
export function isFoundDangerous(facts: FenceFacts, forecast: FenceForecast): boolean {
  const { broken, leaning, closedOff } = foundPosts(stateOn(fenceStates(facts), latestDay(facts, forecast)));
  return broken.length + leaning.length + closedOff.length > 0;
}

/**
 * What was found at the posts and not mended since, the most pressing first, as of the last record: a stored forecast knows only
 * what was found before its sweep, and a post found dangerous since then cannot wait for the next.
 */
export function latestFindings(facts: FenceFacts, forecast: FenceForecast): readonly string[] {
  return foundOn(facts, latestDay(facts, forecast));
}

/** The forecast's remarks without those on what was found at the posts. */
export function remarksBesideFindings(facts: FenceFacts, forecast: FenceForecast): readonly string[] {
  const found = new Set(foundOn(facts, seasonOne(forecast).day));
  return forecast.remarks.filter((remark) => !found.has(remark));
}
