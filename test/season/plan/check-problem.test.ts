import { describe, expect, it } from 'vitest';
import { checkProblem } from '../../../src/season/plan/check-problem.ts';
import type { PlanProblem } from '../../../src/season/plan/plan-problem.ts';
import { drawnProblem } from './drawn-problem.ts';
import { crew, job, option, problem, WEEKS } from './one-crew-problem.ts';

const messageOf = (parts: Partial<PlanProblem>): string => {
  try {
    checkProblem(problem(parts));
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return (error as RangeError).message;
  }
  return 'no refusal';
};
const ofCrew = (parts: Parameters<typeof crew>[0]): string => messageOf({ crews: [crew(parts)] });
const ofOption = (parts: Parameters<typeof option>[0]): string =>
  messageOf({ jobs: [job({ options: [option(parts)] })] });
const way = (siteRef: string, personHours: number, cost: number) => ({ travel: [{ siteRef, personHours, cost }] });

describe('a problem that holds together', () => {
  it('is taken, also where it is empty or at its limits', () => {
    expect(messageOf({})).toBe('no refusal');
    expect(messageOf({ weeks: [], crews: [], jobs: [], changePenalty: 0 })).toBe('no refusal');
    expect(ofCrew({ personHoursByWeek: [0, 0], ...way('S', 0, 0) })).toBe('no refusal');
    expect(ofOption({ personHours: 0.01, benefitByWeek: [-900, 0] })).toBe('no refusal');
    expect(messageOf({ jobs: [job({ options: [] })] })).toBe('no refusal');
    const size = { jobs: 12, crews: 2, weeks: 3, sites: 4, options: 3 };
    for (let seed = 1; seed <= 20; seed += 1) expect(() => checkProblem(drawnProblem(seed, size))).not.toThrow();
  });

  it('may use the same key at two fences and the same way of two crews', () => {
    expect(messageOf({ jobs: [job(), job({ ref: 'B' })], crews: [crew(), crew({ ref: 'd' })] })).toBe('no refusal');
  });
});

describe('a problem that contradicts itself is refused with the place, the value and the way out', () => {
  it.each([
    ['a week twice', messageOf({ weeks: [WEEKS[0], WEEKS[0]] }), 'weeks: a Monday is there twice; give each week once'],
    ['a crew twice', messageOf({ crews: [crew(), crew()] }), 'crews: "c" is there twice; give it once'],
    ['a fence twice', messageOf({ jobs: [job(), job({ ref: 'B' }), job()] }), 'jobs: "A" is there twice; give it once'],
    [
      'a way twice',
      ofCrew({ travel: [...crew().travel, ...crew().travel] }),
      'crew c, ways: "S" is there twice; give it once',
    ],
    [
      'an option twice',
      messageOf({ jobs: [job({ options: [option(), option()] })] }),
      'job A, options: "swap" is there twice; give it once',
    ],
    [
      'hours for too few weeks',
      ofCrew({ personHoursByWeek: [10] }),
      'crew c, hours: 1 numbers for 2 weeks; give one for each week',
    ],
    [
      'benefits for too few weeks',
      ofOption({ benefitByWeek: [100] }),
      'job A, swap, benefit: 1 numbers for 2 weeks; give one for each week',
    ],
    [
      'bars for too many weeks',
      ofOption({ barsByWeek: [[], [], []] }),
      'job A, swap, bars: 3 numbers for 2 weeks; give one for each week',
    ],
    [
      'a benefit that is no number',
      ofOption({ benefitByWeek: [100, Number.NaN] }),
      'job A, swap, benefit: NaN is no amount; give a number',
    ],
    [
      'a benefit without end',
      ofOption({ benefitByWeek: [Number.POSITIVE_INFINITY, 1] }),
      'job A, swap, benefit: Infinity is no amount; give a number',
    ],
  ])('%s', (_, message, expected) => {
    expect(message).toBe(expected);
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('an amount of %s that must be 0 or more', (value) => {
    const out = `${value} cannot be; give a number that is 0 or more`;
    expect(messageOf({ changePenalty: value })).toBe(`change penalty: ${out}`);
    expect(ofCrew({ personHoursByWeek: [10, value] })).toBe(`crew c, hours of a week: ${out}`);
    expect(ofCrew(way('S', value, 20))).toBe(`crew c, way to S, hours: ${out}`);
    expect(ofCrew(way('S', 1, value))).toBe(`crew c, way to S, cost: ${out}`);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('works of %s hours', (personHours) => {
    expect(ofOption({ personHours })).toBe(`job A, swap, hours: ${personHours} cannot be; give more than 0`);
  });
});
