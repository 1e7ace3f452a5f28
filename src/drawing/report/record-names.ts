import { SOIL_CLASSES, type SoilClass } from '../../capacity/soil-class.ts';
import { SPECIES, type Species } from '../../capacity/wood-strength.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../../decay/treatment-class.ts';
import type { InspectionMethod } from '../../forecast/evidence/inspection.ts';
import type { StormResult } from '../../forecast/evidence/storm-outcome.ts';
import type { EndFacts, FenceFacts } from '../../forecast/fence-facts.ts';
import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import type { FenceConsequence } from '../../season/snap-consequence.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { methodText } from '../evidence-text.ts';

type FootingKind = NonNullable<FenceFacts['ground']['footing']>;
type Grade = FenceFacts['wood']['grade'];

/** Styles of fences, as records name them. */
type StyleName = 'solid-board' | 'board-on-board' | 'shadowbox' | 'picket' | 'open-rail';

const STYLES: Readonly<Record<ChartLanguage, Readonly<Record<StyleName, string>>>> = {
  en: {
    'solid-board': 'solid boards',
    'board-on-board': 'board on board',
    shadowbox: 'shadowbox',
    picket: 'picket',
    'open-rail': 'open rail',
  },
  es: {
    'solid-board': 'tablas cerradas',
    'board-on-board': 'tablas traslapadas',
    shadowbox: 'tablas alternadas',
    picket: 'estacas',
    'open-rail': 'travesaños abiertos',
  },
};

/** A style of fence in one language; as it stands where it is none that is known. */
export const styleName = (style: string, language: ChartLanguage): string =>
  STYLES[language][style as StyleName] ?? style;

const ENDS: Readonly<Record<ChartLanguage, Readonly<Record<EndFacts['kind'], string>>>> = {
  en: { return: 'a corner', building: 'a building', gate: 'a gate', free: 'a free end', unknown: 'not recorded' },
  es: {
    return: 'una esquina',
    building: 'un edificio',
    gate: 'un portón',
    free: 'un extremo libre',
    unknown: 'no consta',
  },
};

/** What stands at an end of a run. */
export const endName = (kind: EndFacts['kind'], language: ChartLanguage): string => ENDS[language][kind];

const CONSEQUENCES: Readonly<Record<ChartLanguage, Readonly<Record<FenceConsequence, string>>>> = {
  en: {
    ordinary: 'ordinary',
    'pool-barrier': 'pool barrier',
    'over-footpath': 'over a footpath',
    livestock: 'holds livestock',
    'other-high': 'high',
  },
  es: {
    ordinary: 'lo común',
    'pool-barrier': 'barrera de piscina',
    'over-footpath': 'sobre una acera',
    livestock: 'encierra ganado',
    'other-high': 'mucho depende de ella',
  },
};

/** What hangs on a fence. */
export const consequenceName = (consequence: FenceConsequence, language: ChartLanguage): string =>
  CONSEQUENCES[language][consequence];

const SOILS_ES: Readonly<Record<SoilClass, string>> = {
  'loose-sand': 'arena suelta o relleno',
  'medium-sand': 'arena media',
  'dense-sand': 'arena densa o grava',
  'soft-clay': 'arcilla blanda',
  'firm-clay': 'arcilla firme o limo',
  'stiff-clay': 'arcilla dura',
};

/** A class of soil. */
export const soilName = (soil: SoilClass, language: ChartLanguage): string =>
  language === 'es' ? SOILS_ES[soil] : SOIL_CLASSES[soil].name;

const SPECIES_ES: Readonly<Record<Species, string>> = {
  'southern-pine': 'pino del sur',
  'douglas-fir': 'abeto Douglas',
  'hem-fir': 'tsuga y abeto (hem-fir)',
  'spruce-pine-fir': 'pícea, pino y abeto (SPF)',
  'western-redcedar': 'cedro rojo del oeste',
  redwood: 'secuoya',
  'northern-white-cedar': 'cedro blanco del norte',
  'eastern-redcedar': 'cedro rojo del este',
  baldcypress: 'ciprés calvo',
  'ponderosa-pine': 'pino ponderosa',
  'black-locust': 'acacia negra (robinia)',
  unknown: 'especie desconocida',
};

