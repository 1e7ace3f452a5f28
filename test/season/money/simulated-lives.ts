import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { WeibullLife } from './weibull-curve.ts';

/** Lifetimes drawn from the Weibull law [a], each longer than the age already reached: by inverting the survival given that age. */
export function simulatedLives(
  { shape, scaleYears }: WeibullLife,
  count: number,
  generator: RandomGenerator,
  ageYears = 0,
): Float64Array {
  const spent = (ageYears / scaleYears) ** shape;
  return Float64Array.from({ length: count }, () => {
    const chance = (uniformInt(generator, 0, 0x7fffffff) + 0.5) / 0x80000000;
    return scaleYears * (spent - Math.log(chance)) ** (1 / shape);
  });
}
