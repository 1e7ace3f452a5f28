import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { DAYS_PER_YEAR, dayNumber } from '../../src/units/calendar-day.ts';
import { mphFromMps } from '../../src/units/speed.ts';

/** The functions of one copy of the program. */
export interface ProgramCopy {
  readonly aboveGroundFlag: typeof import('../../src/forecast/above-ground.ts').aboveGroundFlag;
  readonly bandOf: typeof import('../../src/forecast/band.ts').bandOf;
  readonly classValues: typeof import('../../src/forecast/state-model.ts').classValues;
  readonly designGust: typeof import('../../src/forecast/design-gust.ts').designGust;
  readonly fenceBelief: typeof import('../../src/forecast/evidence/fence-belief.ts').fenceBelief;
  readonly fenceStates: typeof import('../../src/forecast/fence-state.ts').fenceStates;
  readonly forecastFence: typeof import('../../src/forecast/forecast-fence.ts').forecastFence;
  readonly DEFAULT_SETTINGS: typeof import('../../src/forecast/forecast-fence.ts').DEFAULT_SETTINGS;
  readonly groupValue: typeof import('../../src/forecast/post-group.ts').groupValue;
  readonly hazardCurve: typeof import('../../src/forecast/hazard-curve.ts').hazardCurve;
  readonly postGroups: typeof import('../../src/forecast/post-group.ts').postGroups;
  readonly seasonDays: typeof import('../../src/forecast/season-days.ts').seasonDays;
  readonly seasonOneYear: typeof import('../../src/forecast/season-calendar.ts').seasonOneYear;
  readonly stateModel: typeof import('../../src/forecast/state-model.ts').stateModel;
  readonly stateOn: typeof import('../../src/forecast/fence-state.ts').stateOn;
}

const MODULES = [
  'above-ground',
  'band',
  'design-gust',
  'evidence/fence-belief',
  'fence-state',
  'forecast-fence',
  'hazard-curve',
  'post-group',
  'season-calendar',
  'season-days',
  'state-model',
] as const;

/** Loads a copy of the program from its folder. */
export async function loadCopy(folder: string): Promise<ProgramCopy> {
  const parts = await Promise.all(
    MODULES.map((name) => import(pathToFileURL(join(folder, 'forecast', `${name}.js`)).href) as Promise<object>),
  );
  return Object.assign({}, ...parts) as ProgramCopy;
}

/** Calendar time of a day [a]. */
export const yearOfDay = (day: string): number => 1970 + dayNumber(day) / DAYS_PER_YEAR;

/** When a fence goes short and when it leans, of one copy of the program. */
export interface ShortSeason {
  /** Time at which the p50 snap speed of the line passes the design gust [a]; null where it is under it when new. */
  readonly shortAt: number | null;
  /** True where it does not pass within the seasons forecast: `shortAt` is then their end. */
  readonly beyond: boolean;
  /** p50 lean speed in season 1 [mph]. */
  readonly leanMph: number;
}

/** Looks for the crossing by halving the seasons, as the forecast has them, so that few of them are worked out. */
export function shortSeason(program: ProgramCopy, facts: FenceFacts, today: string): ShortSeason {
  const { site } = facts;
  const gust = program.designGust(
    site.wind,
    program.hazardCurve(site.wind),
    program.DEFAULT_SETTINGS.standingReturnPeriodYears,
  ).gustMps;
  const states = program.fenceStates(facts);
  const { points } = program.fenceBelief(facts, states);
  const models = new Map<unknown, ReturnType<ProgramCopy['stateModel']>>();
  const modelOn = (day: string) => {
    const state = program.stateOn(states, day);
    const model = models.get(state) ?? program.stateModel(site, state, points);
    models.set(state, model);
    const { line, ends } = program.postGroups(model.classes.classes);
    return { model, group: (line ?? ends)! };
  };
  const p50 = (values: Float64Array): number => program.bandOf(values, 6, points.weights).p50;
  const days = program.seasonDays(facts, program.seasonOneYear(site.seasonWindow, today));
  const snapAt = (index: number): number => {
    const { model, group } = modelOn(days[index]!.day);
    const { snapMps } = program.classValues(model, days[index]!.day, days[index]!.season === null);
    return p50(program.groupValue(group, snapMps, 'lowest'));
  };
  const now = modelOn(days.find(({ season }) => season === 1)!.day);
  const leanMph = mphFromMps(p50(program.groupValue(now.group, now.model.leanMps, 'lowest')));
  let low = 0;
  let high = days.length - 1;
  if (snapAt(low) < gust) return { shortAt: null, beyond: false, leanMph };
  if (snapAt(high) >= gust) return { shortAt: yearOfDay(days[high]!.day), beyond: true, leanMph };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (snapAt(middle) < gust) high = middle;
    else low = middle;
  }
  const [before, after] = [snapAt(low), snapAt(high)];
  const [from, to] = [yearOfDay(days[low]!.day), yearOfDay(days[high]!.day)];
  return { shortAt: from + ((before - gust) / (before - after)) * (to - from), beyond: false, leanMph };
}
