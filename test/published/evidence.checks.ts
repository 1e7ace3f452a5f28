import { impliedRate, rateToDepth } from '../../src/decay/implied-rate.ts';
import { BELIEF_POINTS } from '../../src/forecast/belief-points.ts';
import { gridPosterior, gridQuantile } from '../../src/forecast/evidence/pace-grid.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

/** The worked update: prior ln r ~ N(ln 0.5, 0.45), posts scatter by 0.5, a depth is read to 2 mm. */
const PRIOR = { mean: Math.log(0.5), sd: 0.45 };
const POST_SCATTER = 0.5;
const READING_ERROR_MM = 2;

type Likelihood = (logRate: number) => number;

const measured = (depthMm: number, years: number): Likelihood => {
  const seen = Math.log(impliedRate(depthMm, years));
  const variance = POST_SCATTER ** 2 + (READING_ERROR_MM / (depthMm + 5.5)) ** 2;
  return (logRate) => -((seen - logRate) ** 2) / (2 * variance);
};
const bound = (depthMm: number, years: number, side: 1 | -1): Likelihood => {
  const at = Math.log(impliedRate(depthMm, years));
  return (logRate) => Math.log(normalCdf((side * (at - logRate)) / POST_SCATTER));
};
const times = (count: number, likelihood: Likelihood): readonly Likelihood[] =>
  Array.from({ length: count }, () => likelihood);

const THREE = [measured(6, 15), measured(9, 15), measured(8, 15)];

/** What was seen, and mean and standard deviation of ln r and exp(mean) as printed. */
const CASES: readonly {
  readonly id: string;
  readonly name: string;
  readonly seen: readonly Likelihood[];
  readonly printed: readonly [number, number, number];
}[] = [
  {
    id: 'three',
    name: 'three posts measured, 6, 9, 8 mm at 15 years',
    seen: THREE,
    printed: [-0.30718, 0.25078, 0.7355],
  },
  {
    id: 'three-and-two',
    name: 'the same and two with none found to 2 mm',
    seen: [...THREE, ...times(2, bound(2, 15, 1))],
    printed: [-0.58924, 0.21514, 0.5547],
  },
  {
    id: 'ten-sound',
    name: 'ten posts with none found to 2 mm at 12 years',
    seen: times(10, bound(2, 12, 1)),
    printed: [-1.36247, 0.27301, 0.256],
  },
  {
    id: 'nine-and-broken',
    name: 'nine with none found to 2 mm and one broken (23.84 mm) at 15 years',
    seen: [...times(9, bound(2, 15, 1)), bound(23.84, 15, -1)],
    printed: [-1.07374, 0.19403, 0.3417],
  },
];

const base = { topic: 'Readings at the post', source: SOURCES.secondDecay, tag: 'derived' } as const;
/** Half a unit in the last digit printed. */
const PRINTED = withinAbsolute(0.5e-5);

const gridChecks = CASES.flatMap(({ id, name, seen, printed }): readonly PublishedCheck[] => {
  const posterior = () => gridPosterior(PRIOR, seen);
  const placed = (): Float64Array => BELIEF_POINTS.levels.pace.map((level) => gridQuantile(posterior(), level));
  const placedMean = (): number => placed().reduce((a, b) => a + b) / BELIEF_POINTS.count;
  return [
    {
      ...base,
      id: `readings.${id}.mean`,
      quantity: `${name}: mean of ln r, on the grid`,
      computed: () => posterior().mean,
      published: printed[0],
      unit: '-',
      tolerance: PRINTED,
    },
    {
      ...base,
      id: `readings.${id}.sd`,
      quantity: `${name}: standard deviation of ln r, on the grid`,
      computed: () => posterior().sd,
      published: printed[1],
      unit: '-',
      tolerance: PRINTED,
    },
    {
      ...base,
      id: `readings.${id}.rate`,
      quantity: `${name}: exp(mean)`,
      computed: () => Math.exp(posterior().mean),
      published: printed[2],
      unit: 'mm/a',
      tolerance: withinAbsolute(0.5e-4),
    },
    {
      ...base,
      id: `readings.${id}.placed`,
      quantity: `${name}: mean of ln r over the placed points`,
      computed: placedMean,
      published: printed[0],
      unit: '-',
      tolerance: withinAbsolute(0.02),
    },
    {
      ...base,
      id: `readings.${id}.placed-sd`,
      quantity: `${name}: standard deviation of ln r over the placed points`,
      computed: () => {
        const mean = placedMean();
        return Math.sqrt(placed().reduce((sum, logRate) => sum + (logRate - mean) ** 2, 0) / BELIEF_POINTS.count);
      },
      published: printed[1],
      unit: '-',
      tolerance: withinAbsolute(0.02),
    },
  ];
});

/** Rates implied by one depth, exactly and in closed form: exposure [a], depth [mm], closed, exact [mm/a]. */
const INVERSIONS: readonly (readonly [number, number, number, number])[] = [
  [15, 6, 0.7667, 0.7617],
  [15, 9, 0.9667, 0.966],
  [30, 20, 0.85, 0.8485],
  [10, 3, 0.8133, 0.8088],
];
const inversionChecks = INVERSIONS.flatMap(([years, depthMm, closed, exact]): readonly PublishedCheck[] => [
  {
    ...base,
    id: `readings.implied.${years}-${depthMm}`,
    quantity: `rate implied by ${depthMm} mm at ${years} years, closed form`,
    computed: () => impliedRate(depthMm, years),
    published: closed,
    unit: 'mm/a',
    tolerance: within(1e-4),
  },
  {
    ...base,
    id: `readings.exact.${years}-${depthMm}`,
    quantity: `rate at which the law reaches ${depthMm} mm after ${years} years`,
    computed: () => rateToDepth(depthMm, years),
    published: exact,
    unit: 'mm/a',
    tolerance: within(2e-4),
  },
]);

/** The worked examples of updating a fence's pace by readings: closed form and grid. */
export const EVIDENCE_CHECKS: readonly PublishedCheck[] = [...gridChecks, ...inversionChecks];
