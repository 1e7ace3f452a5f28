import { forceCoefficientA, forceCoefficientC } from '../../src/capacity/force-coefficient.ts';
import { type Exposure, exposureCoefficient } from '../../src/capacity/velocity-pressure.ts';
import { feetFromMetres, metresFromFeet } from '../../src/units/length.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const FIGURE = 'Force coefficients, cells of the figure';
const PROFILE = 'Wind profile';

/** Cells of Case A as three public codings of the figure carry them: s/h, B/s, Cf. */
const CELLS_A = [
  [1, 0.05, 1.8],
  [1, 2, 1.4],
  [1, 5, 1.35],
  [1, 45, 1.3],
  [0.9, 1, 1.55],
  [0.9, 10, 1.4],
  [0.7, 0.5, 1.7],
  [0.5, 20, 1.7],
  [0.3, 45, 1.85],
  [0.2, 10, 1.85],
  [0.16, 4, 1.85],
  [0.16, 30, 1.9],
] as const;

/** Cells of Case C as the codings carry them, before (1.8 - s/h): B/s, distance from the edge in s, Cf. */
const CELLS_C = [
  [2, 0.5, 2.25],
  [4, 0.5, 2.9],
  [10, 0.5, 3.75],
  [45, 0.5, 4.3],
  [3, 1.5, 1.7],
  [9, 1.5, 2.35],
  [13, 1.5, 2.6],
  [5, 2.5, 1.45],
  [13, 2.5, 2],
  [10, 6, 0.95],
  [13, 3.5, 1.5],
  [45, 4.5, 1.85],
  [45, 8, 1.1],
  [13, 11, 0.55],
] as const;

const figure = { topic: FIGURE, unit: '-', tolerance: withinAbsolute(1e-9), tag: 'read at second hand' } as const;

const cellChecks: readonly PublishedCheck[] = [
  ...CELLS_A.map(
    ([clearance, aspect, published]): PublishedCheck => ({
      ...figure,
      id: `figure.a.${clearance}.${aspect}`,
      quantity: `Cf, Case A, s/h ${clearance}, B/s ${aspect}`,
      computed: () => forceCoefficientA(clearance, aspect),
      published,
      source: SOURCES.asce716,
    }),
  ),
  ...CELLS_C.map(
    ([aspect, distance, published]): PublishedCheck => ({
      ...figure,
      id: `figure.c.${aspect}.${distance}`,
      quantity: `Cf, Case C, B/s ${aspect}, ${distance} s from the edge, s/h 0.8`,
      computed: () => forceCoefficientC(0.8, aspect, distance),
      published,
      source: SOURCES.cirsoc,
    }),
  ),
  ...([0.9, 1] as const).map(
    (clearance): PublishedCheck => ({
      ...figure,
      id: `figure.clearance.${clearance}`,
      quantity: `Case C at s/h ${clearance} over the same at s/h 0.8: the factor 1.8 - s/h`,
      computed: () => forceCoefficientC(clearance, 10, 0.5) / forceCoefficientC(0.8, 10, 0.5),
      published: Number((1.8 - clearance).toFixed(1)),
      source: SOURCES.asce716,
    }),
  ),
];

/** alpha and zg [ft] by exposure. */
const PROFILES = { B: [7, 1200], C: [9.5, 900], D: [11.5, 700] } as const;
const kz = (feet: number, exposure: Exposure): number => exposureCoefficient(metresFromFeet(feet), exposure, 0);

/** Height at which the profile reaches 2.01, found from the function itself [ft]. */
function gradientHeightFt(exposure: Exposure): number {
  let low = 1;
  let high = 5000;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (exposureCoefficient(metresFromFeet(middle), exposure, 0) < 2.01) low = middle;
    else high = middle;
  }
  return feetFromMetres(metresFromFeet(low));
}

const profileChecks = (Object.keys(PROFILES) as readonly Exposure[]).flatMap((exposure): PublishedCheck[] => {
  const [alpha, gradient] = PROFILES[exposure];
  const about = {
    topic: PROFILE,
    source: SOURCES.asce705Table,
    tag: 'read at second hand',
    tolerance: within(1e-6),
  } as const;
  return [
    {
      ...about,
      id: `profile.alpha.${exposure}`,
      quantity: `exponent alpha of exposure ${exposure}, from Kz at 20 and 40 ft`,
      computed: () => (2 * Math.LN2) / Math.log(kz(40, exposure) / kz(20, exposure)),
      published: alpha,
      unit: '-',
    },
    {
      ...about,
      id: `profile.gradient.${exposure}`,
      quantity: `height zg of exposure ${exposure}, where Kz is 2.01`,
      computed: () => gradientHeightFt(exposure),
      published: gradient,
      unit: 'ft',
    },
  ];
});

export const WIND_FIGURE_CHECKS: readonly PublishedCheck[] = [...cellChecks, ...profileChecks];
