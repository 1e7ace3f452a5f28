import { ownerText } from '../drawing/calendar-words.ts';
import {
  alongText,
  amountText,
  believedHeading,
  believedText,
  conditionText,
  countedFromText,
  fenceText,
  lastReadText,
  longDay,
  stateText,
  todoTexts,
  whenText,
} from '../drawing/day-sheet-words.ts';
import { depthUnit } from '../drawing/quantity-text.ts';
import type { DisplayUnits } from '../drawing/speed-text.ts';
import { reminderSentence, visitItemText } from '../drawing/visit-words.ts';
import type { CheckedPost } from '../season/visit/check-list.ts';
import type { DaySheet, SheetFence, SheetStop } from '../season/visit/day-sheet.ts';
import { CAUTIONS } from './cautions.ts';
import { plainTable } from './plain-table.ts';

const hours = (personHours: number): string => personHours.toFixed(1);
const indented = (text: string): string => text.replace(/^(?=.)/gm, '   ');

function postRows(post: CheckedPost, units: DisplayUnits): readonly (readonly string[])[] {
  const bad = conditionText(post);
  const todo = `${todoTexts(post).join(', ')}${bad === '' ? '' : ` (${bad})`}`;
  const row = [
    '[ ]',
    String(post.number),
    alongText(post.positionM, units),
    todo,
    believedText(post, units),
    `_____ ${depthUnit(units)}`,
    '___ °',
    lastReadText(post, units),
  ];
  const added = ['[ ]', '', '', `new post after ${post.number}`, '', '', '', ''];
  return post.newPostAfter ? [row, added] : [row];
}

function fenceLines(fence: SheetFence, units: DisplayUnits): string {
  const table = plainTable(
    ['', 'Post', 'At', 'To do', believedHeading(units), 'Found', 'Lean', 'Last read'],
    fence.posts.flatMap((post) => postRows(post, units)),
    [1, 2],
  );
  return [
    `Fence ${fence.ref}: ${visitItemText(fence)}`,
    fenceText(fence, units),
    ...(fence.accessNote === '' ? [] : [`Getting there: ${fence.accessNote}`]),
    ...(fence.note === '' ? [] : [`About it: ${fence.note}`]),
    ...fence.findings,
    countedFromText(fence, units),
    table,
    `[ ] all done   People's hours used: ______ (planned ${hours(fence.personHours)})   Left undone, and why: ____________________`,
  ].join('\n');
}

function stopLines(stop: SheetStop, index: number): string {
  const { site, owners, reminders } = stop;
  const lines = [
    ...(stop.note === '' ? [] : [`Note: ${stop.note}`]),
    ...reminders.map((reminder) => `[ ] ${reminderSentence(reminder)}`),
    ...owners.map((owner) => `Owner of ${owner.fenceRefs.join(', ')}: ${ownerText(owner)}`),
    `People's hours planned: ${hours(stop.personHours)} at the site, ${hours(stop.travelPersonHours)} on the way. Visit ${stop.uid}.`,
    ...stop.fences.flatMap((fence) => ['', fenceLines(fence, site.units)]),
  ];
  return `${index + 1}. ${site.name}, ${site.place}: ${whenText(stop)}, ${stateText(stop)}\n${indented(lines.join('\n'))}\n`;
}

const loadLines = ({ load, stops }: DaySheet): readonly string[] => {
  if (load.length > 0) {
    return ['Load:', ...load.map(({ name, unit, toTake }) => `   [ ] ${amountText(toTake, unit)}  ${name}`)];
  }
  return [
    stops.some(({ dayOfVisit }) => dayOfVisit > 1)
      ? 'Nothing to load: what goes on was loaded on its first day.'
      : 'Nothing to load.',
  ];
};

/** One day of a crew as text to read or print: what to load, each site, each fence post by post, with blanks to fill. */
export const sheetText = (sheet: DaySheet): string =>
  [
    `${sheet.crew.name}: ${longDay(sheet.day)}`,
    sheet.people.length === 0
      ? 'Nobody of the crew is down to go out this day.'
      : `Going out: ${sheet.people.join(', ')}`,
    '',
    ...loadLines(sheet),
    '',
    ...sheet.stops.map(stopLines),
    CAUTIONS,
  ].join('\n');
