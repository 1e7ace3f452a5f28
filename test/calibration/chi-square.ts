/** ln of the gamma function for x > 0 [-]. Source: Lanczos 1964, g = 7, nine terms. */
function logGamma(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const t = x + 6.5;
  const sum = terms.reduce((total, term, i) => (i === 0 ? term : total + term / (x - 1 + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Probability that a chi-square variable exceeds a value [-].
 * @param value chi-square, >= 0
 * @param freedom degrees of freedom, >= 1
 * Source: series of the lower incomplete gamma function, Abramowitz & Stegun 6.5.29.
 */
export function chiSquareTail(value: number, freedom: number): number {
  const a = freedom / 2;
  const x = value / 2;
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 10_000 && term > sum * 1e-16; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return Math.max(0, 1 - sum * Math.exp(a * Math.log(x) - x - logGamma(a)));
}

/** Chi-square of counts against even counts [-]. */
export function evenChiSquare(counts: readonly number[]): number {
  const even = counts.reduce((a, b) => a + b) / counts.length;
  return counts.reduce((sum, count) => sum + (count - even) ** 2 / even, 0);
}
