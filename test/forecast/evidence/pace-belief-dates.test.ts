import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { rateToDepth } from '../../../src/decay/implied-rate.ts';
import type { GroundlineReading } from '../../../src/forecast/evidence/inspection.ts';
import { dateLogEvidence, type PaceBelief, paceBelief, paceScore } from '../../../src/forecast/evidence/pace-belief.ts';
import type { GridBelief } from '../../../src/forecast/evidence/pace-grid.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { normalCdf, normalQuantile } from '../../../src/forecast/normal-distribution.ts';
import { DAYS_PER_YEAR, dayNumber } from '../../../src/units/calendar-day.ts';
import { PINE_4X4 } from '../example-fence.ts';
import { halfMillimetreFence, inspectionOn } from './read-fence.ts';

const DAY = '2026-03-01';
const RANGE = { earliest: '2001-03-01', latest: '2021-03-01' };
const CENTRE = Math.log(0.5);
const ONE_POST = Math.hypot(0.45, 0.54);
const beliefOf = (facts: FenceFacts): PaceBelief => paceBelief(facts, fenceStates(facts))!;
const read = (readings: readonly GroundlineReading[], parts: Partial<FenceFacts> = {}): FenceFacts => ({
  ...halfMillimetreFence(15),
  inspections: [inspectionOn(DAY, readings, 'drill-resistance')],
  ...parts,
});
/** Exposure at the middle of each sixteenth of the range [a]. */
const EXPOSURES = Array.from({ length: 16 }, (_, bin) => {
  const [from, to] = [dayNumber(RANGE.earliest), dayNumber(RANGE.latest)];
  return (dayNumber(DAY) - from - ((to - from) * (2 * bin + 1)) / 32) / DAYS_PER_YEAR;
});
/** How far the pace that just reaches a depth lies above the median, in standard deviations of one post. */
const scoreOf = (depthMm: number, years: number): number => (Math.log(rateToDepth(depthMm, years)) - CENTRE) / ONE_POST;

describe('the parts of an install date', () => {
  /** All belief at one value in each part. */
  const at = (value: number): GridBelief => ({
    values: Float64Array.of(value, value + 1),
    probabilities: Float64Array.of(1, 0),
    mean: value,
    sd: 0,
    logEvidence: -value,
  });
  const belief: PaceBelief = {
    pieces: [],
    piecePaces: new Map(),
    byDate: [at(10), at(20), at(30), at(40)],
    surprise: 1,
    disagrees: false,
  };

  it('are quarters where there are four, the last of them with its end', () => {
    for (const [level, value] of [
      [0, 10],
      [0.24, 10],
      [0.25, 20],
      [0.5, 30],
      [0.74, 30],
      [0.76, 40],
      [1, 40],
    ] as const) {
      expect(paceScore(belief, 0.5, level)).toBe(value);
      expect(dateLogEvidence(belief, level)).toBe(-value);
    }
  });

  it('each have their own quantiles', () => {
    // the cell of 20 reaches from 19.5 to 20.5
    expect(paceScore(belief, 0.1, 0.3)).toBeCloseTo(19.6, 12);
    expect(paceScore(belief, 0.9, 0.3)).toBeCloseTo(20.4, 12);
  });
});

describe('the belief about the pace', () => {
  it('is none where nothing was read', () => {
    const facts = halfMillimetreFence(15);
    expect(paceBelief(facts, fenceStates(facts))).toBeNull();
  });

  it('has one part where the date is known', () => {
    expect(beliefOf(read([{ kind: 'depth', depthMm: 4 }])).byDate).toHaveLength(1);
  });

  it('has sixteen where the date of any post read is a range', () => {
    expect(beliefOf(read([{ kind: 'depth', depthMm: 4 }], { installed: RANGE })).byDate).toHaveLength(16);
    const override = { number: 2, positionM: null, installed: RANGE, wood: PINE_4X4, sharedRun: null };
    const two: GroundlineReading[] = [
      { kind: 'depth', depthMm: 4 },
      { kind: 'depth', depthMm: 4 },
    ];
    expect(beliefOf(read(two, { posts: [override] })).byDate).toHaveLength(16);
    expect(beliefOf(read([two[0]!], { posts: [override] })).byDate).toHaveLength(1);
  });
});

