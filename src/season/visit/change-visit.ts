import type { Visit, VisitItem, VisitState } from './visit.ts';

/** What can become of a visit in each state. */
const NEXT: Readonly<Record<VisitState, readonly VisitState[]>> = {
  proposed: ['confirmed', 'done', 'missed', 'cancelled'],
  confirmed: ['confirmed', 'done', 'missed', 'cancelled'],
  done: [],
  missed: [],
  cancelled: [],
};

const WHY_NOT: Readonly<Partial<Record<VisitState, string>>> = {
  done: 'it is done already, and what was done is in the register',
  missed: 'it was missed, and its fences are back in the plan',
  cancelled: 'it is cancelled, and its fences are back in the plan',
};

/** Why a visit cannot become confirmed, done, missed or cancelled any more; null where it can. */
export const whyNotNow = ({ state }: Pick<Visit, 'state'>, wanted: VisitState): string | null =>
  NEXT[state].includes(wanted) ? null : (WHY_NOT[state] ?? `it is ${state}`);

/** What whoever has a visit in a calendar sees of it. */
const shown = ({ crewRef, firstDay, lastDay, startsAt, items }: Visit): string =>
  JSON.stringify([crewRef, firstDay, lastDay, startsAt, items.map(({ fenceRef, works }) => [fenceRef, works])]);

/** In a calendar a visit is tentative, sure or called off. */
const standsAs = ({ state }: Visit): string =>
  state === 'proposed' ? 'tentative' : state === 'confirmed' || state === 'done' ? 'sure' : 'off';

/**
 * A visit with what changes of it; its sequence grows by one where a calendar must see that: another crew, day, hour, fence
 * or works, or another standing.
 * @param at moment of the change (ISO 8601, UTC)
 */
export function changedVisit(
  visit: Visit,
  change: Partial<Omit<Visit, 'uid' | 'siteRef' | 'sequence' | 'changedAt'>>,
  at: string,
): Visit {
  const changed: Visit = { ...visit, ...change, changedAt: at };
  const seen = shown(changed) !== shown(visit) || standsAs(changed) !== standsAs(visit);
  return { ...changed, sequence: visit.sequence + Number(seen) };
}

/** True where two lists of items do the same at the same fences. */
export const sameItems = (a: readonly VisitItem[], b: readonly VisitItem[]): boolean =>
  a.length === b.length &&
  a.every(({ fenceRef, optionKey }, index) => b[index]!.fenceRef === fenceRef && b[index]!.optionKey === optionKey);
