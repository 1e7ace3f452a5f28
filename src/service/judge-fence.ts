import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { encodeForecast } from '../forecast/forecast-codec.ts';
import { MODEL_VERSION } from '../forecast/model-version.ts';
import { seasonOneYear } from '../forecast/season-calendar.ts';
import { standingAfter } from '../forecast/standing.ts';
import type { Works } from '../forecast/works.ts';
import { generationOf } from '../notify/generation.ts';
import type { JudgedFence, NoticeDraft, ToldState } from '../notify/matters.ts';
import { dangerousFindings, decideNotices, decideOfficeNotices, toldMarksAfter } from '../notify/matters.ts';
import { doneBy, type WorksGain, worksGain, worksToTell } from '../notify/works-gain.ts';
import type { StoredState } from '../register/forecast-store.ts';
import type { SweptFence } from '../register/swept-fence.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import type { FenceToJudge } from './fence-to-judge.ts';
import { decidedNotice, ownerNotices, remindersFor } from './owner-notices.ts';

function judge(fence: FenceToJudge, forecast: FenceForecast): JudgedFence {
  const { stored, today } = fence;
  const { endsStanding, endsStandingWithMargin } = forecast;
  const ends = (previous: FenceStanding | null): FenceStanding | null =>
    endsStanding && endsStandingWithMargin ? standingAfter(previous, endsStanding, endsStandingWithMargin) : null;
  return {
    forecast,
    standing: standingAfter(stored?.standing ?? null, forecast.standing, forecast.standingWithMargin),
    endsStanding: ends(stored?.endsStanding ?? null),
    generation: generationOf(fence.facts.works, today),
    today,
  };
}

function toldState(stored: StoredState): ToldState {
  const { standing, endsStanding, generation, toldMarks, toldFindings } = stored;
  return { standing, endsStanding, generation, toldMarks, toldFindings };
}

function rowOf(
  judged: JudgedFence,
  before: ToldState | null,
  { inputHash, works }: { readonly inputHash: string; readonly works: readonly Works[] },
): NonNullable<SweptFence['forecast']> {
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
    told_findings: canonicalJson(dangerousFindings(forecast)),
    told_works: canonicalJson(
      doneBy(works, judged.today)
        .map(({ ref }) => ref)
        .sort(),
    ),
    detail: encodeForecast(forecast),
  };
}

/** What works gained: the forecast with them against one without them, where it can be made. */
function gainOf(fence: FenceToJudge, works: readonly Works[], judged: JudgedFence, year: number): WorksGain {
  const told = new Set(works.map(({ ref }) => ref));
  const facts = { ...fence.facts, works: fence.facts.works.filter(({ ref }) => !told.has(ref)) };
  try {
    return worksGain(works, judged.forecast, fence.forecast(facts, year, fence.settings));
  } catch (error) {
    // what was seen since names posts that the works set
    if (!(error instanceof RangeError)) throw error;
    return worksGain(works, judged.forecast, null);
  }
}

/**
 * Judges one fence: forecasts it where its facts, season 1, the settings or the model changed since the stored forecast,
 * and decides what each enrolled owner, and the office, is to be told. An owner who hears of the fence for the first time gets a
 * first notice, also where the fence itself did not change. Returns null where there is nothing to write.
 */
export function judgeFence(fence: FenceToJudge): SweptFence | null {
  const { facts, settings, stored, today } = fence;
  const year = seasonOneYear(facts.site.seasonWindow, today);
  const inputHash = sha256(canonicalJson({ facts, modelVersion: MODEL_VERSION, seasonOneYear: year, settings }));
  const works = worksToTell(facts.works, stored?.toldWorks ?? null, today);
  const changed = stored?.inputHash !== inputHash || works.length > 0;
  const newOwners = fence.owners.filter((ref) => !fence.introduced.has(ref));
  const reminded = new Map<string, NoticeDraft>();
  const remind = (standing: FenceStanding): void => {
    for (const [owner, draft] of remindersFor(fence, standing)) reminded.set(owner, draft);
  };
  if (stored && !changed) remind(stored.standing);
  if (!changed && newOwners.length === 0 && reminded.size === 0) return null;
  const before = stored && toldState(stored);
  const forecast = (!changed && fence.storedForecast) || fence.forecast(facts, year, settings);
  const judged: JudgedFence = stored && !changed ? { ...toldState(stored), today, forecast } : judge(fence, forecast);
  if (changed) remind(judged.standing);
  const gain = works.length > 0 ? gainOf(fence, works, judged, year) : null;
  const told = changed ? fence.owners : fence.owners.filter((ref) => newOwners.includes(ref) || reminded.has(ref));
  return {
    fenceRef: facts.ref,
    forecast: changed ? rowOf(judged, before, { inputHash, works: facts.works }) : null,
    owners: told.map((ownerRef) => {
      const isNew = !fence.introduced.has(ownerRef);
      const decided = changed || isNew ? decideNotices(isNew ? null : before, judged) : [];
      return {
        ownerRef,
        notices: ownerNotices({ decided, works, gain, reminder: reminded.get(ownerRef), isNew, judged }),
      };
    }),
    office: changed ? decideOfficeNotices(before, judged).map((draft) => decidedNotice(draft, judged, null)) : [],
  };
}
