import type { TreatmentClass } from '../decay/treatment-class.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';

/** Columns by which the list of fences can be ordered; `worst`: recorded dangerous, then by what is left of the design gust, then by what is at stake. */
export const SORT_KEYS = [
  'worst',
  'standing',
  'ref',
  'site',
  'owner',
  'ends',
  'short',
  'snap',
  'lean',
  'gust',
  'once',
  'installed',
  'treatment',
] as const;
export type SortKey = (typeof SORT_KEYS)[number];

/** What a list of fences is narrowed to, how it is ordered, and which page of it is wanted. */
export interface FenceQuery {
  /** Found in the ref, the site's or an owner's name, or the treatment; empty for all. */
  readonly text: string;
  readonly siteRef: string | null;
  /** First or second owner. */
  readonly ownerRef: string | null;
  readonly standing: FenceStanding | null;
  /** Short, or going short and not short yet, at the line or at the ends. */
  readonly anywhere: 'short' | 'closing' | null;
  /** True for those alone that the last sweep found recorded dangerous, and that are not dealt with. */
  readonly dangerous: boolean;
  readonly endsStanding: FenceStanding | null;
  readonly treatmentClass: TreatmentClass | null;
  /** Calendar years in which it may have been installed, the first and the last. */
  readonly builtFrom: number | null;
  readonly builtTo: number | null;
  /** Years in which the season opens from which on it is short, the first and the last. */
  readonly shortFrom: number | null;
  readonly shortTo: number | null;
  readonly sort: SortKey;
  readonly descending: boolean;
  /** 1 for the first page; a page past the end is taken as the last. */
  readonly page: number;
}

/** Every fence, the worst first. */
export const EVERY_FENCE: FenceQuery = {
  text: '',
  siteRef: null,
  ownerRef: null,
  standing: null,
  anywhere: null,
  dangerous: false,
  endsStanding: null,
  treatmentClass: null,
  builtFrom: null,
  builtTo: null,
  shortFrom: null,
  shortTo: null,
  sort: 'worst',
  descending: false,
  page: 1,
};

/** The sites whose fences somebody sees; null for all of them. */
export type VisibleSites = readonly string[] | null;
