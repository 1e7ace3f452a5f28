import type { RegisterDb } from './record-store.ts';

/** What an owner does not want to be written about. */
export interface OwnerPreferences {
  /** Names of groups of matters. */
  readonly muted: readonly string[];
  /** Last day of a pause, as YYYY-MM-DD; null where there is none. */
  readonly pausedUntil: string | null;
}

/** The preferences of an owner; null where none were ever given: then everything is wanted. */
export async function readOwnerPreferences(db: RegisterDb, ownerRef: string): Promise<OwnerPreferences | null> {
  const row = await db
    .selectFrom('owner_preferences')
    .select(['muted', 'paused_until as pausedUntil'])
    .where('owner_ref', '=', ownerRef)
    .executeTakeFirst();
  return row ? { muted: JSON.parse(row.muted) as readonly string[], pausedUntil: row.pausedUntil } : null;
}

/** Stores the preferences of an owner in the place of those before. */
export async function writeOwnerPreferences(
  db: RegisterDb,
  ownerRef: string,
  { muted, pausedUntil }: OwnerPreferences,
  at: string,
): Promise<void> {
  const changing = { muted: JSON.stringify(muted), paused_until: pausedUntil, changed_at: at };
  await db
    .insertInto('owner_preferences')
    .values({ owner_ref: ownerRef, ...changing })
    .onConflict((conflict) => conflict.column('owner_ref').doUpdateSet(changing))
    .execute();
}

/** A mail that has not left, and the matters of the notices that it carries. */
export interface WaitingMail {
  readonly outboxId: number;
  readonly matters: readonly string[];
}

/** The mails to an owner that wait for their turn or were parked, with what they tell. */
export async function waitingMailsOf(db: RegisterDb, ownerRef: string): Promise<readonly WaitingMail[]> {
  const rows = await db
    .selectFrom('outbox')
    .innerJoin('notices', 'notices.outbox_id', 'outbox.id')
    .select(['outbox.id as outboxId', 'notices.matter as matter'])
    .where('outbox.owner_ref', '=', ownerRef)
    .where('outbox.channel', '=', 'mail')
    .where('outbox.state', 'in', ['queued', 'parked'])
    .orderBy('outbox.id')
    .execute();
  const mails = new Map<number, string[]>();
  for (const { outboxId, matter } of rows) mails.set(outboxId, [...(mails.get(outboxId) ?? []), matter]);
  return [...mails].map(([outboxId, matters]) => ({ outboxId, matters }));
}
