import type { SheetOwner } from '../season/visit/day-sheet.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { VisitReminder } from '../season/visit/visit-reminders.ts';
import { reminderSentence, visitItemText } from './visit-words.ts';

const itemLines = ({ items }: Pick<Visit, 'items'>): readonly string[] =>
  items.map((item) => `${item.fenceRef}: ${visitItemText(item)}`);

const hours = (personHours: number): string => `${Number(personHours.toFixed(1))} h`;

/** What a visit's entry says to whoever owns or lives at the site: what is done and by whom; no names, no prices. */
export const siteEntryText = (visit: Pick<Visit, 'items'>, crewName: string): string =>
  [`Crew: ${crewName}`, ...itemLines(visit)].join('\n');

/** How an owner is named: `Rosa Quinn (es), rosa@example.net`. */
export const ownerText = ({ name, language, reachedAt }: SheetOwner): string =>
  `${name}${language === 'en' ? '' : ` (${language})`}${reachedAt === null ? '' : `, ${reachedAt.replaceAll('\n', ', ')}`}`;

/** What a visit's entry says to its crew: what to do, how to get in, who to speak to and what to see to first. */
export function crewEntryText(parts: {
  readonly visit: Pick<Visit, 'items' | 'note' | 'travelPersonHours'>;
  readonly accessNotes: ReadonlyMap<string, string>;
  readonly owners: readonly SheetOwner[];
  readonly reminders: readonly VisitReminder[];
}): string {
  const { visit, accessNotes, owners, reminders } = parts;
  const work = visit.items.reduce((sum, { personHours }) => sum + personHours, 0);
  return [
    ...(visit.note === '' ? [] : [visit.note, '']),
    ...itemLines(visit),
    `People's hours: ${hours(work)} at the site, ${hours(visit.travelPersonHours)} on the way`,
    ...[...accessNotes].filter(([, note]) => note !== '').map(([ref, note]) => `Getting to ${ref}: ${note}`),
    ...owners.map((owner) => `Owner: ${ownerText(owner)}`),
    ...reminders.map((reminder) => reminderSentence(reminder)),
  ].join('\n');
}
