import type { Register } from './database.ts';
import type { SiteRecord } from './site-record.ts';

/** Where the fences of a letter stand, and when it was written (ISO 8601, UTC). */
export interface LetterSite extends Pick<SiteRecord, 'units' | 'timeZone'> {
  readonly writtenAt: string;
}

/** The site of the first fence that a message of the outbox tells of; null where it tells of none. */
export async function siteOfMessage({ db }: Register, outboxId: number): Promise<LetterSite | null> {
  const row = await db
    .selectFrom('outbox')
    .innerJoin('notices', 'notices.outbox_id', 'outbox.id')
    .innerJoin('fences', 'fences.ref', 'notices.fence_ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select(['sites.units as units', 'sites.time_zone as timeZone', 'outbox.created_at as writtenAt'])
    .where('outbox.id', '=', outboxId)
    .orderBy('fences.ref')
    .executeTakeFirst();
  return row ?? null;
}
