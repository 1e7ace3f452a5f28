import type { Band } from '../forecast/band.ts';
import type { BeliefDimension } from '../forecast/belief-points.ts';
import { evidenceRemarks } from '../forecast/evidence/evidence-remarks.ts';
import type { EvidenceSummary, UnknownBelief } from '../forecast/evidence/evidence-summary.ts';
import { rateText } from './evidence-table.ts';
import type { DisplayUnits } from './speed-text.ts';

/** A middle that moves by less than this share counts as where it was [-]. */
export const LEAST_SHIFT = 0.015;
/** A likely range that changes by less than this is not spoken of [-]. */
export const LEAST_RANGE_CHANGE = 0.1;

const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;
const listed = (parts: readonly string[]): string => parts.join(' and ');

const TIMES_AS = { faster: 'fast', stronger: 'strong', heavier: 'heavy', later: 'late', deeper: 'deep', wider: 'wide' };

/** What an unknown is called in a sentence, and its words for more and for less of it. */
const WORDS: Readonly<Record<BeliefDimension, readonly [name: string, more: keyof typeof TIMES_AS, less: string]>> = {
  pace: ['its rot', 'faster', 'slower'],
  'fibre strength': ['its posts', 'stronger', 'weaker'],
  footing: ['its footings', 'stronger', 'weaker'],
  'permanent load': ['its wind load', 'heavier', 'lighter'],
  'install date': ['its install date', 'later', 'earlier'],
  embedment: ['its embedment', 'deeper', 'shallower'],
  'footing diameter': ['its footings', 'wider', 'narrower'],
};

/** How much was read and reported: `4 readings at 3 posts and 2 storms count.` */
export function evidenceCountSentence({ readings, readPosts, storms }: EvidenceSummary): string {
  const posts = new Set(readPosts.map(({ post }) => post)).size;
  const parts = [
    ...(readings > 0 ? [`${count(readings, 'reading')} at ${count(posts, 'post')}`] : []),
    ...(storms > 0 ? [count(storms, 'storm')] : []),
  ];
  return `${listed(parts)} ${readings + storms === 1 ? 'counts' : 'count'}.`;
}

/** What moved an unknown, as the subject of a sentence, and its verb's ending. */
function moverWords(
  movedBy: Exclude<UnknownBelief['movedBy'], 'nothing'>,
  { readings, storms }: EvidenceSummary,
): readonly [subject: string, ending: string] {
  const reading = readings === 1 ? 'reading' : 'readings';
  const storm = storms === 1 ? 'storm' : 'storms';
  switch (movedBy) {
    case 'readings':
      return [`The ${reading}`, readings === 1 ? 's' : ''];
    case 'storms':
      return [`The ${storm}`, storms === 1 ? 's' : ''];
    case 'readings and storms':
      return [`The ${reading} and the ${storm}`, ''];
  }
}

/** What moved an unknown and how far; null where neither its middle nor its range moves enough to speak of. */
function changeSentence(
  { unknown, prior, posterior, movedBy }: UnknownBelief,
  evidence: EvidenceSummary,
  learnedVersion: number | null,
  units: DisplayUnits,
): string | null {
  if (movedBy === 'nothing') return null;
  const [name, more, less] = WORDS[unknown];
  const [subject, ending] = moverWords(movedBy, evidence);
  const than = learnedVersion === null ? 'published' : 'expected before';
  const shift = posterior.p50 / prior.p50 - 1;
  const range = rangeChange(prior, posterior);
  if (Math.abs(shift) < LEAST_SHIFT) {
    return range === '' ? null : `${subject} leave${ending} ${name} as ${TIMES_AS[more]} as ${than}${range}.`;
  }
  const change =
    shift >= 1
      ? `${(shift + 1).toFixed(1)} times as ${TIMES_AS[more]} as`
      : `${Math.round(Math.abs(shift) * 100)} % ${shift > 0 ? more : less} than`;
  const rates =
    unknown === 'pace' ? `, ${rateText(posterior.p50, units)} and not ${rateText(prior.p50, units)} in the middle` : '';
  return `${subject} make${ending} ${name} ${change} ${than}${rates}${range}.`;
}

/** By how much the likely range, as a ratio of its ends, grew or shrank; nothing where hardly. */
function rangeChange(prior: Band, posterior: Band): string {
  if (prior.p10 <= 0 || posterior.p10 <= 0) return '';
  const change = Math.log(posterior.p90 / posterior.p10) / Math.log(prior.p90 / prior.p10) - 1;
  if (Math.abs(change) < LEAST_RANGE_CHANGE) return '';
  return `; its likely range is ${Math.round(Math.abs(change) * 100)} % ${change < 0 ? 'narrower' : 'wider'}`;
}

/** What the evidence changed, a sentence for each unknown it moved by enough to speak of; one that says so where it moved none. */
export function changeSentences(
  evidence: EvidenceSummary,
  learnedVersion: number | null,
  units: DisplayUnits,
): readonly string[] {
  const changes = evidence.unknowns
    .map((unknown) => changeSentence(unknown, evidence, learnedVersion, units))
    .filter((sentence) => sentence !== null);
  return changes.length > 0 ? changes : ['What was seen agrees with what was expected and moves no unknown much.'];
}

/** How surprising the evidence was, in plain words; nothing where it was not. */
export const surpriseSentences = (evidence: EvidenceSummary | null): readonly string[] => evidenceRemarks(evidence);

/** That nothing was seen of a fence, and what stands instead. */
export const nothingSeenSentence = (learnedVersion: number | null): string =>
  learnedVersion === null
    ? 'Nothing was read or reported that moves a belief: published priors stand.'
    : `Nothing was read or reported that moves a belief: the priors stand, as acceptance ${learnedVersion} of what the register learned left them.`;
