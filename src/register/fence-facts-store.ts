import type { FenceFacts, PostOverride } from '../forecast/fence-facts.ts';
import type { SeasonWindow } from '../forecast/season-calendar.ts';
import { type ClimateZoneRecord, climateFacts } from './climate-zone-record.ts';
import type { Register } from './database.ts';
import { type FenceRecord, runFacts } from './fence-record.ts';
import { type PostRecord, postOverride } from './post-record.ts';
import { postWood } from './post-wood-record.ts';
import { recordsWhereIn } from './record-store.ts';
import { type SiteRecord, seasonWindow, windEntry } from './site-record.ts';
import { type WorksRecord, worksFacts } from './works-record.ts';

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

function found<R>(map: ReadonlyMap<string, R>, ref: string): R {
  const record = map.get(ref);
  if (record === undefined) throw new Error(`the register refers to ${ref}, which is not there: restore a backup`);
  return record;
}

interface Neighbourhood {
  readonly sites: ReadonlyMap<string, SiteRecord>;
  readonly zones: ReadonlyMap<string, ClimateZoneRecord>;
  readonly sharedFences: ReadonlyMap<string, FenceRecord>;
  readonly posts: ReadonlyMap<string, readonly PostRecord[]>;
  readonly works: ReadonlyMap<string, readonly WorksRecord[]>;
}

function overrideOf(
  post: PostRecord,
  fence: FenceRecord,
  sharedFences: ReadonlyMap<string, FenceRecord>,
): PostOverride {
  const { sharedFenceRef, sharedEnd } = post;
  const sharedRun: PostOverride['sharedRun'] =
    sharedFenceRef === null || sharedEnd === null
      ? null
      : {
          fenceRef: sharedFenceRef,
          run: runFacts(found(sharedFences, sharedFenceRef)),
          end: sharedEnd === 'A' ? 0 : 1,
        };
  return postOverride(post, fence, sharedRun);
}

const GUARDS = { yes: true, no: false, unknown: null } as const;

function fenceFacts(fence: FenceRecord, around: Neighbourhood): FenceFacts {
  const site = found(around.sites, fence.siteRef);
  return {
    ref: fence.ref,
    site: {
      exposure: site.exposure,
      elevationM: site.elevationM,
      topographicFactor: site.topographicFactor,
      soilClass: site.soilClass,
      soilSaturated: site.soilSaturated,
      lateralBearingDoubled: site.lateralBearingDoubled,
      climate: climateFacts(found(around.zones, site.climateZoneRef)),
      wind: windEntry(site),
      seasonWindow: seasonWindow(site),
    },
    run: runFacts(fence),
    wood: postWood(fence),
    installed: { earliest: fence.installedEarliest, latest: fence.installedLatest },
    ground: { embedmentM: fence.embedmentM, footing: fence.footing, footingDiameterM: fence.footingDiameterM },
    trimmer: { guards: GUARDS[fence.trimmerGuards], yearlyCutMm: fence.yearlyTrimmerCutMm },
    posts: (around.posts.get(fence.ref) ?? []).map((post) => overrideOf(post, fence, around.sharedFences)),
    works: (around.works.get(fence.ref) ?? []).map(worksFacts),
    inspections: [],
    outcomes: [],
    learned: null,
  };
}

/**
 * What the forecast needs of each fence, by ref, in a handful of queries for all of them; refs that are not in the
 * register are left out. Posts come in the order of their numbers, works by ref. At most some 10,000 refs a call.
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
    zones: byRef(zones),
    sharedFences: byRef(sharedFences),
    posts: grouped(posts),
    works: grouped(works),
  };
  return new Map(fences.map((fence) => [fence.ref, fenceFacts(fence, around)]));
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
    ])
    .where('fences.ref', '>', afterRef ?? '')
    .orderBy('fences.ref')
    .limit(limit)
    .execute();
  return rows.map((row) => ({ ref: row.ref, timeZone: row.timeZone, seasonWindow: seasonWindow(row) }));
}
