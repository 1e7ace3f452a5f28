import type { DECAY_ZONE_FACTORS } from '../../src/decay/climate-factor.ts';
import { decayDepth, exposureToDepth, START_DEPTH_MM } from '../../src/decay/decay-depth.ts';
import { medianDecayRate, POST_PACE_SPREAD } from '../../src/decay/decay-rate.ts';
import { rateToDepth } from '../../src/decay/implied-rate.ts';
import { TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';
import { normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { exposureYears, type RotClock, RUNNING_CLOCK } from '../../src/forecast/rot-clock.ts';
import { GROUNDLINE_TREATMENT_YEARS } from '../../src/forecast/works.ts';
import { DAYS_PER_YEAR } from '../../src/units/calendar-day.ts';
import { EXACT, type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { depthAtShare, SECTIONS } from './section-share.ts';
import { SOURCES } from './sources.ts';

const CYCLES = 'Rot: inspection cycles of pole owners';
const WORKS = 'Rot: works that slow it';

/** Years until a tenth of all creosoted poles of a decay zone have rot of 5 mm, where the linear part of the law begins [a]. */
function firstRotYears(zone: keyof typeof DECAY_ZONE_FACTORS): number {
  const spread = Math.hypot(TREATMENT_CLASSES['round-pine-creosote'].paceSpread, POST_PACE_SPREAD);
  const fast = Math.exp(spread * normalQuantile(0.9));
  return exposureToDepth(START_DEPTH_MM, fast * medianDecayRate('round-pine-creosote', { kind: 'decay-zone', zone }));
}

/** Years until a tenth of all sawn ground-contact 4x4 posts of a zone are at two thirds of their strength [a]. */
export function firstTwoThirdsYears(zone: keyof typeof DECAY_ZONE_FACTORS): number {
  const spread = Math.hypot(TREATMENT_CLASSES['ground-contact'].paceSpread, POST_PACE_SPREAD);
  const fast = Math.exp(spread * normalQuantile(0.9));
  const rate = fast * medianDecayRate('ground-contact', { kind: 'decay-zone', zone });
  return exposureToDepth(depthAtShare(SECTIONS.sawn89, 2 / 3), rate);
}

const NOTE =
  'A test of plausibility: an owner begins to look about when the first poles have something to find. That this is a tenth of them with 5 mm is our choice; another reading, which agrees less well, is among the known disagreements.';

const cycles: readonly PublishedCheck[] = [
  ...(
    [
      [1, 12, 15],
      [2, 10, 12],
      [3, 10, 12],
      [4, 8, 10],
      [5, 8, 10],
    ] as const
  ).map(
    ([zone, from, to]): PublishedCheck => ({
      id: `cycle.${zone}`,
      topic: CYCLES,
      quantity: `decay zone ${zone}: years until a tenth of creosoted poles have 5 mm of rot, against the first inspection at ${from} to ${to} years`,
      computed: () => firstRotYears(zone),
      published: (from + to) / 2,
      unit: 'a',
      tolerance: within(0.4),
      source: SOURCES.rus,
      tag: 'read at second hand',
      note: NOTE,
    }),
  ),
  ...(
    [
      [3, 10, 'most utilities'],
      [1, 15, 'drier regions'],
    ] as const
  ).map(
    ([zone, years, who]): PublishedCheck => ({
      id: `cycle.m13.${zone}`,
      topic: CYCLES,
      quantity: `the same in zone ${zone}, against the cycle of ${who}`,
      computed: () => firstRotYears(zone),
      published: years,
      unit: 'a',
      tolerance: within(0.4),
      source: SOURCES.awpaM13,
      tag: 'read',
      note: NOTE,
    }),
  ),
];

const year = (years: number): number => years * DAYS_PER_YEAR;
const RATE = medianDecayRate('round-pine-cca', {
  kind: 'measured',
  rainMmPerYear: 1600,
  meanTemperatureC: 19.5,
  dryMonths: 0,
});

/** A pole set at year 0 and bandaged at year 15. */
const BANDAGED: RotClock = {
  ...RUNNING_CLOCK,
  stops: [{ fromDay: year(15), toDay: year(15 + GROUNDLINE_TREATMENT_YEARS) }],
};
const depthOf = (clock: RotClock, years: number): number => decayDepth(exposureYears(clock, 0, year(years)), RATE);

/** Depth that a pace gives in 19 months behind a liner [mm], where it gives `bareMm` without. */
function linedDepthMm(bareMm: number): number {
  const months = 19 / 12;
  const clock: RotClock = { stops: [], linerFromDay: 0 };
  return decayDepth(exposureYears(clock, 0, year(months)), rateToDepth(bareMm, months));
}

const works: readonly PublishedCheck[] = [
  {
    id: 'works.bandage.advance',
    topic: WORKS,
    quantity: 'rot that advances in the two years after a bandage',
    computed: () => depthOf(BANDAGED, 17) - depthOf(BANDAGED, 15),
    published: 0,
    unit: 'mm',
    tolerance: withinAbsolute(1e-9),
    source: SOURCES.irg3222,
    tag: 'read',
  },
  {
    id: 'works.bandage.years',
    topic: WORKS,
    quantity: 'years by which a bandage puts off what would come ("at least five")',
    computed: () => exposureYears(RUNNING_CLOCK, 0, year(40)) - exposureYears(BANDAGED, 0, year(40)),
    published: 5,
    unit: 'a',
    tolerance: within(1e-6),
    source: SOURCES.irg3222,
    tag: 'read',
    note: 'The source gives a floor; the program takes the floor.',
  },
  ...(
    [
      ['treated', 4.5],
      ['slightly rotted', 1],
    ] as const
  ).map(
    ([what, bareMm]): PublishedCheck => ({
      id: `works.liner.${what}`,
      topic: WORKS,
      quantity: `posts that lose ${bareMm} mm in 19 months without a liner (1 to 8 mm in all eight seen): with one (none of four rotted)`,
      computed: () => (linedDepthMm(bareMm) < 2 ? 'sound, or rot too slight to feel' : 'rotted'),
      published: 'sound, or rot too slight to feel',
      unit: '-',
      tolerance: EXACT,
      source: SOURCES.irgLiner,
      tag: 'read',
      detail: () => `${linedDepthMm(bareMm).toFixed(1)} mm by the program`,
      note: 'Accelerated test of 19 months. The program lets rot go on at half the pace; under 2 mm counts as too slight to feel.',
    }),
  ),
];

export const POLE_PRACTICE_CHECKS: readonly PublishedCheck[] = [...cycles, ...works];
