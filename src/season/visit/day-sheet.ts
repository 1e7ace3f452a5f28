import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { addDays, type CalendarDay, dayNumber } from '../../units/calendar-day.ts';
import { inSeason } from '../storm-season.ts';
import type { Place } from '../travel.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import { type CheckList, checkList } from './check-list.ts';
import { inDayOrder } from './day-order.ts';
import { type MaterialNeed, materialNeeds } from './load-list.ts';
import type { Visit, VisitItem, VisitState } from './visit.ts';
import { type VisitReminder, visitReminders } from './visit-reminders.ts';

/** Somebody to speak to at a site. */
export interface SheetOwner {
  readonly name: string;
  readonly language: string;
  /** Mail address, or the postal address where there is none; null where neither is known. */
  readonly reachedAt: string | null;
}

/** A site as a day sheet names it. */
export interface SheetSite {
  readonly ref: string;
  readonly name: string;
  readonly place: string;
  readonly units: 'us' | 'metric';
  readonly where: Place | null;
  /** First and last day of frozen ground, `MM-DD`; null where it does not freeze. */
  readonly frozen: { readonly opens: string; readonly closes: string } | null;
}

/** A fence as a day sheet takes it. */
export interface SheetFenceFacts {
  readonly facts: FenceFacts;
  /** What end A is called. */
  readonly namedEnd: string;
  readonly style: string;
  readonly consequence: string;
  readonly accessNote: string;
  readonly note: string;
  readonly owners: readonly SheetOwner[];
}

/** One fence of a visit: what to do, and every post. */
export interface SheetFence extends Omit<SheetFenceFacts, 'facts' | 'owners'>, CheckList {
  readonly ref: string;
  readonly heightM: number;
  readonly runLengthM: number;
  readonly works: VisitItem['works'];
  readonly personHours: number;
  readonly mustRank: VisitItem['mustRank'];
}

/** One site of a day. */
export interface SheetStop {
  readonly uid: string;
  readonly state: VisitState;
  readonly site: SheetSite;
  readonly startsAt: string | null;
  /** Which day of the visit it is, from 1, and of how many. */
  readonly dayOfVisit: number;
  readonly daysOfVisit: number;
  readonly note: string;
  readonly travelPersonHours: number;
  /** Of the whole visit, without the way [h]. */
  readonly personHours: number;
  /** Each owner once, with the fences that are theirs. */
  readonly owners: readonly (SheetOwner & { readonly fenceRefs: readonly string[] })[];
  readonly reminders: readonly VisitReminder[];
  readonly fences: readonly SheetFence[];
}

/** One day of one crew. */
export interface DaySheet {
  readonly crew: { readonly ref: string; readonly name: string };
  readonly day: CalendarDay;
  /** Who goes out. */
  readonly people: readonly string[];
  readonly stops: readonly SheetStop[];
  /** What to load for the visits that begin this day, all their days long. */
  readonly load: readonly MaterialNeed[];
}

/** What a day sheet is made from. */
export interface DaySheetInputs {
  readonly crew: { readonly ref: string; readonly name: string; readonly base: Place | null };
  readonly day: CalendarDay;
  readonly people: readonly string[];
  /** Visits of the crew that have a day on this one, whatever their state. */
  readonly visits: readonly Visit[];
  readonly sites: ReadonlyMap<string, SheetSite>;
  readonly fences: ReadonlyMap<string, SheetFenceFacts>;
  readonly catalogue: WorksCatalogue;
}

/** States in which a visit is on the sheet: those that are missed or cancelled are not gone to. */
export const STATES_ON_SHEET: readonly VisitState[] = ['proposed', 'confirmed', 'done'];

function known<V>(map: ReadonlyMap<string, V>, ref: string, what: string): V {
  const found = map.get(ref);
  if (found === undefined) throw new Error(`day sheet: ${what} ${ref} of a visit is not among what was loaded`);
  return found;
}

function sheetFence(item: VisitItem, { facts, ...fence }: SheetFenceFacts, day: CalendarDay): SheetFence {
  const { namedEnd, style, consequence, accessNote, note } = fence;
  return {
    ref: item.fenceRef,
    namedEnd,
    style,
    consequence,
    accessNote,
    note,
    heightM: facts.run.heightM,
    runLengthM: facts.run.runLengthM,
    works: item.works,
    personHours: item.personHours,
    mustRank: item.mustRank,
    ...checkList(facts, item.works, day),
  };
}

function ownersOf(items: readonly VisitItem[], fences: DaySheetInputs['fences']): SheetStop['owners'] {
  const owners = new Map<string, SheetStop['owners'][number]>();
  for (const { fenceRef } of items) {
    for (const owner of known(fences, fenceRef, 'fence').owners) {
      const key = JSON.stringify([owner.name, owner.reachedAt]);
      owners.set(key, { ...owner, fenceRefs: [...(owners.get(key)?.fenceRefs ?? []), fenceRef] });
    }
  }
  return [...owners.values()];
}

/** Reminders that matter on the day: frozen ground only where it may be frozen then. */
const remindersOn = (visit: Visit, site: SheetSite, { day, catalogue }: DaySheetInputs): readonly VisitReminder[] =>
  visitReminders(visit, catalogue).filter(
    ({ kind }) => kind !== 'frozen-ground' || (site.frozen !== null && inSeason(site.frozen, day.slice(5))),
  );

function sheetStop(visit: Visit, inputs: DaySheetInputs): SheetStop {
  const site = known(inputs.sites, visit.siteRef, 'site');
  return {
    uid: visit.uid,
    state: visit.state,
    site,
    startsAt: visit.startsAt,
    dayOfVisit: dayNumber(inputs.day) - dayNumber(visit.firstDay) + 1,
    daysOfVisit: dayNumber(visit.lastDay) - dayNumber(visit.firstDay) + 1,
    note: visit.note,
    travelPersonHours: visit.travelPersonHours,
    personHours: visit.items.reduce((sum, { personHours }) => sum + personHours, 0),
    owners: ownersOf(visit.items, inputs.fences),
    reminders: remindersOn(visit, site, inputs),
    fences: visit.items.map((item) => sheetFence(item, known(inputs.fences, item.fenceRef, 'fence'), inputs.day)),
  };
}

/**
 * A crew's day: its sites in order, who to speak to, what to see to first, every post of every fence, and what to load. Throws
 * where a visit names a site or a fence that was not handed over.
 */
export function daySheet(inputs: DaySheetInputs): DaySheet {
  const { crew, day, people, sites, catalogue } = inputs;
  const today = inputs.visits.filter(
    ({ state, firstDay, lastDay }) => STATES_ON_SHEET.includes(state) && firstDay <= day && day <= lastDay,
  );
  const placed = today.map((visit) => ({ visit, place: known(sites, visit.siteRef, 'site').where }));
  const begun = today.filter(({ state, firstDay }) => firstDay === day && state !== 'done');
  return {
    crew: { ref: crew.ref, name: crew.name },
    day,
    people,
    stops: inDayOrder(placed, crew.base).map((visit) => sheetStop(visit, inputs)),
    load: materialNeeds(
      begun.flatMap(({ items }) => items.flatMap(({ works }) => works)),
      catalogue,
    ),
  };
}

/** The Monday of a day's week and the six days after it. */
export function daysOfWeek(day: CalendarDay): readonly CalendarDay[] {
  // 1970-01-01 was a Thursday.
  const sinceMonday = (dayNumber(day) + 3) % 7;
  return Array.from({ length: 7 }, (_, index) => addDays(day, index - sinceMonday));
}
