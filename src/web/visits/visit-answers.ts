import { hoursWords, listWords } from '../../drawing/day-words.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import type { Visit } from '../../season/visit/visit.ts';
import type { DoResult } from '../../service/do-visit.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { daysWords } from './visits-page.tsx';

/** What the page of a visit says after something was done, by the word in its address. */
export const SAID: ReadonlyMap<string, string> = new Map([
  ['confirm', 'Confirmed: no plan moves it from now on.'],
  ['done', 'Entered. The next sweep takes it in.'],
  ['miss', 'Noted. Its fences are back in the plan: make a new one to give them weeks.'],
  ['cancel', 'Cancelled. Its fences are back in the plan: make a new one to give them weeks.'],
  ['given', 'Given. No plan moves it from now on, until you leave it to the plans again.'],
  ['left', 'Left to the plans again: the next one that is accepted may move it.'],
]);

/** What confirming would come to where nothing speaks against it. */
export const wouldBeConfirmed = (visit: Visit, today: CalendarDay): readonly string[] => [
  `Nothing was changed yet. It would be confirmed for ${daysWords(visit, today)}, crew ${visit.crewRef}, with ${hoursWords(visit.travelPersonHours)} hours on the way, and nothing speaks against it.`,
];

/** What entering would come to. */
export const doneSentences = ({ done, returned }: Extract<DoResult, { kind: 'done' }>): readonly string[] => [
  'Nothing was entered yet. This would be:',
  ...done.map(
    ({ fenceRef, works, worksRefs, inspectionRef, personHours }) =>
      `Fence ${fenceRef}: ${visitItemText({ works })}${worksRefs.length > 0 ? `, as works ${listWords(worksRefs)}` : ''}${inspectionRef === null ? '' : `, inspection ${inspectionRef}`}${personHours === null ? '' : `; ${hoursWords(personHours)} hours used`}.`,
  ),
  ...done.flatMap(({ notes }) => notes.map((note) => `Doubtful: ${note}.`)),
  ...(returned.length === 0 ? [] : [`Back to the plan: ${listWords(returned)}.`]),
];
