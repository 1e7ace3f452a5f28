import { TREATMENT_CLASSES, type TreatmentClass } from '../../src/decay/treatment-class.ts';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import { between, byShare, type NumberRow, ofClass } from './number-row.ts';

const CLIMATE = 'decay/climate-factor.ts';
const DEPTH = 'decay/decay-depth.ts';
const CLASSES = 'decay/treatment-class.ts';
const MANUAL = 'Manual No. 3, decay in ground contact';

const climate = { file: CLIMATE, tag: 'memory', source: MANUAL } as const;
const inClimate = (said: string, of: SiteFacts['climate']): NonNullable<NumberRow['asIf']> => ({
  said,
  facts: (facts) => ({ ...facts, site: { ...facts.site, climate: of } }),
});

const climateRows: readonly NumberRow[] = [
  byShare(0.2, {
    ...climate,
    id: 'rain.scale',
    what: 'rain part of the climate factor: its scale',
    text: 'return «10» * (1 - Math.exp(',
    names: ['CLIMATE_FACTOR_PROVENANCE', 'rainFunction', 'unflooredClimateFactor'],
  }),
  byShare(0.2, {
    ...climate,
    id: 'rain.rate',
    what: 'rain part: how fast it levels off [1/mm]',
    text: '(1 - Math.exp(-«0.001» * (rainMmPerYear - 250))) *',
  }),
  byShare(0.2, {
    ...climate,
    id: 'rain.dry',
    what: 'rain part: rain under which nothing rots [mm/a]',
    text: '* (rainMmPerYear - «250»))) *',
  }),
  byShare(0.2, {
    ...climate,
    id: 'rain.power',
    what: 'exponent of the rain part',
    text: 'rainFunction(rainMmPerYear, dryMonths) ** «0.3» *',
  }),
  byShare(0.2, {
    ...climate,
    id: 'temperature.power',
    what: 'exponent of the temperature part',
    text: 'temperatureFunction(meanTemperatureC) ** «0.2»;',
  }),
  byShare(0.1, {
    ...climate,
    id: 'temperature.mild',
    what: 'temperature part below 20 degC: its slope',
    text: '? -1 + «0.2» * meanTemperatureC :',
    names: ['temperatureFunction'],
  }),
  byShare(0.1, {
    ...climate,
    id: 'temperature.warm',
    what: 'temperature part above 20 degC: its slope',
    text: ': -25 + «1.4» * meanTemperatureC;',
    asIf: inClimate('as if at 22 degC and 1,600 mm', {
      kind: 'measured',
      rainMmPerYear: 1600,
      meanTemperatureC: 22,
      dryMonths: 0,
    }),
  }),
  between(0.3, 0.8, {
    ...climate,
    tag: 'judgement',
    id: 'climate.floor',
    what: 'lowest climate factor',
    text: 'const CLIMATE_FACTOR_FLOOR = «0.5»;',
    source: 'zone A of the manual as a floor',
    names: ['climateFactor'],
    asIf: inClimate('as if at 200 mm of rain', {
      kind: 'measured',
      rainMmPerYear: 200,
      meanTemperatureC: 20,
      dryMonths: 2,
    }),
  }),
  ...([1, 2, 3, 4, 5] as const).map((zone) => {
    const values = ['1.0', '1.3', '1.6', '2.0', '2.4'];
    const list = values.map((value, i) => `${i + 1}: ${i + 1 === zone ? `«${value}»` : value}`).join(', ');
    return byShare(0.2, {
      ...climate,
      tag: 'judgement',
      id: `zone.${zone}`,
      what: `climate factor of decay zone ${zone}`,
      text: `DECAY_ZONE_FACTORS = { ${list} }`,
      source: 'spans the range computed for United States sites',
      names: ['DECAY_ZONE_FACTORS'],
      asIf: inClimate(`as if only zone ${zone} were known`, { kind: 'decay-zone', zone }),
    });
  }),
];

