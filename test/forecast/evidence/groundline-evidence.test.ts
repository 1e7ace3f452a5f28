import { describe, expect, it } from 'vitest';
import { groundlineEvidence } from '../../../src/forecast/evidence/groundline-evidence.ts';
import type { GroundlineReading, InspectionFacts } from '../../../src/forecast/evidence/inspection.ts';
import type { StormOutcome } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import type { Works } from '../../../src/forecast/works.ts';
import { DAYS_PER_YEAR, dayNumber } from '../../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../example-fence.ts';
import { groundlineOf, inspectionOn } from './read-fence.ts';

const DAY = '2026-03-01';
const depth = (depthMm: number): GroundlineReading => ({ kind: 'depth', depthMm });
const BROKEN: GroundlineReading = { kind: 'broken' };

/** Eleven posts of pine, set on 1 March 2015. */
const fence = (parts: Partial<FenceFacts>): FenceFacts => ({ ...EXAMPLE_FENCE, ...parts });
const evidenceOf = (facts: FenceFacts) => groundlineEvidence(facts, fenceStates(facts));
const piecesOf = (facts: FenceFacts): readonly string[] => evidenceOf(facts).map(({ piece }) => piece);

const storm = (
  day: string,
  posts: StormOutcome['posts'],
  result: StormOutcome['result'],
  name = 'S',
): StormOutcome => ({ ref: `${name} ${day} ${result}`, storm: name, day, gustMps: 30, gustSpread: 0.1, posts, result });

const only = (post: number, groundline: GroundlineReading, day = DAY): InspectionFacts => ({
  ref: `I ${day} ${post}`,
  day,
  method: 'awl-or-probe',
  readings: [groundlineOf(post, groundline)],
});

describe('the readings of a fence', () => {
  it('are sorted by piece, in the order of the numbers, and by day', () => {
    const pieces = evidenceOf(
      fence({
        inspections: [
          { ...inspectionOn('2025-03-01', [null, depth(3), depth(4)]), ref: 'B, though later' },
          { ...inspectionOn('2024-03-01', [null, null, depth(2)]), ref: 'C, though earlier' },
          { ...inspectionOn('2026-03-01', [depth(6)]), ref: 'A, though last' },
        ],
      }),
    );
    expect(pieces.map(({ post, readings }) => [post, readings.map(({ inspectionRef }) => inspectionRef)])).toEqual([
      [1, ['A, though last']],
      [2, ['B, though later']],
      [3, ['C, though earlier', 'B, though later']],
    ]);
  });

  it('of one day are in the order of their references, whichever came first', () => {
    const [a, b] = [
      { ...only(1, depth(2)), ref: 'A' },
      { ...only(1, depth(4)), ref: 'B' },
    ];
    for (const inspections of [
      [a, b],
      [b, a],
    ]) {
      const [piece] = evidenceOf(fence({ inspections }));
      expect(piece!.readings.map(({ inspectionRef }) => inspectionRef)).toEqual(['A', 'B']);
    }
  });

  it('do not reorder the register', () => {
    const inspections = [only(1, depth(2), '2026-03-01'), only(1, depth(2), '2020-03-01')];
    evidenceOf(fence({ inspections }));
    expect(inspections.map(({ day }) => day)).toEqual(['2026-03-01', '2020-03-01']);
  });

  it('carry what they say of the depth, how and when they were taken, and of what', () => {
    const [piece] = evidenceOf(
      fence({ inspections: [inspectionOn(DAY, [{ kind: 'residual-width', widthMm: 78.9 }], 'caliper')] }),
    );
    expect(piece).toMatchObject({
      piece: '1',
      post: 1,
      treatmentClass: 'ground-contact',
      section: PINE_4X4.section,
      dateIsRange: false,
    });
    expect(piece!.readings).toHaveLength(1);
    expect(piece!.readings[0]).toMatchObject({ inspectionRef: 'I 2026-03-01', day: DAY, method: 'caliper' });
    // 88.9 mm installed: 5 mm gone of each face
    const { seen } = piece!.readings[0]!;
    expect(seen).toMatchObject({ kind: 'measured', errorMm: 1 });
    expect(seen.depthMm).toBeCloseTo(5, 9);
  });

  it('say nothing where nobody looked, nor of a post that does not rot', () => {
    expect(evidenceOf(fence({ inspections: [inspectionOn(DAY, [null, null])] }))).toEqual([]);
    const steel = { ...PINE_4X4, treatmentClass: 'does-not-rot' } as const;
    const override = { number: 2, positionM: null, installed: null, wood: steel, sharedRun: null };
    const facts = fence({ posts: [override], inspections: [inspectionOn(DAY, [depth(3), depth(3), depth(3)])] });
    expect(piecesOf(facts)).toEqual(['1', '3']);
  });

  it('of a swapped post belong to the piece that stood there on the eve of their day', () => {
    const swap = (ref: string, day: string): Works => ({ ref, day, kind: 'post-swap', posts: [1], wood: PINE_4X4 });
    const facts = fence({
      works: [swap('W9', '2020-03-01'), swap('W1', '2022-03-01')],
      inspections: [
        only(1, depth(9), '2019-03-01'),
        only(1, depth(8), '2020-03-01'),
        only(1, depth(1), '2021-03-01'),
        only(1, depth(2), '2024-03-01'),
        only(2, depth(2), '2018-03-01'),
      ],
    });
    const pieces = evidenceOf(facts);
    expect(pieces.map(({ piece, readings }) => [piece, readings.length])).toEqual([
      ['1', 2],
      ['1 by W1', 1],
      ['1 by W9', 1],
      ['2', 1],
    ]);
    // the second was set on 1 March 2022
    const days = dayNumber('2024-03-01') - dayNumber('2022-03-01');
    expect(pieces[1]!.readings[0]!.exposureAt(0.5) * DAYS_PER_YEAR).toBeCloseTo(days, 9);
  });
});

