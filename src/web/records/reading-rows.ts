import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import { MEASURED_KINDS } from '../../register/reading-record.ts';
import { type SentForm, textField } from '../frame/text-field.ts';

/** What a form says of one post. */
export interface ReadingEntry {
  readonly post: number;
  /** Which number was read at the groundline, or `broken`; empty where nothing was. */
  readonly found: string;
  readonly number: string;
  readonly cavity: string;
  readonly lean: string;
  readonly collar: string;
  readonly rail: string;
  readonly trimmer: string;
  readonly closed: boolean;
  readonly notes: string;
}

/** Ways in which something is read at the groundline. */
export const FOUND_WORDS: readonly (readonly [value: string, words: string])[] = [
  ['', 'not read'],
  ['depth', 'rot this deep'],
  ['residual-width', 'sound width left'],
  ['residual-circumference', 'sound girth left'],
  ['sound-to', 'sound to this depth'],
  ['soft-to', 'soft to this depth or more'],
  ['broken', 'broken'],
];

/** Suffix of the columns in which a form's lengths are read. */
export const smallUnit = (units: ExportUnits): 'in' | 'mm' => (units === 'us' ? 'in' : 'mm');

/** Name of a field of a post's row. */
export const readingField = (post: number, name: string): string => `p${post}_${name}`;

/** What a form says of some posts. */
export const sentReadings = (form: SentForm, posts: readonly number[]): readonly ReadingEntry[] =>
  posts.map((post) => {
    const text = (name: string): string => textField(form, readingField(post, name)).trim();
    return {
      post,
      found: text('found'),
      number: text('number'),
      cavity: text('cavity'),
      lean: text('lean'),
      collar: text('collar'),
      rail: text('rail'),
      trimmer: text('trimmer'),
      closed: text('closed') === 'yes',
      notes: text('notes'),
    };
  });

/** True where nothing was entered for the post: it was not looked at. */
export const isEmpty = (entry: ReadingEntry): boolean =>
  !entry.closed &&
  [entry.found, entry.number, entry.cavity, entry.lean, entry.collar, entry.rail, entry.trimmer, entry.notes].every(
    (text) => text === '',
  );

/** The cells of a reading's row; a number without what it measures stays under a column of depths, to be told of. */
export function readingCells(entry: ReadingEntry, inspection: string, units: ExportUnits, sure: boolean): RowCells {
  const unit = smallUnit(units);
  const measured = MEASURED_KINDS.find((kind) => kind === entry.found);
  const groundline: RowCells =
    entry.found === 'broken'
      ? { broken: 'yes', ...(entry.number === '' ? {} : { [`depth_${unit}`]: entry.number }) }
      : entry.number === ''
        ? {}
        : { [`${(measured ?? 'depth').replaceAll('-', '_')}_${unit}`]: entry.number };
  return {
    inspection,
    post: String(entry.post),
    ...groundline,
    ...(entry.cavity === '' ? {} : { [`cavity_${unit}`]: entry.cavity }),
    lean_degrees: entry.lean,
    collar_cracked: entry.collar,
    rail_connection: entry.rail,
    ...(entry.trimmer === '' ? {} : { [`trimmer_cut_${unit}`]: entry.trimmer }),
    closed_off: entry.closed ? 'yes' : '',
    sure: sure ? 'yes' : '',
    notes: entry.notes,
  };
}

/** Why an entry cannot be told apart; null where it can. */
export function entryFault({ found, number }: ReadingEntry): string | null {
  if (number !== '' && found === '') return 'a number without what it measures; say what was read';
  if (number === '' && found !== '' && found !== 'broken') return 'what was read has no number; write it';
  return null;
}
