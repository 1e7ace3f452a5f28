import type { DateTime } from 'luxon';
import type { Register } from '../../src/register/database.ts';
import { listVisits } from '../../src/register/visit-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { acceptSeasonPlan } from '../../src/service/accept-season-plan.ts';
import { cancelVisit, confirmVisit, missVisit } from '../../src/service/change-visit.ts';
import { doVisit } from '../../src/service/do-visit.ts';
import { makeSeasonPlan } from '../../src/service/make-season-plan.ts';
import { storeSeasonPlan } from '../../src/service/store-season-plan.ts';
import { addDays } from '../../src/units/calendar-day.ts';
import { ENTERED } from './office-acts.ts';

/** The plan of each year is made and accepted on this day, `MM-DD`. */
const PLAN_DAY = '02-03';
/** A visit is confirmed so many days before its first day [d]. */
const CONFIRMED_AHEAD = 6;
const ACT = { by: 'Ten Years', because: 'a simulated year' } as const;
const WEEKS = 8;

async function acceptPlan(register: Register, now: DateTime): Promise<void> {
  const clock = () => now;
  const made = await makeSeasonPlan(register, { now: clock, weeks: WEEKS, onProgress: () => undefined });
  const { number } = await storeSeasonPlan(register, made, { now: clock, store: true });
  if (number === null) throw new Error('the plan was not stored');
  const accepted = await acceptSeasonPlan(register, { number, now: clock, ...ACT });
  if (accepted.kind !== 'accepted')
    throw new Error(`the plan of ${now.toISODate()} was not accepted: ${accepted.kind}`);
}

/** What was done of a visit: all but what the office acts on by itself, and what a crew would have to read first. */
const doneOf = ({ items }: Visit): readonly string[] =>
  items
    .filter(({ fenceRef, works }) => !(fenceRef in ENTERED) && works.every(({ kind }) => kind !== 'inspect'))
    .map(({ fenceRef }) => fenceRef);

async function endVisit(register: Register, visit: Visit, now: DateTime): Promise<void> {
  const clock = () => now;
  const only = doneOf(visit);
  if (only.length === 0) {
    await missVisit(register, { uid: visit.uid, now: clock, ...ACT });
    return;
  }
  const done = await doVisit(register, {
    uid: visit.uid,
    now: clock,
    day: visit.lastDay,
    only,
    except: [],
    hours: { kind: 'none' },
    changed: new Map(),
    inspections: new Map(),
    sure: true,
    ...ACT,
  });
  // works that the fence has no use for any more are not done, as a crew would find
  if (done.kind !== 'done') await missVisit(register, { uid: visit.uid, now: clock, ...ACT });
}

/**
 * What office and crews do with visits on one of the simulated days: a season plan each spring, accepted; its visits confirmed some days before,
 * every third of them then moved by a week, every fifth called off; and done, or missed where nothing could be.
 * @param today the day, the same at every site of the demo at the hour of `now`
 */
export async function actOnVisits(register: Register, now: DateTime, today: string): Promise<void> {
  if (today.slice(5) === PLAN_DAY) await acceptPlan(register, now);
  const clock = () => now;
  const standing = await listVisits(register.db, { states: ['proposed', 'confirmed'] });
  for (const [index, visit] of standing.entries()) {
    const isDue = addDays(today, CONFIRMED_AHEAD) >= visit.firstDay && visit.firstDay > today;
    if (visit.state === 'proposed' && isDue) {
      const act = { uid: visit.uid, now: clock, ...ACT };
      await confirmVisit(register, { ...act, day: visit.firstDay, startsAt: '08:30', crewRef: null, sure: true });
      if (index % 5 === 4) await cancelVisit(register, act);
    } else if (
      visit.state === 'confirmed' &&
      addDays(today, 1) === visit.firstDay &&
      visit.sequence % 3 === 1 &&
      index % 3 === 2
    ) {
      const day = addDays(visit.firstDay, 7);
      await confirmVisit(register, {
        uid: visit.uid,
        now: clock,
        day,
        startsAt: null,
        crewRef: null,
        sure: true,
        ...ACT,
      });
    } else if (visit.lastDay < today) {
      await endVisit(register, visit, now);
    }
  }
}

/** A change of a visit that its owners are to hear of at once. */
export interface SeenVisitChange {
  readonly uid: string;
  readonly at: string;
  readonly state: string;
  readonly sequence: number;
}

/** Every time a visit was proposed anew, confirmed or moved, by what the register keeps of its visits and not by what it told. */
export async function visitChanges({ db }: Register): Promise<readonly SeenVisitChange[]> {
  const rows = await db
    .selectFrom('visit_changes')
    .select(['uid', 'at', 'state', 'sequence', 'last_day'])
    .orderBy('id')
    .execute();
  const seen = new Map<string, number>();
  const found: SeenVisitChange[] = [];
  for (const { uid, at, state, sequence, last_day } of rows) {
    const isNew = seen.get(uid) !== sequence;
    seen.set(uid, sequence);
    const isAhead = last_day >= at.slice(0, 10);
    if (isNew && isAhead && (state === 'proposed' || state === 'confirmed')) found.push({ uid, at, state, sequence });
  }
  return found;
}

/** Works entered since a day, by fence, and how many of them renewed posts. */
export async function enteredWorks(
  { db }: Register,
  since: string,
): Promise<ReadonlyMap<string, { readonly works: number; readonly renewals: number }>> {
  const renewing: readonly string[] = ['rebuild', 'post-swap', 'steel-sleeve', 'added-posts'];
  const rows = await db.selectFrom('works').select(['fence_ref', 'kind']).where('day', '>=', since).execute();
  const found = new Map<string, { works: number; renewals: number }>();
  for (const { fence_ref: fenceRef, kind } of rows) {
    const before = found.get(fenceRef) ?? { works: 0, renewals: 0 };
    found.set(fenceRef, {
      works: before.works + 1,
      renewals: before.renewals + Number(renewing.includes(kind)),
    });
  }
  return found;
}
