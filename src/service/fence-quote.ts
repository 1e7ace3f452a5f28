import type { ChartLanguage } from '../drawing/chart-words.ts';
import { quotedConditions, quotedSetUp, quotedWorks } from '../drawing/quote-words.ts';
import { postNumbersText, worksName } from '../drawing/what-if-words.ts';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { fenceStates, stateOn } from '../forecast/fence-state.ts';
import type { Works } from '../forecast/works.ts';
import { nearestName } from '../register/csv/nearest-name.ts';
import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { everyRef } from '../register/record-names.ts';
import type { CatalogueKind } from '../season/catalogue-entry.ts';
import { moneyFromAmount } from '../season/money/money.ts';
import { drawUpQuote, type Quote, type QuoteRequest } from '../season/money/quote.ts';
import { plannedWorks } from '../season/planned-works.ts';
import { SHIPPED_CATALOGUE, type WorksCatalogue } from '../season/works-catalogue.ts';
import { strictestRules } from '../season/works-window.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { currencyAsked } from './currency-asked.ts';
import { loadCatalogue } from './season-register.ts';

/** One kind of works that is to be quoted. */
export interface WantedWorks {
  readonly kind: CatalogueKind;
  /** All: every post at which it makes sense. */
  readonly posts: 'all' | readonly number[];
}

/** What a quote is asked for. */
export interface FenceQuoteRequest {
  readonly fenceRef: string;
  /** Each kind once; done in the order that lets one make another possible. */
  readonly works: readonly WantedWorks[];
  readonly taxPercent: number;
  /** Days from today for which it may be accepted [d]. */
  readonly validDays: number;
  /** The register's where null. */
  readonly currency: string | null;
  /** English where left out. */
  readonly language?: ChartLanguage;
  /** Said in the quote after the conditions of its works. */
  readonly cautions: readonly string[];
  readonly now: Clock;
}

/** Works as they are quoted. */
export interface QuotedPart {
  readonly kind: CatalogueKind;
  readonly posts: readonly number[];
  /** Posts touched, or set anew. */
  readonly postCount: number;
  /** Posts that were asked for and to which the works do nothing. */
  readonly leftOut: readonly number[];
}

export type FenceQuoteResult =
  | { readonly kind: 'no such fence'; readonly nearest: string | null }
  | { readonly kind: 'refused'; readonly reason: string }
  | {
      readonly kind: 'quoted';
      readonly quote: Quote;
      readonly parts: readonly QuotedPart[];
      /** Kinds whose price the office has not set: the shipped order of magnitude stands for it. */
      readonly shippedPrices: readonly CatalogueKind[];
    };

/** Works that set posts come first: others go on them. */
const FIRST: readonly CatalogueKind[] = ['rebuild', 'post-swap', 'added-posts'];
/** Works that are always done to the whole fence. */
export const WHOLE_FENCE: ReadonlySet<CatalogueKind> = new Set<CatalogueKind>(['rebuild', 'added-posts', 'drainage']);
/** Characters of the hash that tell a quote from others of its day. */
const MARK_LENGTH = 8;

const placeOf = (kind: CatalogueKind): number => {
  const place = FIRST.indexOf(kind);
  return place === -1 ? FIRST.length : place;
};

/** Why kinds do not go together; null where they do. */
function clash(wanted: readonly WantedWorks[]): string | null {
  const kinds = wanted.map(({ kind }) => kind);
  const twice = kinds.find((kind, index) => kinds.indexOf(kind) !== index);
  if (twice !== undefined) return `${twice} is asked for twice`;
  if (kinds.includes('rebuild') && kinds.includes('post-swap'))
    return 'a rebuild sets every post anew, so there is none left to swap';
  const whole = wanted.find(({ kind, posts }) => posts !== 'all' && WHOLE_FENCE.has(kind));
  return whole ? `${worksName(whole.kind)}: always done to the whole fence, so posts cannot be chosen` : null;
}

interface Ground {
  readonly facts: FenceFacts;
  readonly day: CalendarDay;
  readonly catalogue: WorksCatalogue;
}

const ascending = (numbers: readonly number[]): readonly number[] => [...numbers].sort((a, b) => a - b);

