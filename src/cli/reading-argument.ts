import { guardText } from '../register/csv/text-cell.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { LENGTH_UNITS, quantityArgument } from './quantity-argument.ts';

/** Words followed by a length, with the beginning of the CSV column that it belongs to. */
const LENGTH_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    depth: 'depth',
    width: 'residual_width',
    circumference: 'residual_circumference',
    'sound-to': 'sound_to',
    'soft-to': 'soft_to',
    cavity: 'cavity',
    cut: 'trimmer_cut',
  }),
);
/** Words followed by a plain number. */
const NUMBER_WORDS: ReadonlyMap<string, string> = new Map([
  ['lean', 'lean_degrees'],
  ['rail', 'rail_connection'],
]);
/** Words that say it all, with the column and the cell. */
const FLAG_WORDS: ReadonlyMap<string, readonly [column: string, cell: string]> = new Map([
  ['broken', ['broken', 'yes']],
  ['collar-cracked', ['collar_cracked', 'yes']],
  ['collar-sound', ['collar_cracked', 'no']],
  ['closed-off', ['closed_off', 'yes']],
]);

const WORDS = [...LENGTH_WORDS.keys(), ...NUMBER_WORDS.keys(), ...FLAG_WORDS.keys(), 'note'];
const WAY_OUT = `write the number of the post, then any of ${WORDS.join(', ')}, as "3 depth 6mm lean 4 collar-cracked"`;

/** The word of a reading that a CSV column stands for, for messages. */
export function readingWord(column: string): string {
  const all = [...LENGTH_WORDS, ...NUMBER_WORDS];
  const found = all.find(([, start]) => column === start || column === `${start}_mm` || column === `${start}_in`);
  const flag = [...FLAG_WORDS].find(([, [name]]) => name === column);
  return found?.[0] ?? flag?.[0] ?? column;
}

/** What one `--post` says, as the cells of a row of readings by column. Throws `CliError` (usage) where it cannot be understood. */
export function readingCells(text: string): Readonly<Record<string, string>> {
  const refuse = (reason: string): CliError =>
    new CliError(EXIT.usage, `--post ${JSON.stringify(text)}: ${reason}`, WAY_OUT);
  const words = text.trim().split(/\s+/);
  const [post = '', ...rest] = words;
  if (!/^\d+$/.test(post)) throw refuse('it does not begin with the number of a post');
  if (rest.length === 0) throw refuse('it does not say what was found');
  const cells: Record<string, string> = { post: String(Number(post)) };
  const put = (column: string, cell: string, word: string): void => {
    if (column in cells) throw refuse(`${word} is said twice`);
    cells[column] = cell;
  };
  for (let next = rest.shift(); next !== undefined; next = rest.shift()) {
    const word = next.toLowerCase();
    const length = LENGTH_WORDS.get(word);
    const number = NUMBER_WORDS.get(word);
    const flag = FLAG_WORDS.get(word);
    if (word === 'note') put('notes', guardText(rest.splice(0).join(' ')), word);
    else if (flag) put(...flag, word);
    else if (number !== undefined) put(number, plainNumber(rest.shift(), word, refuse), word);
    else if (length !== undefined) {
      const quantity = quantityWords(rest);
      const { value, suffix } = quantityArgument(`--post ${JSON.stringify(text)}, ${word}`, quantity, LENGTH_UNITS);
      put(`${length}_${suffix}`, value, word);
    } else throw refuse(`${JSON.stringify(next)} is none of the words it can hold`);
  }
  return cells;
}

/** Takes the words of one quantity off the front: a number, the fraction after it, and a unit that stands apart. */
function quantityWords(rest: string[]): string {
  const words = [rest.shift() ?? ''];
  if (/^\d+$/.test(words[0] ?? '') && /^\d+\/\d+/.test(rest[0] ?? '')) words.push(rest.shift() ?? '');
  if (Object.hasOwn(LENGTH_UNITS, (rest[0] ?? '').toLowerCase())) words.push(rest.shift() ?? '');
  return words.join(' ');
}

function plainNumber(text: string | undefined, word: string, refuse: (reason: string) => CliError): string {
  const number = text?.replace(/(deg|°)$/, '') ?? '';
  if (!/^\d*\.?\d+$/.test(number))
    throw refuse(`${word} needs a number after it, as ${word} ${word === 'lean' ? '4' : '0.5'}`);
  return number;
}
