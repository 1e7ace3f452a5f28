import type { PostSection } from '../capacity/post-section.ts';
import { EXPOSURES } from '../capacity/velocity-pressure.ts';
import type { Grade } from '../capacity/wood-strength.ts';
import type { ClimateFacts } from '../decay/climate-factor.ts';
import type { TreatmentClass } from '../decay/treatment-class.ts';
import { addDays, DAYS_PER_YEAR } from '../units/calendar-day.ts';
import { feetFromMetres, inchesFromMm, metresFromFeet } from '../units/length.ts';
import { fahrenheitFromCelsius } from '../units/temperature.ts';
import type { InstallDate, SiteFacts } from './fence-facts.ts';
import type { FenceState, PostState } from './post-state.ts';
import type { PostWood } from './post-wood.ts';

/** A value of an input in words, for readers of either units. */
export interface ValueText {
  readonly us: string;
  readonly metric: string;
}

/** What a crossing is worked out from, once the inputs are fixed. */
export interface SensitivityCase {
  readonly site: SiteFacts;
  readonly state: FenceState;
  readonly gustMps: number;
}

/** A recorded input moved by a plausible error of its record; null where there is nothing further that way. */
export interface InputChange {
  readonly input: string;
  readonly low: { readonly label: ValueText; readonly at: SensitivityCase } | null;
  readonly high: { readonly label: ValueText; readonly at: SensitivityCase } | null;
}

/**
 * How far a record may plausibly be off; judgement throughout: a design gust read off a map by eye, the nearest weather
 * station for the site, a tape read by a crew, boards counted by eye, a year remembered instead of a day.
 */
const PLAUSIBLE_ERRORS = {
  /** Design gust, as a share [-]. */
  gustShare: 0.05,
  /** Mean annual rain, as a share [-]. */
  rainShare: 0.2,
  /** Mean annual temperature [degC]. */
  temperatureC: 1.5,
  /** Each side of the section [mm]. */
  sectionMm: 3,
  /** Post spacing [m]: 1 ft. */
  spacingM: metresFromFeet(1),
  /** Height [m]: a quarter of a foot. */
  heightM: metresFromFeet(0.25),
  /** Solidity [-]. */
  solidity: 0.1,
  /** Install date [a]. */
  installYears: 1,
} as const;

/** Least solidity a fence is taken to have [-]. */
const LEAST_SOLIDITY = 0.05;
const DECAY_ZONES = [1, 2, 3, 4, 5] as const;

/** Treatment classes that a use category, or a durability class, apart: the lighter before the heavier. */
const TREATMENT_STEPS: readonly (readonly (readonly [key: TreatmentClass, name: string])[])[] = [
  [
    ['above-ground-stock', 'above-ground stock'],
    ['ground-contact', 'ground contact'],
    ['heavy-duty', 'heavy duty'],
    ['extreme-duty', 'extreme duty'],
  ],
  [
    ['refractory-unincised', 'not incised'],
    ['refractory-incised', 'incised'],
  ],
  [
    ['heartwood-class-4', 'class 4'],
    ['heartwood-class-3', 'class 3'],
    ['heartwood-class-2', 'class 2'],
    ['heartwood-class-1', 'class 1'],
  ],
];

const GRADE_STEPS: readonly Grade[] = ['no-3', 'no-2', 'no-1'];
const GRADE_NAMES: Readonly<Record<Grade, string>> = {
  'no-1': 'No.1',
  'no-2': 'No.2',
  'no-3': 'No.3',
  unknown: 'unknown',
};

const same = (text: string): ValueText => ({ us: text, metric: text });
const short = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
const signed = (low: boolean, text: string): ValueText => same(`${low ? '−' : '+'}${text}`);

/** The two neighbours of an entry in a row of steps; null beyond its ends, both null where it is not in the row. */
function neighbours<T>(steps: readonly T[], isIt: (step: T) => boolean): readonly [T | null, T | null] {
  const index = steps.findIndex(isIt);
  return index < 0 ? [null, null] : [steps[index - 1] ?? null, steps[index + 1] ?? null];
}

