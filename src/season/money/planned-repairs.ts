import type { PointRisks } from '../../forecast/point-risks.ts';
import type { WorksKind } from '../../forecast/works.ts';
import { type CalendarDay, yearOf } from '../../units/calendar-day.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import { worksCost } from '../works-cost.ts';
import { moneyFromAmount } from './money.ts';
import type { PlannedRepair } from './plan-fence.ts';

/** What repairs are planned from. */
interface RepairGround {
  readonly risks: Pick<PointRisks, 'found' | 'posts'>;
  /** Calendar year in which season 1 opens. */
  readonly seasonYear: number;
  readonly catalogue: WorksCatalogue;
}

/** Posts at which something was found that is to be mended, with the works that do it. */
const MENDING: readonly { readonly kind: WorksKind; readonly at: (found: PointRisks['found']) => readonly number[] }[] =
  [
    { kind: 'post-swap', at: ({ broken }) => broken },
    {
      kind: 'footing-reset',
      at: ({ broken, leaning, crackedCollars }) =>
        [...new Set([...leaning, ...crackedCollars])].filter((number) => !broken.includes(number)),
    },
  ];

/** What was found and is not mended, as one visit before season 1; none where nothing was. */
export function mendingRepairs({ risks, seasonYear, catalogue }: RepairGround): readonly PlannedRepair[] {
  const parts = MENDING.flatMap(({ kind, at }) => {
    const postCount = at(risks.found).length;
    return postCount === 0 ? [] : [{ kind, postCount }];
  });
  if (parts.length === 0) return [];
  const cost = moneyFromAmount(worksCost(parts, catalogue).price);
  return [{ what: 'mending what was found', firstYear: seasonYear, everyYears: null, cost }];
}

/**
 * Inspections in turn: so many years after the last, at once where that is past.
 * @param every whole years from one to the next; 0: none [a]
 * @param lastSeen day of the last inspection, or on which it was built
 */
export function inspectionRepairs(
  { risks, seasonYear, catalogue }: RepairGround,
  every: number,
  lastSeen: CalendarDay,
): readonly PlannedRepair[] {
  if (every === 0) return [];
  const { price } = worksCost([{ kind: 'inspect', postCount: risks.posts.length }], catalogue);
  const firstYear = Math.max(seasonYear, yearOf(lastSeen) + every);
  return [{ what: 'inspection', firstYear, everyYears: every, cost: moneyFromAmount(price) }];
}
