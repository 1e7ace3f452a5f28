import type { TreatmentClass } from '../../src/decay/treatment-class.ts';

/** Limit states that a forecast or a verdict rests on. */
export const LIMIT_STATES = [
  'post bending (expected)',
  'what rot leaves of a section',
  'post shear (expected)',
  'footing in sand (expected)',
  'footing in clay (expected)',
  'concrete collar (expected)',
  'rail connection',
  'post by the code',
  'footing by the code',
] as const;
export type LimitState = (typeof LIMIT_STATES)[number];

/** Checks against outside numbers that touch each treatment class, by id; none where there is none. */
export const CLASS_CHECKS: Readonly<Record<TreatmentClass, readonly string[]>> = {
  'untreated-softwood': [
    'field.canal-zone.observed',
    'field.gulf.observed',
    'field.ultuna-spruce.observed',
    'row.boras',
  ],
  'untreated-hardwood': ['order.redcedar-redwood-heartwood.untreated-hardwood'],
  'untreated-douglas-fir': ['order.untreated-douglas-fir.untreated-softwood'],
  'heartwood-class-1': [],
  'heartwood-class-2': [],
  'heartwood-class-3': [],
  'heartwood-class-4': [],
  'redcedar-redwood-heartwood': [
    'durable.redcedar-redwood-heartwood',
    'order.redcedar-redwood-heartwood.untreated-douglas-fir',
  ],
  'black-locust': ['durable.black-locust', 'order.black-locust.redcedar-redwood-heartwood'],
  'juniper-osage-orange': ['durable.juniper-osage-orange', 'row.juniper', 'row.juniper-standing'],
  'above-ground-stock': ['trade.ten-years'],
  'refractory-unincised': ['incised.unincised'],
  'refractory-incised': ['incised.as-pine'],
  'ground-contact': ['row.cun-lumber', 'incised.as-pine'],
  'heavy-duty': [],
  'extreme-duty': [],
  'round-pine-cca': ['treated.none-failed.round-pine-cca', 'row.dakota-cca'],
  'round-pine-penta': ['treated.none-failed.round-pine-penta', 'row.penta-low', 'row.freeman-penta'],
  'round-pine-acza': ['treated.life.round-pine-acza', 'row.aca-low'],
  'round-pine-creosote': ['treated.life.round-pine-creosote', 'row.creosote-low', 'row.freeman-creosote', 'cycle.3'],
  'round-pine-copper-naphthenate': ['treated.life.round-pine-copper-naphthenate', 'row.freeman-cun'],
  'unknown-treated': ['row.lodgepole-soaked', 'row.fir-soaked'],
  'does-not-rot': [],
};

/** Checks against outside numbers that touch each limit state, by id; none where there is none. */
export const STATE_CHECKS: Readonly<Record<LimitState, readonly string[]>> = {
  'post bending (expected)': ['tests.guardrail', 'tests.pith', 'tests.share.4x4', 'd2555.ratio.hem-fir'],
  'what rot leaves of a section': ['pole.reduced-circle', 'trade.old-snaps'],
  'post shear (expected)': [],
  'footing in sand (expected)': ['broms.worksheet', 'guide.N1.25', 'guide.N3.35', 'rule.alternatives'],
  'footing in clay (expected)': [],
  'concrete collar (expected)': ['trade.thin-ring.6', 'trade.thin-ring.7'],
  'rail connection': ['rail.nail', 'rail.nail.inch'],
  'post by the code': ['nds.timber.sp2', 'grade.shear', 'grade.bending', 'grade.timber'],
  'footing by the code': [
    'footing.christy.depth',
    'footing.eng-tips.a',
    'footing.table-1806.firm-clay',
    'footing.doubled',
  ],
};
