import { allowableStress } from '../capacity/allowable-stress.ts';
import { yearsBetween } from '../units/calendar-day.ts';
import { bandOf, rounded } from './band.ts';
import type { BeliefPoints } from './belief-points.ts';
import { codeSpeeds } from './code-speeds.ts';
import { designGust } from './design-gust.ts';
import { evidenceRemarks } from './evidence/evidence-remarks.ts';
import { evidenceSummary } from './evidence/evidence-summary.ts';
import { fenceBelief, medianOf } from './evidence/fence-belief.ts';
import type { FenceFacts, ForecastSettings } from './fence-facts.ts';
import {
  type CodeVerdict,
  type FenceForecast,
  type GroupSpeeds,
  type HazardCurve,
  judgedGroup,
  type SeasonForecast,
} from './fence-forecast.ts';
import { fenceJudgement } from './fence-judgement.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import { foundPosts, foundRemarks } from './found-posts.ts';
import { groupForecast, type ModelPair } from './group-forecast.ts';
import { hazardCurve } from './hazard-curve.ts';
import { MODEL_VERSION } from './model-version.ts';
import { groupValue, type PostGroup, postGroups } from './post-group.ts';
import type { FenceState } from './post-state.ts';
import { postsShort, shareBelow, survivalLedger } from './risk.ts';
import { middleDay, type SeasonDay, seasonDays } from './season-days.ts';
import { classValues, stateModel } from './state-model.ts';
import { threeSecondGust } from './three-second-gust.ts';
import { unknownInputs } from './unknown-inputs.ts';

/** Default settings of a register. */
export const DEFAULT_SETTINGS: ForecastSettings = { standingReturnPeriodYears: 300, lookAheadSeasons: 2 };

interface Groups {
  readonly line: PostGroup | null;
  readonly ends: PostGroup | null;
}

/** Both models and the groups of one state. */
interface Prepared extends ModelPair {
  readonly state: FenceState;
  readonly groups: Groups;
}

function prepare(facts: FenceFacts, state: FenceState, points: BeliefPoints): Prepared {
  const full = stateModel(facts.site, state, points);
  const median = stateModel(facts.site, state, medianOf(points));
  return { state, full, median, groups: postGroups(full.classes.classes) };
}

/** Speeds, depth and strength of one state on one day, without risk; also the judged snap speeds at each point. */
function seasonState(prepared: Prepared, at: SeasonDay, hazard: HazardCurve, sound: boolean) {
  const values = {
    full: classValues(prepared.full, at.day, sound),
    median: classValues(prepared.median, at.day, sound),
  };
  const { line, ends } = prepared.groups;
  const judged = (line ?? ends)!;
  const speeds = (group: PostGroup | null): GroupSpeeds | null =>
    group && groupForecast(prepared, group, values, { day: at.day, sound, hazard });
  return {
    line: speeds(line),
    ends: speeds(ends),
    depthMm: bandOf(groupValue(judged, values.full.depthMm, 'highest'), 2, prepared.full.points.weights),
    strengthLeft: bandOf(groupValue(judged, values.full.strengthLeft, 'lowest'), 4, prepared.full.points.weights),
    judgedSnapMps: groupValue(judged, values.full.snapMps, 'lowest'),
  };
}

function codeVerdict(
  facts: FenceFacts,
  prepared: Prepared,
  when: CodeVerdict['when'],
  day: string,
  group: GroupSpeeds,
): CodeVerdict {
  const enteredGustMps = threeSecondGust(facts.site.wind.basis, facts.site.wind.speedMps);
  const decidingPost = group.decidingPosts[0]!;
  const postClass = prepared.median.classes.classes.find(({ numbers }) => numbers.includes(decidingPost))!;
  const code = codeSpeeds(prepared.median, postClass, day, when === 'new');
  return {
    when,
    enteredGustMps: rounded(enteredGustMps, 3),
    snapMps: group.codeSnapMps,
    leanMps: group.codeLeanMps,
    postMeets: group.codeSnapMps >= enteredGustMps,
    footingMeets: group.codeLeanMps >= enteredGustMps,
    postMeetsMinimumPressure: code.postMeetsMinimum,
    footingMeetsMinimumPressure: code.footingMeetsMinimum,
  };
}

