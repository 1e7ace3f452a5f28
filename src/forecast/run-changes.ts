import { feetFromMetres } from '../units/length.ts';
import {
  type ChangeEnd,
  changedEitherWay,
  type InputChange,
  sameText,
  shortNumber,
  type ValueText,
} from './input-change.ts';
import { type SensitivityCase, withPosts, withRun } from './sensitivity-case.ts';

/** Least solidity a fence is taken to have [-]. */
const LEAST_SOLIDITY = 0.05;

const lengthText = (metres: number): ValueText => ({
  us: `${shortNumber(feetFromMetres(metres), 2)} ft`,
  metric: `${shortNumber(metres, 2)} m`,
});

/** A length off by so much, never by more than half of it [m]. */
const offBy = (metres: number, errorM: number): number => Math.max(metres / 2, metres + errorM);

/** Bays so much longer or shorter, the run in proportion: every post keeps its number and what is known of it. */
function spacingEnd(at: SensitivityCase, errorM: number): ChangeEnd {
  const { run } = at.state;
  const postSpacingM = offBy(run.postSpacingM, errorM);
  const scale = postSpacingM / run.postSpacingM;
  const stretched = withPosts(at, (post) => ({ ...post, positionM: post.positionM * scale }));
  return {
    label: lengthText(postSpacingM),
    at: withRun(stretched, { postSpacingM, runLengthM: run.runLengthM * scale }),
  };
}

/**
 * The measures of a run off by so much: post spacing, height and solidity.
 * @param errors post spacing and height [m], solidity [-]
 */
export function runChanges(
  at: SensitivityCase,
  errors: { readonly spacingM: number; readonly heightM: number; readonly solidity: number },
): readonly InputChange[] {
  const { run } = at.state;
  const solidityEnd = (solidity: number): ChangeEnd | null =>
    solidity === run.solidity ? null : { label: sameText(shortNumber(solidity, 2)), at: withRun(at, { solidity }) };
  return [
    changedEitherWay('post spacing', (sign) => spacingEnd(at, sign * errors.spacingM)),
    changedEitherWay('height', (sign) => {
      const heightM = offBy(run.heightM, sign * errors.heightM);
      return { label: lengthText(heightM), at: withRun(at, { heightM }) };
    }),
    {
      input: 'solidity',
      low: solidityEnd(Math.max(LEAST_SOLIDITY, run.solidity - errors.solidity)),
      high: solidityEnd(Math.min(1, run.solidity + errors.solidity)),
    },
  ];
}
