import { nominalSection } from '../../src/capacity/post-section.ts';
import type { SoilClass } from '../../src/capacity/soil-class.ts';
import type { Exposure } from '../../src/capacity/velocity-pressure.ts';
import type { Species } from '../../src/capacity/wood-strength.ts';
import type { TreatmentClass } from '../../src/decay/treatment-class.ts';
import { bandOf } from '../../src/forecast/band.ts';
import { BELIEF_POINTS, type BeliefPoints, singlePoint } from '../../src/forecast/belief-points.ts';
import type { EndFacts, FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { SeasonForecast } from '../../src/forecast/fence-forecast.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { groupValue, postGroups } from '../../src/forecast/post-group.ts';
import { YEAR_ROUND } from '../../src/forecast/season-calendar.ts';
import { classValues, stateModel } from '../../src/forecast/state-model.ts';
import { DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../../src/units/calendar-day.ts';
import { metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { mphFromMps, mpsFromMph } from '../../src/units/speed.ts';

const INSTALLED = '2000-01-01';
const FIRST_SEASON_YEAR = 2001;

/** What differs between anchor fences; the rest is the fence of the anchors. */
export interface AnchorChoice {
  readonly exposure?: Exposure;
  readonly soilClass?: SoilClass;
  readonly embedmentIn?: number;
  readonly diameterIn?: number;
  readonly treatmentClass?: TreatmentClass;
  readonly species?: Species;
  readonly end?: 'returned' | 'free';
}

/** 6 ft solid, 8 ft bays, 80 ft run, 4x4 No.2 southern pine, 9 in footing 24 in deep, medium sand, Gulf-like climate. */
export function anchorFence(choice: AnchorChoice = {}): FenceFacts {
  const end: EndFacts =
    choice.end === 'free' ? { kind: 'free' } : { kind: 'return', returnLengthM: metresFromFeet(12) };
  return {
    ref: 'anchor',
    site: {
      exposure: choice.exposure ?? 'B',
      elevationM: 0,
      topographicFactor: 1,
      soilClass: choice.soilClass ?? 'medium-sand',
      soilSaturated: false,
      lateralBearingDoubled: true,
      climate: { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 },
      wind: {
        kind: 'map',
        basis: 'ultimate',
        speedMps: mpsFromMph(105),
        returnPeriodYears: 300,
        second: null,
        hurricane: false,
      },
      seasonWindow: YEAR_ROUND,
    },
    run: {
      heightM: metresFromFeet(6),
      runLengthM: metresFromFeet(80),
      bottomGapM: 0,
      postSpacingM: metresFromFeet(8),
      solidity: 1,
      ends: [end, end],
    },
    wood: {
      section: nominalSection('4x4'),
      species: choice.species ?? 'southern-pine',
      grade: 'no-2',
      incised: false,
      treatmentClass: choice.treatmentClass ?? 'ground-contact',
      momentCapacityNm: null,
    },
    installed: { earliest: INSTALLED, latest: INSTALLED },
    ground: {
      embedmentM: mmFromInches(choice.embedmentIn ?? 24) / 1000,
      footing: 'concrete',
      footingDiameterM: mmFromInches(choice.diameterIn ?? 9) / 1000,
    },
    trimmer: { guards: null, yearlyCutMm: 0 },
    posts: [],
    works: [],
    inspections: [],
    outcomes: [],
    learned: null,
  };
}

/** The anchor fence as forecast at its installation. */
export function newState(choice: AnchorChoice = {}): SeasonForecast {
  return forecastFence(anchorFence(choice), FIRST_SEASON_YEAR, DEFAULT_SETTINGS).seasons[0]!;
}

/** p50 speeds of a new anchor fence [mph]; ends are its worst-placed posts. */
export function newSpeedsMph(choice: AnchorChoice = {}): {
  readonly snap: number;
  readonly lean: number;
  readonly endsSnap: number;
} {
  const { line, ends } = newState(choice);
  if (!line || !ends) throw new Error('the anchor fence has line posts and ends');
  return {
    snap: mphFromMps(line.snapMps.p50),
    lean: mphFromMps(line.leanMps.p50),
    endsSnap: mphFromMps(ends.snapMps.p50),
  };
}

/** Over which points a quantity is taken: the median of every unknown, or the p50 over the whole belief. */
export type Taken = 'at the medians' | 'over the belief';
const POINTS: Readonly<Record<Taken, BeliefPoints>> = {
  'at the medians': singlePoint({}, () => 0.5),
  'over the belief': BELIEF_POINTS,
};

/** Line posts of the anchor fence: snap speed [mph] and strength left [-] as functions of age, and the lean speed [mph]. */
export function lineOverYears(choice: AnchorChoice, taken: Taken) {
  const facts = anchorFence(choice);
  const model = stateModel(facts.site, fenceStates(facts)[0]!.state, POINTS[taken]);
  const { line } = postGroups(model.classes.classes);
  if (!line) throw new Error('the anchor fence has line posts');
  const valuesAt = (years: number) => classValues(model, dayFromNumber(dayNumber(INSTALLED) + years * DAYS_PER_YEAR));
  const median = (byClass: readonly Float64Array[]): number => bandOf(groupValue(line, byClass, 'lowest'), 6).p50;
  return {
    snapMph: (years: number): number => mphFromMps(median(valuesAt(years).snapMps)),
    strengthLeft: (years: number): number => median(valuesAt(years).strengthLeft),
    leanMph: mphFromMps(median(model.leanMps)),
  };
}

/** Age at which a falling quantity passes a value [a], to the day. */
export function yearsUntil(quantity: (years: number) => number, value: number): number {
  let low = 0;
  let high = 100;
  if (quantity(0) < value || quantity(high) > value)
    throw new RangeError(`${value} is not passed within ${high} years`);
  while (high - low > 0.5 / DAYS_PER_YEAR) {
    const middle = (low + high) / 2;
    if (quantity(middle) >= value) low = middle;
    else high = middle;
  }
  return high;
}