function remarksOf(facts: FenceFacts, prepared: Prepared, hazard: HazardCurve): readonly string[] {
  const remarks: string[] = [];
  if (!prepared.groups.line) {
    remarks.push('The run is too short to have line posts: it is judged by its end posts.');
  }
  if (hazard.kind === 'none') remarks.push(`No risk is given: ${hazard.reason}.`);
  const { standsIn } = allowableStress(facts.wood);
  if (standsIn && facts.wood.momentCapacityNm === null) {
    remarks.push(`The code tables at hand list no design values for this species; those of ${standsIn} stand in.`);
  }
  if (prepared.state.soilSaturated)
    remarks.push('The soil counts as saturated: sand holds a footing with about half its dry strength.');
  if (facts.site.soilClass === 'dense-sand') {
    remarks.push('The code check takes the bearing of gravel (200 psf/ft); dense sand without gravel has 150 psf/ft.');
  }
  if (facts.site.soilClass === 'loose-sand') {
    remarks.push('Codes give no presumptive bearing for unprepared fill; the value for sand stands in.');
  }
  return remarks;
}

/**
 * Forecasts one fence: its state at installation, at each season opening since and at the next 30, as speeds on both
 * bases, rot, risk, standing, turnover and marks. Pure and deterministic: same facts, same season, same settings, same bytes.
 * Throws RangeError where the facts contradict each other (a recorded post that the run does not have).
 * @param facts everything the register knows of the fence, SI units
 * @param seasonOneYear calendar year in which season 1 opens (see `seasonOneYear` of season-calendar)
 * @param settings register-wide settings
 * Source: composition of decay/ and capacity/; definitions of standing, turnover and marks are model choices.
 */
export function forecastFence(facts: FenceFacts, seasonOneYear: number, settings: ForecastSettings): FenceForecast {
  const hazard = hazardCurve(facts.site.wind);
  const gust = designGust(facts.site.wind, hazard, settings.standingReturnPeriodYears);
  const states = fenceStates(facts);
  const belief = fenceBelief(facts, states);
  const { points } = belief;
  const evidence = evidenceSummary(facts, belief);
  const preparedStates = new Map<FenceState, Prepared>();
  const preparedOn = (day: string): Prepared => {
    const state = stateOn(states, day);
    const known = preparedStates.get(state);
    if (known) return known;
    const prepared = prepare(facts, state, points);
    preparedStates.set(state, prepared);
    return prepared;
  };
  const days = seasonDays(facts, seasonOneYear);
  const installed = days[0]!.day;
  const ledger = hazard.kind === 'gumbel' ? survivalLedger(hazard, facts.site.seasonWindow.share, points) : null;

  const seasons = days.map((at): SeasonForecast => {
    const prepared = preparedOn(at.day);
    const { judgedSnapMps, ...state } = seasonState(prepared, at, hazard, at.season === null);
    const ahead = at.season !== null && at.season >= 1;
    const short = ahead ? postsShort(prepared.full, at.day, gust.gustMps) : null;
    return {
      ...at,
      ageYears: rounded(Math.max(0, yearsBetween(installed, at.day)), 2),
      ...state,
      pShort: ahead ? rounded(shareBelow(judgedSnapMps, gust.gustMps, points.weights), 4) : null,
      expectedPostsShort: short && rounded(short.expected, 3),
      pAnyShort: short && rounded(short.any, 4),
      pSnap: ahead && ledger ? rounded(ledger.addSeason(judgedSnapMps), 5) : null,
    };
  });

  const now = seasons.find(({ season }) => season === 1)!;
  const today = preparedOn(now.day);
  const builtDay = middleDay(today.state.built);
  const asBuilt = preparedOn(builtDay);
  const whenNew = seasonState(asBuilt, { label: 'new', season: null, day: builtDay }, hazard, true);

  return {
    modelVersion: MODEL_VERSION,
    fenceRef: facts.ref,
    designGust: { ...gust, gustMps: rounded(gust.gustMps, 3) },
    hazard:
      hazard.kind === 'gumbel'
        ? { ...hazard, locationMps: rounded(hazard.locationMps, 4), scaleMps: rounded(hazard.scaleMps, 4) }
        : hazard,
    seasons,
    postCount: today.state.posts.length,
    linePosts: today.groups.line?.numbers ?? [],
    endPosts: today.groups.ends?.numbers ?? [],
    ...fenceJudgement({
      built: seasonState(today, { label: 'new', season: null, day: now.day }, hazard, true),
      seasons: seasons.filter(({ season, day }) => season !== null && (season >= 1 || day > builtDay)),
      designGustMps: gust.gustMps,
      lookAheadSeasons: settings.lookAheadSeasons,
      hazard,
    }),
    codeVerdicts: [
      codeVerdict(facts, asBuilt, 'new', builtDay, judgedGroup(whenNew)),
      codeVerdict(facts, today, 'today', now.day, judgedGroup(now)),
    ],
    unknowns: unknownInputs(facts, today.state, now.day, { median: medianOf(points), points }),
    evidence,
    found: foundPosts(today.state),
    remarks: [...foundRemarks(today.state), ...evidenceRemarks(evidence), ...remarksOf(facts, today, hazard)],
  };
}
