import type { FenceFacts, PostOverride } from '../forecast/fence-facts.ts';
import { type ClimateZoneRecord, climateFacts } from './climate-zone-record.ts';
import type { FenceEvidence } from './evidence-store.ts';
import { type FenceRecord, runFacts } from './fence-record.ts';
import { inspectionFacts } from './inspection-record.ts';
import { type PostRecord, postOverride } from './post-record.ts';
import { postWood } from './post-wood-record.ts';
import { type SiteRecord, windEntry } from './site-record.ts';
import { stormOutcomeFacts } from './storm-outcome-record.ts';
import { type StormSeasonRecord, seasonWindow } from './storm-season-record.ts';
import { type WorksRecord, worksFacts } from './works-record.ts';

function found<R>(map: ReadonlyMap<string, R>, ref: string): R {
  const record = map.get(ref);
  if (record === undefined) throw new Error(`the register refers to ${ref}, which is not there: restore a backup`);
  return record;
}

/** The records that surround fences: all those that their facts need. */
export interface Neighbourhood {
  readonly sites: ReadonlyMap<string, SiteRecord>;
  readonly stormSeasons: ReadonlyMap<string, StormSeasonRecord>;
  readonly zones: ReadonlyMap<string, ClimateZoneRecord>;
  readonly sharedFences: ReadonlyMap<string, FenceRecord>;
  readonly posts: ReadonlyMap<string, readonly PostRecord[]>;
  readonly works: ReadonlyMap<string, readonly WorksRecord[]>;
  readonly evidence: ReadonlyMap<string, FenceEvidence>;
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

/** What the forecast takes from a fence's record and those around it. Throws where one that it refers to is not there. */
export function fenceFacts(fence: FenceRecord, around: Neighbourhood): FenceFacts {
  const site = found(around.sites, fence.siteRef);
  const evidence = around.evidence.get(fence.ref);
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
      seasonWindow: seasonWindow(site, around.stormSeasons),
    },
    run: runFacts(fence),
    wood: postWood(fence),
    installed: { earliest: fence.installedEarliest, latest: fence.installedLatest },
    ground: { embedmentM: fence.embedmentM, footing: fence.footing, footingDiameterM: fence.footingDiameterM },
    trimmer: { guards: GUARDS[fence.trimmerGuards], yearlyCutMm: fence.yearlyTrimmerCutMm },
    posts: (around.posts.get(fence.ref) ?? []).map((post) => overrideOf(post, fence, around.sharedFences)),
    works: (around.works.get(fence.ref) ?? []).map(worksFacts),
    inspections: (evidence?.inspections ?? []).map(({ record, readings }) => inspectionFacts(record, readings)),
    outcomes: (evidence?.outcomes ?? []).map(stormOutcomeFacts),
    learned: null,
  };
}
