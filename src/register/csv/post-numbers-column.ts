import { type PostNumbers, postsText } from '../post-numbers.ts';
import { RANGES } from '../value-ranges.ts';
import { type CsvField, singleField } from './csv-field.ts';

/** The `posts` column: all, or numbers parted by blanks; empty means all. */
export const POST_NUMBERS_FIELD: CsvField = singleField(
  'posts',
  'posts',
  { fallback: 'all' },
  (text, refuse) => {
    if (text.toLowerCase() === 'all') return 'all';
    const numbers = text.split(/\s+/);
    const [lowest, highest] = RANGES.postNumber;
    const valid = numbers.every((word) => /^\d{1,4}$/.test(word) && Number(word) >= lowest && Number(word) <= highest);
    return valid
      ? numbers.map(Number)
      : refuse('not a list of posts; write all, or post numbers parted by blanks, as 3 7 8');
  },
  (value) => postsText(value as PostNumbers),
);
