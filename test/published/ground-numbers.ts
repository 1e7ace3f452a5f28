import type { SoilClass } from '../../src/capacity/soil-class.ts';
import type { GroundFacts } from '../../src/forecast/fence-facts.ts';
import { between, byShare, type NumberRow } from './number-row.ts';

const SOIL = 'capacity/soil-class.ts';
const FOOTING = 'capacity/footing.ts';

const inSoil = (soilClass: SoilClass, said: string): NonNullable<NumberRow['asIf']> => ({
  said: `as if in ${said}`,
  facts: (facts) => ({ ...facts, site: { ...facts.site, soilClass } }),
});
const soil = { file: SOIL, tag: 'judgement', source: 'typical values of the class' } as const;
const NAMES = ['forecast/lean-resistance.ts#footingForce'];

const SANDS = [
  ['loose-sand', 'loose sand or fill', '30', '17'],
  ['medium-sand', 'medium sand', '34', '18'],
  ['dense-sand', 'dense sand or gravel', '38', '19.5'],
] as const;
const CLAYS = [
  ['soft-clay', 'soft clay', '25'],
  ['firm-clay', 'firm clay or silt', '50'],
  ['stiff-clay', 'stiff clay', '100'],
] as const;

const soilRows: readonly NumberRow[] = [
  ...SANDS.flatMap(([key, name, angle, weight]): NumberRow[] => [
    between(Number(angle) - 3, Number(angle) + 3, {
      ...soil,
      id: `soil.${key}.angle`,
      what: `friction angle of ${name} [deg]`,
      text: `sand('${name}', «${angle}»,`,
      names: [`SOIL_CLASSES.${key}`, ...NAMES],
      asIf: inSoil(key, name),
    }),
    byShare(0.1, {
      ...soil,
      id: `soil.${key}.weight`,
      what: `unit weight of ${name} [kN/m3]`,
      text: `sand('${name}', ${angle}, «${weight}»,`,
      names: [`SOIL_CLASSES.${key}`],
      asIf: inSoil(key, name),
    }),
  ]),
  ...CLAYS.map(([key, name, shear]) =>
    byShare(0.4, {
      ...soil,
      id: `soil.${key}`,
      what: `undrained shear strength of ${name} [kPa]`,
      text: `clay('${name}', «${shear}»)`,
      names: [`SOIL_CLASSES.${key}`, ...NAMES],
      asIf: inSoil(key, name),
    }),
  ),
  between(0.25, 0.55, {
    ...soil,
    source: 'model choice',
    id: 'footing.spread',
    what: 'spread of ln footing resistance, fence to fence',
    text: 'const FOOTING_SPREAD = «0.4»;',
    names: ['FOOTING_SPREAD', 'forecast/footing-prior.ts#footingPrior'],
  }),
];

const notRecorded = (change: Partial<GroundFacts>, said: string): NonNullable<NumberRow['asIf']> => ({
  said,
  facts: (facts) => ({ ...facts, ground: { ...facts.ground, ...change } }),
});
const prior = {
  file: 'forecast/unknown-priors.ts',
  tag: 'judgement',
  source: 'the usual two feet in a nine-inch collar',
  names: ['FOOTING_PRIOR', 'groundAt'],
} as const;
const noDepth = notRecorded({ embedmentM: null }, 'as if the embedment were not recorded');
const noWidth = notRecorded({ footing: 'concrete', footingDiameterM: null }, 'as if the diameter were not recorded');

const groundRows: readonly NumberRow[] = [
  between(0.65, 1, {
    file: FOOTING,
    tag: 'judgement',
    source: 'pivot statics 0.65, Broms 1.0',
    id: 'broms.share',
    what: 'share of Broms in sand',
    text: 'const SAND_MODEL_FACTOR = «0.8»;',
    names: ['BROMS_SAND_PROVENANCE', 'SAND_MODEL_FACTOR', 'bromsSandForce', 'pivotSandForce'],
    asIf: inSoil('medium-sand', 'medium sand'),
  }),
  byShare(0.2, {
    file: FOOTING,
    tag: 'memory',
    source: 'Broms 1964; read at second hand but for one term',
    id: 'broms.clay',
    what: 'resistance in clay by Broms, its factor',
    text: 'return «9» * undrainedShearPa',
    names: ['bromsClayForce'],
    asIf: inSoil('firm-clay', 'firm clay'),
  }),
  between(1500, 4000, {
    file: 'capacity/collar.ts',
    tag: 'judgement',
    source: 'site-mixed bag concrete',
    id: 'collar.concrete',
    what: 'strength of collar concrete [psi]',
    text: 'COLLAR_TENSION_MPA = 7.5 * Math.sqrt(«2500»)',
    names: ['COLLAR_TENSION_MPA', 'COLLAR_TENSION_LRFD_MPA', 'collarForce'],
  }),
  between(18, 30, {
    ...prior,
    id: 'prior.depth',
    what: 'embedment where none is recorded [in]',
    text: 'embedmentM: mmFromInches(«24»)',
    asIf: noDepth,
  }),
  between(0.08, 0.25, {
    ...prior,
    id: 'prior.depth.spread',
    what: 'spread of ln embedment',
    text: 'embedmentSpread: «0.15»',
    asIf: noDepth,
  }),
  between(7, 12, {
    ...prior,
    id: 'prior.width',
    what: 'diameter where none is recorded [in]',
    text: 'diameterM: mmFromInches(«9»)',
    asIf: noWidth,
  }),
  between(0.06, 0.2, {
    ...prior,
    id: 'prior.width.spread',
    what: 'spread of ln diameter',
    text: 'diameterSpread: «0.12»',
    asIf: noWidth,
  }),
];

/** Numbers of the ground. */
export const GROUND_NUMBERS: readonly NumberRow[] = [...soilRows, ...groundRows];
