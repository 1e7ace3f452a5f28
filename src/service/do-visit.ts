import type { Register } from '../register/database.ts';
import { inTransaction } from '../register/in-transaction.ts';
import { readRecord } from '../register/record-store.ts';
import { readVisit, type VisitAct } from '../register/visit-store.ts';
import { type DoneItem, storeDoneVisit, visitOfEntry } from '../register/visit-work-store.ts';
import { changedVisit, whyNotNow } from '../season/visit/change-visit.ts';
import type { Visit, VisitItem } from '../season/visit/visit.ts';
import { worksCost } from '../season/works-cost.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { dayAtSite, type VisitRequest } from './change-visit.ts';
import { isoUtc } from './clock.ts';
import { type DoneWorks, enterDoneWorks } from './enter-done-works.ts';
import type { WantedWorks } from './fence-quote.ts';
import { loadCatalogue } from './season-register.ts';
import { tellOfVisit } from './tell-of-visit.ts';

/** How many times the planned hours, or which part of them, is asked about before it is taken [-]; judgement. */
const DOUBTFUL_RATIO = 5;
/** Most hours that one fence can take [h]. */
const MOST_HOURS = 2000;

/** Hours of the crew's people, without the way [h]: of the whole visit, shared as planned, or of each fence. */
export type HoursUsed =
  | { readonly kind: 'none' }
  | { readonly kind: 'visit'; readonly personHours: number }
  | { readonly kind: 'fences'; readonly personHours: ReadonlyMap<string, number> };

/** What was done of a visit. */
export interface DoRequest extends VisitRequest {
  readonly day: CalendarDay;
  /** Fences at which something was done; null: all. */
  readonly only: readonly string[] | null;
  /** Fences at which nothing was done. */
  readonly except: readonly string[];
  readonly hours: HoursUsed;
  /** What was done otherwise than planned, by fence. */
  readonly changed: ReadonlyMap<string, readonly WantedWorks[]>;
  /** Inspections that were made on it, by fence; they are in the register already. */
  readonly inspections: ReadonlyMap<string, string>;
  /** Takes hours that are far off those planned. */
  readonly sure: boolean;
}

/** Everything at one fence of a visit that was done. */
export type DoneAtFence = DoneItem & Pick<DoneWorks, 'records' | 'notes'>;

/** What came of it. */
export type DoResult =
  | { readonly kind: 'no such visit' }
  | { readonly kind: 'refused'; readonly visit: Visit; readonly reasons: readonly string[] }
  | { readonly kind: 'asked'; readonly visit: Visit; readonly reasons: readonly string[] }
  | {
      readonly kind: 'done';
      readonly visit: Visit;
      readonly done: readonly DoneAtFence[];
      /** Fences that go back to the plan. */
      readonly returned: readonly string[];
    };

/** Ends the transaction with nothing stored. */
class NotDone extends Error {
  readonly result: DoResult;
  constructor(result: DoResult) {
    super(result.kind);
    this.result = result;
  }
}

/** Which items were done, or why they cannot be told. */
function doneItems(visit: Visit, request: DoRequest): readonly VisitItem[] | readonly string[] {
  const { only, except, changed, inspections, hours } = request;
  const known = new Set(visit.items.map(({ fenceRef }) => fenceRef));
  const named = [
    ...(only ?? []),
    ...except,
    ...changed.keys(),
    ...inspections.keys(),
    ...(hours.kind === 'fences' ? hours.personHours.keys() : []),
  ];
  const stray = [...new Set(named)].filter((ref) => !known.has(ref));
  if (stray.length > 0)
    return [`fence ${stray.join(', ')} is not on this visit; its fences are ${[...known].join(', ')}`];
  const done = visit.items.filter(({ fenceRef }) => (only?.includes(fenceRef) ?? true) && !except.includes(fenceRef));
  if (done.length === 0) return ['no fence is left: a visit on which nothing was done was missed'];
  const idle = [...changed.keys(), ...inspections.keys(), ...(hours.kind === 'fences' ? hours.personHours.keys() : [])];
  const contradicted = [...new Set(idle)].filter((ref) => !done.some(({ fenceRef }) => fenceRef === ref));
  return contradicted.length > 0 ? [`fence ${contradicted.join(', ')} is said to be done and not to be done`] : done;
}

const isItems = (found: readonly VisitItem[] | readonly string[]): found is readonly VisitItem[] =>
  typeof found[0] === 'object';

/** Why an inspection cannot have been made at a fence on this visit; null where it can. */
async function inspectionFault(
  register: Register,
  ref: string,
  { fenceRef, uid, from, to }: { fenceRef: string; uid: string; from: CalendarDay; to: CalendarDay },
): Promise<string | null> {
  const inspection = await readRecord(register.db, 'inspections', ref);
  if (!inspection)
    return `fence ${fenceRef}: there is no inspection ${ref} in the register; enter it with "stormpale inspect" first`;
  if (inspection.fenceRef !== fenceRef)
    return `inspection ${ref} is one of fence ${inspection.fenceRef}, not of ${fenceRef}`;
  if (inspection.day < from || inspection.day > to)
    return `inspection ${ref} is of ${inspection.day}, and the visit was ${from === to ? `on ${to}` : `from ${from} to ${to}`}`;
  const other = await visitOfEntry(register.db, 'inspection', ref);
  return other && other.uid !== uid ? `inspection ${ref} was made on visit ${other.uid}` : null;
}

