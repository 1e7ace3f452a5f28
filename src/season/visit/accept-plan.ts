import type { CalendarDay } from '../../units/calendar-day.ts';
import { changedVisit, sameItems } from './change-visit.ts';
import type { DayRequest, DaySpan, LaidOut } from './lay-out-days.ts';
import type { Visit } from './visit.ts';
import type { WeekVisit } from './visits-of-plan.ts';
import { mondayOf } from './week-of-day.ts';

/** What becomes of the visits that stand once a plan is accepted. */
export interface AcceptedVisits {
  /** As they were, to the day; where their hours or prices are others by now, with these. */
  readonly kept: readonly Visit[];
  /** The same uid, on other days, with another crew or other fences. */
  readonly moved: readonly Visit[];
  /** Those as they stood before, in the same order. */
  readonly movedFrom: readonly Visit[];
  readonly created: readonly Visit[];
  /** No longer in the plan. */
  readonly cancelled: readonly Visit[];
  /** No days of their week hold them: they stay out, and the next plan has their fences again. */
  readonly withoutDays: readonly WeekVisit[];
}

/** What a plan is accepted on. */
export interface AcceptInputs {
  readonly planId: number;
  /** Moment of the acceptance (ISO 8601, UTC). */
  readonly at: string;
  readonly today: CalendarDay;
  /** Monday of the first week of the plan. */
  readonly firstWeek: CalendarDay;
  readonly weekVisits: readonly WeekVisit[];
  /** All that stand: proposed and confirmed. */
  readonly standing: readonly Visit[];
  /** Fences that need nothing of the plan any more: what it wanted there was done since. */
  readonly doneFences: ReadonlySet<string>;
  /** Lays out one week of one crew beside what stands there. */
  readonly layOut: (
    week: { readonly crewRef: string; readonly monday: CalendarDay; readonly beside: readonly Visit[] },
    requests: readonly Omit<DayRequest, 'place'>[],
  ) => ReadonlyMap<string, LaidOut | null>;
  /** A uid that was never given; `index` counts the new visits of the plan. */
  readonly newUid: (visit: WeekVisit, index: number) => string;
}

/**
 * True where a plan may move or cancel a visit: proposed, by a plan and not by the office, and not in the days between today
 * and its first week; where its days are past, whoever proposed it.
 */
const isPlans = ({ state, firstDay, lastDay, planId }: Visit, { today, firstWeek }: AcceptInputs): boolean =>
  state === 'proposed' && (lastDay < today || (planId !== null && firstDay >= firstWeek));

/** Fences that two visits share. */
const sharedFences = (a: Pick<Visit, 'items'>, b: Pick<Visit, 'items'>): number => {
  const refs = new Set(a.items.map(({ fenceRef }) => fenceRef));
  return b.items.filter(({ fenceRef }) => refs.has(fenceRef)).length;
};

/** How much a planned visit is one that stands: 0 for not at all. */
function likeness(planned: WeekVisit, visit: Visit): number {
  const shared = planned.siteRef === visit.siteRef ? sharedFences(planned, visit) : 0;
  if (shared === 0) return 0;
  const same = sameItems(planned.items, visit.items);
  const crew = planned.crewRef === visit.crewRef;
  const week = planned.week === mondayOf(visit.firstDay);
  // each criterion outweighs those after it
  return (
    Number(same && crew) * 4e9 +
    Number(same) * 2e9 +
    Number(crew && week) * 1e9 +
    shared * 4 +
    Number(crew) * 2 +
    Number(week)
  );
}

/** Gives each planned visit the standing one that it is most like, none twice. */
function matched(planned: readonly WeekVisit[], standing: readonly Visit[]): ReadonlyMap<WeekVisit, Visit> {
  const pairs = planned
    .flatMap((each, index) => standing.map((visit) => ({ each, index, visit, score: likeness(each, visit) })))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score || a.index - b.index || (a.visit.uid < b.visit.uid ? -1 : 1));
  const found = new Map<WeekVisit, Visit>();
  const used = new Set<string>();
  for (const { each, visit } of pairs) {
    if (found.has(each) || used.has(visit.uid)) continue;
    found.set(each, visit);
    used.add(visit.uid);
  }
  return found;
}

/** The visits of a plan without fences that others visit already or that need nothing any more. */
function stillWanted({ weekVisits, doneFences }: AcceptInputs, fixed: readonly Visit[]): readonly WeekVisit[] {
  const gone = new Set([...doneFences, ...fixed.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef))]);
  return weekVisits.flatMap((visit) => {
    const items = visit.items.filter(({ fenceRef }) => !gone.has(fenceRef));
    return items.length === 0 ? [] : [{ ...visit, items }];
  });
}

