import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { RANKS_FILE } from './calibration-files.ts';
import { RANKS, type RankCounts, UNKNOWNS } from './calibration-ranks.ts';
import { chiSquareTail, evenChiSquare } from './chi-square.ts';
import { FENCES, RIGHT, runCalibrations, SEED, WRONG } from './run-calibration.ts';

const MINUTES = 60_000;
/** Ranks are even unless chi-square says otherwise with this probability of being wrong. */
const LEAST_P = 0.01;

const pOf = (counts: readonly number[]): number => chiSquareTail(evenChiSquare(counts), RANKS - 1);

describe('the belief, over made-up fences with readings and storms', () => {
  let right: RankCounts;
  let wrong: readonly RankCounts[];
  beforeAll(async () => {
    const [first, ...others] = await runCalibrations([RIGHT, ...WRONG]);
    right = first!;
    wrong = others;
  }, 15 * MINUTES);

  it.each(UNKNOWNS)('holds the true %s at every rank alike (Talts et al. 2018)', (unknown) => {
    expect(right[unknown].reduce((a, b) => a + b)).toBe(FENCES);
    expect(pOf(right[unknown])).toBeGreaterThan(LEAST_P);
  });

  it('is drawn in docs as it comes out', () => {
    expect(JSON.parse(readFileSync(RANKS_FILE, 'utf8'))).toEqual({ seed: SEED, fences: FENCES, counts: right });
  });

  it('is found out where it takes the width lost for the depth lost', () => {
    expect(pOf(wrong[0]!.pace)).toBeLessThan(0.001);
  });

  it('is found out where it leaves out what stood in a storm', () => {
    expect(pOf(wrong[1]!.footing)).toBeLessThan(0.001);
  });
});

describe('the tail of chi-square', () => {
  it.each([
    [30.144, 0.05],
    [36.191, 0.01],
    [10.117, 0.95],
  ])('of 19 degrees of freedom beyond %s is %s, as tables have it', (value, tail) => {
    expect(chiSquareTail(value, 19)).toBeCloseTo(tail, 4);
  });
});
