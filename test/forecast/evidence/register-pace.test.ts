import { describe, expect, it } from 'vitest';
import { paceBelief } from '../../../src/forecast/evidence/pace-belief.ts';
import { fencePaceEvidence, registerPace } from '../../../src/forecast/evidence/register-pace.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../example-fence.ts';
import { normals, readFence, readRegister } from './made-up-register.ts';
import { inspectionOn } from './read-fence.ts';

const TAU = 0.6;
const BAND = 5;

const evidenceOf = (facts: FenceFacts) => fencePaceEvidence(facts, fenceStates(facts));
const learned = (fences: readonly FenceFacts[]) => registerPace('ground-contact', BAND, fences.flatMap(evidenceOf));

describe('what a register shows of a pace', () => {
  it('is the published pace where nothing was read', () => {
    expect(evidenceOf(EXAMPLE_FENCE)).toEqual([]);
    const none = learned([EXAMPLE_FENCE]);
    expect(none).toMatchObject({ key: `ground-contact/${BAND}`, fences: 0, readings: 0, enough: false });
    expect(none.logShift).toBeCloseTo(0, 12);
    expect(none.spread).toBeCloseTo(TAU, 6);
  });

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

  it('moves little for a register of one fence', () => {
    const found = learned([readFence('F-1', () => 0, { offset: Math.log(2), years: 16, posts: 3 })]);
    expect(found.logShift).toBeGreaterThan(0.05);
    expect(found.logShift).toBeLessThan(Math.log(2) / 2);
    expect(found.enough).toBe(false);
  });

  it('is enough from ten fences and thirty readings on, not before', () => {
    const of = (fences: number, posts: number) =>
      learned(readRegister(normals(1), { shift: 0, ownSpread: 0, fences, posts })).enough;
    expect(of(10, 3)).toBe(true);
    expect(of(9, 4)).toBe(false);
    expect(of(10, 2)).toBe(false);
  });

  it('leaves what the office has accepted out: it is measured against the published pace', () => {
    const facts = readFence('F-1', normals(3), { offset: 0.4, years: 15, posts: 3 });
    const paces = [{ treatmentClass: 'ground-contact', logShift: 0.7, spread: 0.3 } as const];
    const accepted: FenceFacts = { ...facts, learned: { version: 1, paces, footing: null } };
    expect(evidenceOf(accepted)).toEqual(evidenceOf(facts));
  });

  it('keeps classes and bands apart', () => {
    const read = readFence('F-1', normals(4), { offset: 0, years: 15, posts: 3 });
    const swapped: FenceFacts = {
      ...read,
      posts: [
        {
          number: 2,
          positionM: null,
          installed: null,
          wood: { ...PINE_4X4, treatmentClass: 'above-ground-stock' },
          sharedRun: null,
        },
      ],
    };
    expect(evidenceOf(swapped).map(({ treatmentClass, readings }) => [treatmentClass, readings])).toEqual([
      ['above-ground-stock', 1],
      ['ground-contact', 2],
    ]);
    const mild: FenceFacts = { ...read, site: { ...read.site, climate: { kind: 'decay-zone', zone: 2 } } };
    expect(learned([mild]).fences).toBe(0);
    expect(registerPace('ground-contact', 2, evidenceOf(mild)).fences).toBe(1);
  });

  it('says less where the install date is a range', () => {
    const depth = { kind: 'depth', depthMm: 6 } as const;
    const known: FenceFacts = { ...EXAMPLE_FENCE, inspections: [inspectionOn('2026-03-01', Array(8).fill(depth))] };
    const ranged: FenceFacts = { ...known, installed: { earliest: '2008-03-01', latest: '2022-03-01' } };
    const width = (facts: FenceFacts): number => {
      const { low, high } = learned([facts]);
      return high - low;
    };
    expect(width(ranged)).toBeGreaterThan(width(known));
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
