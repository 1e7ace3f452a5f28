import { forceCoefficientA } from '../../src/capacity/force-coefficient.ts';
import {
  CODE_HEIGHT_FLOOR_M,
  type Exposure,
  elevationFactor,
  exposureCoefficient,
  GUST_EFFECT_FACTOR,
  pressurePerSpeedSquared,
  type WindEdition,
} from '../../src/capacity/velocity-pressure.ts';
import { lbfFromNewtons } from '../../src/units/force.ts';
import { metresFromFeet } from '../../src/units/length.ts';
import { paFromPsf, psfFromPa } from '../../src/units/pressure.ts';
import { mphFromMps, mpsFromMph } from '../../src/units/speed.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const PRESSURE = 'Velocity pressure';

const pressurePsf = (mph: number, kz: number): number =>
  psfFromPa(
    pressurePerSpeedSquared({ exposureCoefficient: kz, topographicFactor: 1, elevationFactor: 1 }) *
      mpsFromMph(mph) ** 2,
  );
const kz = (feet: number, exposure: Exposure, edition: WindEdition = 'ASCE 7-16', floor = CODE_HEIGHT_FLOOR_M) =>
  exposureCoefficient(metresFromFeet(feet), exposure, floor, edition);

const exposureChecks = (
  id: string,
  feet: number,
  edition: WindEdition,
  published: Readonly<Record<string, number>>,
  about: Pick<PublishedCheck, 'source' | 'tag' | 'tolerance'> & { readonly floor?: number },
): readonly PublishedCheck[] =>
  Object.entries(published).map(([exposure, value]) => ({
    id: `kz.${id}.${exposure}`,
    topic: PRESSURE,
    quantity: `Kz at ${feet} ft, exposure ${exposure}, ${edition} constants${about.floor === 0 ? ', without the 15 ft floor' : ''}`,
    computed: () => kz(feet, exposure as Exposure, edition, about.floor),
    published: value,
    unit: '-',
    tolerance: about.tolerance,
    source: about.source,
    tag: about.tag,
  }));

const roark = { topic: PRESSURE, source: SOURCES.roark, tag: 'read', tolerance: within(0.002) } as const;