function quotedParts(
  wanted: readonly WantedWorks[],
  { facts, day, catalogue }: Ground,
): readonly QuotedPart[] | string {
  const numbers = ascending(stateOn(fenceStates(facts), day).posts.map(({ number }) => number));
  const stray = wanted.flatMap(({ posts }) => (posts === 'all' ? [] : posts)).filter((each) => !numbers.includes(each));
  if (stray.length > 0)
    return `the fence has no post ${postNumbersText(ascending([...new Set(stray)]))}; its posts are ${postNumbersText(numbers)}`;
  const done: Works[] = [];
  const parts: QuotedPart[] = [];
  const inOrder = [...wanted].sort((a, b) => placeOf(a.kind) - placeOf(b.kind));
  for (const [index, { kind, posts }] of inOrder.entries()) {
    const asked = posts === 'all' ? numbers : ascending(posts);
    if (kind === 'inspect') {
      parts.push({ kind, posts: asked, postCount: asked.length, leftOut: [] });
      continue;
    }
    const planned = plannedWorks({
      kind,
      facts: { ...facts, works: [...facts.works, ...done] },
      day,
      posts: posts === 'all' ? 'all' : asked,
      build: catalogue[kind].build,
      ref: `~ahead ${index + 1}`,
    });
    if (planned.kind === 'no sense') return `no ${worksName(kind)}: ${planned.reason}`;
    done.push(planned.works);
    const { posts: touched, postCount } = planned;
    const leftOut = posts === 'all' ? [] : asked.filter((number) => !touched.includes(number));
    parts.push({ kind, posts: touched, postCount, leftOut });
  }
  return parts;
}

/** A line a kind for what is counted by the post, and one for what is counted once: of the kinds' parts the largest, as in `worksCost`. */
function quoteItems(
  parts: readonly QuotedPart[],
  { facts, day, catalogue }: Ground,
  language: ChartLanguage,
): QuoteRequest['items'] {
  const postsInAll = stateOn(fenceStates(facts), day).posts.length;
  const once = Math.max(...parts.map(({ kind }) => catalogue[kind].price.fixed));
  return [
    ...parts.flatMap((part) => {
      const unitPrice = moneyFromAmount(catalogue[part.kind].price.perPost);
      return [
        {
          what: quotedWorks(part.kind, { posts: part.posts, isEveryPost: part.postCount === postsInAll }, language),
          quantity: part.postCount,
          unit: 'post',
          unitPrice,
        },
      ];
    }),
    ...(once > 0
      ? [{ what: quotedSetUp(language), quantity: 1, unit: 'visit', unitPrice: moneyFromAmount(once) }]
      : []),
  ];
}

/**
 * A quote for works at one fence, issued today in the site's zone. Its number is the day and a mark made from everything it
 * says: the same quote asked for again has the same number, another has another. Throws RangeError where tax or days do not hold.
 */
export async function fenceQuote(register: Register, request: FenceQuoteRequest): Promise<FenceQuoteResult> {
  const { fenceRef, works, taxPercent, validDays, language = 'en' } = request;
  const facts = (await loadFenceFacts(register, [fenceRef])).get(fenceRef);
  const parties = (await loadFenceParties(register, [fenceRef])).get(fenceRef);
  if (!facts || !parties) {
    const refs = await everyRef(register.db, 'fences');
    return { kind: 'no such fence', nearest: nearestName(fenceRef, refs) };
  }
  const reason = clash(works);
  if (reason !== null) return { kind: 'refused', reason };
  const issued = dayInZone(request.now(), parties.site.timeZone);
  const day = [...facts.works, ...facts.inspections].reduce(
    (last, each) => (each.day > last ? each.day : last),
    issued,
  );
  const ground = { facts, day, catalogue: await loadCatalogue(register.db) };
  const parts = quotedParts(works, ground);
  if (typeof parts === 'string') return { kind: 'refused', reason: parts };
  const content = {
    site: [parties.site.name, parties.site.place].filter((part) => part !== '').join(', '),
    owner: parties.owners.map(({ name }) => name).join(language === 'es' ? ' y ' : ' and '),
    fenceRefs: [fenceRef],
    issued,
    validUntil: addDays(issued, validDays),
    currency: await currencyAsked(register.db, request.currency),
    items: quoteItems(parts, ground, language),
    taxPercent,
    cautions: [
      ...quotedConditions(
        strictestRules(
          parts.map(({ kind }) => kind),
          ground.catalogue,
        ),
        language,
      ),
      ...request.cautions,
    ],
  };
  const mark = sha256(canonicalJson(content)).slice(0, MARK_LENGTH).toUpperCase();
  return {
    kind: 'quoted',
    quote: drawUpQuote({ ...content, mark }),
    parts,
    shippedPrices: parts
      .map(({ kind }) => kind)
      .filter((kind) => ground.catalogue[kind].source === SHIPPED_CATALOGUE[kind].source),
  };
}
