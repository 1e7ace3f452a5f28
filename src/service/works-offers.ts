import { seasonOne } from '../forecast/fence-forecast.ts';
import { fenceStates, stateOn } from '../forecast/fence-state.ts';
import { OFFERED_KINDS, type OfferKind, type WorksOffer } from '../notify/works-offer.ts';
import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { recordsWhereIn } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import type { CatalogueKind } from '../season/catalogue-entry.ts';
import { budgetRange } from '../season/money/budget-range.ts';
import { waitingSeason } from '../season/money/waiting-season.ts';
import { seasonToPlan } from '../season/planned-season.ts';
import { SHIPPED_CATALOGUE, type WorksCatalogue } from '../season/works-catalogue.ts';
import { worksCost } from '../season/works-cost.ts';
import { strictestRules, worksWindow } from '../season/works-window.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { type Clock, dayInZone } from './clock.ts';
import { loadCatalogue } from './season-register.ts';
import type { CurrentFence } from './sift-notices.ts';

/** New posts decide by when: they are what most messages suggest, and their footings need time. */
const SLOWEST: CatalogueKind = 'post-swap';

/** Posts that carry the wind at the ends: two at each; judgement. */
const END_POSTS = 4;

/** The works of the catalogue behind an offer. */
const worksOf = (kind: OfferKind): CatalogueKind => (kind === 'end-posts' ? 'post-swap' : kind);

/** Posts that works of a kind are counted by: added posts stand between the others. */
function postsFor(kind: OfferKind, posts: number): number {
  if (kind === 'end-posts') return Math.min(END_POSTS, posts);
  return kind === 'added-posts' ? Math.max(1, posts - 1) : posts;
}

function offerOf(
  fence: CurrentFence,
  parts: {
    readonly posts: number;
    readonly today: CalendarDay;
    readonly nextOpening: CalendarDay;
    readonly frozen: { readonly opens: string; readonly closes: string } | null;
    readonly catalogue: WorksCatalogue;
    readonly currency: string;
  },
): WorksOffer {
  const { posts, today, nextOpening, frozen, catalogue, currency } = parts;
  const priceOf = (kind: OfferKind): number =>
    worksCost([{ kind: worksOf(kind), postCount: postsFor(kind, posts) }], catalogue).price;
  const isShipped = (kind: CatalogueKind): boolean => catalogue[kind].source === SHIPPED_CATALOGUE[kind].source;
  const window = worksWindow(strictestRules([SLOWEST], catalogue), { today, opensOn: nextOpening, frozen });
  const { pSnap } = seasonOne(fence.forecast);
  return {
    currency,
    works: OFFERED_KINDS.map((kind) => ({
      kind,
      postCount: postsFor(kind, posts),
      cost: budgetRange(priceOf(kind), isShipped(worksOf(kind)) ? 'shipped' : 'office'),
    })),
    nextOpening,
    latestDay: window.inTime ? window.latestDay : null,
    waiting: pSnap === null ? null : waitingSeason(pSnap, priceOf('rebuild'), fence.place.consequence),
  };
}

/** What messages may offer at some fences, by ref, from the catalogue as it is now. */
export async function worksOffers(
  register: Register,
  fences: ReadonlyMap<string, CurrentFence>,
  now: Clock,
): Promise<ReadonlyMap<string, WorksOffer>> {
  if (fences.size === 0) return new Map();
  const facts = await loadFenceFacts(register, [...fences.keys()]);
  const siteRefs = [...new Set([...fences.values()].map(({ place }) => place.site.ref))];
  const sites = new Map((await recordsWhereIn(register.db, 'sites', 'ref', siteRefs)).map((site) => [site.ref, site]));
  const catalogue = await loadCatalogue(register.db);
  const { currency } = await readSettings(register.db);
  const offers = new Map<string, WorksOffer>();
  for (const [ref, fence] of fences) {
    const known = facts.get(ref);
    const site = sites.get(fence.place.site.ref);
    if (!known || !site) continue;
    const today = dayInZone(now(), site.timeZone);
    const { frozenFrom, frozenTo } = site;
    const offer = offerOf(fence, {
      posts: stateOn(fenceStates(known), today).posts.length,
      today,
      nextOpening: seasonToPlan(known.site.seasonWindow, today).nextOpening,
      frozen: frozenFrom === null || frozenTo === null ? null : { opens: frozenFrom, closes: frozenTo },
      catalogue,
      currency,
    });
    offers.set(ref, offer);
  }
  return offers;
}