export const WIND_PRESSURE_CHECKS: readonly PublishedCheck[] = [
  {
    ...roark,
    id: 'pressure.roark.q',
    quantity: 'velocity pressure at 105 mph, Kz 0.90',
    computed: () => pressurePsf(105, 0.9),
    published: 21.59,
    unit: 'psf',
  },
  {
    ...roark,
    id: 'pressure.roark.p',
    quantity: 'design pressure on a wall with Cf 1.45',
    computed: () => pressurePsf(105, 0.9) * GUST_EFFECT_FACTOR * forceCoefficientA(1, 20 / 18),
    published: 26.6,
    unit: 'psf',
    tolerance: within(0.005),
    note: 'The calculation uses the column B/s = 1 (Cf 1.45); interpolated to B/s = 20/18 the program has 1.444.',
  },
  {
    ...roark,
    id: 'pressure.roark.force',
    quantity: 'force on a wall of 20 x 18 ft',
    computed: () =>
      lbfFromNewtons(
        paFromPsf(pressurePsf(105, 0.9)) * GUST_EFFECT_FACTOR * 1.45 * metresFromFeet(20) * metresFromFeet(18),
      ),
    published: 9580,
    unit: 'lbf',
  },
  {
    id: 'pressure.rexburg.q',
    topic: PRESSURE,
    quantity: 'velocity pressure at 115 mph, Kz 0.70',
    computed: () => pressurePsf(115, 0.7),
    published: 20.1,
    unit: 'psf',
    tolerance: within(0.003),
    source: SOURCES.rexburg,
    tag: 'read',
  },
  ...exposureChecks(
    '15ft',
    15,
    'ASCE 7-16',
    { B: 0.57, C: 0.85, D: 1.03 },
    { source: SOURCES.asce710Fragment, tag: 'read', tolerance: withinAbsolute(0.005) },
  ),
  ...exposureChecks(
    '20ft',
    20,
    'ASCE 7-16',
    { B: 0.62, C: 0.9, D: 1.08 },
    { source: SOURCES.asce710Fragment, tag: 'read', tolerance: withinAbsolute(0.005) },
  ),
  ...exposureChecks(
    'floor16',
    6,
    'ASCE 7-16',
    { B: 0.575, C: 0.849, D: 1.03 },
    { source: SOURCES.secondWind, tag: 'derived', tolerance: withinAbsolute(0.0005) },
  ),
  ...exposureChecks(
    'floor22',
    6,
    'ASCE 7-22',
    { B: 0.573, C: 0.851, D: 1.035 },
    { source: SOURCES.secondWind, tag: 'derived', tolerance: withinAbsolute(0.0005) },
  ),
  ...exposureChecks(
    '33ft',
    33,
    'ASCE 7-22',
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a published coefficient that happens to look like 1/sqrt(2)
    { B: 0.707, C: 1 },
    { source: SOURCES.asce722, tag: 'memory', tolerance: withinAbsolute(0.0005) },
  ),
  ...exposureChecks(
    '33ft16',
    33,
    'ASCE 7-16',
    { C: 1 },
    { source: SOURCES.asce716, tag: 'memory', tolerance: withinAbsolute(0.003) },
  ),
  ...exposureChecks(
    'unfloored',
    6,
    'ASCE 7-16',
    { B: 0.44, C: 0.7 },
    { source: SOURCES.secondWind, tag: 'derived', tolerance: withinAbsolute(0.005), floor: 0 },
  ),
  ...(
    [
      [0, 1],
      [1000, 0.96],
      [2000, 0.93],
      [3000, 0.9],
      [5280, 0.83],
      [6000, 0.8],
    ] as const
  ).map(
    ([feet, published]): PublishedCheck => ({
      id: `ke.${feet}`,
      topic: PRESSURE,
      quantity: `Ke at ${feet} ft above sea level`,
      computed: () => elevationFactor(metresFromFeet(feet)),
      published,
      unit: '-',
      tolerance: withinAbsolute(0.005),
      source: SOURCES.asce716,
      tag: 'memory',
    }),
  ),
  ...(
    [
      ['B', 13.79, 15.24, 107.6],
      ['C', 20.37, 22.5, 88.5],
    ] as const
  ).flatMap(([exposure, q, p, least]): PublishedCheck[] => [
    {
      id: `pressure.105.${exposure}`,
      topic: PRESSURE,
      quantity: `velocity pressure on a 6 ft fence at 105 mph, exposure ${exposure}`,
      computed: () => pressurePsf(105, kz(6, exposure)),
      published: q,
      unit: 'psf',
      tolerance: within(0.002),
      source: SOURCES.secondWind,
      tag: 'derived',
    },
    {
      id: `pressure.105.cf.${exposure}`,
      topic: PRESSURE,
      quantity: `pressure on an interior bay (Cf 1.30) at 105 mph, exposure ${exposure}`,
      computed: () => pressurePsf(105, kz(6, exposure)) * GUST_EFFECT_FACTOR * forceCoefficientA(1, 80 / 6),
      published: p,
      unit: 'psf',
      tolerance: within(0.002),
      source: SOURCES.secondWind,
      tag: 'derived',
    },
    {
      id: `pressure.minimum.${exposure}`,
      topic: PRESSURE,
      quantity: `gust at which an interior bay meets the 16 psf minimum, exposure ${exposure}`,
      computed: () =>
        mphFromMps(
          Math.sqrt(paFromPsf(16) / (paFromPsf(pressurePsf(1, kz(6, exposure))) * GUST_EFFECT_FACTOR * 1.3)) *
            mpsFromMph(1),
        ),
      published: least,
      unit: 'mph',
      tolerance: within(0.002),
      source: SOURCES.secondWind,
      tag: 'derived',
    },
  ]),
];
