import fc from 'fast-check';

const STEPS = 1_000_000;

/**
 * Numbers from one end to the other, every part of the range as likely as any other, both ends included. `fc.double`
 * draws evenly over the bit patterns instead: from 0 on, nearly all of its numbers are too small to matter.
 */
export const drawnEvenly = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => from + ((to - from) * step) / STEPS);
