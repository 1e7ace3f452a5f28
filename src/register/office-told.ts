import type { Register } from './database.ts';
import { type FinishedMessage, insertMessage } from './notice-store.ts';

/** What mails to the office have named, and when the last one was written (ISO text in UTC; null where none was). */
export async function loadOfficeTold({ db }: Register): Promise<{
  readonly what: ReadonlySet<string>;
  readonly lastAt: string | null;
}> {
  const rows = await db.selectFrom('office_told').select('what').execute();
  const last = await db
    .selectFrom('outbox')
    .select('created_at')
    .where('owner_ref', 'is', null)
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return { what: new Set(rows.map(({ what }) => what)), lastAt: last?.created_at ?? null };
}

/** Forgets what mails have named and is over, so that it is news when it comes again. */
export async function forgetOfficeTold({ db }: Register, over: readonly string[]): Promise<void> {
  if (over.length > 0) await db.deleteFrom('office_told').where('what', 'in', over).execute();
}

/**
 * Puts a mail to the office into the outbox and notes what it names, in one transaction. Throws `NoticeAlreadyWritten`, having written
 * nothing, where another process wrote the same mail.
 */
export async function postOfficeMail(
  register: Register,
  message: FinishedMessage,
  told: { readonly named: readonly string[]; readonly at: string },
): Promise<void> {
  await register.db.transaction().execute(async (tx) => {
    const id = await insertMessage(tx, message, told.at);
    for (const what of told.named)
      await tx.insertInto('office_told').values({ what, told_at: told.at, outbox_id: id }).execute();
  });
}
