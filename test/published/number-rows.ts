import { FOUND_NUMBERS } from './found-numbers.ts';
import { GROUND_NUMBERS } from './ground-numbers.ts';
import type { NumberRow } from './number-row.ts';
import { ROT_NUMBERS } from './rot-numbers.ts';
import { STRENGTH_NUMBERS } from './strength-numbers.ts';
import { WIND_NUMBERS } from './wind-numbers.ts';

/** Every number of the program from memory or judgement, in the order of the page. */
export const NUMBER_ROWS: readonly NumberRow[] = [
  ...ROT_NUMBERS,
  ...STRENGTH_NUMBERS,
  ...WIND_NUMBERS,
  ...GROUND_NUMBERS,
  ...FOUND_NUMBERS,
];

/** What the sources call memory or judgement and no row answers for, with the reason. */
export const WITHOUT_ROW: Readonly<Record<string, string>> = {
  'decay/scheffer-index.ts#schefferIndex': 'An index of climates for wood above ground; no forecast uses it.',
  'decay/scheffer-index.ts#schefferClass': 'As above.',
  'decay/treatment-class.ts#TREATMENT_CLASSES.does-not-rot': 'Zero: what does not rot has no pace.',
  'decay/climate-band.ts#climateBand':
    'Sorts sites for what a register learns; a forecast takes only what the office has accepted of it.',
  'forecast/evidence/register-footing.ts#LEAST_TRIED': 'Shapes what a register learns, as above.',
  'forecast/evidence/register-pace.ts#LEAST_FENCES': 'Shapes what a register learns, as above.',
  'forecast/evidence/register-pool.ts#SHARED_VARIANCE': 'Shapes what a register learns, as above.',
  'forecast/evidence/register-pool.ts#OWN_SPREAD_SPREAD': 'Shapes what a register learns, as above.',
  'forecast/evidence/register-pool.ts#poolFences': 'Shapes what a register learns, as above.',
  'capacity/post-resistance.ts#shearForce': 'Statics (parabolic shear stress); the share of shear strength has a row.',
  'forecast/belief-points.ts#SHIFT_ROOT':
    'Spreads the points of a numerical integration; another root gives the same integral.',
  'forecast/evidence/post-findings.ts#UPRIGHT_TO_DEGREES':
    'Decides when a leaning post counts as upright again; it moves no speed.',
  'forecast/evidence/reading-method.ts#READING_METHODS.level': 'Measures nothing at the groundline.',
  'forecast/evidence/reading-method.ts#READING_METHODS.eye': 'Measures nothing at the groundline.',
  'forecast/unknown-inputs.ts#unknownInputs': 'Says how much a prior weighs; the priors have rows.',
  'forecast/sensitivity.ts#sensitivityOf':
    'Moves recorded inputs to show what they weigh; the forecast does not use it.',
  'forecast/sensitivity-changes.ts#PLAUSIBLE_ERRORS': 'Steps of the sensitivity chart; the forecast does not use them.',
  'forecast/sensitivity-changes.ts#recordedChanges': 'As above.',
};
