import { forceCoefficientA, forceCoefficientC, returnCornerFactor } from '../../src/capacity/force-coefficient.ts';
import { openingsFactor, openSignCoefficient } from '../../src/capacity/openings.ts';
import { type PublishedCheck, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const COEFFICIENT = 'Force coefficients';
const OPENINGS = 'Openings';

const vector = (id: string, quantity: string, computed: () => number, published: number): PublishedCheck => ({
  id,
  topic: COEFFICIENT,
  quantity,
  computed,
  published,
  unit: '-',
  tolerance: withinAbsolute(0.005),
  source: SOURCES.secondWind,
  tag: 'derived',
});

const fromFigure = (id: string, quantity: string, computed: () => number, published: number): PublishedCheck => ({
  id,
  topic: COEFFICIENT,
  quantity,
  computed,
  published,
  unit: '-',
  tolerance: withinAbsolute(1e-9),
  source: SOURCES.asce716,
  tag: 'read at second hand',
});

const coefficientChecks: readonly PublishedCheck[] = [
  {
    id: 'cf.roark',
    topic: COEFFICIENT,
    quantity: 'Cf, Case A, s/h 1, B/s 1 (the column used for B/s 1.1)',
    computed: () => forceCoefficientA(1, 1),
    published: 1.45,
    unit: '-',
    tolerance: withinAbsolute(1e-9),
    source: SOURCES.roark,
    tag: 'read',
  },
  {
    ...fromFigure('cf.disputed', 'Cf, Case A, s/h 0.7, B/s 4', () => forceCoefficientA(0.7, 4), 1.6),
    note: 'Three public codings of the table have 1.60 here, a fourth 1.55.',
  },
  ...(
    [
      [1, 10, 1.3],
      [1, 3, 1.375],
      [0.95, 10, 1.35],
      [0.972, 13.33, 1.328],
      [0.9, 2, 1.5],
      [0.85, 7.5, 1.456],
      [0.5, 45, 1.75],
    ] as const
  ).map(([clearance, aspect, published]) =>
    vector(
      `cf.a.${clearance}.${aspect}`,
      `Cf, Case A, s/h ${clearance}, B/s ${aspect}`,
      () => forceCoefficientA(clearance, aspect),
      published,
    ),
  ),
  ...(
    [
      [2, 1, 0.5, 1.8],
      [10, 1, 0.5, 3],
      [10, 1, 1.5, 1.96],
      [10, 1, 2.5, 1.48],
      [10, 1, 5, 0.76],
      [45, 1, 0.5, 3.44],
      [45, 1, 12, 0.44],
      [5, 0.9, 0.5, 2.79],
      [5, 0.7, 0.5, 3.1],
    ] as const
  ).map(([aspect, clearance, distance, published]) =>
    vector(
      `cf.c.${aspect}.${clearance}.${distance}`,
      `Cf, Case C with (1.8 - s/h), B/s ${aspect}, s/h ${clearance}, at ${distance} s`,
      () => forceCoefficientC(clearance, aspect, distance),
      published,
    ),
  ),
  ...(
    [
      [0.29, 1],
      [0.3, 0.9],
      [1, 0.75],
      [2, 0.6],
      [5, 0.6],
    ] as const
  ).map(([ratio, published]) =>
    fromFigure(
      `cf.return.${ratio}`,
      `return corner factor, Lr/s ${ratio}, B/s 10`,
      () => returnCornerFactor(ratio, 10),
      published,
    ),
  ),
  fromFigure('cf.return.short-run', 'return corner factor, Lr/s 2, B/s 4', () => returnCornerFactor(2, 4), 1),
];

const openingChecks: readonly PublishedCheck[] = [
  ...(
    [
      [0.95, 0.989],
      [0.9, 0.968],
      [0.8, 0.911],
      [0.7, 0.836],
    ] as const
  ).map(
    ([solidity, published]): PublishedCheck => ({
      id: `openings.${solidity}`,
      topic: OPENINGS,
      quantity: `reduction for openings at solidity ${solidity}`,
      computed: () => openingsFactor(solidity),
      published,
      unit: '-',
      tolerance: withinAbsolute(0.0005),
      source: SOURCES.asce716,
      tag: 'read at second hand',
    }),
  ),
  ...(
    [
      [0.05, 2],
      [0.1, 1.8],
      [0.29, 1.8],
      [0.3, 1.6],
      [0.69, 1.6],
    ] as const
  ).map(
    ([solidity, published]): PublishedCheck => ({
      id: `open-sign.${solidity}`,
      topic: OPENINGS,
      quantity: `open sign, flat-sided members, solidity ${solidity}`,
      computed: () => openSignCoefficient(solidity),
      published,
      unit: '-',
      tolerance: withinAbsolute(1e-9),
      source: SOURCES.everett,
      tag: 'read',
    }),
  ),
  {
    id: 'openings.continuity',
    topic: OPENINGS,
    quantity: 'solid rule at solidity 0.7 on gross area (the open rule gives 1.12)',
    computed: () => forceCoefficientA(1, 45) * openingsFactor(0.7),
    published: 1.09,
    unit: '-',
    tolerance: withinAbsolute(0.005),
    source: SOURCES.secondWind,
    tag: 'derived',
  },
];

export const FORCE_COEFFICIENT_CHECKS: readonly PublishedCheck[] = [...coefficientChecks, ...openingChecks];
