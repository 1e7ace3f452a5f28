import { ageReplacement } from '../../src/season/money/age-replacement.ts';
import {
  annuityFactor,
  levelPayment,
  levelSaving,
  presentValue,
  priceFactor,
  realRate,
} from '../../src/season/money/discounting.ts';
import type { SurvivalCurve } from '../../src/season/money/survival-curve.ts';
import { EXACT, type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const NUMPY = 'numpy-financial, documentation of npv, pmt and fv';
const NUMPY_OLD = 'NumPy 1.16 reference, npv (its numbers from Gitman 2003)';
const FORMCALC = 'FormCalc reference, financial functions NPV and FV';
const LIBREOFFICE = 'LibreOffice help, Basic functions Pmt and PV';
const SAS = 'SAS 9 functions reference, PMT';
const RELIABILITY = 'reliability (Python library), documentation of the optimal replacement time';
const JARDINE = 'solutions to Jardine & Tsang, chapter 2 problem 2, as posted on the web';

const present = { topic: 'Present value and level amounts', unit: 'currency', tag: 'read' } as const;
/** Months: the period of the rate is the period of the payments, whatever it is called. */
const monthly = (yearlyRate: number, months: number) =>
  ({ years: months, yearlyRate: yearlyRate / 12, timing: 'end-of-year' }) as const;

const presentValues = (
  [
    ['npv.numpy', NUMPY, [-40_000, 5000, 8000, 12_000, 30_000], 0.08, 'beginning-of-year', 3065.22267, 5e-6],
    ['npv.gitman', NUMPY_OLD, [-100, 39, 59, 55, 20], 0.281, 'beginning-of-year', -0.0084785916384548798, 1e-12],
    ['npv.formcalc.one', FORMCALC, [5000], 0.065, 'end-of-year', 4694.83568075117, 1e-9],
    ['npv.formcalc.four', FORMCALC, [500, 1500, 4000, 10_000], 0.1, 'end-of-year', 11_529.60863329007, 1e-9],
    ['npv.formcalc.monthly', FORMCALC, [50, 60, 40, 100, 25], 0.0275 / 12, 'end-of-year', 273.14193838457, 1e-9],
  ] as const
).map(
  ([id, source, payments, rate, timing, published, tolerance]): PublishedCheck => ({
    ...present,
    id: `money.${id}`,
    quantity: `present value of ${payments.join(', ')} at ${Number((100 * rate).toPrecision(4))} % a period, ${timing}`,
    computed: () => presentValue(payments, rate, timing),
    published,
    tolerance: withinAbsolute(tolerance),
    source,
  }),
);

const levelAmounts: readonly PublishedCheck[] = [
  {
    ...present,
    id: 'money.pmt.numpy',
    quantity: 'level payment of 200,000 over 180 months at 7.5 % a year',
    computed: () => levelPayment(200_000, monthly(0.075, 180)),
    published: 1854.0247200054619,
    tolerance: withinAbsolute(1e-8),
    source: NUMPY,
  },
  {
    ...present,
    id: 'money.pmt.libreoffice',
    quantity: 'level payment of 100,000 over 72 months at 10 % a year',
    computed: () => levelPayment(100_000, monthly(0.1, 72)),
    published: 1852.58377757705,
    tolerance: withinAbsolute(1e-9),
    source: LIBREOFFICE,
  },
  {
    ...present,
    id: 'money.pv.libreoffice',
    quantity: 'present value of 1,000 a month over 72 months at 10 % a year',
    computed: () => 1000 * annuityFactor(72, 0.1 / 12, 'end-of-year'),
    published: 53_978.6654781073,
    tolerance: withinAbsolute(1e-8),
    source: LIBREOFFICE,
  },
  {
    ...present,
    id: 'money.pmt.sas.end',
    quantity: 'level payment of 10,000 over 10 months at 8 % a year, at their ends',
    computed: () => levelPayment(10_000, monthly(0.08, 10)),
    published: 1037.03,
    tolerance: withinAbsolute(0.005),
    source: SAS,
  },
  {
    ...present,
    id: 'money.pmt.sas.beginning',
    quantity: 'level payment of 10,000 over 10 months at 8 % a year, at their beginnings',
    computed: () => levelPayment(10_000, { ...monthly(0.08, 10), timing: 'beginning-of-year' }),
    published: 1030.16,
    tolerance: withinAbsolute(0.005),
    source: SAS,
  },
  {
    ...present,
    id: 'money.fv.numpy',
    quantity: 'after 120 months at 5 % a year: 100 now and 100 a month',
    computed: () => (100 + 100 * annuityFactor(120, 0.05 / 12, 'end-of-year')) * priceFactor(0.05 / 12, 120),
    published: 15_692.928894335748,
    tolerance: withinAbsolute(1e-7),
    source: NUMPY,
  },
  {
    ...present,
    id: 'money.saving.formcalc.monthly',
    quantity: 'to set aside a month for 904,195.17 after 30 years at 10 % a year',
    computed: () => levelSaving(904_195.16991842445, monthly(0.1, 360)),
    published: 400,
    tolerance: withinAbsolute(1e-8),
    source: FORMCALC,
  },
  {
    ...present,
    id: 'money.saving.formcalc.quarterly',
    quantity: 'to set aside a quarter for 58,791.96 after 10 years at 7.5 % a year',
    computed: () => levelSaving(58_791.96145535981, { years: 40, yearlyRate: 0.075 / 4, timing: 'end-of-year' }),
    published: 1000,
    tolerance: withinAbsolute(1e-8),
    source: FORMCALC,
  },
  {
    ...present,
    id: 'money.real-rate',
    quantity: 'real rate at 8.15 % interest and 3 % inflation: 1.0815 / 1.03 - 1',
    computed: () => 100 * realRate(0.0815, 0.03),
    published: 5,
    unit: '%',
    tolerance: withinAbsolute(1e-9),
    source: SOURCES.algebra,
    tag: 'derived',
  },
];

const AGE_TOPIC = 'Age replacement';

/** Lives of the Weibull law in steps of one hour: the curve knows only steps, whatever a year is called. */
const weibullHours = (): SurvivalCurve => ({
  standing: Array.from({ length: 4001 }, (_, hour) => Math.exp(-((hour / 1000) ** 2.5))),
  stepYears: 1,
});
const weibullCosts = { plannedCost: 1, failureCost: 5 };

/** Lives spread evenly over 40,000 km, in steps of 10,000 km. */
const evenLives: SurvivalCurve = { standing: [1, 0.75, 0.5, 0.25, 0], stepYears: 10_000 };
const evenCosts = { plannedCost: 100, failureCost: 200 };

const agesOfReplacement: readonly PublishedCheck[] = [
  {
    topic: AGE_TOPIC,
    id: 'age-replacement.weibull.age',
    quantity: 'best age, Weibull lives of shape 2.5 and scale 1,000 h, failure five times as dear',
    computed: () => ageReplacement(weibullHours(), weibullCosts).bestAgeYears ?? Number.NaN,
    published: 493.19,
    unit: 'h',
    tolerance: withinAbsolute(0.5),
    source: RELIABILITY,
    tag: 'read',
    note: 'The program looks at whole steps, here hours. The library itself took the case from a reliability engineering reference.',
  },
  {
    topic: AGE_TOPIC,
    id: 'age-replacement.weibull.cost',
    quantity: 'cost at the best age of the same',
    computed: () => ageReplacement(weibullHours(), weibullCosts).costPerYear,
    published: 0.0035,
    unit: '1/h',
    tolerance: withinAbsolute(0.00005),
    source: RELIABILITY,
    tag: 'read',
  },
  {
    topic: AGE_TOPIC,
    id: 'age-replacement.even.age',
    quantity: 'best of four ages, lives spread evenly over 40,000 km, failure twice as dear',
    computed: () => ageReplacement(evenLives, evenCosts).bestAgeYears ?? Number.NaN,
    published: 30_000,
    unit: 'km',
    tolerance: EXACT,
    source: JARDINE,
    tag: 'read at second hand',
  },
  ...([0.0143, 0.01, 0.0093, 0.01] as const).map(
    (published, index): PublishedCheck => ({
      topic: AGE_TOPIC,
      id: `age-replacement.even.cost.${index + 1}`,
      quantity: `cost of replacing at ${index + 1}0,000 km, the same`,
      computed: () => ageReplacement(evenLives, evenCosts).costPerYearBySeason[index]!,
      published,
      unit: '1/km',
      tolerance: withinAbsolute(0.00005),
      source: JARDINE,
      tag: 'read at second hand',
    }),
  ),
  {
    topic: AGE_TOPIC,
    id: 'age-replacement.even.closed-form',
    quantity: 'cost at 30,000 km in closed form: 100 (80,000 + 2 t) / (80,000 t - t^2)',
    computed: () => ageReplacement(evenLives, evenCosts).costPerYear,
    published: (100 * (80_000 + 2 * 30_000)) / (80_000 * 30_000 - 30_000 ** 2),
    unit: '1/km',
    tolerance: within(1e-12),
    source: JARDINE,
    tag: 'read at second hand',
  },
];

export const MONEY_CHECKS: readonly PublishedCheck[] = [...presentValues, ...levelAmounts, ...agesOfReplacement];
