import { sql } from 'kysely';
import type { RegisterDb } from './record-store.ts';

/** A quote that the owners of a fence were offered, as it was drawn up. Moments are ISO 8601, UTC. */
export interface OfferedQuote {
  readonly number: string;
  readonly fenceRef: string;
  /** The quote as JSON. */
  readonly content: string;
  /** Of the content, in hexadecimal. */
  readonly sha256: string;
  /** Last day on which it may be accepted. */
  readonly validUntil: string;
  readonly offeredAt: string;
  /** Null while it stands. */
  readonly withdrawnAt: string | null;
}

const COLUMNS = [
  'number',
  'fence_ref as fenceRef',
  'content',
  'sha256',
  'valid_until as validUntil',
  'offered_at as offeredAt',
  'withdrawn_at as withdrawnAt',
] as const;

/** Stores a quote as offered; one of that number that is there already stays as it is. */
export async function offerQuote(db: RegisterDb, quote: Omit<OfferedQuote, 'withdrawnAt'>): Promise<void> {
  await db
    .insertInto('offered_quotes')
    .values({
      number: quote.number,
      fence_ref: quote.fenceRef,
      content: quote.content,
      sha256: quote.sha256,
      valid_until: quote.validUntil,
      offered_at: quote.offeredAt,
      withdrawn_at: null,
    })
    .onConflict((conflict) => conflict.column('number').doNothing())
    .execute();
}

/** The quotes that were offered for some fences, the newest first. */
export async function quotesOfFences(db: RegisterDb, fenceRefs: readonly string[]): Promise<readonly OfferedQuote[]> {
  if (fenceRefs.length === 0) return [];
  return db
    .selectFrom('offered_quotes')
    .select(COLUMNS)
    .where('fence_ref', 'in', fenceRefs)
    .orderBy('offered_at', 'desc')
    .orderBy('number')
    .execute();
}

/** Where a page of offered quotes begins behind. */
export type QuotePlace = Pick<OfferedQuote, 'offeredAt' | 'number'>;

/** A page of the quotes that were offered, of one fence where it is named, the newest first. */
export async function offeredQuotesAfter(
  db: RegisterDb,
  { fenceRef, after, limit }: { readonly fenceRef?: string; readonly after: QuotePlace | null; readonly limit: number },
): Promise<readonly OfferedQuote[]> {
  let query = db.selectFrom('offered_quotes').select(COLUMNS);
  if (fenceRef !== undefined) query = query.where('fence_ref', '=', fenceRef);
  if (after !== null) query = query.where(sql<boolean>`(offered_at, number) < (${after.offeredAt}, ${after.number})`);
  return query.orderBy('offered_at', 'desc').orderBy('number', 'desc').limit(limit).execute();
}

/** The quote of a number; null where none was offered. */
export async function readOfferedQuote(db: RegisterDb, number: string): Promise<OfferedQuote | null> {
  return (
    (await db.selectFrom('offered_quotes').select(COLUMNS).where('number', '=', number).executeTakeFirst()) ?? null
  );
}

/** Takes an offer back; false where there is none of that number that stands. */
export async function withdrawQuote(db: RegisterDb, number: string, at: string): Promise<boolean> {
  const result = await db
    .updateTable('offered_quotes')
    .set({ withdrawn_at: at })
    .where('number', '=', number)
    .where('withdrawn_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}
