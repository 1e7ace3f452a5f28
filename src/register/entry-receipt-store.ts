import type { RegisterDb } from './record-store.ts';

/**
 * The answer that an entry got. An entry is something that a phone or a program sends until it hears that it arrived: it carries
 * an id that its sender made, and is stored together with this receipt in one transaction. Whoever sends it again gets the
 * first answer, and nothing is stored twice.
 */
export interface EntryReceipt {
  /** Who sent it: `account:4`, `token:2`. An id means nothing beyond its sender. */
  readonly holder: string;
  /** Made by the sender: 8 to 100 characters. */
  readonly id: string;
  /** What kind of entry: `reading`, `visit-done`. */
  readonly kind: string;
  /** SHA-256 of what it says, in hexadecimal digits. */
  readonly contentSha256: string;
  /** Anything that JSON can hold. */
  readonly answer: unknown;
  /** ISO 8601, UTC. */
  readonly storedAt: string;
}

/** The receipt of an entry; null where none of that id was stored for its sender. */
export async function receiptOf(db: RegisterDb, holder: string, id: string): Promise<EntryReceipt | null> {
  const row = await db
    .selectFrom('entry_receipts')
    .selectAll()
    .where('holder', '=', holder)
    .where('id', '=', id)
    .executeTakeFirst();
  if (!row) return null;
  return {
    holder: row.holder,
    id: row.id,
    kind: row.kind,
    contentSha256: row.content_sha256,
    answer: JSON.parse(row.answer) as unknown,
    storedAt: row.stored_at,
  };
}

/** Stores a receipt. Works within the transaction that stores what was entered. Throws (SQLite) where the id was used already. */
export async function storeReceipt(tx: RegisterDb, receipt: EntryReceipt): Promise<void> {
  await tx
    .insertInto('entry_receipts')
    .values({
      holder: receipt.holder,
      id: receipt.id,
      kind: receipt.kind,
      content_sha256: receipt.contentSha256,
      answer: JSON.stringify(receipt.answer),
      stored_at: receipt.storedAt,
    })
    .execute();
}
