import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingSignal } from '../../src/season/reading-signal.ts';
import { valueOfInformation } from '../../src/season/value-of-inspection.ts';

/** Sound (0.7) or rotten (0.3); a swap costs 300 and saves 200 in a sound fence, 1,000 in a rotten one. A probe is right in 8 cases of 10. */
const PRIOR = Float64Array.of(0.7, 0.3);
const NOTHING = Float64Array.of(0, 0);
const SWAP = Float64Array.of(-100, 700);
const PROBE = [Float64Array.of(0.8, 0.2), Float64Array.of(0.2, 0.8)];

describe('value of information', () => {
  it('is what the two-state case worked by hand comes to', () => {
    const value = valueOfInformation({ weights: PRIOR, benefits: [NOTHING, SWAP] }, PROBE);
    // Now: max(0, -70 + 210) = 140. Says sound: max(0, 0.56 x -100 + 0.06 x 700) = 0; rotten: 0.14 x -100 + 0.24 x 700 = 154.
    expect(value.benefitNow).toBeCloseTo(140, 12);
    expect(value.bestNow).toBe(1);
    expect(value.evsi).toBeCloseTo(14, 12);
    expect(value.evpi).toBeCloseTo(70, 12);
    expect(value.outcomes.map(({ best }) => best)).toEqual([0, 1]);
    expect(value.outcomes[0]!.probability).toBeCloseTo(0.62, 12);
    expect(value.outcomes[1]!.benefit).toBeCloseTo(154 / 0.38, 9);
  });

  it('agrees with a simulation in which the probe is used and the best by count is done', () => {
    let seed = 99;
    const uniform = (): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const runs = 200_000;
    const seen = { sound: [0, 0], rotten: [0, 0] };
    for (let run = 0; run < runs; run += 1) {
      const rotten = uniform() < 0.3;
      const saysRotten = uniform() < (rotten ? 0.8 : 0.2);
      seen[saysRotten ? 'rotten' : 'sound'][rotten ? 1 : 0]! += 1;
    }
    const best = ([sound, rotten]: readonly number[]): number => Math.max(0, -100 * sound! + 700 * rotten!);
    const after = (best(seen.sound) + best(seen.rotten)) / runs;
    const now = best([seen.sound[0]! + seen.rotten[0]!, seen.sound[1]! + seen.rotten[1]!]) / runs;
    const { evsi } = valueOfInformation({ weights: PRIOR, benefits: [NOTHING, SWAP] }, PROBE);
    expect(Math.abs(after - now - evsi)).toBeLessThan(1);
  });

  it('is nothing where no outcome could change the choice', () => {
    const sure = Float64Array.of(100, 700);
    expect(valueOfInformation({ weights: PRIOR, benefits: [NOTHING, sure] }, PROBE).evsi).toBe(0);
    expect(valueOfInformation({ weights: PRIOR, benefits: [NOTHING] }, PROBE).evsi).toBe(0);
    expect(valueOfInformation({ weights: PRIOR, benefits: [NOTHING, SWAP] }, [Float64Array.of(1, 1)]).evsi).toBe(0);
  });

  it('is that of perfect information where the signal names the point', () => {
    const value = valueOfInformation({ weights: PRIOR, benefits: [NOTHING, SWAP] }, [
      Float64Array.of(1, 0),
      Float64Array.of(0, 1),
    ]);
    expect(value.evsi).toBeCloseTo(value.evpi, 12);
  });

  it('is never negative, never over perfect information, and grows as outcomes are told apart, over random decisions', () => {
    const amount = fc.double({ min: -1000, max: 1000, noNaN: true });
    const part = fc.double({ min: 0.01, max: 1, noNaN: true });
    const points = 6;
    const row = (of: fc.Arbitrary<number>) => fc.array(of, { minLength: points, maxLength: points });
    fc.assert(
      fc.property(
        row(part),
        fc.array(row(amount), { minLength: 1, maxLength: 4 }),
        fc.array(row(part), { minLength: 2, maxLength: 5 }),
        (raw, benefits, likelihoods) => {
          const total = raw.reduce((a, b) => a + b);
          const weights = Float64Array.from(raw, (each) => each / total);
          const sums = Array.from({ length: points }, (_, point) =>
            likelihoods.reduce((sum, each) => sum + each[point]!, 0),
          );
          const signal = likelihoods.map((each) => Float64Array.from(each, (value, point) => value / sums[point]!));
          const decision = { weights, benefits: benefits.map((each) => Float64Array.from(each)) };
          const { evsi, evpi } = valueOfInformation(decision, signal);
          expect(evsi).toBeGreaterThanOrEqual(0);
          expect(evsi).toBeLessThanOrEqual(evpi + 1e-9);
          const [first, second, ...rest] = signal;
          const coarser = [first!.map((value, point) => value + second![point]!), ...rest];
          expect(valueOfInformation(decision, coarser).evsi).toBeLessThanOrEqual(evsi + 1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('refuses a decision without a choice', () => {
    expect(() => valueOfInformation({ weights: PRIOR, benefits: [] }, PROBE)).toThrow(/doing nothing at least/);
  });
});

describe('the signal of readings', () => {
  const depth = {
    medianMm: Float64Array.of(4, 12),
    meanMm: Float64Array.of(4, 12),
    spreadMm: Float64Array.of(0, 0),
  };
  const weights = Float64Array.of(0.5, 0.5);

  it('sums to one at every point, and its outcomes are equally likely beforehand', () => {
    const { signal, edgesMm } = readingSignal(depth, weights, { postCount: 4, errorMm: 2, binCount: 8 });
    for (const point of [0, 1]) expect(signal.reduce((sum, each) => sum + each[point]!, 0)).toBeCloseTo(1, 12);
    for (const each of signal) expect(0.5 * each[0]! + 0.5 * each[1]!).toBeCloseTo(1 / 8, 9);
    expect([...edgesMm].sort((a, b) => a - b)).toEqual(edgesMm);
    // Between two alike beliefs the middle edge is half way.
    expect(edgesMm[3]).toBeCloseTo(8, 9);
  });

  it('meets the normal error of the mean of so many readings', () => {
    const { signal } = readingSignal(depth, weights, { postCount: 4, errorMm: 2, binCount: 2 });
    // The mean of four readings has a standard deviation of 1 mm: 8 mm is four of them away.
    expect(signal[1]![0]!).toBeCloseTo(3.1671e-5, 8);
    const one = readingSignal(depth, weights, { postCount: 1, errorMm: 2, binCount: 2 });
    expect(one.signal[1]![0]!).toBeCloseTo(0.0227501, 6);
  });

  it('is worth more with more posts, and nothing where all points are alike', () => {
    const benefits = [Float64Array.of(0, 0), Float64Array.of(-100, 100)];
    const worth = (postCount: number, at = depth): number =>
      valueOfInformation(
        { weights, benefits },
        readingSignal(at, weights, { postCount, errorMm: 12, binCount: 24 }).signal,
      ).evsi;
    expect(worth(1)).toBeGreaterThan(0);
    expect(worth(4)).toBeGreaterThan(worth(1));
    expect(worth(4, { ...depth, meanMm: Float64Array.of(8, 8) })).toBeCloseTo(0, 9);
  });
});
