import type { SensitivityCase } from './sensitivity-case.ts';

/** A value of an input in words, for readers of either units. */
export interface ValueText {
  readonly us: string;
  readonly metric: string;
}

/** An input at another value than the recorded one. */
export interface ChangeEnd {
  readonly label: ValueText;
  readonly at: SensitivityCase;
}

/** A recorded input moved by a plausible error of its record; null where there is nothing further that way. */
export interface InputChange {
  readonly input: string;
  readonly low: ChangeEnd | null;
  readonly high: ChangeEnd | null;
}

/** Words that are the same in either units. */
export const sameText = (text: string): ValueText => ({ us: text, metric: text });

/** A number with at most so many decimals, without trailing zeros. */
export const shortNumber = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

/** An input changed by so much either way. */
export const changedEitherWay = (input: string, end: (sign: -1 | 1) => ChangeEnd): InputChange => ({
  input,
  low: end(-1),
  high: end(1),
});

/**
 * An input changed to its neighbours in a row of steps, the lower first; no end beyond those of the row, and neither where
 * the input is not in it.
 */
export function changedByStep<T>(
  input: string,
  steps: readonly T[],
  isIt: (step: T) => boolean,
  end: (step: T) => ChangeEnd,
): InputChange {
  const index = steps.findIndex(isIt);
  const endAt = (at: number): ChangeEnd | null => {
    const step = index < 0 ? undefined : steps[at];
    return step === undefined ? null : end(step);
  };
  return { input, low: endAt(index - 1), high: endAt(index + 1) };
}
