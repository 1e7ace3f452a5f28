import type { PostSection } from '../../src/capacity/post-section.ts';
import { unflooredClimateFactor } from '../../src/decay/climate-factor.ts';
import { exposureToDepth } from '../../src/decay/decay-depth.ts';
import { TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';
import { depthAtShare, SECTIONS } from './section-share.ts';
import { SOURCES } from './sources.ts';

/** Share of the modulus at which a post in a field trial counts as failed (a light push snaps it) [-]; judgement. */
const FAILED_SHARE = 0.05;

/** An untreated field trial: observed life, and the site's climate (approximate, from memory). */
export interface FieldTrial {
  readonly id: string;
  readonly name: string;
  readonly rainMmPerYear: number;
  readonly meanTemperatureC: number;
  readonly section: PostSection;
  readonly observedYears: number;
  /** What the second implementation predicts [a]. */
  readonly predictedYears: number;
  readonly source: string;
  readonly note?: string;
}

const SWEDEN_NORTH = {
  rainMmPerYear: 540,
  meanTemperatureC: 5.8,
  section: SECTIONS.sawn75x100,
  source: SOURCES.bergman,
};
const SWEDEN_SOUTH = {
  rainMmPerYear: 1100,
  meanTemperatureC: 6.8,
  section: SECTIONS.sawn75x100,
  source: SOURCES.bergman,
};
const STAKES = { section: SECTIONS.stake38x89, source: SOURCES.fplRn02 };

export const FIELD_TRIALS: readonly FieldTrial[] = [
  {
    id: 'canal-zone',
    name: 'southern pine stakes, Canal Zone',
    rainMmPerYear: 2800,
    meanTemperatureC: 26.5,
    observedYears: 1,
    predictedYears: 1.2,
    ...STAKES,
  },
  {
    id: 'gulf',
    name: 'southern pine stakes, Gulf states',
    rainMmPerYear: 1600,
    meanTemperatureC: 19.5,
    observedYears: 2.7,
    predictedYears: 1.6,
    note: 'Observed 1.8 to 3.6 years; the middle is taken.',
    ...STAKES,
  },
  {
    id: 'madison',
    name: 'southern pine stakes, Wisconsin',
    rainMmPerYear: 840,
    meanTemperatureC: 7.5,
    observedYears: 6,
    predictedYears: 2.7,
    ...STAKES,
  },
  {
    id: 'mississippi',
    name: 'untreated southern pine posts, southern Mississippi',
    rainMmPerYear: 1600,
    meanTemperatureC: 19.5,
    section: SECTIONS.round115,
    observedYears: 2,
    predictedYears: 3.5,
    source: SOURCES.freeman,
    note: 'Round posts of 115 mm assumed.',
  },
  { id: 'ultuna-spruce', name: 'spruce posts, Ultuna', observedYears: 7.5, predictedYears: 6.8, ...SWEDEN_NORTH },
  { id: 'ultuna-pine', name: 'Scots pine posts, Ultuna', observedYears: 10.2, predictedYears: 6.8, ...SWEDEN_NORTH },
  {
    id: 'simlangsdalen-spruce',
    name: 'spruce posts, Simlangsdalen',
    observedYears: 3.2,
    predictedYears: 4.5,
    ...SWEDEN_SOUTH,
  },
  {
    id: 'simlangsdalen-pine',
    name: 'Scots pine posts, Simlangsdalen',
    observedYears: 5.4,
    predictedYears: 4.5,
    ...SWEDEN_SOUTH,
  },
];

/** Rate at which a section fails after so many years [mm/a], by bisection on the life. */
export function rateForLife(section: PostSection, years: number): number {
  let low = 1e-3;
  let high = 200;
  for (let i = 0; i < 200; i += 1) {
    const middle = Math.sqrt(low * high);
    if (lifeAtRate(section, middle) > years) low = middle;
    else high = middle;
  }
  return low;
}

/** Years until a section fails at a rate [a]. */
export const lifeAtRate = (section: PostSection, rate: number): number =>
  exposureToDepth(depthAtShare(section, FAILED_SHARE), rate);

/** Predicted life of an untreated trial [a]. */
export const predictedLife = ({ rainMmPerYear, meanTemperatureC, section }: FieldTrial): number =>
  lifeAtRate(
    section,
    TREATMENT_CLASSES['untreated-softwood'].woodFactor * unflooredClimateFactor(rainMmPerYear, meanTemperatureC, 0),
  );

/** ln(observed / predicted) of every trial [-]. */
export const fieldResiduals = (): readonly number[] =>
  FIELD_TRIALS.map((trial) => Math.log(trial.observedYears / predictedLife(trial)));
