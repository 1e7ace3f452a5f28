import { COLLAR_TENSION_LRFD_MPA, COLLAR_TENSION_MPA, collarForce } from '../../src/capacity/collar.ts';
import {
  bromsClayForce,
  bromsSandForce,
  constrainedDepth,
  passiveCoefficient,
  pivotSandForce,
  presumptiveDepth,
  presumptiveForce,
} from '../../src/capacity/footing.ts';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { SOIL_CLASS_KEYS, SOIL_CLASSES, type SoilClass } from '../../src/capacity/soil-class.ts';
import { allowableFootingForce, bearingWidth } from '../../src/forecast/lean-resistance.ts';
import { N_M3_PER_PCF } from '../../src/units/density.ts';
import { lbfFromNewtons, newtonsFromLbf } from '../../src/units/force.ts';
import { feetFromMetres, inchesFromMm, metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { paFromPsf } from '../../src/units/pressure.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const CODE = 'Footings by the code formula';
const ULTIMATE = 'Footings, ultimate';
const COLLAR = 'Concrete collars';

const depthFt = (pounds: number, armFt: number, widthFt: number, bearing: number): number =>
  feetFromMetres(
    presumptiveDepth(
      { forceN: newtonsFromLbf(pounds), armM: metresFromFeet(armFt), widthM: metresFromFeet(widthFt) },
      bearing,
    ),
  );
const forceLbf = (depth: number, armFt: number, widthFt: number, bearing: number): number =>
  lbfFromNewtons(
    presumptiveForce(
      { embedmentM: metresFromFeet(depth), armM: metresFromFeet(armFt), widthM: metresFromFeet(widthFt) },
      bearing,
    ),
  );

const GROUND = { embedmentM: 1, footing: 'concrete', diameterM: 0.25 } as const;
const ON_GROUND = { section: nominalSection('4x4'), armM: 1 };
/** Lateral bearing that the code verdict takes for a soil class, worked back from the force it allows [psf/ft]. */
const bearingOfVerdict = (soilClass: SoilClass, lateralBearingDoubled: boolean): number =>
  allowableFootingForce({ soilClass, lateralBearingDoubled }, GROUND, ON_GROUND) /
  presumptiveForce({ embedmentM: 1, widthM: 0.25, armM: 1 }, 1);

const christy = { topic: CODE, source: SOURCES.christy, tag: 'read', tolerance: within(0.002) } as const;
const second = { source: SOURCES.secondWind, tag: 'derived' } as const;

const codeChecks: readonly PublishedCheck[] = [
  {
    ...christy,
    id: 'footing.christy.depth',
    quantity: 'depth for 510 lbf at 4 ft, 1 ft wide, 266 psf/ft, nonconstrained',
    computed: () => depthFt(510, 4, 1, 266),
    published: 5.02,
    unit: 'ft',
  },
  {
    ...christy,
    id: 'footing.christy.s1',
    quantity: 'allowable bearing at a third of that depth',
    computed: () => (266 * depthFt(510, 4, 1, 266)) / 3,
    published: 445,
    unit: 'psf',
  },
  {
    ...christy,
    id: 'footing.christy.constrained',
    quantity: 'depth for the same pole held by a floor',
    computed: () =>
      feetFromMetres(
        constrainedDepth({ forceN: newtonsFromLbf(510), armM: metresFromFeet(4), widthM: metresFromFeet(1) }, 266),
      ),
    published: 3.19,
    unit: 'ft',
  },
  {
    id: 'footing.eng-tips.a',
    topic: CODE,
    quantity: 'A = 2.34 P / (S1 b) for 3,000 lbf, 150 psf/ft with 4/3, trial depth 6 ft',
    // With the arm at zero A equals the depth, so A scales with the force over that which the formula allows there.
    computed: () => (6 * 3000) / forceLbf(6, 0, 1, (150 * 4) / 3),
    published: 17.6,
    unit: 'ft',
    tolerance: within(0.005),
    source: SOURCES.engTips,
    tag: 'read',
  },
  ...(
    [
      ['B 9 in', 461, 0.75, 4.98],
      ['B 12 in', 461, 1, 4.42],
      ['C 9 in', 648, 0.75, 5.74],
      ['C 12 in', 648, 1, 5.09],
    ] as const
  ).map(
    ([name, pounds, width, published]): PublishedCheck => ({
      ...second,
      topic: CODE,
      id: `footing.code-depth.${name}`,
      quantity: `depth that the reference fence needs at 105 mph or 16 psf, ${name} footing`,
      computed: () => depthFt(pounds, 3.3, width, 300),
      published,
      unit: 'ft',
      tolerance: within(0.003),
    }),
  ),
  {
    ...second,
    topic: CODE,
    id: 'footing.closed-form',
    quantity: 'closed form: force for 2 ft depth, arm 3.3 ft, 9 in wide, 300 psf/ft',
    computed: () => forceLbf(2, 3.3, 0.75, 300),
    published: 45.8,
    unit: 'lbf',
    tolerance: within(0.002),
    note: 'ASAE EP486 (6 and 8 for 7.02 and 7.65) has 46.9 lbf.',
  },
  ...[2, 2.5, 3, 4, 5].map(
    (feet): PublishedCheck => ({
      id: `footing.round-trip.${feet}`,
      topic: CODE,
      quantity: `closed form, then the printed formula iterated: depth ${feet} ft comes back`,
      computed: () => depthFt(forceLbf(feet, 3.3, 0.75, 300), 3.3, 0.75, 300),
      published: feet,
      unit: 'ft',
      tolerance: within(1e-6),
      source: SOURCES.algebra,
      tag: 'derived',
    }),
  ),
  {
    ...second,
    topic: CODE,
    id: 'footing.direct-burial',
    quantity: 'direct-buried 4x4 (diagonal), 30 in deep, 300 psf/ft: allowable force',
    computed: () => forceLbf(2.5, 3.3, 0.4125, 300),
    published: 45.2,
    unit: 'lbf',
    tolerance: within(0.003),
  },
  ...SOIL_CLASS_KEYS.map((key): PublishedCheck => {
    const { name, strength } = SOIL_CLASSES[key];
    const published = strength.kind === 'clay' ? 100 : key === 'dense-sand' ? 200 : 150;
    return {
      id: `footing.table-1806.${key}`,
      topic: CODE,
      quantity: `lateral bearing of ${name}`,
      computed: () => bearingOfVerdict(key, false),
      published,
      unit: 'psf/ft',
      tolerance: within(1e-9),
      source: SOURCES.ibcBearing,
      tag: 'read',
      ...(key === 'loose-sand'
        ? { note: 'For unprepared fill the table gives nothing; the value for sand stands in.' }
        : {}),
      ...(key === 'dense-sand'
        ? { note: 'The row for gravel; for dense clean sand without gravel the table has 150.' }
        : {}),
    };
  }),
];

const ruleChecks: readonly PublishedCheck[] = [
  {
    id: 'footing.doubled',
    topic: CODE,
    quantity: 'bearing of a pole not harmed by half an inch of movement, over the tabulated one (clay)',
    computed: () => bearingOfVerdict('firm-clay', true) / bearingOfVerdict('firm-clay', false),
    published: 2,
    unit: '-',
    tolerance: within(1e-9),
    source: SOURCES.doubling,
    tag: 'read at second hand',
  },
  {
    id: 'footing.diagonal',
    topic: CODE,
    quantity: 'bearing width of a 4x4 set in soil: its diagonal, not its side',
    computed: () =>
      inchesFromMm(1000 * bearingWidth({ embedmentM: 1, footing: 'soil', diameterM: null }, nominalSection('4x4'))),
    published: 4.95,
    unit: 'in',
    tolerance: withinAbsolute(0.005),
    source: SOURCES.upCodes,
    tag: 'read',
    note: 'The rule asks for the diagonal of a square post; 3.5 in times the root of two.',
  },
  {
    id: 'footing.deepest',
    topic: CODE,
    quantity:
      'bearing at a third of the depth stops growing at 12 ft: force at 18 ft over force at 12 ft, pushed at the surface',
    computed: () => forceLbf(18, 0, 1, 150) / forceLbf(12, 0, 1, 150),
    published: 1.5,
    unit: '-',
    tolerance: within(1e-9),
    source: SOURCES.upCodes,
    tag: 'read',
    note: 'With bearing that went on growing it would be 2.25.',
  },
];

const pile = { embedmentM: 4.8, widthM: 0.4, armM: 0 };
const post = (feet: number) => ({
  embedmentM: metresFromFeet(feet),
  widthM: metresFromFeet(0.75),
  armM: metresFromFeet(3.3),
});
const referenceSand = { frictionAngleDeg: 32, unitWeightNPerM3: 115 * N_M3_PER_PCF };

const ultimateChecks: readonly PublishedCheck[] = [
  {
    id: 'broms.worksheet',
    topic: ULTIMATE,
    quantity: 'Broms in sand: pile 0.4 m wide, 4.8 m deep, phi 35, 17 kN/m3, force at the surface',
    computed: () => bromsSandForce(pile, { frictionAngleDeg: 35, unitWeightNPerM3: 17_000 }) / 1000,
    published: 291.1,
    unit: 'kN',
    tolerance: within(0.01),
    source: SOURCES.bromsSheet,
    tag: 'read',
    note: 'The worksheet reads its value off a chart; the formula gives 289.1.',
  },
  {
    id: 'broms.worksheet.submerged',
    topic: ULTIMATE,
    quantity: 'the same pile under water, 8.19 kN/m3',
    computed: () => bromsSandForce(pile, { frictionAngleDeg: 35, unitWeightNPerM3: 8190 }) / 1000,
    published: 140.2,
    unit: 'kN',
    tolerance: within(0.01),
    source: SOURCES.bromsSheet,
    tag: 'read',
    note: 'The sheet prints a chart value of 75, but its result belongs to 72.5.',
  },
  {
    ...second,
    id: 'broms.formula',
    topic: ULTIMATE,
    quantity: 'Broms in sand, the same pile by the formula',
    computed: () => bromsSandForce(pile, { frictionAngleDeg: 35, unitWeightNPerM3: 17_000 }) / 1000,
    published: 289.1,
    unit: 'kN',
    tolerance: within(0.001),
  },
  {
    source: SOURCES.bromsSheet,
    tag: 'read',
    id: 'broms.kp',
    topic: ULTIMATE,
    quantity: 'passive coefficient at phi 35',
    computed: () => passiveCoefficient(35),
    published: 3.69,
    unit: '-',
    tolerance: withinAbsolute(0.0005),
  },
  ...(
    [
      [2, 138.7, 211.9, 265],
      [2.5, 251.4, 378.1, 621],
    ] as const
  ).flatMap(([feet, pivot, broms, clay]): PublishedCheck[] => [
    {
      ...second,
      topic: ULTIMATE,
      id: `pivot.${feet * 12}`,
      quantity: `pivot statics, 9 in footing ${feet * 12} in deep, phi 32, 115 pcf`,
      computed: () => lbfFromNewtons(pivotSandForce(post(feet), referenceSand)),
      published: pivot,
      unit: 'lbf',
      tolerance: within(0.001),
    },
    {
      ...second,
      topic: ULTIMATE,
      id: `broms.${feet * 12}`,
      quantity: `Broms in sand, the same footing`,
      computed: () => lbfFromNewtons(bromsSandForce(post(feet), referenceSand)),
      published: broms,
      unit: 'lbf',
      tolerance: within(0.001),
    },
    {
      ...second,
      topic: ULTIMATE,
      id: `clay.${feet * 12}`,
      quantity: `Broms in clay of 1,000 psf, the same footing`,
      computed: () => lbfFromNewtons(bromsClayForce(post(feet), paFromPsf(1000))),
      published: clay,
      unit: 'lbf',
      tolerance: within(0.002),
    },
  ]),
];

const collarLbf = (diameterIn: number, depthIn: number, tensionMpa: number): number =>
  lbfFromNewtons(
    collarForce(
      {
        diameterM: mmFromInches(diameterIn) / 1000,
        postBreadthM: mmFromInches(3.5) / 1000,
        depthM: mmFromInches(depthIn) / 1000,
        armM: metresFromFeet(3.3),
      },
      tensionMpa,
    ),
  );

const collarChecks = (
  [
    [7, 227, 567],
    [8, 350, 874],
    [9, 490, 1224],
    [10, 644, 1609],
  ] as const
).flatMap(([diameter, lrfd, best]): PublishedCheck[] => [
  {
    ...second,
    topic: COLLAR,
    id: `collar.${diameter}.lrfd`,
    quantity: `collar ${diameter} in round a 4x4, 24 in deep, LRFD tension`,
    computed: () => collarLbf(diameter, 24, COLLAR_TENSION_LRFD_MPA),
    published: lrfd,
    unit: 'lbf',
    tolerance: within(0.003),
  },
  {
    ...second,
    topic: COLLAR,
    id: `collar.${diameter}.best`,
    quantity: `collar ${diameter} in round a 4x4, 24 in deep, modulus of rupture`,
    computed: () => collarLbf(diameter, 24, COLLAR_TENSION_MPA),
    published: best,
    unit: 'lbf',
    tolerance: within(0.003),
  },
]);

export const FOOTING_CHECKS: readonly PublishedCheck[] = [
  ...codeChecks,
  ...ruleChecks,
  ...ultimateChecks,
  ...collarChecks,
];
