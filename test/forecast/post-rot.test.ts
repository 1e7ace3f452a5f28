import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../src/decay/decay-rate.ts';
import type { BeliefPoints } from '../../src/forecast/belief-points.ts';
import { singlePoint } from '../../src/forecast/belief-points.ts';
import type { PiecePace } from '../../src/forecast/evidence/piece-pace.ts';
import type { InstallDate } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { NORMAL_QUADRATURE, normalCdf } from '../../src/forecast/normal-distribution.ts';
import { kindRot } from '../../src/forecast/post-rot.ts';
import type { PostState } from '../../src/forecast/post-state.ts';
import { DAYS_PER_YEAR, dayNumber } from '../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, WARM_SITE } from './example-fence.ts';

const { climate } = WARM_SITE;
const SET = dayNumber('2000-03-01');
/** A day so many years after 1 March 2000. */
const dayAfter = (years: number): number => SET + years * DAYS_PER_YEAR;
const post = (): PostState => fenceStates(EXAMPLE_FENCE)[0]!.state.posts[4]!;

/** The rot of one kind of post, set on 1 March 2000 unless told. */
function rotOf(
  points: BeliefPoints,
  change: Partial<PostState> = {},
  installed: InstallDate = { earliest: '2000-03-01', latest: '2000-03-01' },
) {
  const sample = { post: { ...post(), installed, ...change }, demands: [], isLinePost: true };
  return kindRot(
    {
      sample: sample as unknown as Parameters<typeof kindRot>[0]['sample'],
      earliestDay: dayNumber(installed.earliest),
      latestDay: dayNumber(installed.latest),
    },
    climate,
    points,
  );
}

/** Points of given pace scores and install date levels, all else at its median. */
function pointsOf(
  scores: readonly number[],
  dates: readonly number[] = [],
  more: Partial<BeliefPoints> = {},
): BeliefPoints {
  const one = singlePoint({}, normalCdf);
  const each = (values: readonly number[]): Float64Array => Float64Array.from(scores, (_, i) => values[i] ?? 0.5);
  return {
    ...one,
    count: scores.length,
    scores: { ...one.scores, pace: Float64Array.from(scores) },
    levels: { ...one.levels, 'install date': each(dates) },
    ...more,
  };
}

describe('the rate of a post', () => {
  const published = medianDecayRate('ground-contact', climate);

  it('is the published one times exp(0.6 score)', () => {
    const rot = rotOf(pointsOf([0, 1, -1.5]));
    expect(rot.medianRate(0)).toBeCloseTo(published, 12);
    expect(rot.medianRate(1)).toBeCloseTo(published * Math.exp(0.6), 12);
    expect(rot.medianRate(2)).toBeCloseTo(published * Math.exp(-0.9), 12);
  });

  it('is what was learned, with the spread that was learned', () => {
    const paces = [{ treatmentClass: 'ground-contact', logShift: 0.3, spread: 0.2 }] as const;
    const rot = rotOf(pointsOf([2], [], { learned: { version: 1, paces, footing: null } }));
    expect(rot.medianRate(0)).toBeCloseTo(published * Math.exp(0.7), 12);
  });

  it('scatters from post to post by 0.54 about the fence', () => {
    const rot = rotOf(pointsOf([0.5]));
    const rate = published * Math.exp(0.3);
    const at = rot.moment(0, dayAfter(12));
    for (const [node, score] of NORMAL_QUADRATURE.nodes.entries()) {
      expect(rot.depthMm(0, at, node)).toBeCloseTo(Math.min(44.45, decayDepth(12, rate * Math.exp(0.54 * score))), 9);
    }
    expect(rot.depthMm(0, at, null)).toBeCloseTo(decayDepth(12, rate), 9);
  });
});

describe('the depth of rot', () => {
  it('follows the law at each point, and ends where nothing is left to rot', () => {
    const rot = rotOf(pointsOf([0, 1.2, 6]));
    const at = (point: number, years: number): number => rot.depthMm(point, rot.moment(point, dayAfter(years)), null);
    for (const years of [0.5, 3, 10, 25]) {
      expect(at(0, years)).toBeCloseTo(decayDepth(years, rot.medianRate(0)), 9);
      expect(at(1, years)).toBeCloseTo(Math.min(44.45, decayDepth(years, rot.medianRate(1))), 9);
    }
    // half of 3.5 in
    expect(at(2, 60)).toBeCloseTo(44.45, 9);
    expect(rot.depthMm(0, rot.moment(0, dayAfter(0)), null)).toBe(0);
  });

  it('is none for what does not rot', () => {
    const rot = rotOf(pointsOf([0]), { wood: { ...post().wood, treatmentClass: 'does-not-rot' } });
    expect(rot.depthMm(0, rot.moment(0, dayAfter(60)), null)).toBe(0);
    expect(rot.medianRate(0)).toBe(0);
  });
});

