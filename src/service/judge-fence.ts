import type { FenceFacts, ForecastSettings } from '../forecast/fence-facts.ts';
import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { encodeForecast } from '../forecast/forecast-codec.ts';
import { MODEL_VERSION } from '../forecast/model-version.ts';
import { seasonOneYear } from '../forecast/season-calendar.ts';
import { standingAfter } from '../forecast/standing.ts';
import { generationOf } from '../notify/generation.ts';
import type { JudgedFence, NoticeDraft, ToldState } from '../notify/matters.ts';
import { decideNotices, toldMarksAfter } from '../notify/matters.ts';
import type { StoredState } from '../register/forecast-store.ts';
import type { DecidedNotice, SweptFence } from '../register/sweep-chunk.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';

/** The function that forecasts a fence: `forecastFence`, or another where a caller has its reasons. */
export type ForecastFunction = (facts: FenceFacts, seasonOneYear: number, settings: ForecastSettings) => FenceForecast;

/** What is needed to judge one fence. */
export interface FenceToJudge {
  readonly facts: FenceFacts;
  /** The calendar day at the site. */
  readonly today: string;
  readonly settings: ForecastSettings;
  readonly stored: StoredState | null;
  /** The stored forecast itself; needed where an owner is new to an unchanged fence. */
  readonly storedForecast: FenceForecast | null;
  /** Refs of the owners who are enrolled. */
  readonly owners: readonly string[];
  readonly introduced: ReadonlySet<string>;
  readonly forecast: ForecastFunction;
}

function judge(forecast: FenceForecast, generation: string, stored: StoredState | null): JudgedFence {
  const { endsStanding, endsStandingWithMargin } = forecast;
  const ends = (previous: FenceStanding | null): FenceStanding | null =>
    endsStanding && endsStandingWithMargin ? standingAfter(previous, endsStanding, endsStandingWithMargin) : null;
  return {
    forecast,
    standing: standingAfter(stored?.standing ?? null, forecast.standing, forecast.standingWithMargin),
    endsStanding: ends(stored?.endsStanding ?? null),
    generation,
  };
}

function noticeOf(draft: NoticeDraft, judged: JudgedFence): DecidedNotice {
  const { forecast } = judged;
  const one = seasonOne(forecast);
  const group = judgedGroup(one);
  const facts = canonicalJson({
    designGustMps: forecast.designGust.gustMps,
    endsStanding: judged.endsStanding,
    marksCrossed: forecast.marksCrossed,
    modelVersion: forecast.modelVersion,
    onceInYears: group.onceInYears,
    pShort: one.pShort,
    season: one.label,
    shortSeason: forecast.shortSeason,
    snapMps: group.snapMps,
    standing: judged.standing,
  });
  return { matter: draft.matter, occasion: draft.occasion, facts };
}

function toldState(stored: StoredState): ToldState {
  const { standing, endsStanding, generation, toldMarks } = stored;
  return { standing, endsStanding, generation, toldMarks };
}

function rowOf(judged: JudgedFence, before: ToldState | null, inputHash: string): NonNullable<SweptFence['forecast']> {
  const { forecast } = judged;
  const one = seasonOne(forecast);
  const group = judgedGroup(one);
  return {
    input_hash: inputHash,
    model_version: forecast.modelVersion,
    season_one: one.label,
    generation: judged.generation,
    standing: judged.standing,
    ends_standing: judged.endsStanding,
    short_season: forecast.shortSeason,
    ends_short_season: judged.endsStanding === null ? null : forecast.endsShortSeason,
    snap_mps: group.snapMps.p50,
    lean_mps: group.leanMps.p50,
    ends_snap_mps: one.line && one.ends ? one.ends.snapMps.p50 : null,
    design_gust_mps: forecast.designGust.gustMps,
    once_in_years: group.onceInYears,
    p_short: one.pShort,
    told_marks: canonicalJson(toldMarksAfter(before, judged)),
    detail: encodeForecast(forecast),
  };
}

/**
 * Judges one fence: forecasts it where its facts, season 1, the settings or the model changed since the stored forecast,
 * and decides what each enrolled owner is to be told. An owner who hears of the fence for the first time gets a first
 * notice, also where the fence itself did not change. Returns null where there is nothing to write.
 */
export function judgeFence(fence: FenceToJudge): SweptFence | null {
  const { facts, settings, stored } = fence;
  const year = seasonOneYear(facts.site.seasonWindow, fence.today);
  const inputHash = sha256(canonicalJson({ facts, modelVersion: MODEL_VERSION, seasonOneYear: year, settings }));
  const changed = stored?.inputHash !== inputHash;
  const newOwners = fence.owners.filter((ref) => !fence.introduced.has(ref));
  if (!changed && newOwners.length === 0) return null;
  const before = stored && toldState(stored);
  const judged =
    stored && !changed && fence.storedForecast
      ? { ...toldState(stored), forecast: fence.storedForecast }
      : judge(fence.forecast(facts, year, settings), generationOf(facts.works, fence.today), stored);
  const owners = (changed ? fence.owners : newOwners).map((ownerRef) => ({
    ownerRef,
    notices: decideNotices(fence.introduced.has(ownerRef) ? before : null, judged).map((draft) =>
      noticeOf(draft, judged),
    ),
  }));
  return { fenceRef: facts.ref, forecast: changed ? rowOf(judged, before, inputHash) : null, owners };
}
