import { describe, expect, it } from 'vitest';
import type { PointRisks } from '../../../src/forecast/point-risks.ts';
import { shortCourse, survivalAhead } from '../../../src/season/money/fence-survival.ts';
import { fenceCourses } from '../../../src/season/money/plan-fence.ts';
import { PLAIN_FENCE } from './made-up-plan.ts';

/** Two points of even weight: one that snaps as soon as it may, and one that never does; speeds [m/s] fall to 30 and 38. */
const season = (speeds: readonly number[], risks: readonly number[] | null): PointRisks['seasons'][number] => ({
  label: '2027',
  season: 1,
  day: '2027-06-01',
  snapMps: Float64Array.from(speeds),
  leanMps: Float64Array.from(speeds),
  endsSnapMps: null,
  seasonBreak: risks && Float64Array.from(risks),
  yearBreak: risks && Float64Array.from(risks),
});
const RISKS = {
  weights: Float64Array.of(0.5, 0.5),
  seasons: [season([41, 45], [0.2, 0]), season([39, 43], [0.5, 0]), season([30, 38], [0.5, 0.1])],
};

describe('the survival of a fence ahead', () => {
  it('is averaged over what may be, so that what has stood counts as the better', () => {
    const curve = survivalAhead(RISKS)!;
    const standing = [1, 0.5 * 0.8 + 0.5, 0.5 * 0.4 + 0.5, 0.5 * 0.2 + 0.5 * 0.9];
    for (const [index, stands] of standing.entries()) expect(curve.standing[index]).toBeCloseTo(stands, 12);
    expect(curve.stepYears).toBe(1);
  });

  it('is not known without a hazard curve', () => {
    expect(survivalAhead({ ...RISKS, seasons: [season([41, 45], null)] })).toBeNull();
  });
});

describe('replacing a fence before it is short', () => {
  it('takes out the weaker points, and leaves the risk of the stronger ones', () => {
    const course = shortCourse(RISKS, 40, 30);
    expect(course.chanceBySeason[0]).toBe(0);
    expect(course.snapRiskBySeason[0]).toBeCloseTo(0.1, 12);
    // Before season 2 the weaker point goes: 0.4 of the 0.9 that stand.
    expect(course.chanceBySeason[1]).toBeCloseTo(0.4 / 0.9, 12);
    expect(course.snapRiskBySeason[1]).toBe(0);
    expect(course.snapRiskWherePlanned[1]).toBeCloseTo(0.5, 12);
    expect(course.chanceBySeason[1]! + course.chanceBySeason[2]!).toBeCloseTo(1, 12);
    expect(course.snapRiskWherePlanned[2]).toBeCloseTo(0.1, 12);
  });

  it('gives the courses of a plan the chances counted point by point', () => {
    const course = shortCourse(RISKS, 40, 30);
    const courses = fenceCourses(
      {
        ...PLAIN_FENCE,
        replacement: { kind: 'by chance', chanceByYear: course.chanceBySeason },
        snapRiskByYear: course.snapRiskBySeason,
      },
      { firstYear: 2027, years: 10, inflation: 0 },
    );
    const chance = (year: number, snapped: boolean): number =>
      courses
        .filter((each) => each.replacedIn === year && each.snapped === snapped)
        .reduce((sum, { probability }) => sum + probability, 0);
    expect(chance(0, true)).toBeCloseTo(0.5 * 0.2, 12);
    expect(chance(1, false)).toBeCloseTo(0.5 * 0.8, 12);
    expect(chance(1, true)).toBeCloseTo(0, 12);
    expect(chance(2, false)).toBeCloseTo(0.5, 12);
  });

  it('ends with the longest service, and snaps nothing without a hazard curve', () => {
    const course = shortCourse(
      { ...RISKS, seasons: RISKS.seasons.map(({ snapMps }) => season([...snapMps], null)) },
      20,
      2,
    );
    expect(course.chanceBySeason).toEqual([0, 0, 1]);
    expect(course.snapRiskBySeason).toEqual([0, 0, 0]);
  });
});
