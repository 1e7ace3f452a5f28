import type { BeliefPoints } from '../forecast/belief-points.ts';
import type { FenceFacts, ForecastSettings } from '../forecast/fence-facts.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { middleOf, type PointRisks, pointRisks, pointsOf, riskDays } from '../forecast/point-risks.ts';
import type { SeasonDay } from '../forecast/season-days.ts';
import { IMPROVEMENT_MARGIN, judgeStanding, standingAfter } from '../forecast/standing.ts';
import type { Works } from '../forecast/works.ts';
import type { CalendarDay } from '../units/calendar-day.ts';

/** A fence seen ahead from one day: the same points and days for everything that may be done to it. */
export interface FenceOutlook {
  readonly facts: FenceFacts;
  readonly settings: ForecastSettings;
  readonly day: CalendarDay;
  readonly points: BeliefPoints;
  readonly days: readonly SeasonDay[];
  /** Its risks where nothing is done. */
  readonly risks: PointRisks;
}

/**
 * Looks at a fence from a day on. Throws RangeError where something is recorded after that day: works ahead would lie
 * before what was seen.
 * @param day the day from which works are thought of, in the site's zone
 * @param seasonOneYear calendar year in which the season opens that runs on that day or is next to open
 */
export function fenceOutlook(
  facts: FenceFacts,
  settings: ForecastSettings,
  day: CalendarDay,
  seasonOneYear: number,
): FenceOutlook {
  const latest = [...facts.works, ...facts.inspections, ...facts.outcomes]
    .map((each) => each.day)
    .sort()
    .at(-1);
  if (latest !== undefined && latest > day) {
    throw new RangeError(
      `fence ${facts.ref}: something is recorded on ${latest}, after ${day}; look ahead from ${latest} or a later day`,
    );
  }
  const points = pointsOf(facts);
  const days = riskDays(facts, seasonOneYear, day);
  return { facts, settings, day, points, days, risks: pointRisks(facts, points, days, settings) };
}

/** The risks of the same fence, point by point, where works are done to it. */
export const risksAfter = (outlook: FenceOutlook, works: readonly Works[]): PointRisks =>
  pointRisks(
    { ...outlook.facts, works: [...outlook.facts.works, ...works] },
    outlook.points,
    outlook.days,
    outlook.settings,
  );

/** Standing of the posts a fence is judged by, and of the ends where they are judged apart. */
export interface StandingAhead {
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
}

/**
 * The standing that follows from risks; after works, an improvement holds only past the 3 % margin, as in the register.
 * @param before the standing without the works; null where there is none to compare with
 */
export function standingAhead(
  risks: PointRisks,
  { lookAheadSeasons }: ForecastSettings,
  before: StandingAhead | null = null,
): StandingAhead {
  const standing = (
    builtMps: Float64Array,
    seasonsMps: readonly Float64Array[],
    previous: FenceStanding | null,
  ): FenceStanding => {
    const speeds = { builtMps: middleOf(risks, builtMps), seasonsMps: seasonsMps.map((each) => middleOf(risks, each)) };
    const judged = (margin: number): FenceStanding =>
      judgeStanding(speeds, risks.designGustMps * margin, lookAheadSeasons);
    return standingAfter(previous, judged(1), judged(IMPROVEMENT_MARGIN));
  };
  const near = risks.seasons.slice(0, lookAheadSeasons + 1);
  const { builtEndsMps } = risks;
  return {
    standing: standing(
      risks.builtMps,
      near.map(({ snapMps }) => snapMps),
      before?.standing ?? null,
    ),
    endsStanding:
      builtEndsMps &&
      standing(
        builtEndsMps,
        near.map(({ endsSnapMps }) => endsSnapMps!),
        before?.endsStanding ?? null,
      ),
  };
}
