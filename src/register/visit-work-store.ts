import type { UsedHours } from '../season/visit/corrected-hours.ts';
import type { Visit, VisitWorks } from '../season/visit/visit.ts';
import type { RegisterDb } from './record-store.ts';
import { storeVisit, type VisitAct } from './visit-store.ts';

/** What was done at one fence of a visit. */
export interface DoneItem {
  readonly fenceRef: string;
  readonly works: readonly VisitWorks[];
  /** Hours of the crew's people that it took, without the way [h]; null where nobody said. */
  readonly personHours: number | null;
  /** Refs of the works that were entered, and of the inspection that was made. */
  readonly worksRefs: readonly string[];
  readonly inspectionRef: string | null;
}

/**
 * Stores a visit that was done, what was done of it, and notes the change; items that are not among the done go back to the
 * plan. Works within a transaction of the caller.
 */
export async function storeDoneVisit(
  tx: RegisterDb,
  visit: Visit,
  done: readonly DoneItem[],
  act: VisitAct,
): Promise<void> {
  await storeVisit(tx, visit, act);
  await tx.updateTable('visit_items').set({ state: 'returned' }).where('uid', '=', visit.uid).execute();
  for (const { fenceRef, works, personHours, worksRefs, inspectionRef } of done) {
    await tx
      .updateTable('visit_items')
      .set({ state: 'done', works: JSON.stringify(works) })
      .where('uid', '=', visit.uid)
      .where('fence_ref', '=', fenceRef)
      .execute();
    const place = { uid: visit.uid, fence_ref: fenceRef };
    if (personHours !== null) {
      await tx
        .insertInto('visit_hours')
        .values({ ...place, person_hours: personHours })
        .execute();
    }
    const entries = [
      ...worksRefs.map((ref) => ({ ...place, kind: 'works' as const, ref })),
      ...(inspectionRef === null ? [] : [{ ...place, kind: 'inspection' as const, ref: inspectionRef }]),
    ];
    if (entries.length > 0) await tx.insertInto('visit_entries').values(entries).execute();
  }
}

/** What a visit entered into the register, or an inspection that was made on it. */
export interface VisitEntry {
  readonly uid: string;
  readonly fenceRef: string;
  readonly kind: 'works' | 'inspection';
  readonly ref: string;
}

const entryOf = ({
  uid,
  fence_ref,
  kind,
  ref,
}: {
  uid: string;
  fence_ref: string;
  kind: 'works' | 'inspection';
  ref: string;
}): VisitEntry => ({
  uid,
  fenceRef: fence_ref,
  kind,
  ref,
});

/** What a visit entered, by fence, kind and ref. */
export async function visitEntries(db: RegisterDb, uid: string): Promise<readonly VisitEntry[]> {
  const rows = await db
    .selectFrom('visit_entries')
    .selectAll()
    .where('uid', '=', uid)
    .orderBy('fence_ref')
    .orderBy('kind')
    .orderBy('ref')
    .execute();
  return rows.map(entryOf);
}

/** The visit on which works or an inspection were done; null where no visit names them. */
export async function visitOfEntry(db: RegisterDb, kind: VisitEntry['kind'], ref: string): Promise<VisitEntry | null> {
  const row = await db
    .selectFrom('visit_entries')
    .selectAll()
    .where('kind', '=', kind)
    .where('ref', '=', ref)
    .executeTakeFirst();
  return row ? entryOf(row) : null;
}

/** Hours that crews used at a fence, with what they did there. */
export interface VisitHours extends UsedHours {
  readonly uid: string;
  readonly fenceRef: string;
}

/** All hours that were said to be used, by visit and fence; those of one visit where it is named. */
export async function listVisitHours(db: RegisterDb, uid?: string): Promise<readonly VisitHours[]> {
  let query = db
    .selectFrom('visit_hours')
    .innerJoin('visit_items', (join) =>
      join
        .onRef('visit_items.uid', '=', 'visit_hours.uid')
        .onRef('visit_items.fence_ref', '=', 'visit_hours.fence_ref'),
    )
    .select([
      'visit_hours.uid',
      'visit_hours.fence_ref as fenceRef',
      'visit_hours.person_hours as personHours',
      'works',
    ]);
  if (uid !== undefined) query = query.where('visit_hours.uid', '=', uid);
  const rows = await query.orderBy('visit_hours.uid').orderBy('visit_hours.fence_ref').execute();
  return rows.map(({ works, ...row }) => ({ ...row, works: JSON.parse(works) as readonly VisitWorks[] }));
}

/** Fences of a visit that went back to the plan when it was done. */
export async function returnedFences(db: RegisterDb, uid: string): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('visit_items')
    .select('fence_ref')
    .where('uid', '=', uid)
    .where('state', '=', 'returned')
    .orderBy('fence_ref')
    .execute();
  return rows.map(({ fence_ref }) => fence_ref);
}

/** Fences at which a visit was done on a day or later. */
export async function fencesDoneSince(db: RegisterDb, moment: string): Promise<ReadonlySet<string>> {
  const rows = await db
    .selectFrom('visit_items')
    .innerJoin('visits', 'visits.uid', 'visit_items.uid')
    .select('visit_items.fence_ref')
    .where('visit_items.state', '=', 'done')
    .where('visits.changed_at', '>=', moment)
    .execute();
  return new Set(rows.map(({ fence_ref }) => fence_ref));
}
