import { allowableStress } from '../../src/capacity/allowable-stress.ts';
import { COLLAR_TENSION_LRFD_MPA, COLLAR_TENSION_MPA, collarForce } from '../../src/capacity/collar.ts';
import { bromsClayForce, bromsSandForce, pivotSandForce, presumptiveForce } from '../../src/capacity/footing.ts';
import { bendingForce, shearForce } from '../../src/capacity/post-resistance.ts';
import { type NominalSection, nominalSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionArea, sectionModulus } from '../../src/capacity/section-properties.ts';
import type { Grade, Species } from '../../src/capacity/wood-strength.ts';
import { N_M3_PER_PCF } from '../../src/units/density.ts';
import { lbfFromNewtons } from '../../src/units/force.ts';
import { feetFromMetres, metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { paFromPsf } from '../../src/units/pressure.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import {
  ASD_WIND,
  bendingForceN,
  PLACE_NAMES,
  POST_4X4,
  REFERENCE_ARM_M,
  REFERENCE_LOADS,
  referenceSpeedMph,
} from './reference-fence.ts';
import { SOURCES } from './sources.ts';

const TOPIC = 'Reference fence, limit states when new';
const common = { topic: TOPIC, source: SOURCES.secondWind, tag: 'derived' } as const;
const TO_HALF_PERCENT = within(0.005);

const footing = (feet: number) => ({
  embedmentM: metresFromFeet(feet),
  widthM: mmFromInches(9) / 1000,
  armM: REFERENCE_ARM_M,
});
const sand = (frictionAngleDeg: number, pcf: number) => ({
  frictionAngleDeg,
  unitWeightNPerM3: pcf * N_M3_PER_PCF,
});
const ibc = (feet: number): number => presumptiveForce(footing(feet), 2 * 150) / ASD_WIND;
const collar = (tensionMpa: number): number =>
  collarForce(
    {
      diameterM: mmFromInches(9) / 1000,
      postBreadthM: mmFromInches(3.5) / 1000,
      depthM: metresFromFeet(2),
      armM: REFERENCE_ARM_M,
    },
    tensionMpa,
  );
const shear = (): number => {
  const { shearMpa } = allowableStress({
    species: 'southern-pine',
    grade: 'no-2',
    incised: false,
    section: POST_4X4,
  });
  return shearForce(shearMpa, sectionArea(POST_4X4, NO_LOSS), 'rectangular') / ASD_WIND;
};

type Pair = readonly [number, number];
interface LimitState {
  readonly id: string;
  readonly name: string;
  readonly force: () => number;
  readonly pounds: number;
  /** Speeds in exposure B and C, one pair a place. */
  readonly speeds: readonly [Pair, Pair, Pair, Pair];
}

