import type { Standing } from '../../src/units/provenance.ts';

/** How sure we are of a published number; `recorded` belongs to the register and is never one. */
export type CheckTag = Exclude<Standing, 'recorded'>;

/** One number (or verdict) that the program computes, beside the same from outside. */
export interface PublishedCheck {
  /** Unique, stable: topic and a short name. */
  readonly id: string;
  readonly topic: string;
  readonly quantity: string;
  /** Runs the program's own functions, in the unit named. */
  readonly computed: () => number | string;
  readonly published: number | string;
  /** Unit of both numbers; `-` where there is none. */
  readonly unit: string;
  /** How far apart they may lie: relative (a share of the published number) or absolute (in the unit). A verdict must be equal. */
  readonly tolerance: { readonly kind: 'relative' | 'absolute'; readonly value: number };
  /** Where the published number stands: one work, without page. */
  readonly source: string;
  /** How sure we are of the published number (not of the computed one). */
  readonly tag: CheckTag;
  readonly note?: string;
  /** Numbers behind a verdict, for the page. */
  readonly detail?: () => string;
}

/** Tags of checks that hold the program against numbers somebody outside published and we (or the trade) know first hand. */
export const OUTSIDE_TAGS: ReadonlySet<CheckTag> = new Set([
  'read',
  'read at second hand',
  'common practice, no source',
]);

/** Tolerance of verdicts, which are equal or not. */
export const EXACT = { kind: 'absolute', value: 0 } as const;
export const within = (share: number) => ({ kind: 'relative', value: share }) as const;
export const withinAbsolute = (value: number) => ({ kind: 'absolute', value }) as const;

/** What came of a check. `difference` is computed less published, in the unit; null for a verdict. */
export interface CheckOutcome {
  readonly computed: number | string;
  readonly difference: number | null;
  readonly meets: boolean;
}

/** Computes the number and holds it against the published one. A number against a verdict never meets. */
export function checkOutcome(check: PublishedCheck): CheckOutcome {
  const computed = check.computed();
  const { published, tolerance } = check;
  if (typeof computed !== 'number' || typeof published !== 'number') {
    return { computed, difference: null, meets: computed === published };
  }
  const difference = computed - published;
  const allowed = tolerance.kind === 'relative' ? tolerance.value * Math.abs(published) : tolerance.value;
  return { computed, difference, meets: Math.abs(difference) <= allowed };
}