/** True where two visits take the same hours and cost the same, as their day sheets show them. */
const sameContent = (a: Visit, b: Visit): boolean =>
  a.travelPersonHours === b.travelPersonHours && JSON.stringify(a.items) === JSON.stringify(b.items);

const strictest = ({ items }: WeekVisit): DayRequest['mustRank'] => {
  const ranks = items.map(({ mustRank }) => mustRank).filter((rank) => rank > 0);
  return ranks.length === 0 ? 0 : (Math.min(...ranks) as DayRequest['mustRank']);
};

function daysOf(
  wanted: readonly WeekVisit[],
  fixed: readonly Visit[],
  before: ReadonlyMap<WeekVisit, Visit>,
  { layOut }: AcceptInputs,
): ReadonlyMap<WeekVisit, LaidOut | null> {
  const slots = new Map<string, WeekVisit[]>();
  for (const visit of wanted) {
    const slot = `${visit.week} ${visit.crewRef}`;
    slots.set(slot, [...(slots.get(slot) ?? []), visit]);
  }
  const days = new Map<WeekVisit, LaidOut | null>();
  for (const ofSlot of slots.values()) {
    const { week: monday, crewRef } = ofSlot[0]!;
    const beside = fixed.filter(
      (visit) => visit.crewRef === crewRef && mondayOf(visit.firstDay) <= monday && visit.lastDay >= monday,
    );
    const standingOf = (visit: WeekVisit): DaySpan | null => {
      const old = before.get(visit);
      return old && old.crewRef === crewRef && mondayOf(old.firstDay) === monday ? old : null;
    };
    const requests = ofSlot.map((visit, index) => ({
      key: String(index).padStart(4, '0'),
      siteRef: visit.siteRef,
      workPersonHours: visit.items.reduce((sum, { personHours }) => sum + personHours, 0),
      travelPersonHours: visit.travelPersonHours,
      mustRank: strictest(visit),
      standing: standingOf(visit),
    }));
    const laid = layOut({ crewRef, monday, beside }, requests);
    for (const [index, visit] of ofSlot.entries()) days.set(visit, laid.get(requests[index]!.key) ?? null);
  }
  return days;
}

/**
 * What accepting a plan makes of the visits that stand. A visit that the plan has again keeps its uid, and its days where they
 * hold it; one that it has elsewhere keeps its uid and is moved; proposed ones that it has no longer are cancelled. Confirmed
 * visits and those that the office proposed itself are never touched, nor proposed ones of the days before the plan begins; fences that they visit, or that were done
 * since the plan was made, are taken out of the plan's visits.
 */
export function acceptPlan(inputs: AcceptInputs): AcceptedVisits {
  const { standing, planId, at, newUid } = inputs;
  const open = standing.filter((visit) => isPlans(visit, inputs));
  const fixed = standing.filter((visit) => !isPlans(visit, inputs));
  const wanted = stillWanted(inputs, fixed);
  const before = matched(wanted, open);
  const days = daysOf(wanted, fixed, before, inputs);
  const kept: Visit[] = [];
  const moved: Visit[] = [];
  const movedFrom: Visit[] = [];
  const created: Visit[] = [];
  const withoutDays: WeekVisit[] = [];
  const used = new Set<string>();
  for (const planned of wanted) {
    const laid = days.get(planned) ?? null;
    if (!laid) {
      withoutDays.push(planned);
      continue;
    }
    const { siteRef, crewRef, items } = planned;
    const { firstDay, lastDay, travelPersonHours } = laid;
    const old = before.get(planned);
    if (!old) {
      const uid = newUid(planned, created.length + 1);
      created.push({
        uid,
        siteRef,
        crewRef,
        firstDay,
        lastDay,
        startsAt: null,
        state: 'proposed',
        sequence: 0,
        travelPersonHours,
        items,
        planId,
        note: '',
        changedAt: at,
      });
      continue;
    }
    used.add(old.uid);
    const now = changedVisit(old, { crewRef, firstDay, lastDay, travelPersonHours, items, planId }, at);
    if (now.sequence === old.sequence) {
      kept.push(sameContent(now, old) ? old : now);
      continue;
    }
    moved.push(now);
    movedFrom.push(old);
  }
  const cancelled = open
    .filter(({ uid }) => !used.has(uid))
    .map((visit) => changedVisit(visit, { state: 'cancelled' }, at));
  return { kept, moved, movedFrom, created, cancelled, withoutDays };
}
