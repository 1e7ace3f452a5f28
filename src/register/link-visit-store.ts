import type { VisitWay } from './answer-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** A page that was asked for by a link. */
export interface LinkVisit {
  readonly linkId: number;
  /** Name of the page. */
  readonly page: string;
  readonly way: VisitWay;
}

/** How often a page was asked for in one way, and when first and last (ISO 8601, UTC). */
export interface LinkVisits extends LinkVisit {
  readonly visits: number;
  readonly firstAt: string;
  readonly lastAt: string;
}

/** Counts a visit; a row a link, page and way, however often a scanner comes. */
export async function noteLinkVisit(db: RegisterDb, { linkId, page, way }: LinkVisit, at: string): Promise<void> {
  await db
    .insertInto('link_visits')
    .values({ link_id: linkId, page, way, visits: 1, first_at: at, last_at: at })
    .onConflict((conflict) =>
      conflict
        .columns(['link_id', 'page', 'way'])
        .doUpdateSet((eb) => ({ visits: eb('link_visits.visits', '+', 1), last_at: at })),
    )
    .execute();
}

/** The visits of some links, by link, page and way. */
export async function visitsOfLinks(db: RegisterDb, linkIds: readonly number[]): Promise<readonly LinkVisits[]> {
  if (linkIds.length === 0) return [];
  return db
    .selectFrom('link_visits')
    .select(['link_id as linkId', 'page', 'way', 'visits', 'first_at as firstAt', 'last_at as lastAt'])
    .where('link_id', 'in', linkIds)
    .orderBy('link_id')
    .orderBy('page')
    .orderBy('way')
    .execute();
}
