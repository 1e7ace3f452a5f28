import type { Register } from '../register/database.ts';
import { listVisits } from '../register/visit-store.ts';
import type { VisitWorks } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { OwnerFence } from './owner-money.ts';

/** What a visit of the season plan does at a fence that money says to replace now. */
export interface WorksMeanwhile {
  readonly fenceRef: string;
  readonly firstDay: CalendarDay;
  readonly state: 'proposed' | 'confirmed';
  readonly works: readonly VisitWorks[];
}

/** True where money says to replace a fence now. */
export const isDueNow = ({ isOutworn, ahead }: Pick<OwnerFence, 'isOutworn' | 'ahead'>): boolean =>
  isOutworn || ahead?.advice.kind === 'replace now';

/** True for works that mend what stands: they do not rebuild it, and do more than look. */
export const mendsPosts = (works: readonly Pick<VisitWorks, 'kind'>[]): boolean =>
  works.every(({ kind }) => kind !== 'rebuild') && works.some(({ kind }) => kind !== 'inspect');

/**
 * The visits to come to fences that are due for replacement now and that these visits mend and do not rebuild, by the fence's ref: the season plan goes by
 * posts, which may break in the coming season, money by rails and boards too.
 */
export async function worksMeanwhile(
  register: Register,
  fences: readonly Pick<OwnerFence, 'ref' | 'isOutworn' | 'ahead'>[],
  today: CalendarDay,
): Promise<ReadonlyMap<string, WorksMeanwhile>> {
  const due = new Set(fences.filter(isDueNow).map(({ ref }) => ref));
  if (due.size === 0) return new Map();
  const visits = await listVisits(register.db, { fenceRefs: [...due], from: today, states: ['proposed', 'confirmed'] });
  const found = new Map<string, WorksMeanwhile>();
  for (const { items, firstDay, state } of visits) {
    for (const { fenceRef, works } of items) {
      // the first visit of a fence is the one that counts
      if (!due.has(fenceRef) || found.has(fenceRef) || !mendsPosts(works)) continue;
      found.set(fenceRef, { fenceRef, firstDay, state: state === 'confirmed' ? state : 'proposed', works });
    }
  }
  return found;
}
