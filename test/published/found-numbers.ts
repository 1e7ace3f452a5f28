import type { InspectionMethod, PostReading } from '../../src/forecast/evidence/inspection.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { between, byShare, type NumberRow, ofClass } from './number-row.ts';

const NOTHING: Omit<PostReading, 'post'> = {
  groundline: null,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
};
/** Posts 2 and 3 looked at before this summer. */
const inspected = (facts: FenceFacts, method: InspectionMethod, found: Partial<PostReading>): FenceFacts => ({
  ...facts,
  inspections: [
    ...facts.inspections,
    { ref: 'I-as-if', day: '2026-05-01', method, readings: [2, 3].map((post) => ({ ...NOTHING, ...found, post })) },
  ],
});
const seen = (said: string, method: InspectionMethod, found: Partial<PostReading>): NonNullable<NumberRow['asIf']> => ({
  said,
  facts: (facts) => inspected(facts, method, found),
});
const stormed: NonNullable<NumberRow['asIf']> = {
  said: 'as if their posts had stood at 75 mph in 2024',
  facts: (facts) => ({
    ...facts,
    outcomes: [
      ...facts.outcomes,
      {
        ref: 'O-as-if',
        storm: 'as-if',
        day: '2024-09-01',
        gustMps: 33.5,
        gustSpread: 0.1,
        posts: 'all',
        result: 'stood',
      },
    ],
  }),
};

const METHODS = 'forecast/evidence/reading-method.ts';
const judged = { tag: 'judgement', source: 'how well the method reads' } as const;
const depth = { groundline: { kind: 'depth', depthMm: 8 } } as const;
const width = { groundline: { kind: 'residual-width', widthMm: 73 } } as const;
const girth = { groundline: { kind: 'residual-circumference', circumferenceMm: 292 } } as const;
const broken = { groundline: { kind: 'broken' } } as const;

const readingRows: readonly NumberRow[] = [
  between(1, 4, {
    ...judged,
    file: METHODS,
    id: 'reading.awl',
    what: 'error of awl or probe [mm]',
    text: "gives: ['depth', 'sound-to', 'soft-to', 'broken'],\n    errorMm: «2»,",
    names: ['READING_METHODS.awl-or-probe', 'forecast/evidence/depth-likelihood.ts#depthSeen'],
    asIf: seen('as if two posts had been read at 8 mm', 'awl-or-probe', depth),
  }),
  between(1, 4, {
    ...judged,
    file: METHODS,
    id: 'reading.caliper',
    what: 'error of a caliper, in width [mm]',
    text: "gives: ['residual-width', 'broken'],\n    errorMm: «2»,",
    names: ['READING_METHODS.caliper'],
    asIf: seen('as if two posts had been read 73 mm wide', 'caliper', width),
  }),
  between(0.75, 3, {
    ...judged,
    file: METHODS,
    id: 'reading.drill',
    what: 'error of drill resistance [mm]',
    text: 'errorMm: «1.5»,',
    names: ['READING_METHODS.drill-resistance'],
    asIf: seen('as if two posts had been drilled at 8 mm', 'drill-resistance', depth),
  }),
  between(5, 20, {
    ...judged,
    file: METHODS,
    id: 'reading.tape',
    what: 'error of a tape, in girth [mm]',
    text: 'errorMm: «10»,',
    names: ['READING_METHODS.circumference-tape'],
    asIf: seen('as if two posts had been taped at 292 mm', 'circumference-tape', girth),
  }),
  between(0.02, 0.25, {
    tag: 'judgement',
    source: 'failure of posts in field trials',
    file: 'forecast/evidence/failed-depth.ts',
    id: 'broken.share',
    what: 'modulus left in a post that gives way to a push',
    text: 'const FAILED_SHARE = «0.05»;',
    names: ['FAILED_SHARE', 'failedDepth'],
    asIf: seen('as if two posts had been found broken', 'eye', broken),
  }),
  between('1e-12', '1e-4', {
    tag: 'judgement',
    source: 'readings are sometimes wrong',
    file: 'forecast/evidence/piece-likelihood.ts',
    id: 'reading.wrong',
    what: 'least likelihood of a reading',
    text: 'const MISREADING_FLOOR = «1e-8»;',
    names: ['MISREADING_FLOOR'],
    asIf: seen('as if two posts had been read at 8 mm', 'awl-or-probe', depth),
  }),
  between('1e-12', '1e-4', {
    tag: 'judgement',
    source: 'reports are sometimes wrong',
    file: 'forecast/evidence/storm-likelihood.ts',
    id: 'storm.wrong',
    what: 'least probability of a report',
    text: 'const MISREPORT_FLOOR = «1e-9»;',
    names: ['MISREPORT_FLOOR', 'stormEvidence'],
    asIf: stormed,
  }),
  between(0.1, 0.3, {
    tag: 'judgement',
    source: 'model choice',
    file: 'forecast/evidence/storm-likelihood.ts',
    id: 'storm.footing',
    what: 'spread of ln footing resistance, post to post, in storms',
    text: 'const FOOTING_SPREAD_POST = «0.2»;',
    names: ['FOOTING_SPREAD_POST', 'stormEvidence'],
    asIf: stormed,
  }),
];