/** The wood that most posts have. */
function usualWood(state: FenceState): PostWood {
  const counts = new Map<string, { readonly wood: PostWood; count: number }>();
  for (const { wood } of state.posts) {
    const key = JSON.stringify(wood);
    const known = counts.get(key);
    if (known) known.count += 1;
    else counts.set(key, { wood, count: 1 });
  }
  return [...counts.values()].reduce((most, each) => (each.count > most.count ? each : most)).wood;
}

const withPosts = (at: SensitivityCase, change: (post: PostState) => PostState): SensitivityCase => ({
  ...at,
  state: { ...at.state, posts: at.state.posts.map(change) },
});

/** The same with another wood in every post that has the usual one. */
function withWood(at: SensitivityCase, change: Partial<PostWood>): SensitivityCase {
  const key = JSON.stringify(usualWood(at.state));
  return withPosts(at, (post) =>
    JSON.stringify(post.wood) === key ? { ...post, wood: { ...post.wood, ...change } } : post,
  );
}

const withSite = (at: SensitivityCase, change: Partial<SiteFacts>): SensitivityCase => ({
  ...at,
  site: { ...at.site, ...change },
});
const withRun = (at: SensitivityCase, change: Partial<FenceState['run']>): SensitivityCase => ({
  ...at,
  state: { ...at.state, run: { ...at.state.run, ...change } },
});

/** Both ends of a change of so much either way. */
const eitherWay = (input: string, end: (sign: -1 | 1) => NonNullable<InputChange['low']>): InputChange => ({
  input,
  low: end(-1),
  high: end(1),
});

function climateChanges(at: SensitivityCase): readonly InputChange[] {
  const { climate } = at.site;
  const withClimate = (changed: ClimateFacts): SensitivityCase => withSite(at, { climate: changed });
  if (climate.kind === 'decay-zone') {
    const [low, high] = neighbours(DECAY_ZONES, (zone) => zone === climate.zone).map((zone) =>
      zone === null ? null : { label: same(`zone ${zone}`), at: withClimate({ kind: 'decay-zone', zone }) },
    );
    return [{ input: 'decay zone', low: low ?? null, high: high ?? null }];
  }
  return [
    eitherWay('annual rain', (sign) => {
      const rainMmPerYear = climate.rainMmPerYear * (1 + sign * PLAUSIBLE_ERRORS.rainShare);
      return {
        label: { us: `${short(inchesFromMm(rainMmPerYear), 0)} in`, metric: `${short(rainMmPerYear, 0)} mm` },
        at: withClimate({ ...climate, rainMmPerYear }),
      };
    }),
    eitherWay('mean temperature', (sign) => {
      const meanTemperatureC = climate.meanTemperatureC + sign * PLAUSIBLE_ERRORS.temperatureC;
      return {
        label: {
          us: `${short(fahrenheitFromCelsius(meanTemperatureC), 1)} °F`,
          metric: `${short(meanTemperatureC, 1)} °C`,
        },
        at: withClimate({ ...climate, meanTemperatureC }),
      };
    }),
  ];
}

const grownSection = (section: PostSection, byMm: number): PostSection =>
  section.kind === 'round'
    ? { ...section, diameterMm: section.diameterMm + byMm }
    : { ...section, widthMm: section.widthMm + byMm, depthMm: section.depthMm + byMm };

/** A section as its sides: `3.38 × 3.38 in`. */
function sectionText(section: PostSection): ValueText {
  const sides = section.kind === 'round' ? [section.diameterMm] : [section.widthMm, section.depthMm];
  const joined = (side: (mm: number) => string): string => sides.map(side).join(' × ');
  return { us: `${joined((mm) => short(inchesFromMm(mm), 2))} in`, metric: `${joined((mm) => short(mm, 0))} mm` };
}

function woodChanges(at: SensitivityCase): readonly InputChange[] {
  const wood = usualWood(at.state);
  const changes: InputChange[] = [
    eitherWay('section', (sign) => {
      const section = grownSection(wood.section, sign * PLAUSIBLE_ERRORS.sectionMm);
      return { label: sectionText(section), at: withWood(at, { section }) };
    }),
  ];
  const steps = TREATMENT_STEPS.find((row) => row.some(([key]) => key === wood.treatmentClass));
  if (steps) {
    const [low, high] = neighbours(steps, ([key]) => key === wood.treatmentClass).map((step) =>
      step === null ? null : { label: same(step[1]), at: withWood(at, { treatmentClass: step[0] }) },
    );
    changes.push({ input: 'treatment class', low: low ?? null, high: high ?? null });
  }
  const [low, high] = neighbours(
    GRADE_STEPS,
    (grade) => grade === (wood.grade === 'unknown' ? 'no-2' : wood.grade),
  ).map((grade) => (grade === null ? null : { label: same(GRADE_NAMES[grade]), at: withWood(at, { grade }) }));
  changes.push({ input: 'grade', low: low ?? null, high: high ?? null });
  return changes;
}

