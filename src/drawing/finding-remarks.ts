import type { FenceFacts } from '../forecast/fence-facts.ts';
import { type FenceForecast, seasonOne } from '../forecast/fence-forecast.ts';
import { fenceStates, stateOn } from '../forecast/fence-state.ts';
import { foundRemarks } from '../forecast/found-posts.ts';
import type { CalendarDay } from '../units/calendar-day.ts';

const foundOn = (facts: FenceFacts, day: CalendarDay): readonly string[] =>
  foundRemarks(stateOn(fenceStates(facts), day));

/**
 * What was found at the posts and not mended since, the most pressing first, as of the last record: a stored forecast knows only
 * what was found before its sweep, and a post found dangerous since then cannot wait for the next.
 */
export function latestFindings(facts: FenceFacts, forecast: FenceForecast): readonly string[] {
  const { inspections, outcomes, works } = facts;
  const days = [...inspections, ...outcomes, ...works].map(({ day }) => day);
  return foundOn(
    facts,
    days.reduce((last, day) => (day > last ? day : last), seasonOne(forecast).day),
  );
}

/** The forecast's remarks without those on what was found at the posts. */
export function remarksBesideFindings(facts: FenceFacts, forecast: FenceForecast): readonly string[] {
  const found = new Set(foundOn(facts, seasonOne(forecast).day));
  return forecast.remarks.filter((remark) => !found.has(remark));
}
