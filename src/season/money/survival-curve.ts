/** How long a fence stands: the chance that it stands at the opening of each season, two or more, the first of them 1, never rising. */
export interface SurvivalCurve {
  /** Standing at the opening of season k, counted from 0 [-]. */
  readonly standing: readonly number[];
  /** Length of one season's step [a]; 1 for yearly seasons. */
  readonly stepYears: number;
}

/**
 * The survival curve of a fence from its chance of snapping season by season.
 * @param risks P(snap in the season) given that it stands at its opening, 0 to 1 [-]; the first is of the season from which the
 * curve is counted: installation for a new fence, season 1 for one that stands today
 * @param stepYears length of a season's step, over 0 [a]
 * Source: product of the chances to stand (derived).
 */
export function survivalFromRisks(risks: readonly number[], stepYears = 1): SurvivalCurve {
  if (risks.length === 0) throw new RangeError('survival: no season given');
  if (!(stepYears > 0)) throw new RangeError(`survival: a step of ${stepYears} years; give one over 0`);
  const standing = [1];
  for (const [season, risk] of risks.entries()) {
    if (!(risk >= 0 && risk <= 1))
      throw new RangeError(`survival: risk ${risk} in season ${season + 1} is no probability; give 0 to 1`);
    standing.push(standing[season]! * (1 - risk));
  }
  return { standing, stepYears };
}

/**
 * Mean years that a fence is in service until it snaps or so many seasons are over, whichever is first [a].
 * @param seasons whole seasons, within the curve
 * Source: the integral of survival by trapezoids, which lets those that snap in a season go at its middle on average.
 */
export function yearsInService({ standing, stepYears }: SurvivalCurve, seasons: number): number {
  let years = 0;
  for (let season = 0; season < seasons; season += 1)
    years += (stepYears * (standing[season]! + standing[season + 1]!)) / 2;
  return years;
}

/**
 * Mean years in service of a fence that is never replaced before it snaps [a]; Infinity where the last season has no risk and
 * some fences outlast it. Beyond the curve the risk of its last season holds (judgement).
 */
export function meanLifeYears(curve: SurvivalCurve): number {
  const { standing, stepYears } = curve;
  const last = standing.length - 1;
  const within = yearsInService(curve, last);
  const left = standing[last]!;
  if (left === 0) return within;
  const risk = 1 - left / standing[last - 1]!;
  return risk === 0 ? Infinity : within + left * stepYears * (1 / risk - 0.5);
}
