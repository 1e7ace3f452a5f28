import { medianDecayRate, POST_PACE_SPREAD } from '../../src/decay/decay-rate.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../../src/decay/treatment-class.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { lifeAtRate } from './field-lives.ts';
import { BAND_SCORES, FIELD_ROWS, type FieldRow, observedYears, predictedYears } from './field-rows.ts';
import { type CheckTag, EXACT, type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SECTIONS } from './section-share.ts';
import { SOURCES } from './sources.ts';

const TOPIC = 'Rot: field rows used for nothing';
const CALIBRATION = 'Rot: field rows that set a pace';
const CLASSES = 'Rot: classes against each other';

const name = ({ treatmentClass }: FieldRow): string => TREATMENT_CLASSES[treatmentClass].name;

/** A row as a check: a life within the 90 % band of its class, a bound or a range that the predicted median meets. */
function rowCheck(field: FieldRow, topic: string, id: string): PublishedCheck {
  const base = { topic, source: field.source, tag: field.tag as CheckTag, id, unit: '-' } as const;
  const { observed, remark } = field;
  const note = remark ? { note: remark } : {};
  if (observed.kind === 'life') {
    const { paceSpread } = TREATMENT_CLASSES[field.treatmentClass];
    return {
      ...base,
      ...note,
      quantity: `${field.name}, ${field.site}: ln(observed ${observed.years} a / predicted for ${name(field)})`,
      computed: () => Math.log(observedYears(field) / predictedYears(field, 0)),
      published: 0,
      tolerance: withinAbsolute(Number((BAND_SCORES.wide * paceSpread).toFixed(2))),
    };
  }
  const detail = (): string => `${predictedYears(field, 0).toFixed(1)} years predicted`;
  if (observed.kind === 'between') {
    return {
      ...base,
      ...note,
      quantity: `${field.name}, ${field.site}: predicted for ${name(field)}, against ${observed.from} to ${observed.to} years`,
      computed: () => {
        const years = predictedYears(field, 0);
        return years >= observed.from && years <= observed.to ? 'within the range' : 'outside the range';
      },
      published: 'within the range',
      tolerance: EXACT,
      detail,
    };
  }
  return {
    ...base,
    ...note,
    quantity: `${field.name}, ${field.site}: predicted for ${name(field)}, against more than ${observed.years} years`,
    computed: () => (predictedYears(field, 0) > observed.years ? 'lasts longer' : 'does not last so long'),
    published: 'lasts longer',
    tolerance: EXACT,
    detail,
  };
}

const freeRows = FIELD_ROWS.filter((row) => row.use === 'used for nothing').map((row) =>
  rowCheck(row, TOPIC, `row.${row.id}`),
);

/** Calibration rows that no other check holds yet. */
const paceRows = FIELD_ROWS.filter((row) => ['cun-lumber', 'osage', 'juniper'].includes(row.id)).map((row) =>
  rowCheck(row, CALIBRATION, `row.${row.id}`),
);

const GULF = { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 } as const;
const DAKOTA = {
  Scenic: { kind: 'measured', rainMmPerYear: 400, meanTemperatureC: 8.5, dryMonths: 0 },
  Brookings: { kind: 'measured', rainMmPerYear: 580, meanTemperatureC: 6.2, dryMonths: 0 },
} as const;
const CORVALLIS = { kind: 'measured', rainMmPerYear: 1050, meanTemperatureC: 11.3, dryMonths: 0 } as const;
const rate = (treatmentClass: TreatmentClass): number => medianDecayRate(treatmentClass, GULF);

const others: readonly PublishedCheck[] = [
  {
    id: 'row.dakota-ratio',
    topic: TOPIC,
    quantity:
      'untreated pine posts: life at Scenic (semi-arid) over life at Brookings (humid); yearly costs within 11 %',
    computed: () =>
      lifeAtRate(SECTIONS.round115, medianDecayRate('untreated-softwood', DAKOTA.Scenic)) /
      lifeAtRate(SECTIONS.round115, medianDecayRate('untreated-softwood', DAKOTA.Brookings)),
    published: 1,
    unit: '-',
    tolerance: withinAbsolute(0.11),
    source: SOURCES.rm300,
    tag: 'read',
    note: 'Untreated posts cost 1.06 to 1.18 dollars a year at both: they lived about equally long. Climates from memory.',
  },
  {
    id: 'row.juniper-standing',
    topic: CALIBRATION,
    quantity: 'western juniper, Corvallis: share of posts that stand at 55 years (16 of 25 observed)',
    computed: () =>
      1 -
      normalCdf(
        Math.log(55 / lifeAtRate(SECTIONS.round115, medianDecayRate('juniper-osage-orange', CORVALLIS))) /
          POST_PACE_SPREAD,
      ),
    published: 16 / 25,
    unit: '-',
    tolerance: withinAbsolute(0.2),
    source: SOURCES.juniperBlog,
    tag: 'read at second hand',
    note: 'This row set the class as a bound. Two binomial deviations of 25 posts are 0.19.',
  },
];

const ORDER = [
  ['black-locust', 'redcedar-redwood-heartwood', 'exceptionally resistant', 'resistant'],
  ['juniper-osage-orange', 'redcedar-redwood-heartwood', 'exceptionally resistant', 'resistant'],
  ['redcedar-redwood-heartwood', 'untreated-douglas-fir', 'resistant', 'moderately resistant'],
  ['untreated-douglas-fir', 'untreated-softwood', 'moderately resistant', 'low, as all sapwood'],
  ['redcedar-redwood-heartwood', 'untreated-hardwood', 'resistant', 'low, as all sapwood'],
] as const;

const orderChecks = ORDER.map(
  ([better, worse, of, than]): PublishedCheck => ({
    id: `order.${better}.${worse}`,
    topic: CLASSES,
    quantity: `${TREATMENT_CLASSES[better].name} (${of}) against ${TREATMENT_CLASSES[worse].name} (${than})`,
    computed: () => (rate(better) < rate(worse) ? 'rots slower' : 'does not rot slower'),
    published: 'rots slower',
    unit: '-',
    tolerance: EXACT,
    source: SOURCES.mo312,
    tag: 'read',
    detail: () => `${(rate(better) / rate(worse)).toFixed(2)} of the pace`,
  }),
);

const incised: readonly PublishedCheck[] = [
  {
    id: 'incised.as-pine',
    topic: CLASSES,
    quantity: 'pace of incised refractory wood over sawn southern pine, treated (stakes: about the same)',
    computed: () => rate('refractory-incised') / rate('ground-contact'),
    published: 1,
    unit: '-',
    tolerance: within(0.3),
    source: SOURCES.lebow2018,
    tag: 'read',
    note: 'Stakes of 19 mm; "about the same" is held to 30 %.',
  },
  {
    id: 'incised.unincised',
    topic: CLASSES,
    quantity: 'refractory wood that took little preservative (eastern spruce) against southern pine',
    computed: () => (rate('refractory-unincised') > rate('ground-contact') ? 'rots faster' : 'does not rot faster'),
    published: 'rots faster',
    unit: '-',
    tolerance: EXACT,
    source: SOURCES.lebow2018,
    tag: 'read',
    detail: () => `${(rate('refractory-unincised') / rate('ground-contact')).toFixed(1)} times`,
  },
];

export const POST_TRIAL_CHECKS: readonly PublishedCheck[] = [
  ...freeRows,
  ...paceRows,
  ...others,
  ...orderChecks,
  ...incised,
];
