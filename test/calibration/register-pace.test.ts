import { describe, expect, it } from 'vitest';
import { paceBelief } from '../../src/forecast/evidence/pace-belief.ts';
import { fencePaceEvidence, registerPace } from '../../src/forecast/evidence/register-pace.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { normals, readRegister } from '../forecast/evidence/made-up-register.ts';

const TAU = 0.6;
const BAND = 5;

const evidenceOf = (facts: FenceFacts) => fencePaceEvidence(facts, fenceStates(facts));
const learned = (fences: readonly FenceFacts[]) => registerPace('ground-contact', BAND, fences.flatMap(evidenceOf));

describe('the pace of a register', () => {
  it('finds a shift of 0.5 that thirty fences share, within its interval', () => {
    const fences = readRegister(normals(505), { shift: 0.5, ownSpread: 0.3, fences: 30, posts: 4 });
    const found = learned(fences);
    expect(found).toMatchObject({ fences: 30, readings: 120, enough: true });
    expect(found.low).toBeLessThan(0.5);
    expect(found.high).toBeGreaterThan(0.5);
    expect(found.low).toBeGreaterThan(0.2);
    expect(Math.abs(found.logShift - 0.5)).toBeLessThan(0.2);
    expect(found.spread).toBeLessThan(TAU);
    expect(learned([...fences].reverse())).toEqual(found);
  });
});

describe('the 90 % interval of a register', () => {
  const REGISTERS = 200;

  it('covers the true shift in about 90 % of 200 made-up registers', () => {
    const next = normals(20261125);
    let covered = 0;
    for (let register = 0; register < REGISTERS; register += 1) {
      const shift = (TAU / Math.SQRT2) * next();
      // lognormal about the half of tau^2, its mean square being that half
      const ownSpread = (TAU / Math.SQRT2) * Math.exp(0.4 * next() - 0.16);
      const { low, high } = learned(readRegister(next, { shift, ownSpread, fences: 8, posts: 3 }));
      if (low <= shift && shift <= high) covered += 1;
    }
    // 180 expected, standard deviation 4.2
    expect(covered).toBeGreaterThanOrEqual(168);
    expect(covered).toBeLessThanOrEqual(192);
  }, 300_000);
});

/** Mean of ln r over the published rate that a fence believes of itself under what its register learned. */
function ownBelief(facts: FenceFacts, { logShift, spread }: { readonly logShift: number; readonly spread: number }) {
  const paces = [{ treatmentClass: 'ground-contact', logShift, spread } as const];
  const withLearned: FenceFacts = { ...facts, learned: { version: 1, paces, footing: null } };
  const [belief] = paceBelief(withLearned, fenceStates(withLearned))?.byDate ?? [];
  if (!belief) throw new Error(`fence ${facts.ref} was not read`);
  return logShift + spread * belief.mean;
}

/** How far each fence's belief moves because its readings count in the pace of its register as well, in ln r. */
function countedTwice(seed: number, fences: number): readonly number[] {
  const register = readRegister(normals(seed), { shift: 0.5, ownSpread: 0.4, fences, posts: 3 });
  const evidence = register.flatMap(evidenceOf);
  const all = registerPace('ground-contact', BAND, evidence);
  return register.map((fence) => {
    const others = registerPace(
      'ground-contact',
      BAND,
      evidence.filter(({ ref }) => ref !== fence.ref),
    );
    return Math.abs(ownBelief(fence, all) - ownBelief(fence, others));
  });
}

describe('a fence whose readings count in the pace of its register and in its own belief', () => {
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b) / values.length;

  it('believes nearly what it would if the register had learned without it, from ten fences on', () => {
    const moved = [11, 12, 13].flatMap((seed) => countedTwice(seed, 10));
    expect(mean(moved)).toBeGreaterThan(0.001);
    expect(mean(moved)).toBeLessThan(0.04);
    expect(moved.filter((each) => each > 0.1).length).toBeLessThanOrEqual(3);
  });

  it('moves less, the more fences were read', () => {
    expect(mean(countedTwice(12, 30))).toBeLessThan(mean(countedTwice(12, 5)));
  });
});
