import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { SHIPPED_CATALOGUE } from '../../season/works-catalogue.ts';
import type { DoRequest, HoursUsed } from '../../service/do-visit.ts';
import { type WantedWorks, WHOLE_FENCE } from '../../service/fence-quote.ts';
import { isCalendarDay } from '../../units/calendar-day.ts';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';

const KINDS = Object.keys(SHIPPED_CATALOGUE) as readonly CatalogueKind[];
const MOST_POSTS = 2000;

/** Numbers of posts as they are written, `3, 4, 7-9`; null where they are none. */
function postNumbers(text: string): readonly number[] | null {
  const numbers = new Set<number>();
  for (const part of text.split(/[\s,]+/).filter((each) => each !== '')) {
    const [, first, last] = /^(\d{1,4})(?:[-–](\d{1,4}))?$/.exec(part) ?? [];
    if (first === undefined) return null;
    const [from, to] = [Number(first), Number(last ?? first)];
    if (from < 1 || to < from || to > MOST_POSTS) return null;
    for (let number = from; number <= to; number += 1) numbers.add(number);
  }
  return numbers.size === 0 ? null : [...numbers].sort((a, b) => a - b);
}

/** Works as they are written, `post-swap: 4, 5 + liner: 4`, or what is wrong with them. */
export function worksAsked(text: string): readonly WantedWorks[] | string {
  const works: WantedWorks[] = [];
  for (const part of text.split('+')) {
    const [name = '', own] = part.split(/:(.*)/s);
    const kind = KINDS.find((each) => each === name.trim());
    if (!kind) return `there are no works called ${JSON.stringify(name.trim())}; write some of ${KINDS.join(', ')}`;
    const posts = own === undefined ? ('all' as const) : postNumbers(own);
    if (posts === null) return `${JSON.stringify(own?.trim())} are no numbers of posts; write them as 3, 4, 7-9`;
    works.push({ kind, posts: WHOLE_FENCE.has(kind) ? 'all' : posts });
  }
  return works;
}

/** Names of the fields of one fence. */
export const DONE_FIELDS = { done: 'done', hours: 'hours', did: 'did', inspection: 'inspection' } as const;

/** Name of a field that a form has once for each fence. */
export const fieldOf = (field: keyof typeof DONE_FIELDS, fenceRef: string): string =>
  `${DONE_FIELDS[field]}-${fenceRef}`;

/** What a form says was done. */
export type AskedDone = Pick<DoRequest, 'day' | 'only' | 'except' | 'hours' | 'changed' | 'inspections' | 'sure'>;

/** Reads the form of what was done, or says what is wrong with it, field by field. */
export function askedDone(form: SentForm, visit: Visit): AskedDone | { readonly faults: readonly string[] } {
  const faults: string[] = [];
  const day = textField(form, 'day');
  if (!isCalendarDay(day)) faults.push(`the day ${JSON.stringify(day)} is no day; write it as 2027-01-05`);
  const refs = visit.items.map(({ fenceRef }) => fenceRef);
  const done = textFields(form, 'done');
  const used = new Map<string, number>();
  const changed = new Map<string, readonly WantedWorks[]>();
  const inspections = new Map<string, string>();
  for (const ref of refs.filter((each) => done.includes(each))) {
    const hours = textField(form, fieldOf('hours', ref)).trim().replace(',', '.');
    if (hours !== '') {
      if (/^\d{1,4}(\.\d{1,2})?$/.test(hours) && Number(hours) > 0) used.set(ref, Number(hours));
      else faults.push(`fence ${ref}: ${JSON.stringify(hours)} is no number of hours; write it as 6.5`);
    }
    const did = textField(form, fieldOf('did', ref)).trim();
    if (did !== '') {
      const works = worksAsked(did);
      if (typeof works === 'string') faults.push(`fence ${ref}: ${works}`);
      else changed.set(ref, works);
    }
    const inspection = textField(form, fieldOf('inspection', ref)).trim();
    if (inspection !== '') inspections.set(ref, inspection);
  }
  if (faults.length > 0) return { faults };
  const hours: HoursUsed = used.size === 0 ? { kind: 'none' } : { kind: 'fences', personHours: used };
  return {
    day,
    only: null,
    except: refs.filter((ref) => !done.includes(ref)),
    hours,
    changed,
    inspections,
    sure: textField(form, 'sure') === 'yes',
  };
}