/** The table of limit states of the new fence, every row but the rail connection. */
const LIMIT_STATES: readonly LimitState[] = [
  {
    id: 'bending-asd',
    name: 'post bending, ASD',
    force: () => bendingForceN('ASD'),
    pounds: 529,
    speeds: [
      [89.3, 73.5],
      [81.4, 67.0],
      [66.6, 54.8],
      [81.9, 67.4],
    ],
  },
  {
    id: 'bending-lrfd',
    name: 'post bending, LRFD (2.16 Fb)',
    force: () => bendingForceN('LRFD'),
    pounds: 429,
    speeds: [
      [80.4, 66.1],
      [73.2, 60.3],
      [60.0, 49.3],
      [73.7, 60.6],
    ],
  },
  {
    id: 'bending-best',
    name: 'post bending, best estimate (5,000 psi)',
    force: () => bendingForceN('best'),
    pounds: 902,
    speeds: [
      [116.6, 96.0],
      [106.3, 87.4],
      [87.0, 71.6],
      [106.9, 87.9],
    ],
  },
  {
    id: 'shear-asd',
    name: 'post shear, ASD',
    force: shear,
    pounds: 3697,
    speeds: [
      [236, 194],
      [215, 177],
      [176, 145],
      [216.3, 178.0],
    ],
  },
  {
    id: 'ibc-24',
    name: 'footing 24 in, IBC, 150 psf/ft doubled',
    force: () => ibc(2),
    pounds: 76,
    speeds: [
      [33.9, 27.9],
      [30.9, 25.4],
      [25.3, 20.8],
      [31.1, 25.6],
    ],
  },
  {
    id: 'pivot-24',
    name: 'footing 24 in, pivot statics, phi 32',
    force: () => pivotSandForce(footing(2), sand(32, 115)),
    pounds: 139,
    speeds: [
      [45.7, 37.6],
      [41.7, 34.3],
      [34.1, 28.1],
      [41.9, 34.5],
    ],
  },
  {
    id: 'broms-24',
    name: 'footing 24 in, Broms, phi 32',
    force: () => bromsSandForce(footing(2), sand(32, 115)),
    pounds: 212,
    speeds: [
      [56.5, 46.5],
      [51.5, 42.4],
      [42.2, 34.7],
      [51.8, 42.6],
    ],
  },
  {
    id: 'ibc-30',
    name: 'footing 30 in, IBC, 150 psf/ft doubled',
    force: () => ibc(2.5),
    pounds: 137,
    speeds: [
      [45.4, 37.4],
      [41.4, 34.1],
      [33.9, 27.9],
      [41.6, 34.3],
    ],
  },
  {
    id: 'pivot-30',
    name: 'footing 30 in, pivot statics, phi 32',
    force: () => pivotSandForce(footing(2.5), sand(32, 115)),
    pounds: 251,
    speeds: [
      [61.6, 50.7],
      [56.1, 46.2],
      [45.9, 37.8],
      [56.4, 46.4],
    ],
  },
  {
    id: 'broms-30',
    name: 'footing 30 in, Broms, phi 32',
    force: () => bromsSandForce(footing(2.5), sand(32, 115)),
    pounds: 378,
    speeds: [
      [75.5, 62.1],
      [68.8, 56.6],
      [56.3, 46.3],
      [69.2, 56.9],
    ],
  },
  {
    id: 'pivot-30-phi38',
    name: 'footing 30 in, pivot statics, phi 38, 120 pcf',
    force: () => pivotSandForce(footing(2.5), sand(38, 120)),
    pounds: 339,
    speeds: [
      [71.5, 58.8],
      [65.1, 53.6],
      [53.3, 43.9],
      [65.5, 53.9],
    ],
  },
  {
    id: 'clay-30',
    name: 'footing 30 in, Broms in clay, cu 1,000 psf',
    force: () => bromsClayForce(footing(2.5), paFromPsf(1000)),
    pounds: 621,
    speeds: [
      [96.8, 79.6],
      [88.2, 72.5],
      [72.2, 59.4],
      [88.7, 73.0],
    ],
  },
  {
    id: 'collar-lrfd',
    name: 'collar 9 in, 24 in deep, LRFD tension',
    force: () => collar(COLLAR_TENSION_LRFD_MPA),
    pounds: 490,
    speeds: [
      [85.9, 70.7],
      [78.3, 64.4],
      [64.1, 52.7],
      [78.7, 64.8],
    ],
  },
  {
    id: 'collar-best',
    name: 'collar 9 in, 24 in deep, best estimate',
    force: () => collar(COLLAR_TENSION_MPA),
    pounds: 1224,
    speeds: [
      [135.8, 111.8],
      [123.8, 101.8],
      [101.4, 83.4],
      [124.5, 102.4],
    ],
  },
];

const limitStateChecks = LIMIT_STATES.flatMap(({ id, name, force, pounds, speeds }): PublishedCheck[] => [
  {
    ...common,
    id: `reference.${id}.force`,
    quantity: `${name}: resisting force at the arm`,
    computed: () => lbfFromNewtons(force()),
    published: pounds,
    unit: 'lbf',
    tolerance: TO_HALF_PERCENT,
  },
  ...speeds.flatMap((pair, index) => {
    const place = PLACE_NAMES[index]!;
    return (['B', 'C'] as const).map(
      (exposure, column): PublishedCheck => ({
        ...common,
        id: `reference.${id}.${index}.${exposure}`,
        quantity: `${name}: ${place}, exposure ${exposure}`,
        computed: () => referenceSpeedMph(force(), place, exposure),
        published: pair[column]!,
        unit: 'mph',
        tolerance: TO_HALF_PERCENT,
      }),
    );
  }),
]);

