import type { Register } from '../../../src/register/database.ts';
import { listRecords, RECORD_KINDS } from '../../../src/register/record-store.ts';

/**
 * Words of English that no sentence goes long without, and the trade's own; none of them is a Spanish word, a unit or a symbol.
 * `in` is the inch, `no` and `as` are Spanish.
 */
const ENGLISH = [
  'the and of with its is are was were be been it this that these those they their has have had which what when where who',
  'than then to from for by on at not nor but only each every other between after before until since within without under',
  'above below more most less least all any none unless here there how why yes see if or an',
  'fence fences post posts rail rails board boards gust gusts snap snaps lean leans short closing clear season seasons year',
  'years day days hour hours week weeks work works rot rotted wood footing footings speed speeds wind page pages depth width',
  'recorded unknown new made found reading readings inspection inspections storm storms price cost costs owner owners crew',
  'site sites visit visits note show piece set sleeve liner treatment treated',
].flatMap((line) => line.split(' '));

/** Symbols that are the same in every language, and titles of works and of codes as they are printed. */
const THE_SAME =
  /P\((?:short|snap)\)|[nV]_(?:short|snap|post)|Wood Handbook|Day, Geotechnical Earthquake Engineering Handbook/g;

/** Keys of records whose values are the register's own words, in whatever language they were entered. */
const OWN_WORDS: ReadonlySet<string> = new Set(
  'ref name place region namedEnd note notes accessNote windSource source inspector qualification instrument storm gustSource reportedBy reason postalAddress email'.split(
    ' ',
  ),
);

/** Everything that users entered in words of their own, the longest first. */
export async function ownWords({ db }: Register): Promise<readonly string[]> {
  const found = new Set<string>();
  for (const kind of RECORD_KINDS) {
    for (const record of await listRecords(db, kind)) {
      for (const [key, value] of Object.entries(record)) {
        if (!OWN_WORDS.has(key) || typeof value !== 'string' || !/[a-z]{2}/i.test(value)) continue;
        found.add(value);
        for (const line of value.split('\n')) found.add(line);
      }
    }
  }
  return [...found].filter((words) => words.trim() !== '').sort((a, b) => b.length - a.length);
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'", nbsp: ' ' };

/** What people read, or are read out, of a page: its text and the names, alternatives and hints in its attributes. */
export function readOut(html: string): readonly string[] {
  const shown = html
    .replace(/<(script|style|code)\b[\s\S]*?<\/\1>/g, ' ')
    // a link to the same in another language says so in that language
    .replace(/<a\b[^>]* lang="en"[^>]*>[\s\S]*?<\/a>/g, ' ')
    // a quote as it was written, folded away under Spanish words
    .replace(/<ul class="as-written" lang="en">[\s\S]*?<\/ul>/g, ' ');
  const attributes = [...shown.matchAll(/ (?:aria-label|alt|title|placeholder|data-label)="([^"]*)"/g)].map(
    ([, value]) => value ?? '',
  );
  const texts = shown.split(/<[^>]*>/);
  return [...texts, ...attributes]
    .map((text) => text.replace(/&([a-z]+|#39);/g, (all, name: string) => ENTITIES[name] ?? all).trim())
    .filter((text) => text !== '');
}

const wholeWords = (words: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\d])${words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\d])`, 'gu');

/** The texts of a page that hold words of English, users' own words aside. */
export function englishLeft(html: string, own: readonly string[]): readonly string[] {
  const english = new RegExp(`(?<![\\p{L}\\d_./@-])(?:${ENGLISH.join('|')})(?![\\p{L}\\d_@])`, 'giu');
  return readOut(html).filter((text) => {
    let rest = text.replace(THE_SAME, ' ');
    for (const words of own) if (rest.includes(words)) rest = rest.replace(wholeWords(words), ' ');
    return rest.search(english) !== -1;
  });
}