describe('where the install date is a range', () => {
  const facts = read([{ kind: 'sound-to', depthMm: 4 }], { installed: RANGE });

  it('the surprise is the mean over the dates', () => {
    // one post sound to d: 2 Phi(-|z|) at the middle of what it leaves open is Phi of the bound's score
    const each = EXPOSURES.map((years) => normalCdf(scoreOf(4, years)));
    expect(each[15]! - each[0]!).toBeGreaterThan(0.3);
    expect(beliefOf(facts).surprise).toBeCloseTo(each.reduce((a, b) => a + b) / 16, 6);
  });

  it('each date is as probable as the reading is at it', () => {
    const belief = beliefOf(facts);
    for (const [bin, years] of EXPOSURES.entries()) {
      expect(Math.exp(dateLogEvidence(belief, (bin + 0.5) / 16))).toBeCloseTo(normalCdf(scoreOf(4, years)), 3);
    }
  });

  it('a read post has a pace and a least depth for each date', () => {
    const pace = beliefOf(facts).piecePaces.get('1')!;
    for (const bin of [0, 7, 15]) {
      const level = (bin + 0.5) / 16;
      const years = EXPOSURES[bin]!;
      const at = Math.log(rateToDepth(4, years));
      const floor = CENTRE + ONE_POST * normalQuantile(0.1 * normalCdf((at - CENTRE) / ONE_POST));
      expect(pace.floorMm(level) / decayDepth(years, Math.exp(floor))).toBeCloseTo(1, 1);
      const mean = CENTRE + 0.45 * 0.8;
      for (const [i, found] of pace.logRates(0.8, level, [0.1, 0.5, 0.9]).entries()) {
        const wanted = mean + 0.54 * normalQuantile([0.1, 0.5, 0.9][i]! * normalCdf((at - mean) / 0.54));
        expect(Math.abs(found - wanted)).toBeLessThan(0.01);
      }
    }
    expect(pace.floorMm(0.5 / 16)).not.toBe(pace.floorMm(1));
  });

  it('it is cut at the first sighting of the fence, and the parts with it', () => {
    // seen standing two years after the earliest date: of twenty years two are left
    const seen = inspectionOn('2003-03-01', [null]);
    const cut = beliefOf({ ...facts, inspections: [...facts.inspections, seen] });
    const [from, to] = [dayNumber(RANGE.earliest), dayNumber('2003-03-01')];
    const each = EXPOSURES.map((_, bin) => {
      const years = (dayNumber(DAY) - from - ((to - from) * (2 * bin + 1)) / 32) / DAYS_PER_YEAR;
      return normalCdf(scoreOf(4, years));
    });
    expect(cut.byDate).toHaveLength(16);
    expect(cut.surprise).toBeCloseTo(each.reduce((a, b) => a + b) / 16, 6);
  });
});

describe('readings against the prior', () => {
  /** Depth at 15 years of a post so many standard deviations faster than the median. */
  const depthAt = (z: number): number => decayDepth(15, 0.5 * Math.exp(ONE_POST * z));

  it('disagree under one in a hundred, and not just above', () => {
    // soft to d: surprise 2 Phi(-z)/2 = Phi(-z); one in a hundred at z = 2.3263
    const [near, over] = [2.3, 2.35].map((z) => beliefOf(read([{ kind: 'soft-to', depthMm: depthAt(z) }])));
    expect(near!.surprise).toBeCloseTo(normalCdf(-2.3), 5);
    expect(near!.disagrees).toBe(false);
    expect(near!.byDate[0]!.values[400]).toBeCloseTo(5, 9);
    expect(over!.surprise).toBeCloseTo(normalCdf(-2.35), 5);
    expect(over!.disagrees).toBe(true);
    expect(over!.byDate[0]!.values[400]).toBeCloseTo(10, 9);
  });

  it('move the pace as a normal prior of the spread that then holds says', () => {
    // y = ln r of the depth; error 1.5 mm of depth is 1.5/(d + 5.5) of ln r. The score has mean
    // (0.45 (y - c)/v) / (1/s^2 + 0.45^2/v), v = 0.54^2 + error^2, with s = 1, or 2 where they disagree
    for (const [z, spread] of [
      [1, 1],
      [2.75, 2],
    ] as const) {
      const depthMm = depthAt(z);
      const belief = beliefOf(read([{ kind: 'depth', depthMm }]));
      const variance = 0.54 ** 2 + (1.5 / (depthMm + 5.5)) ** 2;
      const precision = 1 / spread ** 2 + 0.45 ** 2 / variance;
      expect(belief.disagrees).toBe(spread === 2);
      expect(belief.byDate[0]!.mean).toBeCloseTo((0.45 * ONE_POST * z) / variance / precision, 1);
      expect(belief.byDate[0]!.sd).toBeCloseTo(1 / Math.sqrt(precision), 2);
    }
  });

  it('of several posts add up: what two say together is what each says', () => {
    const soft: GroundlineReading = { kind: 'soft-to', depthMm: 5 };
    const mean = (count: number): number => beliefOf(read(new Array(count).fill(soft))).byDate[0]!.mean;
    // posterior of the score by summing exp(-s^2/2) Phi((c + 0.45 s - y)/0.54)^n over narrow cells
    const closed = (count: number): number => {
      const y = Math.log(rateToDepth(5, 15));
      let [sum, total] = [0, 0];
      for (let k = -5000; k <= 5000; k += 1) {
        const score = k / 1000;
        const weight = Math.exp((-score * score) / 2) * normalCdf((CENTRE + 0.45 * score - y) / 0.54) ** count;
        sum += weight * score;
        total += weight;
      }
      return sum / total;
    };
    for (const count of [1, 2, 6]) expect(mean(count)).toBeCloseTo(closed(count), 3);
  });
});

it('the least depth of a read post holds from the day of its last reading', () => {
  const facts = read(
    [
      { kind: 'depth', depthMm: 4 },
      { kind: 'depth', depthMm: 5 },
    ],
    {
      inspections: [
        inspectionOn('2026-03-01', [{ kind: 'depth', depthMm: 4 }]),
        inspectionOn('2024-03-01', [
          { kind: 'depth', depthMm: 4 },
          { kind: 'depth', depthMm: 5 },
        ]),
      ],
    },
  );
  const { piecePaces, pieces } = beliefOf(facts);
  expect([...piecePaces.keys()]).toEqual(['1', '2']);
  expect(pieces.map(({ piece }) => piece)).toEqual(['1', '2']);
  expect(piecePaces.get('1')!.floorFromDay).toBe(dayNumber('2026-03-01'));
  expect(piecePaces.get('2')!.floorFromDay).toBe(dayNumber('2024-03-01'));
});
