import {
  breakProbability,
  type GumbelCurve,
  gustRatioToFiftyYears,
  hazardCurve,
  returnPeriodOf,
  speedAtReturnPeriod,
} from '../../src/forecast/hazard-curve.ts';
import { gustFromFastestMile, threeSecondGust } from '../../src/forecast/three-second-gust.ts';
import type { WindEntry } from '../../src/forecast/wind-entry.ts';
import { mphFromMps, mpsFromMph } from '../../src/units/speed.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const HAZARD = 'Yearly maximum gust';
const BREAKING = 'Probability of breaking';
const ENTRY = 'What a design wind speed means';

function curveOf(mph: number, years: number, second: WindEntry['second'] = null): GumbelCurve {
  const curve = hazardCurve({
    kind: 'map',
    basis: 'ultimate',
    speedMps: mpsFromMph(mph),
    returnPeriodYears: years,
    second,
    hurricane: second !== null,
  });
  if (curve.kind !== 'gumbel') throw new Error(curve.reason);
  return curve;
}
const gustMph = (curve: GumbelCurve, years: number): number => mphFromMps(speedAtReturnPeriod(curve, years));

/** V50 = 90 mph: the central United States. */
const CENTRAL = curveOf(90, 50);
/** The map speed of the sanity anchors. */
const ANCHOR = curveOf(105, 300);

const hazardChecks: readonly PublishedCheck[] = [
  ...(
    [
      [5, 0.77],
      [10, 0.84],
      [25, 0.93],
      [50, 1],
      [100, 1.07],
      [200, 1.14],
      [300, 1.18],
      [500, 1.23],
      [700, 1.26],
      [1700, 1.35],
    ] as const
  ).map(
    ([years, published]): PublishedCheck => ({
      id: `hazard.ratio.${years}`,
      topic: HAZARD,
      quantity: `V_T / V_50 at ${years} years`,
      computed: () => gustRatioToFiftyYears(years),
      published,
      unit: '-',
      tolerance: withinAbsolute(0.005),
      source: SOURCES.peterka,
      tag: 'memory',
    }),
  ),
  {
    id: 'hazard.ratio.printed',
    topic: HAZARD,
    quantity: 'V_5 / V_50 as the commentary prints it',
    computed: () => gustRatioToFiftyYears(5),
    published: 0.78,
    unit: '-',
    tolerance: withinAbsolute(0.015),
    source: SOURCES.asce705,
    tag: 'memory',
    note: 'The formula gives 0.77; the table prints 0.78.',
  },
  ...(
    [
      [10, 75.5],
      [25, 83.7],
      [50, 90],
      [100, 96.2],
      [300, 106.1],
      [700, 113.7],
      [1700, 121.7],
    ] as const
  ).map(
    ([years, published]): PublishedCheck => ({
      id: `hazard.central.${years}`,
      topic: HAZARD,
      quantity: `${years}-year gust where the 50-year gust is 90 mph`,
      computed: () => gustMph(CENTRAL, years),
      published,
      unit: 'mph',
      tolerance: within(0.001),
      source: SOURCES.secondWind,
      tag: 'derived',
    }),
  ),
  ...(
    [
      [10, 76],
      [25, 84],
      [50, 90],
      [100, 96],
      [300, 105],
      [700, 115],
      [1700, 120],
    ] as const
  ).map(
    ([years, published]): PublishedCheck => ({
      id: `hazard.map.${years}`,
      topic: HAZARD,
      quantity: `${years}-year gust of the same curve against the map`,
      computed: () => gustMph(CENTRAL, years),
      published,
      unit: 'mph',
      tolerance: withinAbsolute(1.75),
      source: SOURCES.asce710Maps,
      tag: 'memory',
      note: 'Maps are drawn to 5 mph.',
    }),
  ),
  {
    id: 'hazard.risk-category',
    topic: HAZARD,
    quantity: '300-year over 700-year gust (risk categories I and II)',
    computed: () => gustMph(CENTRAL, 300) / gustMph(CENTRAL, 700),
    published: 0.933,
    unit: '-',
    tolerance: withinAbsolute(0.0006),
    source: SOURCES.secondWind,
    tag: 'derived',
  },
  ...(
    [
      [10, 74.7],
      [25, 82.9],
      [50, 89.1],
      [100, 95.2],
    ] as const
  ).map(
    ([years, published]): PublishedCheck => ({
      id: `hazard.anchor.${years}`,
      topic: HAZARD,
      quantity: `${years}-year gust where the 300-year gust is 105 mph`,
      computed: () => gustMph(ANCHOR, years),
      published,
      unit: 'mph',
      tolerance: within(0.001),
      source: SOURCES.anchors,
      tag: 'derived',
    }),
  ),
  ...(
    [
      [85, 32],
      [95, 98],
    ] as const
  ).map(
    ([mph, published]): PublishedCheck => ({
      id: `hazard.once.${mph}`,
      topic: HAZARD,
      quantity: `${mph} mph comes once in so many years there`,
      computed: () => returnPeriodOf(ANCHOR, mpsFromMph(mph)),
      published,
      unit: 'a',
      tolerance: within(0.01),
      source: SOURCES.anchors,
      tag: 'derived',
    }),
  ),
  ...(
    [
      [10, 76],
      [300, 105],
    ] as const
  ).map(
    ([years, mph]): PublishedCheck => ({
      id: `hazard.two-points.${years}`,
      topic: HAZARD,
      quantity: `curve through 76 mph (10 years) and 105 mph (300 years), read at ${years} years`,
      computed: () => gustMph(curveOf(76, 10, { speedMps: mpsFromMph(105), returnPeriodYears: 300 }), years),
      published: mph,
      unit: 'mph',
      tolerance: within(1e-9),
      source: SOURCES.algebra,
      tag: 'derived',
    }),
  ),
];

