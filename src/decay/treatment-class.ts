import type { Provenance } from '../units/provenance.ts';

/**
 * Rot parameters of one treatment class.
 * `woodFactor` k_wood and `treatmentFactor` phi give the median rate r = phi k_wood k_climate [mm/a per face];
 * `paceSpread` tau is the standard deviation of ln r from fence to fence [-].
 */
export interface TreatmentParameters {
  readonly name: string;
  readonly woodFactor: number;
  readonly treatmentFactor: number;
  readonly paceSpread: number;
  readonly rots: boolean;
  readonly provenance: Provenance;
}

/** k_wood of softwood sapwood, under every treatment of pine [-]. Source: Manual No. 3 (memory). */
const SAPWOOD_SOFTWOOD = 5.44;
const LAG_RATE_MODEL = 'Leicester et al. 2003, IRG/WP 03-20260 (lag-plus-rate model); k_wood constants';
const LEBOW_2015 = 'Lebow, Lebow, Woodward, Kirker, Arango 2015, Forest Prod. J. 65(7-8):307';

const untreated = (name: string, woodFactor: number, paceSpread: number, note: string): TreatmentParameters => ({
  name,
  woodFactor,
  treatmentFactor: 1,
  paceSpread,
  rots: true,
  provenance: { source: `${LAG_RATE_MODEL}; ${note}`, tag: 'memory' },
});

const treated = (
  name: string,
  treatmentFactor: number,
  provenance: Provenance,
  paceSpread = 0.6,
): TreatmentParameters => ({
  name,
  woodFactor: SAPWOOD_SOFTWOOD,
  treatmentFactor,
  paceSpread,
  rots: true,
  provenance,
});

