import type { Register } from '../register/database.ts';
import { receiptOf, storeReceipt } from '../register/entry-receipt-store.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import { type Clock, isoUtc } from './clock.ts';

const ID_SHAPE = /^[A-Za-z0-9_-]{8,100}$/;

/** True where a text can be the id of an entry: 8 to 100 letters, digits, `_` and `-`. */
export const isEntryId = (text: string): boolean => ID_SHAPE.test(text);

/** Something that its sender sends until it hears that it arrived. */
export interface SentEntry {
  /** Who sends it: `account:4`, `token:2`. */
  readonly holder: string;
  readonly id: string;
  readonly kind: string;
  /** All that it says, as far as JSON holds it; a file by its SHA-256. */
  readonly content: unknown;
}

/** What the work on an entry comes to: an answer to be kept with what it stored, or why nothing may be stored. */
export type Worked<A, R> = { readonly answer: A } | { readonly refused: R };

/** What an entry came to. */
export type EntryOutcome<A, R> =
  | { readonly kind: 'stored'; readonly answer: A /** True where it had arrived before. */; readonly again: boolean }
  | { readonly kind: 'refused'; readonly refused: R }
  /** The id was used for something else. */
  | { readonly kind: 'other content' };

/** Ends the transaction with nothing stored. */
class Refused<R> extends Error {
  readonly reason: R;
  constructor(reason: R) {
    super('the entry is refused');
    this.reason = reason;
  }
}

/**
 * Stores an entry once and only once: what it changes and the answer to it are stored in one transaction under the id that its
 * sender made, and an entry that comes again gets that answer. A refused one leaves no trace, so that it may be sent again
 * once what stood against it is out of the way.
 * Has a transaction of its own: throws where one is open already.
 * @param work changes the register through the one it is given
 */
export async function enterOnce<A, R>(
  register: Register,
  entry: SentEntry,
  now: Clock,
  work: (inTx: Register) => Promise<Worked<A, R>>,
): Promise<EntryOutcome<A, R>> {
  const { holder, id, kind } = entry;
  const contentSha256 = sha256(canonicalJson({ kind, content: entry.content }));
  try {
    return await register.db.transaction().execute(async (tx): Promise<EntryOutcome<A, R>> => {
      const known = await receiptOf(tx, holder, id);
      if (known?.contentSha256 === contentSha256) return { kind: 'stored', answer: known.answer as A, again: true };
      if (known) return { kind: 'other content' };
      const worked = await work({ ...register, db: tx });
      if ('refused' in worked) throw new Refused(worked.refused);
      await storeReceipt(tx, { holder, id, kind, contentSha256, answer: worked.answer, storedAt: isoUtc(now()) });
      return { kind: 'stored', answer: worked.answer, again: false };
    });
  } catch (error) {
    if (error instanceof Refused) return { kind: 'refused', refused: (error as Refused<R>).reason };
    throw error;
  }
}