const breakingChecks = (
  [
    [116, 0.01],
    [100, 0.03243],
    [90, 0.06718],
    [80, 0.13599],
    [70, 0.26254],
    [60, 0.46539],
  ] as const
).map(
  ([median, published]): PublishedCheck => ({
    id: `breaking.${median}`,
    topic: BREAKING,
    quantity: `yearly probability of breaking at a median of ${median} mph, beta 0.21, 50-year gust 90 mph`,
    computed: () => breakProbability(CENTRAL, mpsFromMph(median), 0.21, 1),
    published,
    unit: '-',
    tolerance: within(0.005),
    source: SOURCES.secondWind,
    tag: 'derived',
    note: 'Published by stepwise integration of 0.25 mph over the gust; computed by nine-point quadrature over the fragility.',
  }),
);

const entryChecks: readonly PublishedCheck[] = [
  ...(
    [
      [71, 85],
      [76, 90],
      [85, 100],
      [95, 110],
      [104, 120],
    ] as const
  ).map(
    ([fastestMile, published]): PublishedCheck => ({
      id: `entry.fastest-mile.${fastestMile}`,
      topic: ENTRY,
      quantity: `3-second gust of a fastest mile of ${fastestMile} mph`,
      computed: () => mphFromMps(gustFromFastestMile(mpsFromMph(fastestMile))),
      published,
      unit: 'mph',
      tolerance: withinAbsolute(0.5),
      source: SOURCES.ibcSpeeds,
      tag: 'memory',
    }),
  ),
  {
    id: 'entry.asd',
    topic: ENTRY,
    quantity: 'ultimate speed of a V_asd of 89 mph (IBC pairs 115 with 89)',
    computed: () => mphFromMps(threeSecondGust('asd', mpsFromMph(89))),
    published: 115,
    unit: 'mph',
    tolerance: withinAbsolute(0.5),
    source: SOURCES.ibcSpeeds,
    tag: 'memory',
  },
];

export const HAZARD_CHECKS: readonly PublishedCheck[] = [...hazardChecks, ...breakingChecks, ...entryChecks];
