import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import { LEAST_LEANED, LEAST_TRIED } from '../forecast/evidence/register-footing.ts';
import { LEAST_FENCES, LEAST_READINGS } from '../forecast/evidence/register-pace.ts';
import type { HeldValue } from '../register/learned-store.ts';
import type { LearnedCell } from './learn-register.ts';
import type { LearnedPreview } from './preview-learned.ts';

/** A factor over the published value, of its natural logarithm. */
export const factor = (log: number): string => Math.exp(log).toFixed(2);
/** The range of a factor, of its natural logarithms. */
export const interval = (low: number, high: number): string => `${factor(low)}–${factor(high)}`;
/** A number of things: `1 fence`, `3 fences`. */
export const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;

/** How much was seen of a quantity, and how much is needed. */
export function lackingText(cell: LearnedCell): string {
  return cell.kind === 'pace'
    ? `${count(cell.fences, 'fence')} of ${LEAST_FENCES} and ${count(cell.readings, 'reading')} of ${LEAST_READINGS} needed`
    : `${count(cell.tried, 'post')} of ${LEAST_TRIED} reported leaned or standing, ${cell.leaned} of ${LEAST_LEANED} leaned`;
}

/** What a quantity is, in plain words. */
export const quantityName = (value: LearnedCell | HeldValue): string =>
  value.kind === 'pace'
    ? `rot pace of ${TREATMENT_CLASSES[value.treatmentClass].name} in climate band ${value.climateBand}`
    : `footings in ${value.soilKind}`;

const seenText = (value: HeldValue): string =>
  value.kind === 'pace'
    ? `${count(value.fences, 'fence')}, ${count(value.seen, 'reading')}`
    : `${count(value.fences, 'fence')}, ${count(value.seen, 'post')} tried, ${value.leaned} leaned`;

/** An accepted value, as listed under a version. */
export const valueText = (value: HeldValue, version: number): string =>
  `${quantityName(value)} (${value.key}): ${factor(value.logShift)} (${interval(value.low, value.high)}) times the published value, spread ${value.spread.toFixed(2)}; ${seenText(value)}${value.since === version ? '' : `; since version ${value.since}`}`;

/** The owners who would get a notice, each with the fences that it is about. */
export function ownersOf({
  notices,
}: LearnedPreview): readonly { readonly ref: string; readonly fences: readonly string[] }[] {
  const fencesOf = new Map<string, Set<string>>();
  for (const { ref, ownerRef } of notices) fencesOf.set(ownerRef, (fencesOf.get(ownerRef) ?? new Set()).add(ref));
  return [...fencesOf].sort(([a], [b]) => (a < b ? -1 : 1)).map(([ref, fences]) => ({ ref, fences: [...fences] }));
}
