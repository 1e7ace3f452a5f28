/** Lowest and highest value the register takes, both allowed. */
export type ValueRange = readonly [number, number];

/**
 * Allowed ranges of what people enter, in the unit of the name: wide enough for any real wood fence, narrow enough to
 * catch feet entered as inches. Judgement throughout. The schema's CHECK constraints hold the same numbers.
 */
export const RANGES = {
  rainMmPerYear: [0, 12_000],
  meanTemperatureC: [-20, 35],
  dryMonths: [0, 12],
  decayZone: [1, 5],
  elevationM: [-100, 5000],
  topographicFactor: [1, 3],
  designGustMps: [20, 120],
  secondGustMps: [10, 120],
  returnPeriodYears: [5, 10_000],
  seasonShare: [0.01, 1],
  solidity: [0.05, 1],
  heightM: [0.3, 4.6],
  runLengthM: [0.6, 1000],
  bottomGapM: [0, 1],
  postSpacingM: [0.5, 6],
  returnLengthM: [0.3, 500],
  sectionMm: [38, 400],
  momentCapacityNm: [50, 200_000],
  retentionKgM3: [0.3, 400],
  embedmentM: [0.15, 2.5],
  footingDiameterM: [0.08, 1.2],
  yearlyTrimmerCutMm: [0, 10],
  postNumber: [1, 2000],
  positionM: [0, 1000],
  yearsEffective: [0.5, 20],
  rotDepthMm: [0, 200],
  soundOrSoftDepthMm: [1, 200],
  residualWidthMm: [1, 410],
  residualCircumferenceMm: [3, 1300],
  cavityMm: [0, 400],
  leanDegrees: [0, 90],
  railConnection: [0, 1],
  trimmerCutMm: [0, 200],
  stormGustMps: [5, 120],
  gustSpread: [0.01, 0.5],
  standingReturnPeriodYears: [10, 3000],
  lookAheadSeasons: [0, 30],
} as const satisfies Record<string, ValueRange>;
