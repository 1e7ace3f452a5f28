import { nominalSection } from '../../src/capacity/post-section.ts';
import { SPECIES, type Species } from '../../src/capacity/wood-strength.ts';
import type { PostWood } from '../../src/forecast/post-wood.ts';
import { mmFromInches } from '../../src/units/length.ts';
import { between, byShare, type NumberRow, ofSpecies, roundOf } from './number-row.ts';

const WOOD = 'capacity/wood-strength.ts';
const ALLOWABLE = 'capacity/allowable-stress.ts';

/** Species, name as the source quotes it, sawn median, clear green strength, and how the latter is known. */
const SPECIES_TEXTS = [
  ['southern-pine', "name: 'southern pine'", '32.5', '51', 'read'],
  ['douglas-fir', "name: 'Douglas-fir'", '32.5', '53.1', 'memory'],
  ['hem-fir', "name: 'hem-fir'", '27', '45.5', 'memory'],
  ['spruce-pine-fir', "name: 'spruce-pine-fir'", '22', '37.9', 'memory'],
  ['western-redcedar', "name: 'western redcedar'", '22', '35.9', 'memory'],
  ['redwood', "name: 'redwood'", '27', '41', 'read'],
  ['northern-white-cedar', "name: 'northern white-cedar'", '18', '29', 'memory'],
  ['eastern-redcedar', "name: 'eastern redcedar'", '29', '48.3', 'memory'],
  ['baldcypress', "name: 'baldcypress'", '28', '45.5', 'memory'],
  ['ponderosa-pine', "name: 'ponderosa pine'", '21', '35', 'read'],
  ['black-locust', "name: 'black locust'", '58', '95', 'memory'],
  ['unknown', "name: 'species not known'", '26', '42', 'judgement'],
] as const satisfies readonly (readonly [Species, string, string, string, string])[];

const wood = {
  file: WOOD,
  tag: 'judgement',
  source: 'tests of full-size pine; others in the ratio of green clear wood',
} as const;

const speciesRows = SPECIES_TEXTS.flatMap(([species, name, sawn, clear, clearTag]): NumberRow[] => {
  const names = [`SPECIES.${species}`, 'WOOD_STRENGTH_PROVENANCE', 'strengthFactors', 'medianBendingStrength'];
  return [
    byShare(0.15, {
      ...wood,
      id: `sawn.${species}`,
      what: `median green strength of a No.2 4x4, ${SPECIES[species].name} [MPa]`,
      text: `${name}, sawnMedianMpa: «${sawn}»,`,
      names,
      asIf: ofSpecies(species, SPECIES[species].name),
    }),
    ...(clearTag === 'read'
      ? []
      : [
          byShare(0.15, {
            ...wood,
            tag: clearTag,
            source: 'Wood Handbook, green clear wood',
            id: `clear.${species}`,
            what: `green clear strength for round posts, ${SPECIES[species].name} [MPa]`,
            text: `${name}, sawnMedianMpa: ${sawn}, clearGreenMpa: «${clear}» }`,
            names,
            asIf: roundOf(species, SPECIES[species].name),
          }),
        ]),
  ];
});

const withWood = (said: string, change: Partial<PostWood>): NonNullable<NumberRow['asIf']> => ({
  said,
  facts: (facts) => ({ ...facts, wood: { ...facts.wood, ...change } }),
});
const timber = withWood('as if of 6x6', { section: nominalSection('6x6') });