describe('the exposure at a moment', () => {
  it('counts from the day of installation, less what treatments stopped', () => {
    const clock = { stops: [{ fromDay: dayAfter(4), toDay: dayAfter(9) }], linerFromDay: null };
    const { day, exposureYears } = rotOf(pointsOf([0]), { clock }).moment(0, dayAfter(20));
    expect(day).toBe(dayAfter(20));
    expect(exposureYears).toBeCloseTo(15, 9);
  });

  it('is worked out once a day for all points where the date is known', () => {
    const rot = rotOf(pointsOf([0, 1]));
    const [first, same] = [rot.moment(0, dayAfter(5)), rot.moment(1, dayAfter(5))];
    expect(same).toBe(first);
    const [next, back] = [rot.moment(0, dayAfter(6)), rot.moment(0, dayAfter(5))];
    expect([first, next, back].map(({ exposureYears }) => exposureYears)).toEqual([
      expect.closeTo(5, 9),
      expect.closeTo(6, 9),
      expect.closeTo(5, 9),
    ]);
  });

  it('is each point its own where only a range is known', () => {
    const range = { earliest: '2000-03-01', latest: '2008-03-01' };
    const length = (dayNumber('2008-03-01') - SET) / DAYS_PER_YEAR;
    const rot = rotOf(pointsOf([0, 0, 0], [0, 0.25, 1]), {}, range);
    for (const [point, level] of [0, 0.25, 1].entries()) {
      const { day, exposureYears } = rot.moment(point, dayAfter(20));
      expect(day).toBe(dayAfter(20));
      expect(exposureYears).toBeCloseTo(20 - level * length, 9);
    }
  });
});

describe('a post that was read', () => {
  interface Asked {
    readonly score: number;
    readonly dateLevel: number;
    readonly levels: readonly number[];
  }
  /** A pace that tells what it was asked: ln r by the level, faster at a later date. */
  const paceOf = (asked: Asked[]): PiecePace => ({
    logRates: (score, dateLevel, levels) => {
      asked.push({ score, dateLevel, levels });
      return levels.map((level) => Math.log(0.4) + 0.2 * score + 0.3 * dateLevel + (level - 0.5));
    },
    floorFromDay: dayAfter(10),
    floorMm: (dateLevel) => 20 + dateLevel,
  });
  const readPoints = (asked: Asked[], piece = post().piece): BeliefPoints =>
    pointsOf([1, -1], [0.2, 0.7], { piecePaces: new Map([[piece, paceOf(asked)]]) });

  it('rots at its own pace, at the levels of the scatter', () => {
    const asked: Asked[] = [];
    const rot = rotOf(readPoints(asked));
    expect(asked.map(({ score, dateLevel }) => [score, dateLevel])).toEqual([
      [1, 0.2],
      [-1, 0.7],
    ]);
    const { levels } = asked[0]!;
    expect(levels).toHaveLength(9);
    expect(levels[4]).toBe(0.5);
    for (const [node, score] of NORMAL_QUADRATURE.nodes.entries()) {
      expect(levels[node]).toBe(normalCdf(score));
      const rate = 0.4 * Math.exp(0.2 * 1 + 0.3 * 0.2 + normalCdf(score) - 0.5);
      expect(rot.depthMm(0, rot.moment(0, dayAfter(8)), node)).toBeCloseTo(decayDepth(8, rate), 9);
    }
    expect(rot.medianRate(1)).toBeCloseTo(0.4 * Math.exp(-0.2 + 0.21), 12);
  });

  it('is not less deep than it was found, from the day it was read on', () => {
    const rot = rotOf(readPoints([]));
    const on = (point: number, day: number): number => rot.depthMm(point, rot.moment(point, day), null);
    expect(on(0, dayAfter(10) - 1)).toBeCloseTo(decayDepth(10 - 1 / DAYS_PER_YEAR, rot.medianRate(0)), 9);
    expect(on(0, dayAfter(10) - 1)).toBeLessThan(5);
    expect(on(0, dayAfter(10))).toBeCloseTo(20.2, 12);
    expect(on(1, dayAfter(10))).toBeCloseTo(20.7, 12);
    expect(on(0, dayAfter(12))).toBeCloseTo(20.2, 12);
    // the law is deeper by then: r of 0.4 exp(0.26) over 60 years, less about 5.5 mm
    expect(on(0, dayAfter(60))).toBeCloseTo(decayDepth(60, 0.4 * Math.exp(0.26)), 9);
    expect(on(0, dayAfter(60))).toBeGreaterThan(25);
  });

  it('is asked once a point, however many states of the fence need it', () => {
    const asked: Asked[] = [];
    const points = readPoints(asked);
    const [first, again] = [rotOf(points), rotOf(points, { sleeveNm: 4000 })];
    expect(asked).toHaveLength(2);
    expect(again.medianRate(1)).toBe(first.medianRate(1));
    // other points are another belief
    rotOf(readPoints(asked));
    expect(asked).toHaveLength(4);
  });

  it('keeps the paces of two pieces apart', () => {
    const [one, other]: [Asked[], Asked[]] = [[], []];
    const slow: PiecePace = { ...paceOf(other), logRates: (_, __, levels) => levels.map(() => Math.log(0.05)) };
    const points = pointsOf([0], [], {
      piecePaces: new Map([
        ['5', paceOf(one)],
        ['6', slow],
      ]),
    });
    expect(rotOf(points, { piece: '5' }).medianRate(0)).toBeCloseTo(0.4 * Math.exp(0.15), 12);
    expect(rotOf(points, { piece: '6' }).medianRate(0)).toBeCloseTo(0.05, 12);
  });

  it('says nothing of another piece', () => {
    const rot = rotOf(readPoints([], 'another'));
    expect(rot.medianRate(0)).toBeCloseTo(medianDecayRate('ground-contact', climate) * Math.exp(0.6), 12);
    expect(rot.depthMm(0, rot.moment(0, dayAfter(12)), null)).toBeLessThan(20);
  });
});