const depth = { file: DEPTH, tag: 'memory', source: MANUAL } as const;
const lawRows: readonly NumberRow[] = [
  byShare(0.2, {
    ...depth,
    id: 'law.start',
    what: 'depth at which the slow start ends [mm]',
    text: 'const START_DEPTH_MM = «5»;',
    names: ['DECAY_DEPTH_PROVENANCE', 'START_DEPTH_MM', 'decayLaw', 'depthByLaw'],
  }),
  byShare(0.2, { ...depth, id: 'law.lag', what: 'lag at 1 mm/a [a]', text: 'const LAG_COEFFICIENT = «5.5»;' }),
  between(-1, -0.9, { ...depth, id: 'law.power', what: 'exponent of the lag', text: 'const LAG_EXPONENT = «-0.95»;' }),
];

/** The text of a class's number, as it stands in the source. */
const UNTREATED = [
  ['untreated-softwood', "untreated('untreated softwood sapwood', «SAPWOOD_SOFTWOOD»,", 'SAPWOOD_SOFTWOOD'],
  ['untreated-hardwood', "untreated('untreated hardwood sapwood', «2.72»,", '2.72'],
  ['untreated-douglas-fir', "untreated('untreated Douglas-fir, mixed sap and heart', «3.5»,", '3.5'],
  ['heartwood-class-1', "untreated('heartwood, in-ground class 1', «0.23»,", '0.23'],
  ['heartwood-class-2', "untreated('heartwood, in-ground class 2', «0.48»,", '0.48'],
  ['heartwood-class-3', "untreated('heartwood, in-ground class 3', «0.76»,", '0.76'],
  ['heartwood-class-4', "untreated('heartwood, in-ground class 4', «1.36»,", '1.36'],
  ['redcedar-redwood-heartwood', 'woodFactor: «1.04»,', '1.04'],
  ['black-locust', 'woodFactor: «0.8»,', '0.8'],
  ['juniper-osage-orange', 'woodFactor: «0.43»,', '0.43'],
] as const satisfies readonly (readonly [TreatmentClass, string, string])[];

const TREATED = [
  ['above-ground-stock', "treated('above-ground stock used in the ground', «0.115»,", 0.07, 0.16],
  ['refractory-unincised', "treated('heartwood-faced or unincised refractory, treated', «0.115»,", 0.07, 0.16],
  ['refractory-incised', "treated('incised refractory, ground contact', «0.07»,", 0.055, 0.115],
  ['ground-contact', "treated('sawn southern pine, ground contact (UC4A)', «0.055»,", 0.039, 0.07],
  ['heavy-duty', "treated('sawn southern pine, heavy duty (UC4B)', «0.035»,", 0.025, 0.055],
  ['extreme-duty', "treated('sawn southern pine, extreme duty (UC4C)', «0.025»,", 0.018, 0.035],
  ['round-pine-cca', "treated('round pine, CCA', «0.02»,", 0.01, 0.025],
  ['round-pine-penta', "treated('round pine, pentachlorophenol', «0.025»,", 0.0125, 0.03],
  ['round-pine-acza', "treated('round pine, ACA or ACZA', «0.035»,", 0.028, 0.042],
  ['round-pine-creosote', "treated('round pine, creosote', «0.044»,", 0.028, 0.063],
  ['round-pine-copper-naphthenate', "treated('round pine, copper naphthenate', «0.05»,", 0.039, 0.063],
  ['unknown-treated', "'treated, class not known',\n    «0.08»,", 0.055, 0.115],
] as const satisfies readonly (readonly [TreatmentClass, string, number, number])[];

const of = (treatmentClass: TreatmentClass) => {
  const { name, provenance } = TREATMENT_CLASSES[treatmentClass];
  const tag = provenance.tag as NumberRow['tag'];
  return {
    file: CLASSES,
    tag,
    source: provenance.source,
    names: [`TREATMENT_CLASSES.${treatmentClass}`],
    asIf: ofClass(treatmentClass, name),
  } as const;
};