const strengthRows: readonly NumberRow[] = [
  ...speciesRows,
  between(0.1, 0.25, {
    ...wood,
    id: 'fibre.fence',
    what: 'spread of ln strength, fence to fence',
    text: 'const FIBRE_SPREAD_FENCE = «0.15»;',
    names: ['FIBRE_SPREAD_FENCE', 'forecast/snap-resistance.ts#fibreSpread'],
  }),
  between(0.2, 0.4, {
    ...wood,
    id: 'fibre.post',
    what: 'spread of ln strength, post to post',
    text: 'const FIBRE_SPREAD_POST = «0.32»;',
    names: ['FIBRE_SPREAD_POST', 'forecast/risk.ts#postsShort'],
  }),
  between(0.15, 0.35, {
    ...wood,
    id: 'fibre.unknown',
    what: 'further spread where the species is not recorded',
    text: 'const FIBRE_SPREAD_UNKNOWN_SPECIES = «0.25»;',
    names: ['FIBRE_SPREAD_UNKNOWN_SPECIES'],
    asIf: ofSpecies('unknown', 'unknown species'),
  }),
  between(1, 1.3, {
    ...wood,
    id: 'grade.1',
    what: 'strength of No.1 over No.2',
    text: "'no-1': «1.15»,",
    names: ['medianBendingStrength'],
    asIf: withWood('as if of No.1', { grade: 'no-1' }),
  }),
  between(0.65, 0.95, {
    ...wood,
    id: 'grade.3',
    what: 'strength of No.3 over No.2',
    text: "'no-3': «0.8»,",
    names: ['medianBendingStrength'],
    asIf: withWood('as if of No.3', { grade: 'no-3' }),
  }),
  between(0.8, 1, {
    ...wood,
    id: 'size.timber',
    what: 'strength of a timber over a 4x4',
    text: 'const LARGE_SAWN_FACTOR = «0.9»;',
    names: ['medianBendingStrength'],
    asIf: timber,
  }),
  between(0.8, 1, {
    ...wood,
    id: 'size.round',
    what: 'strength of a round post over small clear wood',
    text: 'const ROUND_FACTOR = «0.9»;',
    names: ['medianBendingStrength'],
    asIf: roundOf('southern-pine', 'southern pine'),
  }),
  byShare(0.2, {
    ...wood,
    tag: 'memory',
    source: 'Wood Handbook, loblolly pine',
    id: 'shear',
    what: 'shear over bending strength',
    text: 'const SHEAR_TO_BENDING = «0.118»;',
    names: ['SHEAR_STRENGTH_PROVENANCE', 'SHEAR_TO_BENDING', 'forecast/snap-resistance.ts#snapResistance'],
  }),
  between('1 / 16', '1 / 5', {
    file: 'capacity/section-properties.ts',
    tag: 'judgement',
    source: 'hollow shells crush or split first',
    id: 'shell',
    what: 'thinnest shell that counts, over the width',
    text: 'const THINNEST_SHELL_SHARE = «1 / 8»;',
    names: ['THINNEST_SHELL_SHARE'],
  }),
  ...(['4x4', '6x6'] as const).map((size) => {
    const inches = size === '4x4' ? 3.5 : 5.5;
    return between(`${inches - 0.125}, ${inches - 0.125}`, `${inches + 0.125}, ${inches + 0.125}`, {
      file: 'capacity/post-section.ts',
      tag: 'memory',
      source: 'PS 20 dressed sizes',
      id: `dressed.${size}`,
      what: `dressed size of a ${size} [in]`,
      text: `'${size}': [«${inches}, ${inches}»],`,
      names:
        size === '4x4'
          ? ['4x4', '4x6', '6x4', '5x5'].map((name) => `NOMINAL_SECTIONS_IN.${name}`)
          : ['6x6', '8x8'].map((name) => `NOMINAL_SECTIONS_IN.${name}`),
      asIf: {
        said: `as if of ${size}`,
        facts: (facts, value) => {
          const mm = mmFromInches(Number(value.split(',')[0]));
          return { ...facts, wood: { ...facts.wood, section: { kind: 'rectangular', widthMm: mm, depthMm: mm } } };
        },
      },
    });
  }),
];

/** Species, and the text of its No.2 value of lumber. */
const DESIGN_TEXTS = [
  ['southern-pine', 'lumberFb: [1500, «1100», 650]'],
  ['douglas-fir', "'douglas-fir': values([1000, «900», 525]"],
  ['hem-fir', "'hem-fir': values([975, «850», 500]"],
  ['spruce-pine-fir', "'spruce-pine-fir': values([875, «875», 500]"],
  ['western-redcedar', 'WESTERN_CEDARS = [[725, «700», 400]'],
  ['redwood', 'REDWOOD = [[975, «925», 525]'],
  ['northern-white-cedar', "'northern-white-cedar': values([575, «550», 325]"],
  ['baldcypress', 'baldcypress: values([1000, «825», 475]'],
  ['ponderosa-pine', 'WESTERN_WOODS = [[675, «675», 375]'],
] as const satisfies readonly (readonly [Species, string])[];
/** Species whose values are those of another. */
const STAND_IN: Readonly<Partial<Record<Species, readonly Species[]>>> = {
  'western-redcedar': ['eastern-redcedar'],
  redwood: ['black-locust'],
  'ponderosa-pine': ['unknown'],
};

