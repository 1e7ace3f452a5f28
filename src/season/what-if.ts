import { rounded } from '../forecast/band.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { returnPeriodOf } from '../forecast/hazard-curve.ts';
import { meanOf, middleOf, type PointRisks } from '../forecast/point-risks.ts';
import { costOfLife, type FenceLife, fenceLife, type LifeGust, lifeGust } from './fence-life.ts';
import { type FenceOutlook, risksAfter, type StandingAhead, standingAhead } from './fence-outlook.ts';
import type { WorksCatalogue } from './works-catalogue.ts';
import type { WorksCost } from './works-cost.ts';
import { type LeftOut, type WorksOption, worksOptions } from './works-options.ts';

/** What becomes of a fence, middle values; the numbers are those that a forecast would show. */
export interface Prospect {
  readonly seasons: readonly {
    readonly label: string;
    readonly season: number;
    readonly day: string;
    readonly snapMps: number;
    readonly leanMps: number;
    /** Of the ends where line posts are judged; null otherwise. */
    readonly endsSnapMps: number | null;
  }[];
  /** Return period of the gust that equals the snap speed of season 1 [a]; null without a hazard curve. */
  readonly onceInYears: number | null;
  /** First season in which it is short; null if not within 30. */
  readonly shortSeason: string | null;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  /** Probability that it snaps in season 1; null without a hazard curve. */
  readonly pSnap: number | null;
  readonly expectedPostsShort: number;
  readonly life: FenceLife;
}

/** One thing that can be done to a fence, and what would become of it. */
export interface WhatIfRow extends Prospect {
  readonly option: WorksOption;
  readonly cost: WorksCost;
  /** Years of life gained [a], and what one costs; null where it gains none, or the fence outlasts the forecast as it is. */
  readonly yearsGained: number | null;
  readonly costPerYear: number | null;
}

/** Everything that could be done to one fence, side by side. */
export interface WhatIf {
  readonly fenceRef: string;
  /** Day on which the works are thought to be done. */
  readonly day: string;
  readonly designGustMps: number;
  /** What ends the fence's life. */
  readonly lifeGust: LifeGust;
  readonly nothing: Prospect;
  readonly rows: readonly WhatIfRow[];
  readonly leftOut: readonly LeftOut[];
}

function prospect(risks: PointRisks, outlook: FenceOutlook, gust: LifeGust, before: StandingAhead | null): Prospect {
  const seasons = risks.seasons.map(({ label, season, day, snapMps, leanMps, endsSnapMps }) => ({
    label,
    season: season!,
    day,
    snapMps: middleOf(risks, snapMps),
    leanMps: middleOf(risks, leanMps),
    endsSnapMps: endsSnapMps && middleOf(risks, endsSnapMps),
  }));
  const first = risks.seasons[0]!;
  const { hazard } = risks;
  return {
    seasons,
    onceInYears: hazard.kind === 'gumbel' ? rounded(returnPeriodOf(hazard, seasons[0]!.snapMps), 1) : null,
    shortSeason: seasons.find(({ snapMps }) => snapMps < risks.designGustMps)?.label ?? null,
    ...standingAhead(risks, outlook.settings, before),
    pSnap: first.seasonBreak && rounded(meanOf(risks, first.seasonBreak), 5),
    expectedPostsShort: rounded(risks.expectedPostsShort, 3),
    life: fenceLife(risks, gust.gustMps),
  };
}

/** What becomes of a fence where nothing is done. */
export const doingNothing = (outlook: FenceOutlook): Prospect =>
  prospect(outlook.risks, outlook, lifeGust(outlook.risks), null);

/** What would become of a fence where one option is done, held against doing nothing. */
export function whatIfRow(outlook: FenceOutlook, nothing: Prospect, option: WorksOption): WhatIfRow {
  const after = prospect(risksAfter(outlook, option.works), outlook, lifeGust(outlook.risks), nothing);
  const gain = costOfLife(nothing.life, after.life, option.cost.price);
  return {
    option,
    cost: option.cost,
    ...after,
    yearsGained: gain && rounded(gain.yearsGained, 2),
    costPerYear: gain && rounded(gain.costPerYear, 2),
  };
}

/**
 * Every works and each sensible combination at one fence, side by side with doing nothing: works are done on the day of the
 * outlook, and everything else stays as it is.
 * Source: composed of `pointRisks`; what is compared see `RECIPES`, what life means see `lifeGust`.
 */
export function whatIf(outlook: FenceOutlook, catalogue: WorksCatalogue): WhatIf {
  const { facts, day, risks } = outlook;
  const nothing = doingNothing(outlook);
  const { options, leftOut } = worksOptions({ facts, risks, catalogue, day });
  const rows = options.map((option) => whatIfRow(outlook, nothing, option));
  return {
    fenceRef: facts.ref,
    day,
    designGustMps: risks.designGustMps,
    lifeGust: lifeGust(risks),
    nothing,
    rows,
    leftOut,
  };
}
