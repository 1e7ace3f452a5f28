import type { AnswerKind } from './answer-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** What an owner answered through a link. Moments are ISO 8601, UTC. */
export interface OwnerAnswer {
  readonly id: number;
  readonly ownerRef: string;
  readonly linkId: number;
  readonly kind: AnswerKind;
  /** Ref of the fence, uid of the visit, number of the quote; empty where it is about none. */
  readonly subject: string;
  /** What was said, as JSON. */
  readonly detail: string;
  readonly at: string;
  /** Null while the office has something to do about it. */
  readonly settledAt: string | null;
  readonly settledBy: string;
}

/** An answer as it is given. */
export interface GivenAnswer extends Omit<OwnerAnswer, 'id' | 'settledAt' | 'settledBy'> {
  /** The same for the same answer given again. */
  readonly once: string;
  /** True where the office has something to do about it. */
  readonly open: boolean;
}

const COLUMNS = [
  'owner_answers.id as id',
  'owner_ref as ownerRef',
  'link_id as linkId',
  'owner_answers.kind as kind',
  'subject',
  'detail',
  'at',
  'settled_at as settledAt',
  'settled_by as settledBy',
] as const;

/** Stores an answer, unless the same was given before; says which. */
export async function addOwnerAnswer(db: RegisterDb, answer: GivenAnswer): Promise<'stored' | 'already'> {
  const row = await db
    .insertInto('owner_answers')
    .values({
      owner_ref: answer.ownerRef,
      link_id: answer.linkId,
      kind: answer.kind,
      subject: answer.subject,
      detail: answer.detail,
      once: answer.once,
      at: answer.at,
      settled_at: answer.open ? null : answer.at,
    })
    .onConflict((conflict) => conflict.column('once').doNothing())
    .returning('id')
    .executeTakeFirst();
  return row ? 'stored' : 'already';
}

/** An answer with the name of whoever gave it; null where the owner is no longer in the register. */
export interface NamedAnswer extends OwnerAnswer {
  readonly ownerName: string | null;
}

/** Answers, the newest first unless asked otherwise: of one owner, of a kind, about something, that are open; all where nothing is said. */
export async function listOwnerAnswers(
  db: RegisterDb,
  filter: {
    readonly ownerRef?: string;
    readonly kind?: AnswerKind;
    readonly subject?: string;
    readonly open?: boolean;
    /** Only answers older than the one of this number. */
    readonly before?: number;
    readonly limit?: number;
    readonly oldestFirst?: boolean;
  },
): Promise<readonly NamedAnswer[]> {
  let query = db
    .selectFrom('owner_answers')
    .leftJoin('owners', 'owners.ref', 'owner_answers.owner_ref')
    .select(COLUMNS)
    .select('owners.name as ownerName')
    .orderBy('owner_answers.id', filter.oldestFirst === true ? 'asc' : 'desc');
  if (filter.ownerRef !== undefined) query = query.where('owner_ref', '=', filter.ownerRef);
  if (filter.kind !== undefined) query = query.where('owner_answers.kind', '=', filter.kind);
  if (filter.subject !== undefined) query = query.where('subject', '=', filter.subject);
  if (filter.open === true) query = query.where('settled_at', 'is', null);
  if (filter.before !== undefined) query = query.where('owner_answers.id', '<', filter.before);
  if (filter.limit !== undefined) query = query.limit(filter.limit);
  return query.execute();
}

/** How many answers wait for the office. */
export async function countOpenAnswers(db: RegisterDb): Promise<number> {
  const { open } = await db
    .selectFrom('owner_answers')
    .select((eb) => eb.fn.countAll<number>().as('open'))
    .where('settled_at', 'is', null)
    .executeTakeFirstOrThrow();
  return open;
}

/** Notes that the office has dealt with an answer. Returns false where there is none of that number to deal with. */
export async function settleOwnerAnswer(
  db: RegisterDb,
  id: number,
  settled: { readonly at: string; readonly by: string },
): Promise<boolean> {
  const result = await db
    .updateTable('owner_answers')
    .set({ settled_at: settled.at, settled_by: settled.by })
    .where('id', '=', id)
    .where('settled_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}
