import { meanOf, type PointRisks } from '../../forecast/point-risks.ts';
import { type SurvivalCurve, survivalFromRisks } from './survival-curve.ts';

type Risks = Pick<PointRisks, 'weights' | 'seasons'>;

/** Part of what stands that is lost, held to what a probability can be against rounding [-]. */
const shareOf = (part: number, whole: number): number => (whole > 0 ? Math.min(1, Math.max(0, part / whole)) : 0);

/**
 * Chance that a fence stands at the opening of season 1, 2, ... 31, given that it stands today; a step is the whole year that
 * begins with a season. Survival is averaged over the belief points, so that what has stood for long counts as the better
 * fence. Null where the site has no hazard curve.
 * Source: product of the chances to stand at each point, total probability over points (derived).
 */
export function survivalAhead(risks: Risks): SurvivalCurve | null {
  const { weights, seasons } = risks;
  if (!seasons[0]?.yearBreak) return null;
  const standing = Float64Array.from(weights, () => 1);
  let before = 1;
  return survivalFromRisks(
    seasons.map(({ yearBreak }) => {
      for (const [point, risk] of yearBreak!.entries()) standing[point] = standing[point]! * (1 - risk);
      const after = meanOf({ weights }, standing);
      const risk = shareOf(before - after, before);
      before = after;
      return risk;
    }),
  );
}

/** How a fence goes that is replaced before it is short, by season from season 1. */
export interface ShortCourse {
  /** P(it is replaced before that season), taken without its snapping [-]. */
  readonly chanceBySeason: readonly number[];
  /** P(snap in the year of the season) of those that stand and are not replaced before it [-]. */
  readonly snapRiskBySeason: readonly number[];
  /** The same of those that are replaced before it, had they been left [-]. */
  readonly snapRiskWherePlanned: readonly number[];
}

/**
 * The course of replacing a fence before the first season in which it breaks below a gust, or when its service is over. Being short and snapping go together, point by point: those
 * that are left are the stronger ones. The three rows are made so that `fenceCourses`, which multiplies them, has the joint
 * chances exactly. Without a hazard curve nothing snaps.
 * @param gustMps such as the design gust [m/s]
 * @param longestSeasons seasons ahead after which it is replaced at the latest, 0 or more
 * Source: total probability over the belief points (derived).
 */
export function shortCourse({ weights, seasons }: Risks, gustMps: number, longestSeasons: number): ShortCourse {
  const left = Float64Array.from(weights);
  const chanceBySeason: number[] = [];
  const snapRiskBySeason: number[] = [];
  const snapRiskWherePlanned: number[] = [];
  let unplanned = 1;
  for (const [season, { snapMps, yearBreak }] of seasons.entries()) {
    const all = left.reduce((sum, mass) => sum + mass, 0);
    let planned = 0;
    let plannedSnaps = 0;
    let kept = 0;
    let keptSnaps = 0;
    for (const [point, mass] of left.entries()) {
      const snaps = mass * (yearBreak?.[point] ?? 0);
      if (season >= longestSeasons || snapMps[point]! < gustMps) {
        planned += mass;
        plannedSnaps += snaps;
        left[point] = 0;
      } else {
        kept += mass;
        keptSnaps += snaps;
        left[point] = mass - snaps;
      }
    }
    const share = shareOf(planned, all);
    chanceBySeason.push(unplanned * share);
    unplanned *= 1 - share;
    snapRiskBySeason.push(shareOf(keptSnaps, kept));
    snapRiskWherePlanned.push(shareOf(plannedSnaps, planned));
  }
  return { chanceBySeason, snapRiskBySeason, snapRiskWherePlanned };
}
