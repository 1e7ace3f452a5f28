import { NORMAL_QUADRATURE, normalCdf, normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const TOPIC = 'Normal distribution';
const table = { topic: TOPIC, unit: '-', source: SOURCES.abramowitz, tag: 'memory' } as const;

/** (n - 1)!! = E(z^n) for even n. */
const MOMENTS = [
  [0, 1],
  [2, 1],
  [4, 3],
  [6, 15],
  [8, 105],
  [10, 945],
  [12, 10_395],
  [14, 135_135],
  [16, 2_027_025],
] as const;

export const NORMAL_DISTRIBUTION_CHECKS: readonly PublishedCheck[] = [
  ...(
    [
      [0, 0.5],
      [0.5, 0.691462461],
      [1, 0.841344746],
      [1.5, 0.933192799],
      [1.96, 0.975002105],
      [2, 0.977249868],
      [3, 0.998650102],
      [-1, 0.158655254],
    ] as const
  ).map(
    ([z, published]): PublishedCheck => ({
      ...table,
      id: `normal.cdf.${z}`,
      quantity: `Phi(${z})`,
      computed: () => normalCdf(z),
      published,
      tolerance: withinAbsolute(6e-10),
    }),
  ),
  ...(
    [
      [0.5, 0],
      [0.9, 1.281551566],
      [0.95, 1.644853627],
      [0.975, 1.959963985],
      [0.99, 2.326347874],
      [0.995, 2.575829304],
      [0.1, -1.281551566],
    ] as const
  ).map(
    ([p, published]): PublishedCheck => ({
      ...table,
      id: `normal.quantile.${p}`,
      quantity: `z(${p})`,
      computed: () => normalQuantile(p),
      published,
      tolerance: withinAbsolute(6e-10),
    }),
  ),
  ...MOMENTS.map(
    ([degree, published]): PublishedCheck => ({
      topic: TOPIC,
      unit: '-',
      source: SOURCES.algebra,
      tag: 'derived',
      id: `normal.moment.${degree}`,
      quantity: `nine-point quadrature: E(z^${degree})`,
      computed: () =>
        NORMAL_QUADRATURE.nodes.reduce((sum, node, i) => sum + NORMAL_QUADRATURE.weights[i]! * node ** degree, 0),
      published,
      tolerance: within(1e-9),
    }),
  ),
];