/** Hours of each fence: as said, or those of the visit shared by what is planned for what was done. */
function hoursByFence(
  done: readonly { readonly fenceRef: string; readonly planned: number }[],
  hours: HoursUsed,
): ReadonlyMap<string, number> {
  if (hours.kind === 'none') return new Map();
  if (hours.kind === 'fences') return hours.personHours;
  const all = done.reduce((sum, { planned }) => sum + planned, 0);
  return new Map(
    done.map(({ fenceRef, planned }) => [
      fenceRef,
      all > 0 ? (hours.personHours * planned) / all : hours.personHours / done.length,
    ]),
  );
}

/** Days of a visit that was done: its own as far as it went, else the day on which it was done. */
const daysDone = ({ firstDay, lastDay }: Visit, day: CalendarDay): Pick<Visit, 'firstDay' | 'lastDay'> =>
  firstDay <= day && day <= lastDay ? { firstDay, lastDay: day } : { firstDay: day, lastDay: day };

async function work(register: Register, request: DoRequest): Promise<DoResult> {
  const { uid, day, now } = request;
  const visit = await readVisit(register.db, uid);
  if (!visit) return { kind: 'no such visit' };
  const refused = (reasons: readonly string[]): DoResult => ({ kind: 'refused', visit, reasons });
  const never = whyNotNow(visit, 'done');
  if (never !== null) return refused([never]);
  const today = await dayAtSite(register, visit.siteRef, now);
  if (day > today) return refused([`${day} is still to come: at the site it is ${today}`]);
  const items = doneItems(visit, request);
  if (!isItems(items)) return refused(items);
  const at = isoUtc(now());
  const days = daysDone(visit, day);
  const catalogue = await loadCatalogue(register.db);
  const faults: string[] = [];
  const doneWorks: DoneWorks[] = [];
  let entered = 0;
  for (const item of items) {
    const result = await enterDoneWorks(register, item, {
      wanted: request.changed.get(item.fenceRef) ?? null,
      day,
      catalogue,
      at,
      refOf: (index) => `${uid}.${String(entered + index).padStart(3, '0')}`,
    });
    faults.push(...result.faults);
    doneWorks.push(result);
    entered += result.records.length;
    const ref = request.inspections.get(item.fenceRef);
    const needed = result.works.some(({ kind }) => kind === 'inspect');
    if (needed && ref === undefined) {
      faults.push(
        `fence ${item.fenceRef} was to be inspected: enter what was found with "stormpale inspect ${item.fenceRef} --day ${day} …" and name that inspection with --inspection ${item.fenceRef}=REF`,
      );
    }
    if (ref !== undefined) {
      const fault = await inspectionFault(register, ref, {
        fenceRef: item.fenceRef,
        uid,
        from: days.firstDay,
        to: day,
      });
      if (fault !== null) faults.push(fault);
    }
  }
  if (faults.length > 0) return refused(faults);
  const planned = items.map(({ fenceRef }, index) => ({
    fenceRef,
    planned: worksCost(doneWorks[index]!.works, catalogue).personHours,
  }));
  const hours = hoursByFence(planned, request.hours);
  const doubts = planned.flatMap(({ fenceRef, planned: expected }) => {
    const used = hours.get(fenceRef);
    if (used === undefined) return [];
    if (!(used > 0 && used <= MOST_HOURS)) return [`fence ${fenceRef}: ${used} hours cannot be`];
    const far = used > expected * DOUBTFUL_RATIO || used < expected / DOUBTFUL_RATIO;
    return far ? [`fence ${fenceRef}: ${used.toFixed(1)} hours, and ${expected.toFixed(1)} were planned`] : [];
  });
  if (doubts.some((doubt) => doubt.endsWith('cannot be'))) return refused(doubts);
  if (doubts.length > 0 && !request.sure) return { kind: 'asked', visit, reasons: doubts };
  const done: readonly DoneAtFence[] = items.map(({ fenceRef }, index) => {
    const { works, records, notes } = doneWorks[index]!;
    return {
      fenceRef,
      works,
      records,
      notes,
      personHours: hours.get(fenceRef) ?? null,
      worksRefs: records.map(({ ref }) => ref),
      inspectionRef: request.inspections.get(fenceRef) ?? null,
    };
  });
  const after = changedVisit(visit, { state: 'done', ...days }, at);
  const act: VisitAct = { by: request.by, because: request.because };
  await storeDoneVisit(register.db, after, done, act);
  await tellOfVisit(register, after, { today, at, planNumber: null });
  const stored = (await readVisit(register.db, uid))!;
  const returned = visit.items
    .map(({ fenceRef }) => fenceRef)
    .filter((ref) => !done.some(({ fenceRef }) => fenceRef === ref));
  return { kind: 'done', visit: stored, done, returned };
}

/** What entering would come to, by the same checks; nothing is stored. */
export async function previewDone(register: Register, request: DoRequest): Promise<DoResult> {
  try {
    return await register.db.transaction().execute(async (tx): Promise<DoResult> => {
      throw new NotDone(await work({ ...register, db: tx }, request));
    });
  } catch (error) {
    if (error instanceof NotDone) return error.result;
    throw error;
  }
}

/**
 * Notes what was done of a visit, in one transaction: its works enter the register by the checks of an import, inspections
 * and hours are tied to it, and fences at which nothing was done go back to the plan. Nothing is stored where any of it is
 * refused or asked about; within a transaction of the caller, the caller must end it so.
 */
export async function doVisit(register: Register, request: DoRequest): Promise<DoResult> {
  try {
    return await inTransaction(register.db, async (tx): Promise<DoResult> => {
      const result = await work({ ...register, db: tx }, request);
      if (result.kind !== 'done') throw new NotDone(result);
      return result;
    });
  } catch (error) {
    if (error instanceof NotDone) return error.result;
    throw error;
  }
}
