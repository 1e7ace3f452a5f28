import type { Visit } from '../season/visit/visit.ts';
import type { RegisterDb } from './record-store.ts';
import { readVisit } from './visit-store.ts';

/** A visit that was a crew's and is another's now, on the days that it last was theirs. */
export interface VisitMovedAway {
  readonly visit: Visit;
  readonly firstDay: string;
  readonly lastDay: string;
}

/**
 * Visits that a crew had and that went to another crew, by uid; whoever has the first crew's calendar has to take them out.
 * @param changedSince visits that were not changed from this moment on are left out, ISO 8601
 */
export async function visitsMovedAway(
  db: RegisterDb,
  crewRef: string,
  changedSince: string,
): Promise<readonly VisitMovedAway[]> {
  const rows = await db
    .selectFrom('visit_changes as change')
    .innerJoin('visits', 'visits.uid', 'change.uid')
    .select(['change.uid', 'change.first_day as firstDay', 'change.last_day as lastDay'])
    .where('change.crew_ref', '=', crewRef)
    .where('visits.crew_ref', '<>', crewRef)
    .where('visits.changed_at', '>=', changedSince)
    .orderBy('change.uid')
    .orderBy('change.id')
    .execute();
  const last = new Map(rows.map((row) => [row.uid, row]));
  const moved: VisitMovedAway[] = [];
  for (const { uid, firstDay, lastDay } of last.values()) {
    const visit = await readVisit(db, uid);
    if (visit) moved.push({ visit, firstDay, lastDay });
  }
  return moved;
}
