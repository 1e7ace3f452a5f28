import { INSPECTION_METHODS, type InspectionMethod } from '../../forecast/evidence/inspection.ts';
import { plainDecimal } from '../../register/csv/number-cell.ts';
import { guardText } from '../../register/csv/text-cell.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { SHIPPED_CATALOGUE } from '../../season/works-catalogue.ts';
import { isEntryId } from '../../service/enter-once.ts';
import type { ReadingCells } from '../../service/enter-visit-reading.ts';
import { type WantedWorks, WHOLE_FENCE } from '../../service/fence-quote.ts';
import type { FinishedVisit, UnreadableText } from '../../service/finish-visit.ts';
import { type CalendarDay, isCalendarDay } from '../../units/calendar-day.ts';
import { FORM_TOKEN } from '../access/form-token.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';
import type { EntryField } from './crew-words.ts';

/** Fields that are lengths, whose columns end in their unit. */
const LENGTHS: ReadonlySet<EntryField> = new Set<EntryField>([
  'depth',
  'sound_to',
  'soft_to',
  'residual_width',
  'residual_circumference',
  'cavity',
  'trimmer_cut',
]);

/** Every field of a post's form, in the order in which it shows them. */
const ENTRY_FIELDS: readonly EntryField[] = [
  'depth',
  'sound_to',
  'soft_to',
  'residual_width',
  'residual_circumference',
  'broken',
  'cavity',
  'lean_degrees',
  'collar_cracked',
  'rail_connection',
  'trimmer_cut',
  'notes',
];

const FRACTION = /^(?:(\d+)[ -])?(\d+)\/([1-9]\d*)$/;

/**
 * A number as crews type it, as plain digits: `2 3/8`, `3/8`, and in Spanish `5,5`. What is none stays as it is, for the check
 * that reads it to say so.
 */
export function typedNumber(typed: string, language: PageLanguage): string {
  const text = typed.trim();
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const [, whole = '0', over = '0', under = '1'] = fraction;
    return plainDecimal(Number(whole) + Number(over) / Number(under));
  }
  return language === 'es' && /^\d+,\d+$/.test(text) ? text.replace(',', '.') : text;
}

/** What a post's form says, by column of the readings: columns that the form does not have are left out. */
export function readingCells(
  form: SentForm,
  { units, language }: { readonly units: 'us' | 'metric'; readonly language: PageLanguage },
): ReadingCells {
  const cells: Record<string, string> = {};
  for (const field of ENTRY_FIELDS) {
    if (!(field in form)) continue;
    const text = textField(form, field).trim();
    if (LENGTHS.has(field)) cells[`${field}_${units === 'us' ? 'in' : 'mm'}`] = typedNumber(text, language);
    else if (field === 'lean_degrees') cells[field] = typedNumber(text, language).replace(/\s*°$/, '');
    else if (field === 'notes') cells[field] = guardText(text.replace(/\s+/g, ' '));
    else cells[field] = text;
  }
  // a box that is not ticked is not sent at all; one that was ticked before must be able to be unticked
  if (!('broken' in cells)) cells.broken = '';
  return cells;
}

/** The field that a column of the readings comes from. */
export const fieldOfColumn = (column: string): EntryField | null =>
  ENTRY_FIELDS.find((field) => column === field || column === `${field}_in` || column === `${field}_mm`) ?? null;

/** What every entry carries: its id, and the day as the phone has it. Null where the id is missing or none. */
export function entryOf(form: SentForm): { readonly entryId: string; readonly day: CalendarDay | null } | null {
  const entryId = textField(form, 'entry');
  if (!isEntryId(entryId)) return null;
  const day = textField(form, 'day');
  return { entryId, day: isCalendarDay(day) ? day : null };
}

/** The method that a form or an address names; null where it names none. */
export const methodNamed = (text: string): InspectionMethod | null =>
  INSPECTION_METHODS.find((method) => method === text) ?? null;

/** The number of a post; null where the text is none. */
export function postNumbered(text: string): number | null {
  const number = Number(text);
  return /^\d{1,4}$/.test(text) && number >= 1 && number <= 2000 ? number : null;
}

/** Numbers of posts as crews write them: `2, 5-8`, in any order; null where the text is none of that. */
export function postNumbers(text: string): readonly number[] | null {
  const found = new Set<number>();
  for (const part of text.split(/[,;\s]+/).filter((each) => each !== '')) {
    const range = /^(\d{1,4})(?:[-–](\d{1,4}))?$/.exec(part);
    const first = postNumbered(range?.[1] ?? '');
    const last = range?.[2] === undefined ? first : postNumbered(range[2]);
    if (first === null || last === null || last < first) return null;
    for (let post = first; post <= last; post += 1) found.add(post);
  }
  return found.size === 0 ? null : [...found].sort((a, b) => a - b);
}

const KINDS = Object.keys(SHIPPED_CATALOGUE) as readonly CatalogueKind[];
const kindNamed = (text: string): CatalogueKind | null => KINDS.find((kind) => kind === text) ?? null;

/** A form as it was sent, without its token: that of another session says the same. */
export const withoutToken = (form: SentForm): SentForm =>
  Object.fromEntries(Object.entries(form).filter(([name]) => name !== FORM_TOKEN));

const unreadable = (field: UnreadableText['field'], text: string): { readonly unreadable: UnreadableText } => ({
  unreadable: { kind: 'unreadable', field, text },
});

/**
 * What was done of a visit as its form says: `did/FENCE` ticks kinds of works, `posts/FENCE/KIND` names their posts,
 * `else/FENCE` and `else-posts/FENCE` one more kind.
 */
export function finishForm(form: SentForm, visit: Visit, language: PageLanguage): ReturnType<FinishedVisit['said']> {
  const done = new Map<string, readonly WantedWorks[]>();
  for (const { fenceRef, works } of visit.items) {
    const ticked = textFields(form, `did/${fenceRef}`);
    const wanted: WantedWorks[] = [];
    for (const { kind, posts } of works.filter((each) => ticked.includes(each.kind))) {
      const typed = textField(form, `posts/${fenceRef}/${kind}`).trim();
      const named = WHOLE_FENCE.has(kind) ? 'all' : typed === '' ? posts : postNumbers(typed);
      if (named === null) return unreadable('posts', typed);
      wanted.push({ kind, posts: named });
    }
    const more = kindNamed(textField(form, `else/${fenceRef}`));
    if (more) {
      const typed = textField(form, `else-posts/${fenceRef}`).trim();
      const named = WHOLE_FENCE.has(more) || typed === '' ? 'all' : postNumbers(typed);
      if (named === null) return unreadable('posts', typed);
      wanted.push({ kind: more, posts: named });
    }
    done.set(fenceRef, wanted);
  }
  const typed = textField(form, 'hours').trim();
  const hours = typedNumber(typed, language);
  if (typed === '') return { done, hours: { kind: 'none' } };
  if (!/^\d*\.?\d+$/.test(hours) || Number(hours) <= 0) return unreadable('hours', typed);
  return { done, hours: { kind: 'visit', personHours: Number(hours) } };
}
