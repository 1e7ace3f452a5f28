import type { PostSection } from '../../src/capacity/post-section.ts';
import { exposureToDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate, POST_PACE_SPREAD } from '../../src/decay/decay-rate.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../../src/decay/treatment-class.ts';
import { normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { FIELD_TRIALS, type FieldTrial, lifeAtRate } from './field-lives.ts';
import { SECTIONS } from './section-share.ts';
import { SOURCES } from './sources.ts';

/** What a field row was used for: the spread tau (not its middle), the pace of its class, or nothing. */
export type RowUse = 'set the spread' | 'set a pace' | 'used for nothing';

/** What was seen: a mean life, a life longer than so many years, or a life between two. */
export type Observed =
  | { readonly kind: 'life'; readonly years: number }
  | { readonly kind: 'longer'; readonly years: number }
  | { readonly kind: 'between'; readonly from: number; readonly to: number };

/** One set of posts or stakes in the field: what was seen, and what the program needs to say the same beforehand. */
export interface FieldRow {
  readonly id: string;
  readonly name: string;
  readonly site: string;
  readonly use: RowUse;
  readonly tag: 'read' | 'read at second hand' | 'memory';
  readonly source: string;
  readonly treatmentClass: TreatmentClass;
  /** Mean annual rain and temperature [mm/a, degC]; approximate, from memory, unless the source gives them. */
  readonly rainMmPerYear: number;
  readonly meanTemperatureC: number;
  readonly section: PostSection;
  /** Depth that ends the row [mm]; null where it ends with the post (a twentieth of the modulus). */
  readonly endsAtMm: number | null;
  readonly observed: Observed;
  readonly remark: string;
}

const SITE_OF: Readonly<Record<string, string>> = {
  'canal-zone': 'Canal Zone',
  gulf: 'Gulf states',
  madison: 'Madison',
  mississippi: 'S Mississippi',
  'ultuna-spruce': 'Ultuna',
  'ultuna-pine': 'Ultuna',
  'simlangsdalen-spruce': 'Simlangsdalen',
  'simlangsdalen-pine': 'Simlangsdalen',
};

const NAME_OF: Readonly<Record<string, string>> = {
  'canal-zone': 'southern pine stakes',
  gulf: 'southern pine stakes',
  madison: 'southern pine stakes',
  mississippi: 'untreated southern pine posts',
  'ultuna-spruce': 'spruce posts',
  'ultuna-pine': 'Scots pine posts',
  'simlangsdalen-spruce': 'spruce posts',
  'simlangsdalen-pine': 'Scots pine posts',
};

const fromTrial = (trial: FieldTrial): FieldRow => ({
  id: trial.id,
  name: NAME_OF[trial.id]!,
  site: SITE_OF[trial.id]!,
  use: 'set the spread',
  tag: 'read',
  source: trial.source,
  treatmentClass: 'untreated-softwood',
  rainMmPerYear: trial.rainMmPerYear,
  meanTemperatureC: trial.meanTemperatureC,
  section: trial.section,
  endsAtMm: null,
  observed: { kind: 'life', years: trial.observedYears },
  remark: trial.note ?? '',
});

const POSTS = { section: SECTIONS.round115, endsAtMm: null } as const;
const MISSISSIPPI = { site: 'S Mississippi', rainMmPerYear: 1600, meanTemperatureC: 19.5, ...POSTS } as const;
const CORVALLIS = { site: 'Corvallis', rainMmPerYear: 1050, meanTemperatureC: 11.3, ...POSTS } as const;
const ULTUNA = { site: 'Ultuna', rainMmPerYear: 540, meanTemperatureC: 5.8, section: SECTIONS.sawn75x100 } as const;
const BORAS = { site: 'Boras', rainMmPerYear: 1000, meanTemperatureC: 6.3, endsAtMm: null } as const;
const BROOKINGS = { site: 'Brookings', rainMmPerYear: 580, meanTemperatureC: 6.2, ...POSTS } as const;
const life = (years: number): Observed => ({ kind: 'life', years });
const longer = (years: number): Observed => ({ kind: 'longer', years });

/** Half-life that n posts of which none failed in 50 years have at least, 95 % sure, at the program's post-to-post scatter [a]. */
const noneFailedBound = (posts: number): number =>
  Number((50 * Math.exp(-POST_PACE_SPREAD * normalQuantile(1 - 0.05 ** (1 / posts)))).toFixed(0));

type Rest = Omit<FieldRow, 'use' | 'tag' | 'remark'> & Partial<Pick<FieldRow, 'tag' | 'remark'>>;
const row = (use: RowUse, rest: Rest): FieldRow => ({ use, tag: 'read', remark: '', ...rest });
const pace = (rest: Rest): FieldRow => row('set a pace', rest);
const free = (rest: Rest): FieldRow => row('used for nothing', rest);

const LEBOW_2015 = { source: SOURCES.lebow2015, ...MISSISSIPPI } as const;
const LEBOW_2013 = { source: SOURCES.lebow2013, ...MISSISSIPPI } as const;

const PACE_ROWS: readonly FieldRow[] = [
  pace({
    ...LEBOW_2015,
    id: 'cca',
    name: 'CCA posts',
    treatmentClass: 'round-pine-cca',
    observed: longer(noneFailedBound(125)),
    remark: '0 of 125 failed in 50 years; the bound is worked out from that.',
  }),
  pace({
    ...LEBOW_2015,
    id: 'penta',
    name: 'penta posts',
    treatmentClass: 'round-pine-penta',
    observed: longer(noneFailedBound(75)),
    remark: '0 of 75 failed in 50 years; the bound is worked out from that.',
  }),
  pace({ ...LEBOW_2015, id: 'aca', name: 'ACA posts', treatmentClass: 'round-pine-acza', observed: life(96) }),
  pace({
    ...LEBOW_2015,
    id: 'creosote',
    name: 'creosote posts',
    treatmentClass: 'round-pine-creosote',
    observed: life(78),
  }),
  pace({
    ...LEBOW_2013,
    id: 'cun-posts',
    name: 'copper naphthenate posts',
    treatmentClass: 'round-pine-copper-naphthenate',
    observed: life(65),
  }),
  pace({
    ...LEBOW_2013,
    section: SECTIONS.stake38x89,
    id: 'cun-lumber',
    name: 'copper naphthenate lumber',
    treatmentClass: 'ground-contact',
    observed: { kind: 'between', from: 27, to: 30 },
    remark: 'Set the pace of sawn pine in ground contact, by analogy.',
  }),
  pace({
    ...ULTUNA,
    id: 'ultuna-treated',
    name: 'treated sawn posts, to rating 2',
    source: SOURCES.bergman,
    treatmentClass: 'refractory-unincised',
    endsAtMm: 2.5,
    observed: life(13),
    remark: 'Rating 2 at 13 years; that rating 2 is 2.5 mm is judgement.',
  }),
  pace({
    ...CORVALLIS,
    id: 'locust',
    name: 'black locust posts',
    source: SOURCES.miller,
    treatmentClass: 'black-locust',
    observed: longer(30),
  }),
  pace({
    ...CORVALLIS,
    id: 'osage',
    name: 'Osage-orange posts',
    source: SOURCES.miller,
    treatmentClass: 'juniper-osage-orange',
    observed: longer(52),
    remark: 'None failed in 52 years.',
  }),
  pace({
    ...CORVALLIS,
    id: 'juniper',
    name: 'western juniper posts',
    source: SOURCES.miller,
    treatmentClass: 'juniper-osage-orange',
    observed: longer(30),
    remark: 'Average life will exceed 30 years.',
  }),
  pace({
    ...CORVALLIS,
    id: 'redcedar',
    name: 'split redcedar posts',
    source: SOURCES.miller,
    tag: 'read at second hand',
    treatmentClass: 'redcedar-redwood-heartwood',
    observed: life(23),
  }),
];

const FREE_ROWS: readonly FieldRow[] = [
  free({
    ...LEBOW_2013,
    id: 'creosote-low',
    name: 'low-retention creosote posts',
    treatmentClass: 'round-pine-creosote',
    observed: life(54),
    remark: 'Less preservative than the class has: expected to fall short.',
  }),
  free({
    ...LEBOW_2013,
    id: 'aca-low',
    name: 'low-retention ACA posts',
    treatmentClass: 'round-pine-acza',
    observed: life(60),
    remark: 'Less preservative than the class has: expected to fall short.',
  }),
  free({
    ...BORAS,
    section: { kind: 'round', diameterMm: 100 },
    id: 'boras',
    name: 'untreated or charred posts',
    source: SOURCES.rise,
    treatmentClass: 'untreated-softwood',
    observed: { kind: 'between', from: 3, to: 10 },
    remark: '"A few" to 5-10 years: taken as 3 to 10. 100 mm assumed.',
  }),
  free({
    ...LEBOW_2013,
    id: 'penta-low',
    name: 'low-retention penta posts',
    treatmentClass: 'round-pine-penta',
    observed: longer(60),
  }),
  free({
    ...MISSISSIPPI,
    id: 'freeman-creosote',
    name: 'creosote posts, 75 % retention',
    source: SOURCES.freeman,
    treatmentClass: 'round-pine-creosote',
    observed: longer(60),
  }),
  free({
    ...MISSISSIPPI,
    id: 'freeman-penta',
    name: 'penta posts, 75 % retention',
    source: SOURCES.freeman,
    treatmentClass: 'round-pine-penta',
    observed: longer(60),
  }),
  free({
    ...MISSISSIPPI,
    id: 'freeman-cun',
    name: 'copper naphthenate, 50 %',
    source: SOURCES.freeman,
    treatmentClass: 'round-pine-copper-naphthenate',
    observed: longer(60),
  }),
  free({
    ...BROOKINGS,
    id: 'dakota-creosote',
    name: 'creosote ponderosa posts',
    source: SOURCES.rm300,
    treatmentClass: 'round-pine-creosote',
    observed: longer(30),
    remark: 'Performed well at 30 years.',
  }),
  free({
    ...BROOKINGS,
    id: 'dakota-cca',
    name: 'arsenical ponderosa posts',
    source: SOURCES.rm300,
    treatmentClass: 'round-pine-cca',
    observed: longer(30),
    remark: 'Performed well at 30 years.',
  }),
  free({
    ...CORVALLIS,
    id: 'lodgepole-soaked',
    name: 'lodgepole posts, soaked',
    source: SOURCES.miller,
    treatmentClass: 'unknown-treated',
    observed: longer(50),
    remark: 'May exceed 50 years; soaked, so held to the class of unknown treatment.',
  }),
  free({
    ...CORVALLIS,
    id: 'fir-soaked',
    name: 'Douglas-fir posts, soaked',
    source: SOURCES.miller,
    treatmentClass: 'unknown-treated',
    observed: longer(40),
    remark: 'May exceed 40 years.',
  }),
  free({
    ...CORVALLIS,
    id: 'cottonwood-soaked',
    name: 'cottonwood posts, soaked 3 h',
    source: SOURCES.miller,
    treatmentClass: 'unknown-treated',
    observed: longer(40),
    remark: 'May exceed 40 years.',
  }),
  free({
    ...MISSISSIPPI,
    id: 'fpl068',
    name: 'untreated southern pine posts',
    source: SOURCES.fpl068,
    tag: 'memory',
    treatmentClass: 'untreated-softwood',
    observed: life(3.3),
  }),
  free({
    ...CORVALLIS,
    id: 'lodgepole',
    name: 'untreated lodgepole posts',
    source: SOURCES.postFarm,
    tag: 'memory',
    treatmentClass: 'untreated-softwood',
    observed: life(4),
  }),
  free({
    ...CORVALLIS,
    id: 'hemlock',
    name: 'untreated hemlock, spruce',
    source: SOURCES.postFarm,
    tag: 'memory',
    treatmentClass: 'untreated-softwood',
    observed: life(6),
  }),
  free({
    ...CORVALLIS,
    id: 'grand-fir',
    name: 'untreated grand fir posts',
    source: SOURCES.postFarm,
    tag: 'memory',
    treatmentClass: 'untreated-softwood',
    observed: life(9),
  }),
  free({
    ...CORVALLIS,
    id: 'alder',
    name: 'untreated alder, cottonwood, maple',
    source: SOURCES.postFarm,
    tag: 'memory',
    treatmentClass: 'untreated-hardwood',
    observed: life(5),
  }),
];

/** Every field data set that the program is held against, calibration first. */
export const FIELD_ROWS: readonly FieldRow[] = [...FIELD_TRIALS.map(fromTrial), ...PACE_ROWS, ...FREE_ROWS];

/** Standard normal scores of the middle half and of the middle nine tenths [-]. */
export const BAND_SCORES = { half: normalQuantile(0.75), wide: normalQuantile(0.95) } as const;

/** Years to the end of a row at a score of the fence's pace [a]: 0 is the median, positive a longer life. */
export function predictedYears(field: FieldRow, score: number): number {
  const { treatmentClass, rainMmPerYear, meanTemperatureC, section, endsAtMm } = field;
  const { paceSpread } = TREATMENT_CLASSES[treatmentClass];
  const climate = { kind: 'measured', rainMmPerYear, meanTemperatureC, dryMonths: 0 } as const;
  const rate = medianDecayRate(treatmentClass, climate) * Math.exp(-score * paceSpread);
  return endsAtMm === null ? lifeAtRate(section, rate) : exposureToDepth(endsAtMm, rate);
}

/** One number that stands for what was seen [a]: the life, the bound, or the geometric middle. */
export const observedYears = ({ observed }: FieldRow): number =>
  observed.kind === 'between' ? Math.sqrt(observed.from * observed.to) : observed.years;

/** True where what was seen agrees with the band out to a score: a life lies in it, a range meets it, a bound lies under its end. */
export function agrees(field: FieldRow, score: number): boolean {
  const [low, high] = [predictedYears(field, -score), predictedYears(field, score)];
  const { observed } = field;
  if (observed.kind === 'longer') return observed.years <= high;
  if (observed.kind === 'between') return observed.from <= high && observed.to >= low;
  return observed.years >= low && observed.years <= high;
}
