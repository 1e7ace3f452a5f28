import { countWords, listWords } from '../../drawing/day-words.ts';
import type { ChangeCause, ChangeCount, StandingChange } from '../../register/standing-changes.ts';

const CAUSES: Readonly<Record<ChangeCause, string>> = {
  inspection: 'an inspection was entered',
  storm: 'the outcome of a storm was entered',
  works: 'works were entered',
  withdrawal: 'evidence was taken back',
  record: 'the record of the fence or its site was changed',
  season: 'a new season has begun to count',
  model: 'the program computes otherwise since its last version',
  other:
    'nothing of its own was entered: settings or what the register has learned changed, or a date set in its record has come',
};

const WORSE = ['clear', 'closing', 'short', 'short from new'] as const;
const rank = (standing: string): number => (WORSE as readonly string[]).indexOf(standing);

/** What changed before a fence came to stand otherwise, as a clause; it is what changed, not a proof that it is the reason. */
export const causeClause = ({ causes }: Pick<StandingChange, 'causes'>): string =>
  listWords(causes.map((cause) => CAUSES[cause]));

/** How one fence came to stand otherwise: `clear to short`, or what became of its ends. */
export const changeWords = ({ before, after, endsBefore, endsAfter }: StandingChange): string =>
  before === after ? `its ends ${endsBefore ?? 'not judged'} to ${endsAfter ?? 'not judged'}` : `${before} to ${after}`;

/**
 * How many fences stand worse and better than before.
 * @param leftOut fences that stand better and are recorded dangerous, which the counts leave out
 */
export function changesSentence(counts: readonly ChangeCount[], leftOut = 0): string {
  const apart = leftOut === 0 ? '' : 'Apart from what is recorded dangerous, ';
  const begin = (text: string): string =>
    apart === '' ? text : `${apart}${text.charAt(0).toLowerCase()}${text.slice(1)}`;
  const sum = (keep: (count: ChangeCount) => boolean): number =>
    counts.filter(keep).reduce((all, { fences }) => all + fences, 0);
  const worse = sum(({ before, after }) => rank(after) > rank(before));
  const better = sum(({ before, after }) => rank(after) < rank(before));
  const ends = sum(({ before, after }) => before === after);
  if (worse + better + ends === 0) return begin('No fence stands otherwise than the night before.');
  const stand = [
    ...(worse > 0 ? [`${countWords(worse, 'fence stands', 'fences stand')} worse`] : []),
    ...(better > 0 ? [`${countWords(better, 'fence stands', 'fences stand')} better`] : []),
  ];
  return begin(
    [
      ...(stand.length > 0 ? [`${listWords(stand)} than the night before.`] : []),
      ...(ends > 0 ? [`At ${countWords(ends, 'fence')} the ends alone changed.`] : []),
    ].join(' '),
  );
}
