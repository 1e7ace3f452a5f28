import type { CatalogueKind } from '../season/catalogue-entry.ts';
import type { BudgetRange } from '../season/money/budget-range.ts';
import type { WaitingSeason } from '../season/money/waiting-season.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { Matter } from './matter-rules.ts';

/** What may be suggested: a kind of works at all posts, or new posts at the ends alone. */
export type OfferKind =
  | Extract<CatalogueKind, 'inspect' | 'groundline-treatment' | 'post-swap' | 'added-posts' | 'rebuild'>
  | 'end-posts';

/** What one kind of works may come to. */
export interface OfferedWorks {
  readonly kind: OfferKind;
  readonly postCount: number;
  readonly cost: BudgetRange;
}

/** What a message may name as the way out at one fence, and what it costs; by the office's catalogue. */
export interface WorksOffer {
  /** Code: `USD`. */
  readonly currency: string;
  /** One of each kind that a message may suggest. */
  readonly works: readonly OfferedWorks[];
  /** Opening of the season that comes next, and the last day on which new posts are in time for it; null where none is any more. */
  readonly nextOpening: CalendarDay;
  readonly latestDay: CalendarDay | null;
  /** What waiting through season 1 may cost; null without a curve of gusts. */
  readonly waiting: WaitingSeason | null;
}

/** Kinds of works that a message suggests for each matter, the least first. */
const SUGGESTED: Readonly<Record<Matter, readonly OfferKind[]>> = {
  dangerous: [],
  'short from new': ['added-posts', 'rebuild'],
  short: ['post-swap', 'rebuild'],
  closing: ['inspect', 'post-swap'],
  reminder: ['post-swap', 'rebuild'],
  'ends short': ['end-posts'],
  'once in 10': ['post-swap', 'rebuild'],
  'once in 25': ['inspect', 'post-swap'],
  'once in 50': ['inspect'],
  'two thirds': ['inspect', 'groundline-treatment'],
  'works done': [],
  better: [],
};

/** Kinds that any matter suggests: what an offer has to know the price of. */
export const OFFERED_KINDS: readonly OfferKind[] = [...new Set(Object.values(SUGGESTED).flat())];

/** What is offered for the weightiest of the matters that something is suggested for. */
export function offeredFor(offer: WorksOffer | null, matters: readonly Matter[]): readonly OfferedWorks[] {
  if (!offer) return [];
  const kinds = matters.map((matter) => SUGGESTED[matter]).find((each) => each.length > 0) ?? [];
  return kinds.flatMap((kind) => offer.works.filter((each) => each.kind === kind));
}