describe('"broken"', () => {
  it('is evidence of rot, once: what is read of the post afterwards says nothing', () => {
    const facts = fence({
      inspections: [only(3, BROKEN, '2024-03-01'), only(3, BROKEN, '2025-03-01'), only(3, depth(20))],
    });
    const [piece] = evidenceOf(facts);
    expect(piece!.readings.map(({ day }) => day)).toEqual(['2024-03-01']);
    expect(piece!.readings[0]!.seen.kind).toBe('above');
  });

  it('is none where a storm of the same day snapped the post, by name or with all others', () => {
    const inspections = [only(3, BROKEN)];
    for (const posts of [[3], [1, 3], 'all'] as const) {
      expect(piecesOf(fence({ inspections, outcomes: [storm(DAY, posts, 'snapped')] }))).toEqual([]);
    }
  });

  it('is evidence where the storm of that day did something else, or to other posts, or came later', () => {
    const inspections = [only(3, BROKEN)];
    for (const outcome of [
      storm(DAY, [3], 'leaned'),
      storm(DAY, [3], 'stood'),
      storm(DAY, [2, 4], 'snapped'),
      storm('2026-03-02', [3], 'snapped'),
    ]) {
      expect(piecesOf(fence({ inspections, outcomes: [outcome] })), outcome.ref).toEqual(['3']);
    }
  });

  it('is evidence where the storm snapped all posts but those reported apart, and it is one of those', () => {
    const outcomes = [storm(DAY, 'all', 'snapped'), storm(DAY, [3], 'stood')];
    expect(piecesOf(fence({ inspections: [only(3, BROKEN)], outcomes }))).toEqual(['3']);
    expect(piecesOf(fence({ inspections: [only(4, BROKEN)], outcomes }))).toEqual([]);
  });

  it('is none where a storm had snapped the post before', () => {
    const outcomes = [storm('2025-09-01', [3], 'snapped')];
    expect(piecesOf(fence({ inspections: [only(3, BROKEN)], outcomes }))).toEqual([]);
  });

  it('is none at a post that a sleeve carries: its wood had failed, or may fail, unseen', () => {
    const works: Works[] = [{ ref: 'W', day: '2024-03-01', kind: 'steel-sleeve', posts: [3], momentCapacityNm: 4000 }];
    expect(piecesOf(fence({ works, inspections: [inspectionOn(DAY, [null, BROKEN, BROKEN])] }))).toEqual(['2']);
    // a sleeve put on after the inspection changes nothing of what it found
    expect(piecesOf(fence({ works, inspections: [only(3, BROKEN, '2024-03-01')] }))).toEqual(['3']);
  });

  it('does not take a measured depth with it, at a sleeve or on the day of a storm', () => {
    const works: Works[] = [{ ref: 'W', day: '2024-03-01', kind: 'steel-sleeve', posts: [3], momentCapacityNm: 4000 }];
    const outcomes = [storm(DAY, [4], 'snapped')];
    const inspections = [inspectionOn(DAY, [null, null, depth(9), depth(9)])];
    expect(piecesOf(fence({ works, outcomes, inspections }))).toEqual(['3', '4']);
  });
});

