import type { RegisterDb } from './record-store.ts';
import type { HeldBy, OutboxState } from './sweep-tables.ts';

/** Most fences that are asked for in one statement. */
const CHUNK_SIZE = 5000;

/** A notice about a visit, and the message that carries it. */
export interface VisitNotice {
  readonly id: number;
  readonly fenceRef: string;
  readonly ownerRef: string;
  readonly matter: string;
  readonly facts: string;
  readonly outboxId: number | null;
  /** Null where no message carries it yet. */
  readonly messageState: OutboxState | null;
}

/** Every notice about a visit that is not void, in the order in which they were decided. */
export async function listVisitNotices(tx: RegisterDb, uid: string): Promise<readonly VisitNotice[]> {
  return tx
    .selectFrom('notices')
    .leftJoin('outbox', 'outbox.id', 'notices.outbox_id')
    .select([
      'notices.id as id',
      'fence_ref as fenceRef',
      'notices.owner_ref as ownerRef',
      'matter',
      'facts',
      'outbox_id as outboxId',
      'outbox.state as messageState',
    ])
    .where('visit_uid', '=', uid)
    .where('void_reason', 'is', null)
    .orderBy('notices.id')
    .execute();
}

/** Makes notices void that no message carries, within a transaction. */
export async function voidUnwritten(tx: RegisterDb, ids: readonly number[], reason: string): Promise<void> {
  if (ids.length === 0) return;
  await tx
    .updateTable('notices')
    .set({ void_reason: reason })
    .where('id', 'in', ids)
    .where('outbox_id', 'is', null)
    .execute();
}

/** What came of taking messages out of the outbox. */
export interface TakenOut {
  /** Numbers of the messages that were taken out. */
  readonly messages: readonly number[];
  /** Notices of other visits that these carried: no message carries them now. */
  readonly freed: number;
}

/**
 * Takes messages that have not left out of the outbox, within a transaction, because a visit that they tell of has changed. What they
 * tell of other visits still holds: those notices wait for a message again.
 */
export async function cancelUnsent(tx: RegisterDb, ids: readonly number[], visitUid: string): Promise<TakenOut> {
  if (ids.length === 0) return { messages: [], freed: 0 };
  const rows = await tx
    .updateTable('outbox')
    .set({ state: 'cancelled', due_at: null, last_reply: 'the visit has changed since' })
    .where('id', 'in', ids)
    .where('state', 'in', ['queued', 'parked', 'to print'])
    .returning('id')
    .execute();
  const messages = rows.map(({ id }) => id);
  if (messages.length === 0) return { messages, freed: 0 };
  const freed = await tx
    .updateTable('notices')
    .set({ outbox_id: null })
    .where('outbox_id', 'in', messages)
    .where('visit_uid', 'is not', null)
    .where('visit_uid', '<>', visitUid)
    .where('void_reason', 'is', null)
    .executeTakeFirst();
  return { messages, freed: Number(freed.numUpdatedRows) };
}

/**
 * Takes out of the outbox what still waits there of a visit for one owner, before a newer message of it is put in: one that was under way when
 * the visit changed, and whose try failed since, must not come after it. Returns how many notices of other visits wait for a message by that.
 * @param boardMatter the matter whose message tells of other visits too, and stays
 */
export async function cancelOlderMessages(
  db: RegisterDb,
  {
    visitUid,
    ownerRef,
    boardMatter,
  }: { readonly visitUid: string; readonly ownerRef: string; readonly boardMatter: string },
): Promise<number> {
  const rows = await db
    .selectFrom('notices')
    .select('outbox_id')
    .distinct()
    .where('visit_uid', '=', visitUid)
    .where('owner_ref', '=', ownerRef)
    .where('matter', '<>', boardMatter)
    .where('outbox_id', 'is not', null)
    .execute();
  const ids = rows.flatMap(({ outbox_id }) => outbox_id ?? []);
  return (await cancelUnsent(db, ids, visitUid)).freed;
}

/** A notice that a visit or an accepted plan causes. */
export interface DecidedVisitNotice {
  readonly fenceRef: string;
  readonly ownerRef: string;
  readonly matter: string;
  readonly occasion: string;
  readonly facts: string;
  readonly held: HeldBy | null;
  readonly visitUid: string;
  /** The season plan that caused it; null where the office changed the visit. */
  readonly planNumber: number | null;
}

/** Writes notices of visits, within the transaction of what caused them; those on record are left as they are. Returns how many were new. */
export async function writeVisitNotices(
  tx: RegisterDb,
  notices: readonly DecidedVisitNotice[],
  at: string,
): Promise<number> {
  let written = 0;
  for (const notice of notices) {
    const result = await tx
      .insertInto('notices')
      .values({
        fence_ref: notice.fenceRef,
        owner_ref: notice.ownerRef,
        matter: notice.matter,
        occasion: notice.occasion,
        facts: notice.facts,
        sweep_id: null,
        visit_uid: notice.visitUid,
        plan_number: notice.planNumber,
        outbox_id: null,
        void_reason: null,
        created_at: at,
        held: notice.held,
        released_at: null,
        covering: null,
      })
      .onConflict((conflict) =>
        conflict.columns(['fence_ref', 'owner_ref', 'matter', 'occasion']).where('void_reason', 'is', null).doNothing(),
      )
      .executeTakeFirst();
    written += Number(result.numInsertedOrUpdatedRows ?? 0n);
  }
  return written;
}

/** How many owners would hear of visits to these fences: the enrolled ones, each once. */
export async function countOwnersToTell(db: RegisterDb, fenceRefs: readonly string[]): Promise<number> {
  const owners = new Set<string>();
  for (let from = 0; from < fenceRefs.length; from += CHUNK_SIZE) {
    const rows = await db
      .selectFrom('fences')
      .innerJoin('owners', (join) =>
        join.on((eb) =>
          eb.or([
            eb('owners.ref', '=', eb.ref('fences.owner_ref')),
            eb('owners.ref', '=', eb.ref('fences.second_owner_ref')),
          ]),
        ),
      )
      .select('owners.ref as ref')
      .distinct()
      .where('owners.enrolled', '=', 1)
      .where('fences.ref', 'in', fenceRefs.slice(from, from + CHUNK_SIZE))
      .execute();
    for (const { ref } of rows) owners.add(ref);
  }
  return owners.size;
}
