import type { AcceptedVisits } from './accept-plan.ts';
import type { Visit } from './visit.ts';

/** Where a visit has fences: its days and crew. */
export type VisitPlace = Pick<Visit, 'crewRef' | 'firstDay' | 'lastDay'>;

/** Fences of a site that go together from one day and crew to another. */
export interface FenceMove {
  readonly siteRef: string;
  /** In the order of the refs. */
  readonly fenceRefs: readonly string[];
  readonly from: VisitPlace;
  /** The same days and crew where only what is done changes. */
  readonly to: VisitPlace;
}

const placeOf = ({ crewRef, firstDay, lastDay }: Visit): VisitPlace => ({ crewRef, firstDay, lastDay });

interface Placed {
  readonly visit: Visit;
  readonly works: string;
}

const byFence = (visits: readonly Visit[]): ReadonlyMap<string, Placed> =>
  new Map(
    visits.flatMap((visit) =>
      visit.items.map(({ fenceRef, works }) => [fenceRef, { visit, works: JSON.stringify(works) }] as const),
    ),
  );

/**
 * The fences that are proposed for other days than before, come with another crew or have something else done, from where to
 * where, by the old day and the site; those that go the same way are put together. A fence that leaves a visit for another
 * one is among them; one that nothing was proposed for is new, and one that has no visit any more is called off: neither is.
 */
export function fenceMoves({ moved, movedFrom, created, cancelled }: AcceptedVisits): readonly FenceMove[] {
  const before = byFence([...movedFrom, ...cancelled]);
  const groups = new Map<string, { readonly move: Omit<FenceMove, 'fenceRefs'>; readonly fenceRefs: string[] }>();
  for (const [fenceRef, { visit, works }] of byFence([...moved, ...created])) {
    const old = before.get(fenceRef);
    if (!old) continue;
    const [from, to] = [placeOf(old.visit), placeOf(visit)];
    const isSamePlace = JSON.stringify(from) === JSON.stringify(to);
    if (isSamePlace && works === old.works) continue;
    const key = JSON.stringify([visit.siteRef, from, to]);
    const group = groups.get(key) ?? { move: { siteRef: visit.siteRef, from, to }, fenceRefs: [] };
    groups.set(key, group);
    group.fenceRefs.push(fenceRef);
  }
  return [...groups.values()]
    .map(({ move, fenceRefs }) => ({ ...move, fenceRefs: fenceRefs.sort() }))
    .sort((a, b) => order(a.from.firstDay, b.from.firstDay) || order(a.siteRef, b.siteRef));
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