describe('the exposure at a reading', () => {
  const years = (from: string, to: string): number => (dayNumber(to) - dayNumber(from)) / DAYS_PER_YEAR;

  it('runs from the day of installation, whatever the level, where that is known', () => {
    const [piece] = evidenceOf(fence({ inspections: [only(1, depth(4))] }));
    for (const level of [0, 0.5, 1]) {
      expect(piece!.readings[0]!.exposureAt(level)).toBeCloseTo(years('2015-03-01', DAY), 9);
    }
  });

  it('runs from a day between the earliest and the latest where only a range is known', () => {
    const facts = fence({
      installed: { earliest: '2005-03-01', latest: '2013-03-01' },
      inspections: [only(1, depth(4))],
    });
    const [piece] = evidenceOf(facts);
    const [longest, shortest] = [years('2005-03-01', DAY), years('2013-03-01', DAY)];
    const { exposureAt } = piece!.readings[0]!;
    expect(piece!.dateIsRange).toBe(true);
    expect(exposureAt(0)).toBeCloseTo(longest, 9);
    expect(exposureAt(0.25)).toBeCloseTo(0.75 * longest + 0.25 * shortest, 9);
    expect(exposureAt(1)).toBeCloseTo(shortest, 9);
  });

  it('runs from no later than the first day on which the fence was seen standing', () => {
    const range = { earliest: '2005-03-01', latest: '2025-12-31' };
    const readAgain = [only(1, depth(4)), only(2, depth(1), '2012-05-01')];
    const [byInspection] = evidenceOf(fence({ installed: range, inspections: readAgain }));
    expect(byInspection!.readings[0]!.exposureAt(1)).toBeCloseTo(years('2012-05-01', DAY), 9);
    const [byStorm] = evidenceOf(
      fence({ installed: range, inspections: readAgain, outcomes: [storm('2010-09-01', [7], 'stood')] }),
    );
    expect(byStorm!.readings[0]!.exposureAt(1)).toBeCloseTo(years('2010-09-01', DAY), 9);
    expect(byStorm!.readings[0]!.exposureAt(0)).toBeCloseTo(years('2005-03-01', DAY), 9);
    const seenFirst = [...readAgain, only(3, depth(1), '2005-03-01')];
    const [known] = evidenceOf(fence({ installed: range, inspections: seenFirst }));
    expect(known!.dateIsRange).toBe(false);
    expect(known!.readings[0]!.exposureAt(1)).toBeCloseTo(years('2005-03-01', DAY), 9);
  });

  it('leaves out the years of a groundline treatment', () => {
    const works: Works[] = [
      { ref: 'W', day: '2018-03-01', kind: 'groundline-treatment', posts: 'all', yearsEffective: 5 },
    ];
    const [piece] = evidenceOf(fence({ works, inspections: [only(1, depth(4))] }));
    expect(piece!.readings[0]!.exposureAt(0.5)).toBeCloseTo(years('2015-03-01', DAY) - 5, 9);
  });
});
