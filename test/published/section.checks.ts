import { allowableStress } from '../../src/capacity/allowable-stress.ts';
import { bromsSandForce, presumptiveForce } from '../../src/capacity/footing.ts';
import { bendingForce } from '../../src/capacity/post-resistance.ts';
import { type NominalSection, nominalSection, type PostSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionArea, sectionModulus } from '../../src/capacity/section-properties.ts';
import { type Grade, SPECIES, type Species, strengthFactors } from '../../src/capacity/wood-strength.ts';
import { N_M3_PER_PCF } from '../../src/units/density.ts';
import { MM_PER_IN, metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { mpaFromPsi, psfFromPa, psiFromMpa } from '../../src/units/pressure.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { bendingForceN, referenceSpeedMph, shellLoss } from './reference-fence.ts';
import { depthAtShare, modulusShare, SECTIONS } from './section-share.ts';
import { SOURCES } from './sources.ts';

const SECTION = 'Sections and what rot leaves of them';
const STRENGTH = 'Wood design values and strength';

const own = { topic: SECTION, source: SOURCES.secondWind, tag: 'derived' } as const;
const ownDecay = { topic: SECTION, source: SOURCES.secondDecay, tag: 'derived' } as const;
const identity = { topic: SECTION, source: SOURCES.algebra, tag: 'derived' } as const;

const sizes = (
  [
    ['4x4', 12.25, 7.146],
    ['5x5', 20.25, 15.19],
    ['6x6', 30.25, 27.73],
  ] as const
).flatMap(([name, area, modulus]): PublishedCheck[] => [
  {
    ...own,
    id: `section.${name}.area`,
    quantity: `area of a ${name}`,
    computed: () => sectionArea(nominalSection(name), NO_LOSS) / MM_PER_IN ** 2,
    published: area,
    unit: 'in2',
    tolerance: within(1e-6),
  },
  {
    ...own,
    id: `section.${name}.modulus`,
    quantity: `section modulus of a ${name}`,
    computed: () => sectionModulus(nominalSection(name), NO_LOSS) / MM_PER_IN ** 3,
    published: modulus,
    unit: 'in3',
    tolerance: within(0.0005),
  },
]);

const POST = nominalSection('4x4');
const speedShare = (inches: number): number =>
  referenceSpeedMph(bendingForceN('best', shellLoss(inches)), 'interior, Case A', 'B') /
  referenceSpeedMph(bendingForceN('best'), 'interior, Case A', 'B');

const identities: readonly PublishedCheck[] = [
  ...[0.125, 0.25, 0.5, 0.75, 1, 1.5].map(
    (inches): PublishedCheck => ({
      ...identity,
      id: `identity.speed.${inches}`,
      quantity: `V/V0 = (1 - 2t/b)^1.5 of a 4x4, t = ${inches} in`,
      computed: () => speedShare(inches),
      published: (1 - (2 * inches) / 3.5) ** 1.5,
      unit: '-',
      tolerance: within(1e-9),
    }),
  ),
  {
    ...identity,
    id: 'identity.round',
    quantity: 'round 100 mm, 10 mm lost: S/S0 = (1 - 2d/D)^3',
    computed: () => modulusShare({ kind: 'round', diameterMm: 100 }, 10),
    published: 0.8 ** 3,
    unit: '-',
    tolerance: within(1e-9),
  },
  {
    ...own,
    id: 'section.shell.1',
    quantity: 'section modulus of a 4x4 after 1 in per face',
    computed: () => sectionModulus(POST, shellLoss(1)) / MM_PER_IN ** 3,
    published: 0.5625,
    unit: 'in3',
    tolerance: within(1e-6),
  },
  ...(
    [
      [1 / 2, 0.36, 'half the strength'],
      [2 / 3, 0.22, 'two thirds of the strength'],
      [1 / 4, 0.65, 'half the speed'],
    ] as const
  ).map(
    ([share, published, name]): PublishedCheck => ({
      ...own,
      id: `section.lost.${published}`,
      quantity: `inches per face at which a 4x4 keeps ${name}`,
      computed: () => depthAtShare(POST, share) / MM_PER_IN,
      published,
      unit: 'in',
      tolerance: withinAbsolute(0.005),
    }),
  ),
  ...(
    [
      ['one face, 0.5 in', { oneFaceMm: mmFromInches(0.5) }, 5.25],
      ['one face, 1 in', { oneFaceMm: mmFromInches(1) }, 3.646],
      ['1.5 in cavity', { cavityDiameterMm: mmFromInches(1.5) }, 7.004],
      ['2.5 in cavity', { cavityDiameterMm: mmFromInches(2.5) }, 6.05],
    ] as const
  ).map(
    ([name, loss, published]): PublishedCheck => ({
      ...own,
      id: `section.loss.${name}`,
      quantity: `section modulus of a 4x4 less ${name}`,
      computed: () => sectionModulus(POST, { ...NO_LOSS, ...loss }) / MM_PER_IN ** 3,
      published,
      unit: 'in3',
      tolerance: within(0.0005),
    }),
  ),
];

const areaShare = (section: PostSection, depthMm: number): number =>
  sectionArea(section, { ...NO_LOSS, depthMm }) / sectionArea(section, NO_LOSS);

const decayed: readonly PublishedCheck[] = [
  ...(
    [
      [1, 0.9341, 0.9556],
      [2, 0.8711, 0.9121],
      [3, 0.8111, 0.8697],
      [5, 0.6994, 0.7879],
      [10, 0.466, 0.6011],
    ] as const
  ).flatMap(([depthMm, modulus, area]): PublishedCheck[] => [
    {
      ...ownDecay,
      id: `decayed.modulus.${depthMm}`,
      quantity: `S/S0 of 89 mm square at ${depthMm} mm`,
      computed: () => modulusShare(SECTIONS.sawn89, depthMm),
      published: modulus,
      unit: '-',
      tolerance: withinAbsolute(0.00005),
    },
    {
      ...ownDecay,
      id: `decayed.area.${depthMm}`,
      quantity: `A/A0 of 89 mm square at ${depthMm} mm`,
      computed: () => areaShare(SECTIONS.sawn89, depthMm),
      published: area,
      unit: '-',
      tolerance: withinAbsolute(0.00005),
    },
  ]),
  ...(
    [
      ['two thirds', 2 / 3, 5.63],
      ['a half', 0.5, 9.18],
      ['a quarter', 0.25, 16.47],
      ['a twentieth', 0.05, 28.11],
    ] as const
  ).map(
    ([name, share, published]): PublishedCheck => ({
      ...ownDecay,
      id: `decayed.depth.${published}`,
      quantity: `depth at which 89 mm square keeps ${name} of S`,
      computed: () => depthAtShare(SECTIONS.sawn89, share),
      published,
      unit: 'mm',
      tolerance: withinAbsolute(0.006),
    }),
  ),
  ...(
    [
      ['89 mm square', SECTIONS.sawn89, 5.63],
      ['140 mm square', SECTIONS.sawn140, 8.85],
      ['100 mm round', { kind: 'round', diameterMm: 100 }, 6.3],
    ] as const
  ).map(
    ([name, section, published]): PublishedCheck => ({
      topic: SECTION,
      source: SOURCES.nesc,
      tag: 'memory',
      id: `two-thirds.${name}`,
      quantity: `depth all round at the two-thirds line, ${name}`,
      computed: () => depthAtShare(section, 2 / 3),
      published,
      unit: 'mm',
      tolerance: withinAbsolute(published === 6.3 ? 0.05 : 0.006),
      note: 'The rule is from memory, the depth derived from it.',
    }),
  ),
  {
    topic: SECTION,
    source: SOURCES.nesc,
    tag: 'memory',
    id: 'two-thirds.circumference',
    quantity: 'loss of circumference of a round at the two-thirds line',
    computed: () => 2 * depthAtShare({ kind: 'round', diameterMm: 100 }, 2 / 3),
    published: 12.64,
    unit: '%',
    tolerance: withinAbsolute(0.006),
    note: 'The rule is from memory, the loss derived from it.',
  },
];

type Wood = readonly [Species, Grade, NominalSection, boolean];
const allowable = ([species, grade, size, incised]: Wood) =>
  allowableStress({ species, grade, incised, section: nominalSection(size) });

const designValues: readonly PublishedCheck[] = (
  [
    ['sp2', 'southern pine No.2 4x4', ['southern-pine', 'no-2', '4x4', false], 1760, 1100 * 1.6],
    ['sp1', 'southern pine No.1 4x4, CM 0.85', ['southern-pine', 'no-1', '4x4', false], 2040, 1500 * 1.6 * 0.85],
    ['dfl2', 'Douglas-fir No.2 4x4, CM 0.85', ['douglas-fir', 'no-2', '4x4', false], 1836, 900 * 1.5 * 1.6 * 0.85],
    ['hf2', 'hem-fir No.2 4x4, incised', ['hem-fir', 'no-2', '4x4', true], 1387.2, 850 * 1.5 * 1.6 * 0.85 * 0.8],
    ['wc2', 'western cedar No.2 4x4, CM 1', ['western-redcedar', 'no-2', '4x4', false], 1680, 700 * 1.5 * 1.6],
  ] as const
).map(
  ([id, name, wood, published]): PublishedCheck => ({
    topic: STRENGTH,
    source: SOURCES.nds,
    tag: 'memory',
    id: `nds.bending.${id}`,
    quantity: `allowable bending stress under wind, ${name}`,
    computed: () => psiFromMpa(allowable(wood).bendingMpa),
    published,
    unit: 'psi',
    tolerance: within(1e-6),
  }),
);

const strengthChecks: readonly PublishedCheck[] = [
  ...designValues,
  {
    topic: STRENGTH,
    source: SOURCES.nds,
    tag: 'memory',
    id: 'nds.shear.sp2',
    quantity: 'allowable shear stress under wind, southern pine No.2 4x4, CM 0.97',
    computed: () => psiFromMpa(allowable(['southern-pine', 'no-2', '4x4', false]).shearMpa),
    published: 271.6,
    unit: 'psi',
    tolerance: within(1e-6),
  },
  {
    topic: STRENGTH,
    source: SOURCES.nds4d,
    tag: 'read',
    id: 'nds.timber.sp2',
    quantity: 'reference Fb of southern pine No.2, 5x5 and larger',
    computed: () => allowable(['southern-pine', 'no-2', '6x6', false]).referenceFbPsi,
    published: 850,
    unit: 'psi',
    tolerance: within(1e-9),
  },
  ...(
    [
      ['southern-pine', 51, 'read', 'as shortleaf pine'],
      ['ponderosa-pine', 35, 'read', null],
      ['redwood', 41, 'read', 'young growth'],
      ['douglas-fir', psiToMpa(7700), 'memory', null],
      ['western-redcedar', psiToMpa(5200), 'memory', null],
      ['northern-white-cedar', psiToMpa(4200), 'memory', null],
      ['eastern-redcedar', psiToMpa(7000), 'memory', null],
      ['baldcypress', psiToMpa(6600), 'memory', null],
      ['hem-fir', psiToMpa(6600), 'memory', 'as western hemlock'],
      ['spruce-pine-fir', psiToMpa(5500), 'memory', 'as lodgepole pine'],
    ] as const
  ).map(
    ([species, published, tag, as]): PublishedCheck => ({
      topic: STRENGTH,
      source: SOURCES.woodHandbook,
      tag,
      id: `mor.${species}`,
      quantity: `green clear-wood modulus of rupture, ${SPECIES[species].name}${as ? ` (${as})` : ''}`,
      computed: () => strengthFactors(species, 'unknown', SECTIONS.round115).base,
      published,
      unit: 'MPa',
      tolerance: within(0.003),
    }),
  ),
];

function psiToMpa(psi: number): number {
  return Number(mpaFromPsi(psi).toFixed(2));
}

/** Pressure on the fence that a 4x4 of the prescriptive rule carries at its spacing, allowable stress [psf]. */
const prescribedPsf = (heightFt: number, spacingFt: number, force: (armM: number) => number): number =>
  psfFromPa(force(metresFromFeet(0.55 * heightFt)) / (metresFromFeet(heightFt) * metresFromFeet(spacingFt)));

const prescriptive = (
  [
    [6, 4, 13.2, 2.12, 9.81],
    [5, 5, 15.2, 2.28, 10.51],
    [4, 6, 19.8, 2.7, 12.38],
  ] as const
).flatMap(([heightFt, spacingFt, bending, code, broms]): PublishedCheck[] => {
  const base = {
    topic: 'Prescriptive rule of a hurricane region',
    source: SOURCES.secondWind,
    tag: 'derived',
    unit: 'psf',
    tolerance: within(0.005),
    note: `Spacing rule: ${SOURCES.hvhz}; footing 10 in x 24 in from memory.`,
  } as const;
  const hole = (armM: number) => ({ embedmentM: metresFromFeet(2), widthM: mmFromInches(10) / 1000, armM });
  return [
    {
      ...base,
      id: `prescriptive.post.${heightFt}`,
      quantity: `${heightFt} ft fence, 4x4 every ${spacingFt} ft: pressure the post carries, ASD`,
      computed: () =>
        prescribedPsf(heightFt, spacingFt, (armM) =>
          bendingForce(
            allowable(['southern-pine', 'no-2', '4x4', false]).bendingMpa,
            sectionModulus(POST, NO_LOSS),
            armM,
          ),
        ),
      published: bending,
    },
    {
      ...base,
      id: `prescriptive.code.${heightFt}`,
      quantity: `the same: pressure the footing carries by the code formula, doubled`,
      computed: () => prescribedPsf(heightFt, spacingFt, (armM) => presumptiveForce(hole(armM), 300)),
      published: code,
    },
    {
      ...base,
      id: `prescriptive.broms.${heightFt}`,
      quantity: `the same: pressure the footing carries by Broms, phi 32`,
      computed: () =>
        prescribedPsf(heightFt, spacingFt, (armM) =>
          bromsSandForce(hole(armM), { frictionAngleDeg: 32, unitWeightNPerM3: 115 * N_M3_PER_PCF }),
        ),
      published: broms,
    },
  ];
});

export const SECTION_CHECKS: readonly PublishedCheck[] = [
  ...sizes,
  ...identities,
  ...decayed,
  ...strengthChecks,
  ...prescriptive,
];
