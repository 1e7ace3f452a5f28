import type { FenceForecast, FenceStanding, GroupSpeeds, HazardCurve, SeasonForecast } from './fence-forecast.ts';
import { findMarks } from './marks.ts';
import { IMPROVEMENT_MARGIN, judgeStanding } from './standing.ts';
import { presentOrNextStretch } from './stretch.ts';

/** What a fence's speeds are judged with. */
export interface JudgementInputs {
  /** The present posts when sound: as they were set, wherever and whenever that was. */
  readonly built: Pick<SeasonForecast, 'line' | 'ends' | 'strengthLeft'>;
  /** Seasons since the present build, in order, to the last one ahead. */
  readonly seasons: readonly SeasonForecast[];
  readonly designGustMps: number;
  readonly lookAheadSeasons: number;
  readonly hazard: HazardCurve;
}

/** The part of a forecast that judges: standings, short seasons, turnover and marks. */
export type FenceJudgement = Pick<
  FenceForecast,
  | 'standing'
  | 'endsStanding'
  | 'standingWithMargin'
  | 'endsStandingWithMargin'
  | 'shortSeason'
  | 'endsShortSeason'
  | 'shortFrom'
  | 'turnover'
  | 'marksCrossed'
  | 'marksAhead'
>;

type Groups = Pick<SeasonForecast, 'line' | 'ends'>;

/** The posts a fence is judged by: line posts, or the ends where there are none. */
const judged = ({ line, ends }: Groups): GroupSpeeds | null => line ?? ends;
/** The ends, where they are judged apart. */
const apart = ({ line, ends }: Groups): GroupSpeeds | null => (line ? ends : null);
const speedOf = (group: GroupSpeeds | null): number => group?.snapMps.p50 ?? Number.POSITIVE_INFINITY;

/**
 * Judges a fence against its design gust: the line posts (or, on a run too short for any, the end posts) and apart from
 * them the ends. Speeds are p50 on basis `expected`.
 * Source: definitions of standing, turnover and marks are model choices.
 */
export function fenceJudgement(inputs: JudgementInputs): FenceJudgement {
  const { built, seasons, designGustMps, lookAheadSeasons, hazard } = inputs;
  const upcoming = seasons.filter(({ season }) => season !== null && season >= 1);
  const hasEnds = upcoming[0] !== undefined && apart(upcoming[0]) !== null;

  const standing = (group: typeof judged, margin: number): FenceStanding =>
    judgeStanding(
      { builtMps: speedOf(group(built)), seasonsMps: upcoming.map((season) => speedOf(group(season))) },
      designGustMps * margin,
      lookAheadSeasons,
    );
  const isShort = (season: Groups): boolean => speedOf(judged(season)) < designGustMps;
  const snapsFirst = (season: Groups): boolean => {
    const group = judged(season);
    return group !== null && group.snapMps.p50 < group.leanMps.p50;
  };
  const turnover = presentOrNextStretch(seasons, snapsFirst, snapsFirst(built))?.label ?? null;
  return {
    standing: standing(judged, 1),
    endsStanding: hasEnds ? standing(apart, 1) : null,
    standingWithMargin: standing(judged, IMPROVEMENT_MARGIN),
    endsStandingWithMargin: hasEnds ? standing(apart, IMPROVEMENT_MARGIN) : null,
    shortSeason: upcoming.find(isShort)?.label ?? null,
    endsShortSeason: upcoming.find((season) => speedOf(apart(season)) < designGustMps)?.label ?? null,
    shortFrom: presentOrNextStretch(seasons, isShort, isShort(built))?.label ?? null,
    turnover: turnover === 'new' ? 'since new' : turnover,
    ...findMarks(built, seasons, hazard),
  };
}
