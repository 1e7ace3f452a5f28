import { NO_LOSS, type SectionLoss, sectionModulus } from '../../src/capacity/section-properties.ts';
import { mmFromInches } from '../../src/units/length.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { BASES, bendingForceN, POST_4X4, referenceSpeedMph, shellLoss } from './reference-fence.ts';
import { SOURCES } from './sources.ts';

const common = { source: SOURCES.secondWind, tag: 'derived' } as const;
const SHELLS = 'Reference fence, post bending as the shell rots';
const EXPOSURES = ['B', 'C'] as const;

type Pair = readonly [number, number];
/** Inches a face, per cent of S left, then speeds B / C by ASD, LRFD and best estimate. */
const ROWS: readonly (readonly [number, number, Pair, Pair, Pair])[] = [
  [0, 100, [89.3, 73.5], [80.4, 66.1], [116.6, 96.0]],
  [0.125, 80, [79.9, 65.8], [71.9, 59.2], [104.4, 85.9]],
  [0.25, 63, [70.9, 58.3], [63.8, 52.5], [92.6, 76.2]],
  [0.5, 36, [53.9, 44.4], [48.5, 39.9], [70.4, 57.9]],
  [0.75, 19, [38.6, 31.8], [34.7, 28.6], [50.4, 41.5]],
  [1, 7.9, [25.1, 20.6], [22.6, 18.6], [32.7, 26.9]],
];

const shareLeft = (loss: SectionLoss): number => sectionModulus(POST_4X4, loss) / sectionModulus(POST_4X4, NO_LOSS);

const shellChecks = ROWS.flatMap(([inches, percent, ...speeds]): PublishedCheck[] => [
  {
    ...common,
    topic: SHELLS,
    id: `shell.${inches}.modulus`,
    quantity: `${inches} in lost per face: section modulus left`,
    computed: () => 100 * shareLeft(shellLoss(inches)),
    published: percent,
    unit: '%',
    tolerance: withinAbsolute(inches === 1 ? 0.05 : 0.5),
  },
  ...BASES.flatMap((basis, row) =>
    EXPOSURES.map(
      (exposure, column): PublishedCheck => ({
        ...common,
        topic: SHELLS,
        id: `shell.${inches}.${basis}.${exposure}`,
        quantity: `${inches} in lost per face: ${basis}, exposure ${exposure}`,
        computed: () => referenceSpeedMph(bendingForceN(basis, shellLoss(inches)), 'interior, Case A', exposure),
        published: speeds[row]![column]!,
        unit: 'mph',
        tolerance: within(0.005),
      }),
    ),
  ),
]);

/** The published table trims faces; a post loses both wind faces as one cut twice as deep in S = b (b - 2t)^2 / 6. */
const OTHER_LOSSES: readonly (readonly [string, string, SectionLoss, Pair])[] = [
  ['one-face-0.5', 'one wind face, 0.5 in', { ...NO_LOSS, oneFaceMm: mmFromInches(0.5) }, [100.0, 82.3]],
  ['one-face-1.0', 'one wind face, 1.0 in', { ...NO_LOSS, oneFaceMm: mmFromInches(1) }, [83.3, 68.5]],
  ['both-faces-0.5', 'both wind faces, 0.5 in each', { ...NO_LOSS, oneFaceMm: mmFromInches(2 * 0.5) }, [83.3, 68.5]],
  ['heart-1.5', 'heart rot, 1.5 in cavity', { ...NO_LOSS, cavityDiameterMm: mmFromInches(1.5) }, [115.5, 95.0]],
  ['heart-2.5', 'heart rot, 2.5 in cavity', { ...NO_LOSS, cavityDiameterMm: mmFromInches(2.5) }, [107.3, 88.3]],
];

const otherChecks = OTHER_LOSSES.flatMap(([id, name, loss, speeds]) =>
  EXPOSURES.map(
    (exposure, column): PublishedCheck => ({
      ...common,
      topic: 'Reference fence, other losses',
      id: `loss.${id}.${exposure}`,
      quantity: `${name}: best estimate, interior Case A, exposure ${exposure}`,
      computed: () => referenceSpeedMph(bendingForceN('best', loss), 'interior, Case A', exposure),
      published: speeds[column]!,
      unit: 'mph',
      tolerance: within(0.005),
    }),
  ),
);

/** A 3 in cavity leaves a quarter inch of shell, thinner than b/8: the formula keeps 68 %, the program counts it as failed. */
const thinShell: PublishedCheck = {
  ...common,
  topic: 'Reference fence, other losses',
  id: 'loss.heart-3.0',
  quantity: 'heart rot, 3.0 in cavity: shell of 0.25 in, under an eighth of the width',
  computed: () => (shareLeft({ ...NO_LOSS, cavityDiameterMm: mmFromInches(3) }) === 0 ? 'failed' : 'holds'),
  published: 'failed',
  unit: '-',
  tolerance: withinAbsolute(0),
  tag: 'judgement',
  note: 'By the formula alone 68 % of the modulus is left (96.3 / 79.3 mph in exposure B / C). The program does not meet these: hollow shells thinner than b/8 crush or split first.',
};

/** Shell loss at which the best estimate of an interior post meets a gust: where the bending speed crosses it. */
function crossingInches(mph: number, exposure: 'B' | 'C'): number {
  let low = 0;
  let high = 1.75;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    const speed = referenceSpeedMph(bendingForceN('best', shellLoss(middle)), 'interior, Case A', exposure);
    if (speed > mph) low = middle;
    else high = middle;
  }
  return low;
}

const crossingChecks = (
  [
    ['B', 76, 0.43],
    ['B', 84, 0.34],
    ['B', 90, 0.28],
    ['B', 105, 0.12],
    ['B', 115, 0.02],
    ['C', 76, 0.25],
    ['C', 84, 0.15],
    ['C', 90, 0.07],
  ] as const
).map(
  ([exposure, mph, published]): PublishedCheck => ({
    ...common,
    topic: SHELLS,
    id: `crossing.${exposure}.${mph}`,
    quantity: `loss per face at which ${mph} mph is met, best estimate, exposure ${exposure}`,
    computed: () => crossingInches(mph, exposure),
    published,
    unit: 'in',
    tolerance: withinAbsolute(0.006),
  }),
);

/** Speeds of the other places are those of the interior post times the root of the ratio of loads. */
const placeChecks = (
  [
    ['first interior, Case C', 0.746],
    ['end, Case C', 0.911],
  ] as const
).map(
  ([place, published]): PublishedCheck => ({
    ...common,
    topic: SHELLS,
    id: `shell.place.${place}`,
    quantity: `speed of the post ${place}, over that of an interior post, after 0.5 in`,
    computed: () => {
      const force = bendingForceN('best', shellLoss(0.5));
      return referenceSpeedMph(force, place, 'B') / referenceSpeedMph(force, 'interior, Case A', 'B');
    },
    published,
    unit: '-',
    tolerance: withinAbsolute(0.001),
  }),
);

export const ROTTING_SHELL_CHECKS: readonly PublishedCheck[] = [
  ...shellChecks,
  ...placeChecks,
  ...crossingChecks,
  ...otherChecks,
  thinShell,
];