const RAIL = 'capacity/rail-connection.ts';
const weak = seen('as if two rail connections had a tenth left', 'eye', { railConnection: 0.1 });
const rail = { file: RAIL, asIf: weak } as const;
const railRows: readonly NumberRow[] = [
  byShare(0.25, {
    ...rail,
    tag: 'memory',
    source: 'Wood Handbook ch. 8',
    id: 'rail.ultimate',
    what: 'mean ultimate withdrawal of nails, its constant',
    text: 'const ULTIMATE_LBF = «7850»;',
    names: ['NAIL_ULTIMATE_PROVENANCE', 'ULTIMATE_LBF', 'SPECIFIC_GRAVITY_PROVENANCE', 'railConnectionForce'],
  }),
  between(0.15, 0.5, {
    ...rail,
    tag: 'memory',
    source: 'NDS 11.3.3',
    id: 'rail.moisture',
    what: 'share left to a nail where wood wets and dries',
    text: 'const CYCLIC_MOISTURE_FACTOR = «0.25»;',
    names: ['CYCLIC_MOISTURE_FACTOR', 'allowableRailConnectionForce'],
  }),
  between(0.5, 0.83, {
    ...rail,
    tag: 'memory',
    source: 'NDS 12.5.4',
    id: 'rail.toe',
    what: 'withdrawal of a toe-nail over a face-driven one',
    text: 'const TOE_NAIL_FACTOR = «0.67»;',
    names: ['TOE_NAIL_FACTOR'],
  }),
  between(0.33, 0.67, {
    ...rail,
    tag: 'judgement',
    source: 'statics of three equal strips',
    id: 'rail.middle',
    what: 'share of a bay that the middle rail carries',
    text: 'const MIDDLE_RAIL_SHARE = «0.5»;',
    names: ['MIDDLE_RAIL_SHARE', 'RAIL_CONNECTION_PROVENANCE'],
  }),
  between(1.5, 2.5, {
    ...rail,
    tag: 'judgement',
    source: 'the usual nail',
    id: 'rail.depth',
    what: 'depth of the nails in the post [in]',
    text: 'penetrationMm: mmFromInches(«2»)',
    names: ['usualRailConnection'],
  }),
  byShare(0.15, {
    ...rail,
    tag: 'memory',
    source: 'NDS 2018 Table 12.3.3A',
    id: 'rail.gravity',
    what: 'specific gravity of southern pine',
    text: "'southern-pine': «0.55»,",
    names: ['SPECIFIC_GRAVITY_PROVENANCE', 'specificGravity'],
  }),
];

const ABOVE = 'decay/above-ground-depth.ts';
const above = {
  file: ABOVE,
  tag: 'memory',
  source: 'Manual No. 4, decay above ground',
  asIf: ofClass('heartwood-class-3', 'heartwood class 3'),
} as const;
const LAW = [
  'ABOVE_GROUND_PROVENANCE',
  'aboveGroundRate',
  'aboveGroundLaw',
  'forecast/above-ground.ts#aboveGroundFlag',
];
const aboveRows: readonly NumberRow[] = [
  byShare(0.2, {
    ...above,
    id: 'above.wood',
    what: 'k_wood above ground of heartwood class 3',
    text: 'HEARTWOOD = [0.5, 0.62, «1.14», 2.2]',
    names: ['HEARTWOOD', ...LAW],
  }),
  byShare(0.2, {
    ...above,
    id: 'above.sapwood',
    what: 'k_wood above ground of sapwood',
    text: 'const SAPWOOD = «6.52»;',
    names: LAW,
    asIf: ofClass('untreated-softwood', 'untreated softwood'),
  }),
  byShare(0.2, {
    ...above,
    id: 'above.lag',
    what: 'lag above ground at 1 mm/a [a]',
    text: 'const LAG_COEFFICIENT = «8.5»;',
    names: LAW,
  }),
  between(-1, -0.7, {
    ...above,
    id: 'above.power',
    what: 'exponent of the lag above ground',
    text: 'const LAG_EXPONENT = «-0.85»;',
    names: LAW,
  }),
  byShare(0.2, {
    ...above,
    id: 'above.zone',
    what: 'climate factor above ground of zone C',
    text: "zone: 'C', inGround: 2.5, aboveGround: «0.65»",
    names: ['ZONES', 'aboveGroundZone'],
  }),
];

/** Numbers of evidence, of rail connections and of wood above ground: they count where something was found, or for a flag. */
export const FOUND_NUMBERS: readonly NumberRow[] = [...readingRows, ...railRows, ...aboveRows];
