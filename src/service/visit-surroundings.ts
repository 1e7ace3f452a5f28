import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { recordsWhereIn } from '../register/record-store.ts';
import type { SiteRecord } from '../register/site-record.ts';
import type { Place } from '../season/travel.ts';
import type { SheetFenceFacts, SheetOwner, SheetSite } from '../season/visit/day-sheet.ts';
import type { Visit } from '../season/visit/visit.ts';

/** Where a site is; null where the register does not know. */
export const siteWhere = ({ latitude, longitude }: Pick<SiteRecord, 'latitude' | 'longitude'>): Place | null =>
  latitude === null || longitude === null ? null : { latitude, longitude };

/** A fence of a visit, before its facts are loaded. */
type VisitedFence = Omit<SheetFenceFacts, 'facts'>;

/** Sites, fences and owners of some visits. */
export interface VisitSurroundings {
  readonly sites: ReadonlyMap<string, SiteRecord>;
  readonly fences: ReadonlyMap<string, VisitedFence>;
}

const fenceRefsOf = (visits: readonly Visit[]): readonly string[] => [
  ...new Set(visits.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef))),
];

const sheetOwner = ({ name, language, email, postalAddress }: OwnerRecord): SheetOwner => ({
  name,
  language,
  reachedAt: email ?? postalAddress,
});

/** Loads where visits go and who owns what they do, in a handful of queries. */
export async function visitSurroundings({ db }: Register, visits: readonly Visit[]): Promise<VisitSurroundings> {
  const sites = await recordsWhereIn(db, 'sites', 'ref', [...new Set(visits.map(({ siteRef }) => siteRef))]);
  const fences = await recordsWhereIn(db, 'fences', 'ref', fenceRefsOf(visits));
  const ownerRefs = fences.flatMap(({ ownerRef, secondOwnerRef }) => [ownerRef, secondOwnerRef ?? ownerRef]);
  const owners = new Map(
    (await recordsWhereIn(db, 'owners', 'ref', [...new Set(ownerRefs)])).map((owner) => [owner.ref, owner]),
  );
  const ownersOf = (refs: readonly (string | null)[]): readonly SheetOwner[] =>
    refs.flatMap((ref) => {
      const owner = ref === null ? undefined : owners.get(ref);
      return owner ? [sheetOwner(owner)] : [];
    });
  return {
    sites: new Map(sites.map((site) => [site.ref, site])),
    fences: new Map(
      fences.map(({ ref, namedEnd, style, consequence, accessNote, note, ownerRef, secondOwnerRef }) => [
        ref,
        { namedEnd, style, consequence, accessNote, note, owners: ownersOf([ownerRef, secondOwnerRef]) },
      ]),
    ),
  };
}

/** A site as a day sheet names it. */
const sheetSite = (site: SiteRecord): SheetSite => ({
  ref: site.ref,
  name: site.name,
  place: site.place,
  units: site.units,
  where: siteWhere(site),
  frozen: site.frozenFrom === null || site.frozenTo === null ? null : { opens: site.frozenFrom, closes: site.frozenTo },
});

/** The same with what a day sheet needs of each fence. */
export async function sheetSurroundings(
  register: Register,
  visits: readonly Visit[],
): Promise<{
  readonly sites: ReadonlyMap<string, SheetSite>;
  readonly fences: ReadonlyMap<string, SheetFenceFacts>;
}> {
  const { sites, fences } = await visitSurroundings(register, visits);
  const facts = await loadFenceFacts(register, [...fences.keys()]);
  return {
    sites: new Map([...sites.values()].map((site) => [site.ref, sheetSite(site)])),
    fences: new Map(
      [...fences].flatMap(([ref, fence]) => {
        const known = facts.get(ref);
        return known ? [[ref, { ...fence, facts: known }] as const] : [];
      }),
    ),
  };
}
