/**
 * Linear interpolation of tabulated values; outside the table the nearest end value holds.
 * @param x where, in the unit of `xs`
 * @param xs tabulated abscissae, ascending, at least one
 * @param ys tabulated ordinates, one for each abscissa; the result has their unit
 * Source: plain linear interpolation, as the wind-load figures permit.
 */
export function interpolate(x: number, xs: readonly number[], ys: readonly number[]): number {
  const last = xs.length - 1;
  if (last < 0 || ys.length !== xs.length)
    throw new RangeError('interpolate: a table needs as many values as abscissae');
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  let i = 0;
  while (xs[i + 1]! <= x) i += 1;
  const share = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
  return ys[i]! + (ys[i + 1]! - ys[i]!) * share;
}