describe('what trimmers cut', () => {
  const cut = (cuts: PostState['cuts'], years: number): number =>
    rotOf(pointsOf([0]), { cuts }).cutMm(0, dayAfter(years));

  it('is nothing where nobody trims and nothing was measured', () => {
    expect(cut({ measured: null, yearlyCutMm: 0, untilDay: null }, 10)).toBe(0);
  });

  it('counts from installation, by the year, and not before it', () => {
    const cuts = { measured: null, yearlyCutMm: 0.5, untilDay: null };
    expect(cut(cuts, 10)).toBeCloseTo(5, 9);
    expect(cut(cuts, 0)).toBe(0);
    expect(cut(cuts, -3)).toBe(0);
  });

  it('ends where guards were fitted', () => {
    const cuts = { measured: null, yearlyCutMm: 0.5, untilDay: dayAfter(6) };
    expect(cut(cuts, 4)).toBeCloseTo(2, 9);
    expect(cut(cuts, 10)).toBeCloseTo(3, 9);
  });

  it('counts from what was measured, where it was', () => {
    const measured = { depthMm: 4, day: dayAfter(8) };
    expect(cut({ measured, yearlyCutMm: 0, untilDay: null }, 20)).toBe(4);
    expect(cut({ measured, yearlyCutMm: 0.5, untilDay: null }, 10)).toBeCloseTo(5, 9);
    expect(cut({ measured, yearlyCutMm: 0.5, untilDay: dayAfter(6) }, 10)).toBe(4);
  });

  it('counts from the day of installation of each point where only a range is known', () => {
    const range = { earliest: '2000-03-01', latest: '2008-03-01' };
    const length = (dayNumber('2008-03-01') - SET) / DAYS_PER_YEAR;
    const cuts = { measured: null, yearlyCutMm: 0.5, untilDay: null };
    const rot = rotOf(pointsOf([0, 0], [0.25, 1]), { cuts }, range);
    expect(rot.cutMm(0, dayAfter(10))).toBeCloseTo(0.5 * (10 - 0.25 * length), 9);
    expect(rot.cutMm(1, dayAfter(10))).toBeCloseTo(0.5 * (10 - length), 9);
  });
});
