import type { VisitState, VisitWorks } from '../season/visit/visit.ts';
import type { Register } from './database.ts';
import type { OutboxState } from './sweep-tables.ts';

/** A notice about a fence, with what became of its message. Times are ISO text in UTC. */
export interface ToldNotice {
  readonly matter: string;
  readonly ownerName: string;
  readonly decidedAt: string;
  readonly voidReason: string | null;
  /** True while it waits for the office. */
  readonly held: boolean;
  /** State of its message and when it left; null where none was written yet. */
  readonly message: { readonly state: OutboxState; readonly sentAt: string | null } | null;
}

/** Every notice about a fence with what became of it, oldest first, void ones too. */
export async function listToldNotices({ db }: Register, fenceRef: string): Promise<readonly ToldNotice[]> {
  const rows = await db
    .selectFrom('notices')
    .innerJoin('owners', 'owners.ref', 'notices.owner_ref')
    .leftJoin('outbox', 'outbox.id', 'notices.outbox_id')
    .select([
      'notices.matter as matter',
      'owners.name as ownerName',
      'notices.created_at as decidedAt',
      'notices.void_reason as voidReason',
      'notices.held as held',
      'notices.released_at as releasedAt',
      'outbox.state as state',
      'outbox.sent_at as sentAt',
    ])
    .where('notices.fence_ref', '=', fenceRef)
    .orderBy('notices.id')
    .execute();
  return rows.map(({ state, sentAt, held, releasedAt, ...row }) => ({
    ...row,
    held: held !== null && releasedAt === null && state === null && row.voidReason === null,
    message: state === null ? null : { state, sentAt },
  }));
}

/** A visit to a fence. */
export interface FenceVisit {
  readonly firstDay: string;
  readonly lastDay: string;
  readonly state: VisitState;
  readonly crewName: string;
  readonly works: readonly VisitWorks[];
}

/** The visits to a fence by their days; of what went back to the plan nothing was done. */
export async function listFenceVisits({ db }: Register, fenceRef: string): Promise<readonly FenceVisit[]> {
  const rows = await db
    .selectFrom('visit_items')
    .innerJoin('visits', 'visits.uid', 'visit_items.uid')
    .leftJoin('crews', 'crews.ref', 'visits.crew_ref')
    .select([
      'visits.first_day as firstDay',
      'visits.last_day as lastDay',
      'visits.state as state',
      'visits.crew_ref as crewRef',
      'crews.name as crewName',
      'visit_items.works as works',
    ])
    .where('visit_items.fence_ref', '=', fenceRef)
    .where('visit_items.state', '<>', 'returned')
    .orderBy('visits.first_day')
    .execute();
  return rows.map(({ crewRef, crewName, works, ...row }) => ({
    ...row,
    crewName: crewName ?? crewRef,
    works: JSON.parse(works) as readonly VisitWorks[],
  }));
}
