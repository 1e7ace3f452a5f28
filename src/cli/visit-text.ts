import { wholeMoney } from '../drawing/plan-table.ts';
import { visitItemText } from '../drawing/visit-words.ts';
import type { VisitChange } from '../register/visit-store.ts';
import type { VisitEntry, VisitHours } from '../register/visit-work-store.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { VisitDays } from '../service/visit-days.ts';
import { plainTable } from './plain-table.ts';

/** The days of a visit, with the hour at which the crew comes: `2027-01-05 08:30`, `2027-01-05 to 2027-01-06`. */
const daysText = ({ firstDay, lastDay, startsAt }: Pick<Visit, 'firstDay' | 'lastDay' | 'startsAt'>): string =>
  `${firstDay}${startsAt === null ? '' : ` ${startsAt}`}${lastDay === firstDay ? '' : ` to ${lastDay}`}`;

const hoursOf = ({ items, travelPersonHours }: Visit): number =>
  items.reduce((sum, { personHours }) => sum + personHours, travelPersonHours);

/** Visits, a row each. */
export const visitTable = (visits: readonly Visit[]): string =>
  plainTable(
    ['Visit', 'Day', 'Crew', 'Site', 'State', 'Fences', 'Hours'],
    visits.map((visit) => [
      visit.uid,
      daysText(visit),
      visit.crewRef,
      visit.siteRef,
      visit.state,
      visit.items.map(({ fenceRef }) => fenceRef).join(' '),
      hoursOf(visit).toFixed(1),
    ]),
    [6],
  );

/** A visit in one line: `V3-1-0af2c1 at OAK: 2027-01-05, crew north, confirmed`. */
export const visitLine = (visit: Visit): string =>
  `${visit.uid} at ${visit.siteRef}: ${daysText(visit)}, crew ${visit.crewRef}, ${visit.state}`;

/** Everything of one visit that is shown. */
export interface VisitDetails {
  readonly visit: Visit;
  readonly history: readonly VisitChange[];
  readonly entries: readonly VisitEntry[];
  readonly hours: readonly VisitHours[];
  /** Fences that went back to the plan when it was done. */
  readonly returned: readonly string[];
  /** What the owners of its fences said of its days; null where they are not asked. */
  readonly days: VisitDays | null;
}

function usedText({ entries, hours }: VisitDetails, fenceRef: string): string {
  const refs = entries.filter((entry) => entry.fenceRef === fenceRef).map(({ kind, ref }) => `${kind} ${ref}`);
  const used = hours.find((each) => each.fenceRef === fenceRef);
  return [...(used ? [`${used.personHours.toFixed(1)} h used`] : []), ...refs].join(', ');
}

/** Which of its days suit the owners of its fences, a line a day, and whom they do not. */
function dayLines({ visit, days }: VisitDetails): readonly string[] {
  if (days === null) return [];
  const { answered, silent, best, ownerNames, offered } = days;
  const spanFrom = (day: string): string =>
    daysText({
      firstDay: day,
      lastDay: offered.find(({ firstDay }) => firstDay === day)?.lastDay ?? day,
      startsAt: null,
    });
  const names = (refs: readonly string[]): string => refs.map((ref) => ownerNames.get(ref) ?? ref).join(', ');
  return [
    `Days to begin on that suit its owners, one voice each (${answered.length} of ${answered.length + silent.length} have marked theirs${silent.length === 0 ? '' : `; nothing yet from ${names(silent)}`}):`,
    ...days.days.map(
      ({ day, suits, doesNotSuit }) =>
        `  ${spanFrom(day)}${day === visit.firstDay ? ' (proposed)' : ''} suits ${suits.length}${doesNotSuit.length === 0 ? '' : `; not ${names(doesNotSuit)}`}`,
    ),
    ...(best ? [`To confirm the one that suits most: stormpale visit confirm ${visit.uid} --day ${best.day}`] : []),
    '',
  ];
}

/** One visit: what is done where, what was entered, and what became of it. */
export function visitText(details: VisitDetails): string {
  const { visit, history, returned } = details;
  return [
    `Visit ${visitLine(visit)}`,
    `Way ${visit.travelPersonHours.toFixed(1)} h, all people together${visit.planId === null ? '' : `; from plan ${visit.planId}`}; changed ${visit.sequence} times for calendars`,
    ...(visit.note === '' ? [] : [visit.note]),
    '',
    plainTable(
      ['Fence', visit.state === 'done' ? 'What was done' : 'What is done', 'Hours planned', 'Price', 'In the register'],
      visit.items.map((item) => [
        item.fenceRef,
        visitItemText(item),
        item.personHours.toFixed(1),
        wholeMoney(item.price),
        usedText(details, item.fenceRef),
      ]),
      [2, 3],
    ),
    ...(returned.length === 0 ? [] : [`Went back to the plan: ${returned.join(', ')}.`, '']),
    ...dayLines(details),
    'What became of it:',
    ...history.map(
      ({ at, state, crewRef, firstDay, lastDay, by, because }) =>
        `  ${at.slice(0, 16).replace('T', ' ')} ${state}, ${daysText({ firstDay, lastDay, startsAt: null })}, crew ${crewRef}${by === '' ? '' : `, by ${by}`}${because === '' ? '' : `: ${because}`}`,
    ),
    '',
  ].join('\n');
}
