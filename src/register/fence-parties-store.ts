import type { Register } from './database.ts';
import type { FenceRecord } from './fence-record.ts';
import type { OwnerRecord } from './owner-record.ts';
import { listRecords, recordsWhereIn } from './record-store.ts';
import type { SiteRecord } from './site-record.ts';
import { seasonWindow } from './storm-season-record.ts';

/** Where a fence stands and whom its notices concern. */
export interface FenceParties {
  readonly fenceRef: string;
  readonly namedEnd: string;
  readonly style: FenceRecord['style'];
  readonly consequence: FenceRecord['consequence'];
  readonly site: Pick<SiteRecord, 'ref' | 'name' | 'place' | 'region' | 'units' | 'timeZone' | 'windSource'> & {
    /** Last day of the storm season in force there, `MM-DD`. */
    readonly seasonCloses: string;
  };
  /** One or two, the first owner first. */
  readonly owners: readonly OwnerRecord[];
}

/** Site and owners of each fence, by the fence's ref; refs that are not in the register are left out. */
export async function loadFenceParties(
  { db }: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, FenceParties>> {
  const fences = await recordsWhereIn(db, 'fences', 'ref', [...new Set(refs)]);
  const ownerRefs = fences.flatMap(({ ownerRef, secondOwnerRef }) =>
    secondOwnerRef === null ? [ownerRef] : [ownerRef, secondOwnerRef],
  );
  const owners = new Map(
    (await recordsWhereIn(db, 'owners', 'ref', [...new Set(ownerRefs)])).map((owner) => [owner.ref, owner]),
  );
  const siteRefs = [...new Set(fences.map((fence) => fence.siteRef))];
  const sites = new Map((await recordsWhereIn(db, 'sites', 'ref', siteRefs)).map((site) => [site.ref, site]));
  const stormSeasons = new Map((await listRecords(db, 'storm-seasons')).map((season) => [season.ref, season]));
  const parties = fences.flatMap((fence): readonly FenceParties[] => {
    const site = sites.get(fence.siteRef);
    if (!site) return [];
    const { ref, name, place, region, units, timeZone, windSource } = site;
    return [
      {
        fenceRef: fence.ref,
        namedEnd: fence.namedEnd,
        style: fence.style,
        consequence: fence.consequence,
        site: {
          ref,
          name,
          place,
          region,
          units,
          timeZone,
          windSource,
          seasonCloses: seasonWindow(site, stormSeasons).closes,
        },
        owners: [fence.ownerRef, fence.secondOwnerRef].flatMap((owner) => {
          const record = owner === null ? undefined : owners.get(owner);
          return record ? [record] : [];
        }),
      },
    ];
  });
  return new Map(parties.map((each) => [each.fenceRef, each]));
}
