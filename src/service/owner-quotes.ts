import type { Register } from '../register/database.ts';
import { type OfferedQuote, offerQuote, quotesOfFences, readOfferedQuote } from '../register/offered-quote-store.ts';
import { addOwnerAnswer, listOwnerAnswers, type NamedAnswer } from '../register/owner-answer-store.ts';
import { fencesOfOwner } from '../register/owner-fences.ts';
import type { OwnerLink } from '../register/owner-link-store.ts';
import { readRecord } from '../register/record-store.ts';
import type { Quote } from '../season/money/quote.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import type { QuotedPart } from './fence-quote.ts';

/** What an owner is offered: the quote, and its works by kind for whoever reads another language. */
export interface OfferContent {
  readonly quote: Quote;
  readonly parts: readonly QuotedPart[];
}

/** A quote that an owner was offered, and how it stands. */
export interface OwnerQuote extends OfferContent {
  readonly number: string;
  readonly sha256: string;
  readonly standing: 'open' | 'accepted' | 'over' | 'withdrawn';
  readonly accepted: NamedAnswer | null;
}

/** Offers a quote to the owners of its fence, who can accept it by their links; returns its hash. Offering it again changes nothing. */
export async function offerToOwners(register: Register, content: OfferContent, now: Clock): Promise<string> {
  const text = canonicalJson(content);
  const hash = sha256(text);
  await offerQuote(register.db, {
    number: content.quote.number,
    fenceRef: content.quote.fenceRefs[0]!,
    content: text,
    sha256: hash,
    validUntil: content.quote.validUntil,
    offeredAt: isoUtc(now()),
  });
  return hash;
}

/** A quote that was offered, with how it stands today at its site. */
export async function ownerQuoteOf(register: Register, offered: OfferedQuote, now: Clock): Promise<OwnerQuote> {
  const [accepted = null] = await listOwnerAnswers(register.db, { kind: 'quote accepted', subject: offered.number });
  const site = await siteOf(register, offered.fenceRef);
  const today = dayInZone(now(), site?.timeZone ?? 'UTC');
  const open = offered.withdrawnAt !== null ? 'withdrawn' : today > offered.validUntil ? 'over' : 'open';
  return {
    ...(JSON.parse(offered.content) as OfferContent),
    number: offered.number,
    sha256: offered.sha256,
    standing: accepted ? 'accepted' : open,
    accepted,
  };
}

async function siteOf({ db }: Register, fenceRef: string) {
  const fence = await readRecord(db, 'fences', fenceRef);
  return fence && readRecord(db, 'sites', fence.siteRef);
}

/** The quotes that were offered for an owner's fences, the newest first. */
export async function quotesOfOwner(register: Register, ownerRef: string, now: Clock): Promise<readonly OwnerQuote[]> {
  const refs = (await fencesOfOwner(register.db, ownerRef)).map(({ ref }) => ref);
  const offered = await quotesOfFences(register.db, refs);
  return Promise.all(offered.map((each) => ownerQuoteOf(register, each, now)));
}

/** What came of accepting a quote. */
export type Acceptance = 'accepted' | 'already' | 'over' | 'withdrawn' | 'another quote' | 'no such quote';

/**
 * Accepts a quote for the owner of a link, once: with the moment, the link, the name that was written under it and the hash of
 * the very quote that was shown. Nothing is accepted where that is not the quote on record.
 */
export const acceptQuote = (
  register: Register,
  link: Pick<OwnerLink, 'id' | 'ownerRef'>,
  shown: { readonly number: string; readonly sha256: string; readonly name: string },
  now: Clock,
): Promise<Acceptance> =>
  register.db.transaction().execute(async (tx): Promise<Acceptance> => {
    const inTx = { ...register, db: tx };
    const refs = (await fencesOfOwner(tx, link.ownerRef)).map(({ ref }) => ref);
    const offered = await readOfferedQuote(tx, shown.number);
    if (!offered || !refs.includes(offered.fenceRef)) return 'no such quote';
    const { standing, quote } = await ownerQuoteOf(inTx, offered, now);
    if (standing === 'accepted') return 'already';
    if (offered.sha256 !== shown.sha256) return 'another quote';
    if (standing !== 'open') return standing;
    await addOwnerAnswer(tx, {
      ownerRef: link.ownerRef,
      linkId: link.id,
      kind: 'quote accepted',
      subject: offered.number,
      detail: canonicalJson({
        sha256: offered.sha256,
        fenceRef: offered.fenceRef,
        total: quote.total,
        currency: quote.currency,
        name: shown.name,
      }),
      once: `quote accepted|${offered.number}`,
      at: isoUtc(now()),
      open: false,
    });
    return 'accepted';
  });
