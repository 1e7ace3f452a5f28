import type { InspectCandidate, WorksCandidate } from '../../src/season/candidates.ts';
import type { CatalogueKind } from '../../src/season/catalogue-entry.ts';
import type { PlannedFence } from '../../src/season/season-problem.ts';
import type { WorksOption } from '../../src/season/works-options.ts';
import { addDays, type CalendarDay } from '../../src/units/calendar-day.ts';

/** Mondays one after another. */
export const mondays = (first: CalendarDay, count: number): readonly CalendarDay[] =>
  Array.from({ length: count }, (_, week) => addDays(first, 7 * week));

const WINDOW = {
  fromDay: '2027-05-04',
  latestDay: '2027-05-25',
  inTime: true,
  bar: null,
  licensedApplicator: false,
  permit: false,
};
const COST = { personHours: 6, price: 300, materialCost: 80 };

type WorksKindOf = Exclude<CatalogueKind, 'inspect'>;

/** Works at a fence that save 1,000 to the horizon, 400 of it where they come too late for the season, and cost 300. */
export function worksOf(kinds: readonly WorksKindOf[], parts: Partial<WorksCandidate> = {}): WorksCandidate {
  const option: WorksOption = {
    key: kinds.join(' + '),
    parts: kinds.map((kind) => ({ kind, at: 'all', posts: [1, 2], postCount: 2 })),
    why: null,
    works: [],
    cost: COST,
  };
  return {
    kind: 'works',
    key: option.key,
    option,
    cost: COST,
    window: WINDOW,
    drop: { thisSeason: 150, toHorizon: 1000, ifLate: 400 },
    netBenefit: 700,
    standing: 'clear',
    endsStanding: null,
    changesStanding: false,
    mends: [],
    fewerPostsShort: 0,
    ...parts,
  };
}

/** Looking first, worth 90 before its price of 50. */
export const inspectOf = (parts: Partial<InspectCandidate> = {}): InspectCandidate => ({
  kind: 'inspect',
  key: 'inspect',
  cost: { personHours: 1, price: 50, materialCost: 0 },
  window: WINDOW,
  netBenefit: 40,
  posts: [1],
  evsi: 90,
  evpi: 120,
  netBenefitWithWorks: 700,
  advice: [],
  ...parts,
});

/** A sound fence as the season plan sees it on 1 May 2027, a Saturday; its season runs from June to November. */
export function plannedFence(
  parts: Omit<Partial<PlannedFence>, 'candidates'> & { readonly candidates?: Partial<PlannedFence['candidates']> } = {},
): PlannedFence {
  return {
    siteRef: 'S',
    region: 'coast',
    consequence: 'ordinary',
    calendar: { today: '2027-05-01', opensOn: '2027-06-01', frozen: null },
    season: { opensOn: '2027-06-01', closesOn: '2027-11-30', allYear: false },
    dangerPosts: [],
    wornOutYears: null,
    promised: null,
    previous: null,
    ...parts,
    candidates: {
      fenceRef: 'F',
      standing: 'clear',
      endsStanding: null,
      terms: { snapLoss: 5000, yearlyDiscountRate: 0.04 },
      loss: { thisSeason: 200, toHorizon: 1600 },
      candidates: [worksOf(['post-swap'])],
      ...parts.candidates,
    },
  };
}