/** Every treatment class the register knows, with its numbers and how sure we are of them. */
export const TREATMENT_CLASSES = {
  'untreated-softwood': untreated('untreated softwood sapwood', SAPWOOD_SOFTWOOD, 0.45, 'eight field data sets agree'),
  'untreated-hardwood': untreated('untreated hardwood sapwood', 2.72, 0.45, 'eight field data sets agree'),
  'untreated-douglas-fir': untreated('untreated Douglas-fir, mixed sap and heart', 3.5, 0.6, 'a remembered 7 years'),
  'heartwood-class-1': untreated('heartwood, in-ground class 1', 0.23, 0.6, 'durability class 1'),
  'heartwood-class-2': untreated('heartwood, in-ground class 2', 0.48, 0.6, 'durability class 2'),
  'heartwood-class-3': untreated('heartwood, in-ground class 3', 0.76, 0.6, 'durability class 3'),
  'heartwood-class-4': untreated('heartwood, in-ground class 4', 1.36, 0.6, 'durability class 4'),
  'redcedar-redwood-heartwood': {
    name: 'western redcedar or redwood heartwood',
    woodFactor: 1.04,
    treatmentFactor: 1,
    paceSpread: 0.6,
    rots: true,
    provenance: { source: 'Corvallis post tests, split western redcedar about 23 years', tag: 'read at second hand' },
  },
  'black-locust': {
    name: 'black locust',
    woodFactor: 0.8,
    treatmentFactor: 1,
    paceSpread: 0.6,
    rots: true,
    provenance: {
      source: 'worked out from Miller 1986, Corvallis post tests (read): average life over 30 years, a bound',
      tag: 'derived',
    },
  },
  'juniper-osage-orange': {
    name: 'western juniper or Osage-orange',
    woodFactor: 0.43,
    treatmentFactor: 1,
    paceSpread: 0.6,
    rots: true,
    provenance: {
      source: 'worked out from Miller 1986, Corvallis post tests (read): 0 Osage-orange failed in 52 years, a bound',
      tag: 'derived',
    },
  },
  'above-ground-stock': treated('above-ground stock used in the ground', 0.115, {
    source: 'Bergman 2000, IRG/WP 00-30247, Ultuna treated sawn posts at 13 years, 2.5 mm assumed for rating 2',
    tag: 'judgement',
  }),
  'refractory-unincised': treated('heartwood-faced or unincised refractory, treated', 0.115, {
    source: 'Bergman 2000, IRG/WP 00-30247, Ultuna treated sawn posts at 13 years, 2.5 mm assumed for rating 2',
    tag: 'judgement',
  }),
  'refractory-incised': treated('incised refractory, ground contact', 0.07, {
    source: 'between the sawn pine and the unincised class; Lebow et al. 2018, Maderas 20(3):359 for incising',
    tag: 'judgement',
  }),
  'ground-contact': treated('sawn southern pine, ground contact (UC4A)', 0.055, {
    source: 'by analogy with copper naphthenate lumber, 27-30 years: Lebow et al. 2013, Adv. Civ. Eng. Mater. 2(1):178',
    tag: 'judgement',
  }),
  'heavy-duty': treated('sawn southern pine, heavy duty (UC4B)', 0.035, {
    source: 'ground-contact class scaled by retention',
    tag: 'judgement',
  }),
  'extreme-duty': treated('sawn southern pine, extreme duty (UC4C)', 0.025, {
    source: 'ground-contact class scaled by retention',
    tag: 'judgement',
  }),
  'round-pine-cca': treated('round pine, CCA', 0.02, {
    source: `worked out from ${LEBOW_2015} (read): 0 of 125 failed in 50 years, a bound`,
    tag: 'derived',
  }),
  'round-pine-penta': treated('round pine, pentachlorophenol', 0.025, {
    source: `worked out from ${LEBOW_2015} (read): 0 of 75 failed in 50 years, a bound`,
    tag: 'derived',
  }),
  'round-pine-acza': treated('round pine, ACA or ACZA', 0.035, {
    source: `worked out from ${LEBOW_2015} (read): time to 50 % failure 96 years`,
    tag: 'derived',
  }),
  'round-pine-creosote': treated('round pine, creosote', 0.044, {
    source: `worked out from ${LEBOW_2015} (read): time to 50 % failure 78 years`,
    tag: 'derived',
  }),
  'round-pine-copper-naphthenate': treated('round pine, copper naphthenate', 0.05, {
    source:
      'worked out from Lebow, Woodward, Kirker, Lebow 2013, Adv. Civ. Eng. Mater. 2(1):178 (read): estimated 65 years',
    tag: 'derived',
  }),
  'unknown-treated': treated(
    'treated, class not known',
    0.08,
    { source: 'between ground-contact and above-ground stock, spread widened', tag: 'judgement' },
    0.8,
  ),
  'does-not-rot': {
    name: 'does not rot (steel, concrete, composite)',
    woodFactor: 0,
    treatmentFactor: 0,
    paceSpread: 0,
    rots: false,
    provenance: { source: 'no decay by fungi; corrosion is not modelled', tag: 'judgement' },
  },
} as const satisfies Record<string, TreatmentParameters>;

export type TreatmentClass = keyof typeof TREATMENT_CLASSES;

/** Where k_wood [-] of a class comes from: its own evidence where the class is untreated, else softwood sapwood of the depth law. Source: see `TREATMENT_CLASSES`. */
export const woodFactorProvenance = (treatmentClass: TreatmentClass): Provenance =>
  TREATMENT_CLASSES[treatmentClass].treatmentFactor === 1
    ? TREATMENT_CLASSES[treatmentClass].provenance
    : { source: LAG_RATE_MODEL, tag: 'memory' };

/** Where phi [-] of a class comes from: 1 by definition where the class is untreated, else the class's own evidence. Source: see `TREATMENT_CLASSES`. */
export const treatmentFactorProvenance = (treatmentClass: TreatmentClass): Provenance =>
  TREATMENT_CLASSES[treatmentClass].treatmentFactor === 1
    ? { source: 'untreated wood, by definition', tag: 'derived' }
    : TREATMENT_CLASSES[treatmentClass].provenance;

/** Where tau comes from: 0.45 is the scatter of eight field lives; the wider ones are a choice. */
export const PACE_SPREAD_PROVENANCE: Provenance = {
  source:
    'scatter of observed over predicted lives of eight field data sets (0.45), wider where a class has only a bound or an analogy',
  tag: 'judgement',
};

/** All treatment class keys, in the order of the table. */
export const TREATMENT_CLASS_KEYS = Object.keys(TREATMENT_CLASSES) as readonly TreatmentClass[];
