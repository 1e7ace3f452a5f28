import type { PlannedVisit } from './plan/season-plan.ts';
import type { PlannedFence } from './season-problem.ts';

/** What the plan takes from the risk of the coming season, over all fences that have a hazard curve. */
export interface SeasonRisk {
  /** Fences whose risk can be given, and those that cannot: no hazard curve. */
  readonly counted: number;
  readonly withoutCurve: number;
  /** Fences expected to snap in the season [-], if nothing is done and with the plan done. */
  readonly snapsBefore: number;
  readonly snapsAfter: number;
  /** Expected loss of the season, in the register's currency. */
  readonly lossBefore: number;
  readonly lossAfter: number;
  /** Fences or ends short of their design gust. */
  readonly shortBefore: number;
  readonly shortAfter: number;
  /** Fences with a broken, leaning or closed-off post. */
  readonly dangerousBefore: number;
  readonly dangerousAfter: number;
}

const isShort = (standing: string | null): boolean => standing?.startsWith('short') ?? false;

/**
 * Risk of the coming season with nothing done, and with the visits of a plan done. Works done after the season has opened
 * count as done in the end, not by halves. An inspection changes no number here: what it finds is not known yet.
 */
export function seasonRisk(fences: readonly PlannedFence[], visits: readonly PlannedVisit[]): SeasonRisk {
  const chosen = new Map(visits.flatMap(({ items }) => items.map(({ jobRef, optionKey }) => [jobRef, optionKey])));
  const sums = {
    counted: 0,
    withoutCurve: 0,
    snapsBefore: 0,
    snapsAfter: 0,
    lossBefore: 0,
    lossAfter: 0,
    shortBefore: 0,
    shortAfter: 0,
    dangerousBefore: 0,
    dangerousAfter: 0,
  };
  for (const { candidates, dangerPosts } of fences) {
    const { fenceRef, loss, terms, standing, endsStanding } = candidates;
    const key = chosen.get(fenceRef);
    const done = candidates.candidates.find((each) => each.key === key);
    const works = done?.kind === 'works' ? done : null;
    sums.shortBefore += Number(isShort(standing) || isShort(endsStanding));
    sums.shortAfter += Number(isShort((works ?? candidates).standing) || isShort((works ?? candidates).endsStanding));
    sums.dangerousBefore += Number(dangerPosts.length > 0);
    sums.dangerousAfter += Number(dangerPosts.some((post) => !works?.mends.includes(post)));
    if (!loss) {
      sums.withoutCurve += 1;
      continue;
    }
    const after = loss.thisSeason - (works?.drop?.thisSeason ?? 0);
    sums.counted += 1;
    sums.lossBefore += loss.thisSeason;
    sums.lossAfter += after;
    sums.snapsBefore += loss.thisSeason / terms.snapLoss;
    sums.snapsAfter += after / terms.snapLoss;
  }
  return sums;
}
