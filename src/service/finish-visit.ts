import type { Register } from '../register/database.ts';
import { readRecord } from '../register/record-store.ts';
import type { Visit, VisitWorks } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { dayAtSite } from './change-visit.ts';
import type { Clock } from './clock.ts';
import { type VisitingAccount, type VisitRefusal, visitInspectionRef, visitOfAccount } from './crew-visit.ts';
import { doVisit, type HoursUsed } from './do-visit.ts';
import { type EntryOutcome, enterOnce } from './enter-once.ts';
import type { WantedWorks } from './fence-quote.ts';

/** What was done at each fence of a visit: a fence of which nothing was done has an empty list. */
interface WhatWasDone {
  readonly done: ReadonlyMap<string, readonly WantedWorks[]>;
  readonly hours: HoursUsed;
}

/** Something typed that is no numbers of posts, or no hours. */
export interface UnreadableText {
  readonly kind: 'unreadable';
  readonly field: 'posts' | 'hours';
  readonly text: string;
}

/** What a crew says was done of a visit. */
export interface FinishedVisit {
  readonly entryId: string;
  readonly uid: string;
  /** Null: today, at the site. */
  readonly day: CalendarDay | null;
  /** Reads what was done of the visit, or says which text cannot be read. */
  readonly said: (visit: Visit) => WhatWasDone | { readonly unreadable: UnreadableText };
  /** All of it as it was sent, letter by letter: by this an entry that comes again is known for the same. */
  readonly sent: unknown;
  readonly remarks: string;
  /** Takes hours that are far off those planned. */
  readonly sure: boolean;
  readonly account: VisitingAccount;
}

/** Why a visit cannot be finished; asked: it can once it is confirmed. */
export type FinishRefusal =
  | VisitRefusal
  | UnreadableText
  | { readonly kind: 'refused' | 'asked'; readonly reasons: readonly string[] }
  /** Fences that were to be inspected, and of which nothing was entered. */
  | { readonly kind: 'not inspected'; readonly fenceRefs: readonly string[] };

/** What came of it. */
export interface FinishAnswer {
  readonly done: readonly { readonly fenceRef: string; readonly works: readonly VisitWorks[] }[];
  /** Fences that go back to the plan. */
  readonly returned: readonly string[];
  readonly notes: readonly string[];
}

/** The inspections that were made on a visit, by fence. */
async function inspectionsOf(register: Register, { uid, items }: Visit): Promise<ReadonlyMap<string, string>> {
  const made = new Map<string, string>();
  for (const { fenceRef } of items) {
    const ref = visitInspectionRef(uid, fenceRef);
    if (await readRecord(register.db, 'inspections', ref)) made.set(fenceRef, ref);
  }
  return made;
}

const sameWorks = (planned: Visit['items'][number], done: readonly WantedWorks[]): boolean =>
  planned.works.length === done.length &&
  planned.works.every(({ kind, posts }, index) => {
    const each = done[index]!;
    return each.kind === kind && (each.posts === 'all' || each.posts.join() === posts.join());
  });

async function work(
  register: Register,
  finished: FinishedVisit,
  visit: Visit,
  now: Clock,
): Promise<{ readonly answer: FinishAnswer } | { readonly refused: FinishRefusal }> {
  const said = finished.said(visit);
  if ('unreadable' in said) return { refused: said.unreadable };
  const inspections = await inspectionsOf(register, visit);
  const doneOf = ({ fenceRef, works }: Visit['items'][number]): readonly WantedWorks[] =>
    said.done.get(fenceRef) ?? works.map(({ kind, posts }) => ({ kind, posts }));
  // where nothing was done the fence goes back to the plan; what was seen of it is in the register all the same
  const idle = visit.items.filter((item) => doneOf(item).length === 0);
  const busy = visit.items.filter((item) => !idle.includes(item));
  const missing = busy.filter(
    (item) => doneOf(item).some(({ kind }) => kind === 'inspect') && !inspections.has(item.fenceRef),
  );
  if (missing.length > 0) {
    return { refused: { kind: 'not inspected', fenceRefs: missing.map(({ fenceRef }) => fenceRef) } };
  }
  const changed = new Map(
    busy.filter((item) => !sameWorks(item, doneOf(item))).map((item) => [item.fenceRef, doneOf(item)]),
  );
  const result = await doVisit(register, {
    uid: visit.uid,
    now,
    by: finished.account.displayName,
    because: finished.remarks,
    day: finished.day ?? (await dayAtSite(register, visit.siteRef, now)),
    only: null,
    except: idle.map(({ fenceRef }) => fenceRef),
    hours: said.hours,
    changed,
    inspections: new Map([...inspections].filter(([ref]) => busy.some(({ fenceRef }) => fenceRef === ref))),
    sure: finished.sure,
  });
  if (result.kind === 'no such visit') return { refused: { kind: 'no such visit' } };
  if (result.kind !== 'done') return { refused: { kind: result.kind, reasons: result.reasons } };
  return {
    answer: {
      done: result.done.map(({ fenceRef, works }) => ({ fenceRef, works })),
      returned: result.returned,
      notes: result.done.flatMap(({ notes }) => notes),
    },
  };
}

/** Notes what was done of a visit as the crew says it, once, with the inspections that were entered on it. */
export const finishVisit = (
  register: Register,
  finished: FinishedVisit,
  now: Clock,
): Promise<EntryOutcome<FinishAnswer, FinishRefusal>> => {
  const { account, entryId, uid, sent } = finished;
  const content = { uid, sent };
  const entry = { holder: `account:${account.id}`, id: entryId, kind: 'visit done', content };
  return enterOnce<FinishAnswer, FinishRefusal>(register, entry, now, async (inTx) => {
    const found = await visitOfAccount(inTx.db, finished.uid, account);
    return 'refused' in found ? found : work(inTx, finished, found.visit, now);
  });
};