/** Bays so much longer or shorter, the run in proportion: every post keeps its number and what is known of it. */
function spacingEnd(at: SensitivityCase, sign: -1 | 1): NonNullable<InputChange['low']> {
  const { run } = at.state;
  const postSpacingM = Math.max(run.postSpacingM / 2, run.postSpacingM + sign * PLAUSIBLE_ERRORS.spacingM);
  const scale = postSpacingM / run.postSpacingM;
  const stretched = withPosts(at, (post) => ({ ...post, positionM: post.positionM * scale }));
  return {
    label: lengthText(postSpacingM),
    at: withRun(stretched, { postSpacingM, runLengthM: run.runLengthM * scale }),
  };
}

const lengthText = (metres: number): ValueText => ({
  us: `${short(feetFromMetres(metres), 2)} ft`,
  metric: `${short(metres, 2)} m`,
});

function runChanges(at: SensitivityCase): readonly InputChange[] {
  const { run } = at.state;
  const solidityEnd = (solidity: number): InputChange['low'] =>
    solidity === run.solidity ? null : { label: same(short(solidity, 2)), at: withRun(at, { solidity }) };
  return [
    eitherWay('post spacing', (sign) => spacingEnd(at, sign)),
    eitherWay('height', (sign) => {
      const heightM = Math.max(run.heightM / 2, run.heightM + sign * PLAUSIBLE_ERRORS.heightM);
      return { label: lengthText(heightM), at: withRun(at, { heightM }) };
    }),
    {
      input: 'solidity',
      low: solidityEnd(Math.max(LEAST_SOLIDITY, run.solidity - PLAUSIBLE_ERRORS.solidity)),
      high: solidityEnd(Math.min(1, run.solidity + PLAUSIBLE_ERRORS.solidity)),
    },
  ];
}

const shiftedDate = (date: InstallDate, days: number): InstallDate => ({
  earliest: addDays(date.earliest, days),
  latest: addDays(date.latest, days),
});

/** The present build set so much earlier or later; posts set at another time keep theirs. */
function installEnd(at: SensitivityCase, sign: -1 | 1): NonNullable<InputChange['low']> {
  const days = sign * PLAUSIBLE_ERRORS.installYears * DAYS_PER_YEAR;
  const { built } = at.state;
  const installed = shiftedDate(built, days);
  const shifted = withPosts(at, (post) =>
    post.installed.earliest === built.earliest && post.installed.latest === built.latest
      ? { ...post, installed }
      : post,
  );
  return {
    label: signed(sign < 0, `${PLAUSIBLE_ERRORS.installYears} year`),
    at: { ...shifted, state: { ...shifted.state, built: installed } },
  };
}

/**
 * Every recorded input of a fence moved by the plausible error of its record, one at a time.
 * Source: `PLAUSIBLE_ERRORS` and the steps between classes, judgement.
 */
export function recordedChanges(at: SensitivityCase): readonly InputChange[] {
  const [exposureLow, exposureHigh] = neighbours(EXPOSURES, (exposure) => exposure === at.site.exposure).map(
    (exposure) => (exposure === null ? null : { label: same(exposure), at: withSite(at, { exposure }) }),
  );
  const { built } = at.state;
  return [
    { input: 'exposure category', low: exposureLow ?? null, high: exposureHigh ?? null },
    eitherWay('design gust', (sign) => ({
      label: signed(sign < 0, `${short(PLAUSIBLE_ERRORS.gustShare * 100, 0)} %`),
      at: { ...at, gustMps: at.gustMps * (1 + sign * PLAUSIBLE_ERRORS.gustShare) },
    })),
    ...climateChanges(at),
    ...woodChanges(at),
    ...runChanges(at),
    ...(built.earliest === built.latest ? [eitherWay('install date', (sign) => installEnd(at, sign))] : []),
  ];
}
