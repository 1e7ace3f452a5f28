import type { FenceStanding } from './fence-forecast.ts';

/** Standings from best to worst. */
const SEVERITY: Readonly<Record<FenceStanding, number>> = { clear: 0, closing: 1, short: 2, 'short from new': 3 };

/** True where the first standing is worse than the second. */
export const isWorse = (a: FenceStanding, b: FenceStanding): boolean => SEVERITY[a] > SEVERITY[b];

/** An improvement must hold against this multiple of the design gust [-]; model choice. */
export const IMPROVEMENT_MARGIN = 1.03;

/**
 * Standing from snap speeds [m/s]: `short from new` where it is short as built, else `short` now, `closing` where it goes
 * short within the look-ahead, else `clear`.
 * @param speeds snap speed as built, and at seasons 1, 2, … (p50) [m/s]
 * @param gustMps design gust, times the margin where an improvement is judged [m/s]
 * @param lookAheadSeasons seasons after season 1 that count as closing [-], >= 0
 * Source: model choice.
 */
export function judgeStanding(
  speeds: { readonly builtMps: number; readonly seasonsMps: readonly number[] },
  gustMps: number,
  lookAheadSeasons: number,
): FenceStanding {
  const [now, ...ahead] = speeds.seasonsMps;
  if (now === undefined) throw new RangeError('judge standing: no season given');
  if (now < gustMps) return speeds.builtMps < gustMps ? 'short from new' : 'short';
  return ahead.slice(0, lookAheadSeasons).some((speed) => speed < gustMps) ? 'closing' : 'clear';
}

/**
 * The standing to keep: a standing worsens at once and improves only as far as it would against 1.03 times the design
 * gust, so that a reading does not flap it. The first standing of a fence is taken as judged.
 */
export function standingAfter(
  previous: FenceStanding | null,
  judged: FenceStanding,
  judgedWithMargin: FenceStanding,
): FenceStanding {
  if (previous === null || !isWorse(previous, judged)) return judged;
  return isWorse(previous, judgedWithMargin) ? judgedWithMargin : previous;
}
