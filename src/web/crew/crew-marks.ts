import { postNumbersText } from '../../drawing/what-if-words.ts';
import type { InspectionMethod } from '../../forecast/evidence/inspection.ts';
import type { VisitWorks } from '../../season/visit/visit.ts';
import { WHOLE_FENCE } from '../../service/fence-quote.ts';
import type { CrewWords, EntryField } from './crew-words.ts';

/** Number fields of the groundline that each method gives: a depth is never asked where a width is meant. */
export const FIELDS_OF_METHOD: Readonly<Record<InspectionMethod, readonly EntryField[]>> = {
  'awl-or-probe': ['depth', 'sound_to', 'soft_to'],
  caliper: ['residual_width'],
  'drill-resistance': ['depth', 'sound_to', 'soft_to', 'cavity'],
  'circumference-tape': ['residual_circumference'],
  level: [],
  eye: [],
};

/** What is done at a fence, in the crew's language: `post swap, post 2–4 + liner, post 1`. */
export const worksWords = (works: readonly VisitWorks[], words: CrewWords): string =>
  works
    .map(({ kind, posts, postCount }) =>
      words.worksText(kind, WHOLE_FENCE.has(kind) ? '' : postNumbersText(posts), postCount),
    )
    .join(' + ');

/** Where a visit is entered. */
export const visitPath = (uid: string): string => `/today/visits/${encodeURIComponent(uid)}`;

/** Where a fence of a visit is entered. */
export const fencePath = (uid: string, fenceRef: string): string =>
  `${visitPath(uid)}/fences/${encodeURIComponent(fenceRef)}`;