/** A species of wood. */
export const speciesName = (species: Species, language: ChartLanguage): string =>
  language === 'es' ? SPECIES_ES[species] : SPECIES[species].name;

const TREATMENTS_ES: Readonly<Record<TreatmentClass, string>> = {
  'untreated-softwood': 'albura de conífera sin tratar',
  'untreated-hardwood': 'albura de latifoliada sin tratar',
  'untreated-douglas-fir': 'abeto Douglas sin tratar, albura y duramen',
  'heartwood-class-1': 'duramen, clase 1 en tierra',
  'heartwood-class-2': 'duramen, clase 2 en tierra',
  'heartwood-class-3': 'duramen, clase 3 en tierra',
  'heartwood-class-4': 'duramen, clase 4 en tierra',
  'redcedar-redwood-heartwood': 'duramen de cedro rojo del oeste o secuoya',
  'black-locust': 'acacia negra (robinia)',
  'juniper-osage-orange': 'enebro del oeste o naranjo de Osage',
  'above-ground-stock': 'madera tratada para uso sobre el suelo, usada en tierra',
  'refractory-unincised': 'madera refractaria tratada, sin incisiones o de cara de duramen',
  'refractory-incised': 'madera refractaria con incisiones, contacto con el suelo',
  'ground-contact': 'pino del sur aserrado, contacto con el suelo (UC4A)',
  'heavy-duty': 'pino del sur aserrado, servicio pesado (UC4B)',
  'extreme-duty': 'pino del sur aserrado, servicio extremo (UC4C)',
  'round-pine-cca': 'pino en rollo, CCA',
  'round-pine-penta': 'pino en rollo, pentaclorofenol',
  'round-pine-acza': 'pino en rollo, ACA o ACZA',
  'round-pine-creosote': 'pino en rollo, creosota',
  'round-pine-copper-naphthenate': 'pino en rollo, naftenato de cobre',
  'unknown-treated': 'tratada, clase desconocida',
  'does-not-rot': 'no se pudre (acero, concreto, compuesto)',
};

/** A treatment class. */
export const treatmentName = (treatment: TreatmentClass, language: ChartLanguage): string =>
  language === 'es' ? TREATMENTS_ES[treatment] : TREATMENT_CLASSES[treatment].name;

/** A grade: `No. 2`, `grado 2`; that it is not known. */
export function gradeName(grade: Grade, language: ChartLanguage): string {
  if (grade === 'unknown') return language === 'es' ? 'grado desconocido' : 'grade not known';
  return grade.replace('no-', language === 'es' ? 'grado ' : 'No. ');
}

const FOOTINGS_ES: Readonly<Record<FootingKind, string>> = { concrete: 'concreto', soil: 'tierra', gravel: 'grava' };

/** What a post stands in. */
export const footingName = (footing: FootingKind, language: ChartLanguage): string =>
  language === 'es' ? FOOTINGS_ES[footing] : footing;

const METHODS_ES: Readonly<Record<InspectionMethod, string>> = {
  'awl-or-probe': 'punzón o sonda',
  caliper: 'calibrador sobre la parte sana',
  'drill-resistance': 'resistencia al taladro',
  'circumference-tape': 'cinta de circunferencia',
  level: 'nivel',
  eye: 'a la vista',
};

/** A method of inspection. */
export const methodName = (method: InspectionMethod, language: ChartLanguage): string =>
  language === 'es' ? METHODS_ES[method] : methodText(method);

const RESULTS_ES: Readonly<Record<StormResult, readonly [one: string, several: string]>> = {
  stood: ['aguantó', 'aguantaron'],
  leaned: ['se inclinó', 'se inclinaron'],
  snapped: ['se rompió', 'se rompieron'],
};

/** What a storm did, in Spanish, of one post or of several. */
export const resultNameEs = (result: StormResult, posts: 'one' | 'several'): string =>
  RESULTS_ES[result][posts === 'one' ? 0 : 1];

const STANDINGS_ES: Readonly<Record<FenceStanding, string>> = {
  clear: 'con margen',
  closing: 'cerca del límite',
  short: 'insuficiente',
  'short from new': 'insuficiente desde nueva',
};

/** Where a fence stands against its design gust, in a word or two. */
export const standingName = (standing: FenceStanding, language: ChartLanguage): string =>
  language === 'es' ? STANDINGS_ES[standing] : standing;