const classRows: readonly NumberRow[] = [
  byShare(0.2, {
    file: CLASSES,
    tag: 'memory',
    source: MANUAL,
    id: 'wood.sapwood',
    what: 'k_wood of softwood sapwood, under every treatment of pine',
    text: 'const SAPWOOD_SOFTWOOD = «5.44»;',
    names: ['SAPWOOD_SOFTWOOD', 'untreated', 'woodFactorProvenance'],
  }),
  ...UNTREATED.map(([key, text, value]) =>
    value === 'SAPWOOD_SOFTWOOD'
      ? {
          ...between('0.8 * SAPWOOD_SOFTWOOD', '1.2 * SAPWOOD_SOFTWOOD', {
            ...of(key),
            id: `class.${key}`,
            what: `k_wood of ${TREATMENT_CLASSES[key].name}`,
            text,
          }),
          movedBy: '20 %',
        }
      : byShare(0.2, { ...of(key), id: `class.${key}`, what: `k_wood of ${TREATMENT_CLASSES[key].name}`, text }),
  ),
  ...TREATED.map(([key, text, low, high]) =>
    between(low, high, { ...of(key), id: `class.${key}`, what: `phi of ${TREATMENT_CLASSES[key].name}`, text }),
  ),
  between(0.35, 0.6, {
    ...of('untreated-softwood'),
    tag: 'derived',
    source: 'scatter of eight field data sets',
    id: 'tau.sapwood',
    what: 'spread of ln pace, untreated softwood',
    text: 'SAPWOOD_SOFTWOOD, «0.45», ',
    names: ['PACE_SPREAD_PROVENANCE'],
  }),
  between(0.45, 0.8, {
    file: CLASSES,
    tag: 'judgement',
    source: 'wider than the eight field data sets',
    id: 'tau.treated',
    what: 'spread of ln pace from fence to fence, treated wood',
    text: 'paceSpread = «0.6»,',
    names: ['PACE_SPREAD_PROVENANCE'],
  }),
  between(0.6, 1, {
    ...of('unknown-treated'),
    tag: 'judgement',
    source: 'widened',
    id: 'tau.unknown',
    what: 'spread of ln pace, treatment not known',
    text: "tag: 'judgement' },\n    «0.8»,",
    names: ['PACE_SPREAD_PROVENANCE'],
  }),
];

const TREATED_DAY = '2020-06-01';
const works = (facts: FenceFacts, kind: 'liner' | 'groundline-treatment', yearsEffective: number): FenceFacts => ({
  ...facts,
  works: [
    ...facts.works,
    kind === 'liner'
      ? { ref: 'W-as-if', day: TREATED_DAY, posts: 'all', kind }
      : { ref: 'W-as-if', day: TREATED_DAY, posts: 'all', kind, yearsEffective },
  ],
});

const worksRows: readonly NumberRow[] = [
  between(0.25, 1, {
    file: 'forecast/rot-clock.ts',
    tag: 'judgement',
    source: 'IRG 08-20384, IRG 96-40067 (read); the half is judgement',
    id: 'works.liner',
    what: 'pace behind a full-height liner',
    text: 'const LINER_PACE = «0.5»;',
    names: ['LINER_PACE'],
    asIf: { said: 'as if lined in 2020', facts: (facts) => works(facts, 'liner', 0) },
  }),
  between(2, 10, {
    file: 'forecast/works.ts',
    tag: 'judgement',
    source: 'IRG/WP 3222 (read: at least five); the use is judgement',
    id: 'works.treatment',
    what: 'years a groundline treatment holds',
    text: 'const GROUNDLINE_TREATMENT_YEARS = «5»;',
    asIf: {
      said: 'as if treated in 2020',
      facts: (facts, value) => works(facts, 'groundline-treatment', Number(value)),
    },
  }),
];

/** Numbers of rot. */
export const ROT_NUMBERS: readonly NumberRow[] = [...climateRows, ...lawRows, ...classRows, ...worksRows];
