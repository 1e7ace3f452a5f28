import { climateFactor, unflooredClimateFactor } from '../../src/decay/climate-factor.ts';
import { decayDepth, decayLag, exposureToDepth, START_DEPTH_MM } from '../../src/decay/decay-depth.ts';
import { TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';
import { EXACT, type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { depthAtShare, SECTIONS } from './section-share.ts';
import { SOURCES } from './sources.ts';

const CLIMATE = 'Rot: climate factor';
const LAW = 'Rot: depth law';
const BANDS = 'Rot: heartwood durability bands';
const second = { source: SOURCES.secondDecay, tag: 'derived' } as const;

/** Class 4 heartwood at a climate factor of 1.64 [mm/a]. */
const RATE = TREATMENT_CLASSES['heartwood-class-4'].woodFactor * 1.64;

const climateChecks: readonly PublishedCheck[] = [
  ...(
    [
      [2000, 25, 0, 2.99],
      [1100, 20, 0, 2.1],
      [650, 15, 0, 1.64],
      [1600, 19.5, 0, 2.26],
      [840, 7.5, 0, 1.36],
      [1050, 11.3, 0, 1.75],
      [540, 5.8, 0, 0.91],
      [200, 23.9, 2, 0],
    ] as const
  ).map(
    ([rain, temperature, dry, published]): PublishedCheck => ({
      ...second,
      topic: CLIMATE,
      id: `climate.${rain}.${temperature}`,
      quantity: `k_climate before the floor: ${rain} mm/a, ${temperature} degC, ${dry} dry months`,
      computed: () => unflooredClimateFactor(rain, temperature, dry),
      published,
      unit: '-',
      tolerance: withinAbsolute(0.0051),
    }),
  ),
  {
    id: 'climate.floor',
    topic: CLIMATE,
    quantity: 'k_climate of a dry site (200 mm/a, 23.9 degC), floored at hazard zone A',
    computed: () => climateFactor({ kind: 'measured', rainMmPerYear: 200, meanTemperatureC: 23.9, dryMonths: 2 }),
    published: 0.5,
    unit: '-',
    tolerance: withinAbsolute(1e-9),
    source: SOURCES.manual3,
    tag: 'memory',
    note: 'Zone A = 0.5 is from memory; to use it as a floor is judgement. The formula alone gives 0 and an immortal post.',
  },
];

const lawChecks: readonly PublishedCheck[] = [
  {
    ...second,
    topic: LAW,
    id: 'law.rate',
    quantity: 'rate of class 4 heartwood at k_climate 1.64',
    computed: () => RATE,
    published: 2.2304,
    unit: 'mm/a',
    tolerance: withinAbsolute(0.00005),
  },
  {
    ...second,
    topic: LAW,
    id: 'law.lag',
    quantity: 'lag at that rate',
    computed: () => decayLag(RATE),
    published: 2.5668,
    unit: 'a',
    tolerance: withinAbsolute(0.00005),
  },
  {
    ...second,
    topic: LAW,
    id: 'law.start',
    quantity: 'end of the parabolic start at that rate',
    computed: () => exposureToDepth(START_DEPTH_MM, RATE),
    published: 4.8086,
    unit: 'a',
    tolerance: withinAbsolute(0.00005),
  },
  ...(
    [
      [1, 0.2162],
      [2, 0.865],
      [4, 3.4598],
      [5, 5.4269],
      [10, 16.5789],
      [20, 38.8829],
    ] as const
  ).map(
    ([years, published]): PublishedCheck => ({
      ...second,
      topic: LAW,
      id: `law.depth.${years}`,
      quantity: `depth after ${years} years at that rate`,
      computed: () => decayDepth(years, RATE),
      published,
      unit: 'mm',
      tolerance: withinAbsolute(0.00005),
    }),
  ),
  ...(
    [
      [0.05, 4.73],
      [0.2, 5.07],
      [0.5, 5.31],
      [2, 5.69],
      [12, 6.23],
    ] as const
  ).map(
    ([rate, published]): PublishedCheck => ({
      ...second,
      topic: LAW,
      id: `law.lost-depth.${rate}`,
      quantity: `depth that the lag costs, r t_lag, at ${rate} mm/a`,
      computed: () => rate * decayLag(rate),
      published,
      unit: 'mm',
      tolerance: withinAbsolute(0.006),
    }),
  ),
  ...(
    [
      [15, 6, 0.7617],
      [15, 9, 0.966],
      [30, 20, 0.8485],
      [10, 3, 0.8088],
    ] as const
  ).map(
    ([years, depth, rate]): PublishedCheck => ({
      ...second,
      topic: LAW,
      id: `law.inverse.${years}.${depth}`,
      quantity: `years to ${depth} mm at ${rate} mm/a, the rate that exact inversion finds`,
      computed: () => exposureToDepth(depth, rate),
      published: years,
      unit: 'a',
      tolerance: within(0.0005),
    }),
  ),
];

const STAKE_ENDS_MM = depthAtShare(SECTIONS.stake50, 0.1);
type HeartwoodClass = 1 | 2 | 3 | 4;
const life = (heartwood: HeartwoodClass, climate: number): number =>
  exposureToDepth(STAKE_ENDS_MM, TREATMENT_CLASSES[`heartwood-class-${heartwood}`].woodFactor * climate);

const bandChecks: readonly PublishedCheck[] = [
  {
    ...second,
    topic: BANDS,
    id: 'bands.end',
    quantity: 'depth at which a 50 x 50 mm stake keeps a tenth of its modulus',
    computed: () => STAKE_ENDS_MM,
    published: 13.4,
    unit: 'mm',
    tolerance: withinAbsolute(0.006),
  },
  ...(
    [
      [1, 33, 27, 25, Number.POSITIVE_INFINITY],
      [2, 16, 13, 15, 25],
      [3, 10, 8, 5, 15],
      [4, 5.7, 4.7, 0, 5],
    ] as const
  ).flatMap(([heartwood, mild, severe, from, to]): PublishedCheck[] => [
    {
      ...second,
      topic: BANDS,
      id: `bands.${heartwood}.2.5`,
      quantity: `life of that stake, class ${heartwood}, k_climate 2.5`,
      computed: () => life(heartwood, 2.5),
      published: mild,
      unit: 'a',
      tolerance: withinAbsolute(heartwood === 4 ? 0.05 : 0.5),
    },
    {
      ...second,
      topic: BANDS,
      id: `bands.${heartwood}.3.0`,
      quantity: `life of that stake, class ${heartwood}, k_climate 3.0`,
      computed: () => life(heartwood, 3),
      published: severe,
      unit: 'a',
      tolerance: withinAbsolute(heartwood === 4 ? 0.05 : 0.5),
    },
    {
      topic: BANDS,
      id: `bands.${heartwood}.meets`,
      quantity: `class ${heartwood}: lives at k_climate 2.5 to 3.0 reach the band ${from} to ${to === Number.POSITIVE_INFINITY ? 'more' : to} years`,
      computed: () =>
        life(heartwood, 2.5) >= from && life(heartwood, 3) <= to ? 'reaches the band' : 'misses the band',
      published: 'reaches the band',
      unit: '-',
      tolerance: EXACT,
      source: SOURCES.as5604,
      tag: 'memory',
      detail: () => `${life(heartwood, 3).toFixed(1)} to ${life(heartwood, 2.5).toFixed(1)} years`,
      note: 'Stake rates of the standard read; the in-ground bands are from memory. Classes 2 and 4 lie at an edge.',
    },
  ]),
];

export const DECAY_LAW_CHECKS: readonly PublishedCheck[] = [...climateChecks, ...lawChecks, ...bandChecks];
