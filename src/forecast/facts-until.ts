import type { CalendarDay } from '../units/calendar-day.ts';
import type { FenceFacts } from './fence-facts.ts';

/**
 * A fence's facts with only what had been observed or done by a day: inspections, storm outcomes and works of later days are left
 * out. What is recorded of the fence and its site, and what was learned, stays as it is given.
 */
export const factsUntil = (facts: FenceFacts, day: CalendarDay): FenceFacts => {
  const byThen = <R extends { readonly day: CalendarDay }>(records: readonly R[]): readonly R[] =>
    records.filter((record) => record.day <= day);
  return {
    ...facts,
    inspections: byThen(facts.inspections),
    outcomes: byThen(facts.outcomes),
    works: byThen(facts.works),
  };
};
