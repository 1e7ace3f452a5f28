import type { ChartLanguage } from './chart-words.ts';

/** How a reserve plan is named and counted. */
export interface ReserveNaming {
  readonly currency: string;
  /** Who pays, where the name is known; else the kind of payer stands for it. */
  readonly payerName?: string;
  /** English where left out. */
  readonly language?: ChartLanguage;
}

/** What a picture of a reserve plan says. */
export interface ReserveWords {
  readonly title: string;
  readonly summary: string;
  readonly keys: { readonly spending: string; readonly fund: string; readonly floor: string };
  /** What goes under it: how the band is meant, what waiting costs, what the plan is. */
  readonly notes: readonly string[];
}
