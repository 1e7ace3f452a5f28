import type { StormOutcome, StormResult } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { metresFromFeet } from '../../../src/units/length.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../example-fence.ts';

export const STORM_DAY = '2020-06-01';

/** What one storm did to some posts; a storm is named by its day unless said otherwise. */
export const stormOn = (
  day: string,
  gustMps: number,
  posts: StormOutcome['posts'],
  result: StormResult,
  { storm = day, gustSpread = 0.05 }: { readonly storm?: string; readonly gustSpread?: number } = {},
): StormOutcome => ({
  ref: `${day} ${storm} ${result} ${String(posts)}`,
  storm,
  day,
  gustMps,
  gustSpread,
  posts,
  result,
});

/** Five posts 8 ft apart: few enough to be quick. */
export const SHORT_FENCE: FenceFacts = {
  ...EXAMPLE_FENCE,
  run: { ...EXAMPLE_FENCE.run, runLengthM: metresFromFeet(32) },
};

/** The same of wood that does not rot: every post of it is as strong as any other up to the scatter of strength. */
export const ROTLESS_FENCE: FenceFacts = { ...SHORT_FENCE, wood: { ...PINE_4X4, treatmentClass: 'does-not-rot' } };

export const withOutcomes = (facts: FenceFacts, ...outcomes: readonly StormOutcome[]): FenceFacts => ({
  ...facts,
  outcomes,
});