const code = { file: ALLOWABLE, tag: 'memory', source: 'NDS 2018 and its Supplement' } as const;
const CODE_NAMES = [
  'ALLOWABLE_STRESS_PROVENANCE',
  'allowableStress',
  'forecast/snap-resistance.ts#allowableSnapResistance',
  'forecast/code-speeds.ts#codeSpeeds',
];

const codeRows: readonly NumberRow[] = [
  ...DESIGN_TEXTS.map(([species, text]) =>
    byShare(0.15, {
      ...code,
      id: `fb.${species}`,
      what: `Fb of No.2 lumber, ${SPECIES[species].name} [psi]`,
      text,
      names: [species, ...(STAND_IN[species] ?? [])].map((each) => `DESIGN_VALUES.${each}`).concat(CODE_NAMES),
      asIf: ofSpecies(species, SPECIES[species].name),
    }),
  ),
  between(1.33, 2, {
    ...code,
    id: 'cd',
    what: 'load duration factor CD for wind',
    text: 'const LOAD_DURATION_WIND = «1.6»;',
    names: ['LOAD_DURATION_WIND'],
  }),
  between(0.75, 1, {
    ...code,
    id: 'ci',
    what: 'incising factor',
    text: 'const INCISING_FACTOR = «0.8»;',
    asIf: withWood('as if incised Douglas-fir', { species: 'douglas-fir', incised: true }),
  }),
  between(1.3, 1.5, {
    ...code,
    id: 'cf',
    what: 'size factor of 4 in lumber',
    text: 'SIZE_FACTOR = { narrow: «1.5»,',
    names: ['SIZE_FACTOR'],
    asIf: ofSpecies('douglas-fir', 'Douglas-fir'),
  }),
  between(1, 1.3, {
    ...code,
    id: 'form',
    what: 'form factor of a round',
    text: 'const ROUND_FORM_FACTOR = «1.18»;',
    names: ['ROUND_FORM_FACTOR'],
    asIf: roundOf('southern-pine', 'southern pine'),
  }),
  between(0.45, 0.75, {
    ...code,
    tag: 'judgement',
    source: 'about the ratio of lumber',
    id: 'no3-timber',
    what: 'Fb of a No.3 timber over No.2',
    text: 'const NO_3_TIMBER_SHARE = «0.6»;',
    asIf: withWood('as if of No.3 6x6', { grade: 'no-3', section: nominalSection('6x6') }),
  }),
  between(0.8, 1, {
    ...code,
    id: 'cm',
    what: 'wet service factor above 1,150 psi',
    text: 'referenceFbPsi <= 1150 ? 1 : «0.85»;',
    asIf: ofSpecies('douglas-fir', 'Douglas-fir'),
  }),
  between(1, 2, {
    file: 'forecast/snap-resistance.ts',
    tag: 'memory',
    source: 'AISC 360 F1',
    id: 'steel',
    what: 'safety factor of a steel section in bending',
    text: 'const STEEL_SAFETY_FACTOR = «1.67»;',
    names: ['STEEL_SAFETY_FACTOR'],
    asIf: {
      said: 'as if sleeved in 2020',
      facts: (facts) => ({
        ...facts,
        works: [
          ...facts.works,
          { ref: 'W-as-if', day: '2020-06-01', posts: 'all', kind: 'steel-sleeve', momentCapacityNm: 4000 },
        ],
      }),
    },
  }),
];

/** Numbers of strength, expected and by code. */
export const STRENGTH_NUMBERS: readonly NumberRow[] = [...strengthRows, ...codeRows];
