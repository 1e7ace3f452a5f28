import type { FootingKind } from '../capacity/footing.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { PostWood } from './post-wood.ts';

interface WorksBase {
  readonly ref: string;
  readonly day: CalendarDay;
  /** Numbers of the posts it was done to. */
  readonly posts: 'all' | readonly number[];
}

/** Anything done to a fence. Works act from their day on, never back (model: decay stops, restarts or changes pace). */
export type Works = WorksBase &
  (
    | { readonly kind: 'groundline-treatment'; readonly yearsEffective: number }
    | { readonly kind: 'liner' }
    | { readonly kind: 'drainage' }
    | { readonly kind: 'trimmer-guard' }
    | {
        readonly kind: 'footing-reset';
        readonly embedmentM: number;
        readonly footing: FootingKind;
        readonly footingDiameterM: number | null;
      }
    | { readonly kind: 'post-swap'; readonly wood: PostWood }
    | { readonly kind: 'steel-sleeve'; readonly momentCapacityNm: number }
    | { readonly kind: 'added-posts'; readonly positionsM: readonly number[]; readonly wood: PostWood }
    | { readonly kind: 'rebuild'; readonly wood: PostWood; readonly postSpacingM: number | null }
  );

export type WorksKind = Works['kind'];

/** Years for which one groundline treatment holds rot, unless the record says otherwise [a]. */
export const GROUNDLINE_TREATMENT_YEARS = 5;
