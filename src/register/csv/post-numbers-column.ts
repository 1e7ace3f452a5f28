import { type PostNumbers, postsText } from '../post-numbers.ts';
import { RANGES } from '../value-ranges.ts';
import { type CsvField, singleField } from './csv-field.ts';
import type { Parsed } from './number-cell.ts';

const NUMBER_OR_RANGE = /^(\d{1,4})(?:-(\d{1,4}))?$/;
const WAY_OUT = 'write all, or post numbers parted by blanks, as 3 7 8 or 2-5 8';

/** The numbers that one word names: `7`, `2-5`; null where it is none of these or out of range. */
function numbersOf(word: string): readonly number[] | null {
  const [, first, last] = NUMBER_OR_RANGE.exec(word) ?? [];
  if (first === undefined) return null;
  const [from, to] = [Number(first), Number(last ?? first)];
  const [lowest, highest] = RANGES.postNumber;
  if (from < lowest || to > highest || to < from) return null;
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

/** The posts that a text names: `all`, or numbers and ranges of numbers parted by blanks, as `3 7 8` or `2-5 8`. */
export function parsePostNumbers(text: string): Parsed<PostNumbers> {
  if (text.toLowerCase() === 'all') return { value: 'all' };
  const words = text.replaceAll(/\s*[-\u2013]\s*/g, '-').split(/\s+/);
  const numbers = words.map(numbersOf);
  const bad = words.find((_, index) => numbers[index] === null);
  return bad === undefined
    ? { value: numbers.flatMap((each) => each ?? []) }
    : { reason: `not a list of posts${words.length > 1 ? ` (${bad})` : ''}; ${WAY_OUT}` };
}

/** The `posts` column: all, or numbers and ranges of numbers parted by blanks; empty means all. */
export const POST_NUMBERS_FIELD: CsvField = singleField(
  'posts',
  'posts',
  { fallback: 'all' },
  (text, refuse) => {
    const parsed = parsePostNumbers(text);
    return 'reason' in parsed ? refuse(parsed.reason) : parsed.value;
  },
  (value) => postsText(value as PostNumbers),
);