/** Cf L of the eleven posts with both ends free; Case C is the larger of both ends, so posts 7 to 11 mirror 1 to 5. */
const coefficientChecks = [
  ...[5.2, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 5.2].map(
    (published, index): PublishedCheck => ({
      ...common,
      topic: 'Reference fence, load on each post',
      id: `reference.cfl.a.${index + 1}`,
      quantity: `Cf L, Case A, post ${index + 1}`,
      computed: () => feetFromMetres(REFERENCE_LOADS[index]!.caseAM),
      published,
      unit: 'ft',
      tolerance: TO_HALF_PERCENT,
    }),
  ),
  ...[12.53, 18.68, 12.38, 9.16, 6.59, 5.77, 6.59, 9.16, 12.38, 18.68, 12.53].map(
    (published, index): PublishedCheck => ({
      ...common,
      topic: 'Reference fence, load on each post',
      id: `reference.cfl.c.${index + 1}`,
      quantity: `Cf L, Case C, post ${index + 1}`,
      computed: () => feetFromMetres(REFERENCE_LOADS[index]!.caseCM),
      published,
      unit: 'ft',
      tolerance: TO_HALF_PERCENT,
    }),
  ),
];

const upgrade = (
  id: string,
  wood: { readonly species: Species; readonly grade: Grade; readonly incised: boolean; readonly size: NominalSection },
  name: string,
  published: Pair,
  special: { readonly dry?: true; readonly note?: string } = {},
): readonly PublishedCheck[] =>
  (['B', 'C'] as const).map((exposure, column) => ({
    ...common,
    topic: 'Reference fence, other posts',
    id: `reference.upgrade.${id}.${exposure}`,
    quantity: `${name}: bending ASD, interior Case A, exposure ${exposure}`,
    computed: () => {
      const section = nominalSection(wood.size);
      const { bendingMpa, wetServiceFactor } = allowableStress({ ...wood, section });
      const strength = special.dry ? bendingMpa / wetServiceFactor : bendingMpa;
      const force = bendingForce(strength, sectionModulus(section, NO_LOSS), REFERENCE_ARM_M) / ASD_WIND;
      return referenceSpeedMph(force, 'interior, Case A', exposure);
    },
    published: published[column]!,
    unit: 'mph',
    tolerance: withinAbsolute(0.6),
    ...(special.note ? { note: special.note } : {}),
  }));

const pine = { species: 'southern-pine', incised: false } as const;

export const REFERENCE_CASE_CHECKS: readonly PublishedCheck[] = [
  ...limitStateChecks,
  ...coefficientChecks,
  ...(
    [
      [2, 72],
      [2.5, 131],
    ] as const
  ).map(
    ([feet, published]): PublishedCheck => ({
      ...common,
      id: `reference.submerged.${feet * 12}`,
      quantity: `footing ${feet * 12} in, pivot statics in saturated sand (60 pcf)`,
      computed: () => lbfFromNewtons(pivotSandForce(footing(feet), sand(32, 60))),
      published,
      unit: 'lbf',
      tolerance: withinAbsolute(0.6),
    }),
  ),
  ...upgrade('sp1', { ...pine, grade: 'no-1', size: '4x4' }, 'southern pine No.1 4x4, dry', [104, 86], {
    dry: true,
    note: 'The published row leaves the wet service factor out. With CM = 0.85 (Fb over 1,150 psi), as the program has it, the post holds 96 / 79 mph.',
  }),
  ...upgrade('sp2-5x5', { ...pine, grade: 'no-2', size: '5x5' }, 'southern pine No.2 5x5', [114, 94]),
  ...upgrade('sp2-6x6', { ...pine, grade: 'no-2', size: '6x6' }, 'southern pine No.2 6x6', [155, 127]),
  ...upgrade(
    'dfl2',
    { species: 'douglas-fir', grade: 'no-2', incised: false, size: '4x4' },
    'Douglas-fir No.2 4x4, wet',
    [91, 75],
  ),
  ...upgrade(
    'hemfir',
    { species: 'hem-fir', grade: 'no-2', incised: true, size: '4x4' },
    'hem-fir No.2 4x4, incised, wet',
    [79, 65],
  ),
  ...upgrade(
    'cedar',
    { species: 'western-redcedar', grade: 'no-2', incised: false, size: '4x4' },
    'western cedar No.2 4x4',
    [87, 72],
  ),
];
