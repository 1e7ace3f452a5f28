import type { FenceFacts } from '../forecast/fence-facts.ts';
import type { SeasonWindow } from '../forecast/season-calendar.ts';
import type { Register } from './database.ts';
import { loadFenceEvidence } from './evidence-store.ts';
import { fenceFacts, type Neighbourhood } from './fence-record-facts.ts';
import { learnedFactsFor, learnedInForce } from './learned-store.ts';
import { listRecords, recordsWhereIn } from './record-store.ts';
import { seasonWindow } from './storm-season-record.ts';

const unique = (refs: Iterable<string>): readonly string[] => [...new Set(refs)];

const byRef = <R extends { readonly ref: string }>(records: readonly R[]): ReadonlyMap<string, R> =>
  new Map(records.map((record) => [record.ref, record]));

function grouped<R extends { readonly fenceRef: string }>(records: readonly R[]): ReadonlyMap<string, readonly R[]> {
  const groups = new Map<string, R[]>();
  for (const record of records) {
    const group = groups.get(record.fenceRef);
    if (group) group.push(record);
    else groups.set(record.fenceRef, [record]);
  }
  return groups;
}

/**
 * What the forecast needs of each fence, by ref, in a handful of queries for all of them; refs that are not in the
 * register are left out. Posts come in the order of their numbers, works by ref,
 * inspections and storm outcomes by day and ref. At most some 10,000 refs a call.
 */
export async function loadFenceFacts(
  { db }: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, FenceFacts>> {
  const fences = await recordsWhereIn(db, 'fences', 'ref', unique(refs));
  const fenceRefs = fences.map((fence) => fence.ref);
  const posts = await recordsWhereIn(db, 'posts', 'fence_ref', fenceRefs);
  const works = await recordsWhereIn(db, 'works', 'fence_ref', fenceRefs);
  const sharedRefs = unique(posts.flatMap((post) => (post.sharedFenceRef === null ? [] : [post.sharedFenceRef])));
  const sharedFences = await recordsWhereIn(db, 'fences', 'ref', sharedRefs);
  const sites = await recordsWhereIn(db, 'sites', 'ref', unique(fences.map((fence) => fence.siteRef)));
  const zones = await recordsWhereIn(db, 'climate-zones', 'ref', unique(sites.map((site) => site.climateZoneRef)));
  const around: Neighbourhood = {
    sites: byRef(sites),
    stormSeasons: byRef(await listRecords(db, 'storm-seasons')),
    zones: byRef(zones),
    sharedFences: byRef(sharedFences),
    posts: grouped(posts),
    works: grouped(works),
    evidence: await loadFenceEvidence(db, fenceRefs),
  };
  const learned = await learnedInForce(db);
  return new Map(
    fences.map((fence) => {
      const facts = fenceFacts(fence, around);
      return [fence.ref, { ...facts, learned: learnedFactsFor(learned, facts) }];
    }),
  );
}

/** A fence as the sweep walks over it: which season is its season 1 follows from these. */
export interface FenceListing {
  readonly ref: string;
  readonly timeZone: string;
  readonly seasonWindow: SeasonWindow;
}

/** The next fences after a ref (from the first where null), ordered by ref byte by byte, at most `limit` of them. */
export async function listFenceRefs(
  { db }: Register,
  afterRef: string | null,
  limit: number,
): Promise<readonly FenceListing[]> {
  const rows = await db
    .selectFrom('fences')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select([
      'fences.ref',
      'sites.time_zone as timeZone',
      'sites.season_opens as seasonOpens',
      'sites.season_closes as seasonCloses',
      'sites.season_share as seasonShare',
      'sites.storm_season_ref as stormSeasonRef',
    ])
    .where('fences.ref', '>', afterRef ?? '')
    .orderBy('fences.ref')
    .limit(limit)
    .execute();
  const stormSeasons = byRef(await listRecords(db, 'storm-seasons'));
  return rows.map((row) => ({
    ref: row.ref,
    timeZone: row.timeZone,
    seasonWindow: seasonWindow(row, stormSeasons),
  }));
}
