/**
 * Cumulative standard normal distribution Phi(z) [-], absolute error below 1e-14; exactly 0 or 1 beyond 9 standard deviations.
 * Source: Hart 1968, algorithm 5666, in the form of West 2005, "Better approximations to cumulative normal functions".
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z);
  if (x > 9) return z > 0 ? 1 : 0;
  const e = Math.exp((-x * x) / 2);
  let num = 3.52624965998911e-2 * x + 0.700383064443688;
  num = num * x + 6.37396220353165;
  num = num * x + 33.912866078383;
  num = num * x + 112.079291497871;
  num = num * x + 221.213596169931;
  num = num * x + 220.206867912376;
  let den = 8.83883476483184e-2 * x + 1.75566716318264;
  den = den * x + 16.064177579207;
  den = den * x + 86.7807322029461;
  den = den * x + 296.564248779674;
  den = den * x + 637.333633378831;
  den = den * x + 793.826512519948;
  den = den * x + 440.413735824752;
  const upper = (e * num) / den;
  return z > 0 ? 1 - upper : upper;
}

/** Steps a unit of the table, and the score at which it ends. */
const TABLE_STEPS = 256;
const TABLE_END = 8;
const TABLE = Float64Array.from({ length: 2 * TABLE_END * TABLE_STEPS + 2 }, (_, i) =>
  normalCdf(i / TABLE_STEPS - TABLE_END),
);

/**
 * Phi(z) read off a table, for inner loops [-]: monotone, within 5e-7 of `normalCdf`; 0 and 1 beyond 8 standard deviations.
 * Source: linear interpolation of `normalCdf` (derived).
 */
export function tabulatedNormalCdf(z: number): number {
  if (!(z > -TABLE_END)) return 0;
  if (z >= TABLE_END) return 1;
  const at = (z + TABLE_END) * TABLE_STEPS;
  const cell = Math.floor(at);
  return TABLE[cell]! + (at - cell) * (TABLE[cell + 1]! - TABLE[cell]!);
}

const A = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
  33430.57558358813, 2509.0809287301227,
];
const B = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271, 28729.085735721943,
  5226.495278852854,
];
const C = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684, 0.2417807251774506,
  0.022723844989269184, 0.0007745450142783414,
];
const D = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
const E = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
];
const F = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 1.8463183175100548e-5,
  1.421511758316446e-7, 2.0442631033899397e-15,
];

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

/**
 * Quantile of the standard normal distribution, the inverse of Phi [-].
 * @param probability p, 0 < p < 1; throws RangeError outside
 * Source: Wichura 1988, algorithm AS 241 (PPND16), Appl. Statist. 37:477.
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1))
    throw new RangeError(`normal quantile: ${probability} is not between 0 and 1`);
  const q = probability - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(A, r)) / polynomial(B, r);
  }
  const r = Math.sqrt(-Math.log(q < 0 ? probability : 1 - probability));
  const tail = r <= 5 ? polynomial(C, r - 1.6) / polynomial(D, r - 1.6) : polynomial(E, r - 5) / polynomial(F, r - 5);
  return q < 0 ? -tail : tail;
}

/** Nodes and weights of Gauss-Hermite quadrature for a standard normal variable [-]; weights sum to 1. */
export interface NormalQuadrature {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Nine-point quadrature over a standard normal variable: exact for polynomials up to degree 17.
 * Source: Abramowitz & Stegun 1964, Table 25.10 (n = 9), abscissae times sqrt(2), weights over sqrt(pi).
 */
export const NORMAL_QUADRATURE: NormalQuadrature = (() => {
  const x = [0, 0.723551018752838, 1.468553289216668, 2.266580584531843, 3.190993201781528];
  const w = [0.720235215606051, 0.4326515590025558, 0.08847452739437657, 0.004943624275536947, 0.00003960697726326438];
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = -4; i <= 4; i += 1) {
    const k = Math.abs(i);
    nodes.push(Math.sign(i) * x[k]! * Math.SQRT2);
    weights.push(w[k]! / Math.sqrt(Math.PI));
  }
  return { nodes, weights };
})();
