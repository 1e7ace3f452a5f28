import type { FenceRecord } from '../fence-record.ts';
import { overriddenWood, type PostRecord } from '../post-record.ts';
import { doubtfulWood } from '../post-wood-record.ts';
import { refusePost, refuseWorks } from '../record-agreement.ts';
import type { SiteRecord } from '../site-record.ts';
import type { WorksRecord } from '../works-record.ts';
import { type Candidates, type ReplacedEvidence, refuseForEvidence } from './evidence-checks.ts';
import type { ImportRow } from './import-row.ts';
import type { RegisterView } from './register-view.ts';
import { refuseUnknownRef } from './unknown-ref.ts';

/** Names of records that the files replace: they are judged on their own rows, not with their fence. */
export interface ReplacedNames extends ReplacedEvidence {
  readonly posts: ReadonlySet<string>;
  readonly works: ReadonlySet<string>;
  readonly daysOff: ReadonlySet<string>;
}

/** Refuses a site of an unknown climate zone or storm season; warns of a hurricane site without a curve. */
export function checkSite(row: ImportRow, site: SiteRecord, view: RegisterView): boolean {
  let refused = refuseUnknownRef(row, 'climateZoneRef', 'climate-zones', site.climateZoneRef, view);
  if (site.stormSeasonRef !== null) {
    refused = refuseUnknownRef(row, 'stormSeasonRef', 'storm-seasons', site.stormSeasonRef, view) || refused;
  }
  if (refused) return false;
  if (site.hurricane && site.secondGustMps === null) {
    row.warnKey(
      'hurricane',
      'one gust fixes no curve in a hurricane region; enter a second gust with its return period to see risks',
    );
  }
  return true;
}

/** What of a fence a day or a post that no longer fits it comes from; all else comes from the section. */
const FENCE_KEYS: Readonly<Record<string, string>> = {
  day: 'installedEarliest',
  post: 'runLengthM',
  posts: 'runLengthM',
};

/** Refuses a fence of an unknown site or owner, or that the posts, works and evidence recorded for it no longer fit. */
export function checkFence(row: ImportRow, fence: FenceRecord, view: RegisterView, replaced: ReplacedNames): boolean {
  let refused = refuseUnknownRef(row, 'siteRef', 'sites', fence.siteRef, view);
  refused = refuseUnknownRef(row, 'ownerRef', 'owners', fence.ownerRef, view) || refused;
  if (fence.secondOwnerRef !== null) {
    refused = refuseUnknownRef(row, 'secondOwnerRef', 'owners', fence.secondOwnerRef, view) || refused;
  }
  if (refused) return false;
  for (const [number, post] of view.postsOfFence.get(fence.ref) ?? []) {
    if (replaced.posts.has(`${fence.ref} post ${number}`)) continue;
    refusePost(post, fence, null, (key, reason) => {
      refused = true;
      row.refuseKey(key in fence ? key : 'runLengthM', `does not fit post ${number} in the register: ${reason}`);
    });
  }
  refuseWorks([...(view.worksOfFence.get(fence.ref)?.values() ?? [])], fence, ({ ref }) =>
    replaced.works.has(ref)
      ? null
      : (_key, reason) => {
          refused = true;
          row.refuseKey('runLengthM', `does not fit works ${ref} in the register: ${reason}`);
        },
  );
  if (!refused) {
    const posts = view.postsOfFence.get(fence.ref)?.values() ?? [];
    const works = view.worksOfFence.get(fence.ref)?.values() ?? [];
    refuseForEvidence({ fence, posts, works }, view, replaced, (key, reason) => {
      refused = true;
      row.refuseKey(FENCE_KEYS[key] ?? 'sectionKind', reason);
    });
  }
  const doubt = doubtfulWood(fence);
  if (doubt && !refused) row.warnKey('treatmentClass', doubt);
  return !refused;
}

/** Refuses a post of an unknown fence, one that its fence or its readings cannot have, or a shared corner that does not meet. */
export function checkPost(row: ImportRow, post: PostRecord, view: RegisterView, replaced: ReplacedNames): boolean {
  const fence = view.fences.get(post.fenceRef);
  let refused = !fence && refuseUnknownRef(row, 'fenceRef', 'fences', post.fenceRef, view);
  const { sharedFenceRef } = post;
  if (sharedFenceRef !== null) {
    refused = refuseUnknownRef(row, 'sharedFenceRef', 'fences', sharedFenceRef, view) || refused;
  }
  if (refused || !fence) return false;
  const shared = sharedFenceRef === null ? null : (view.fences.get(sharedFenceRef) ?? null);
  refusePost(post, fence, shared, (key, reason) => {
    refused = true;
    row.refuseKey(key, reason);
  });
  if (!refused) {
    const posts = new Map(view.postsOfFence.get(fence.ref)).set(post.number, post).values();
    const works = view.worksOfFence.get(fence.ref)?.values() ?? [];
    refuseForEvidence({ fence, posts, works }, view, replaced, (_key, reason) => {
      refused = true;
      row.refuseKey('number', reason);
    });
  }
  const wood = overriddenWood(post, fence);
  const doubt = wood && doubtfulWood(wood);
  if (doubt && !refused) row.warnKey('treatmentClass', doubt);
  return !refused;
}

/** Refuses works on an unknown fence. Whether they fit the fence is judged for all works of a fence together. */
export const checkWorksFence = (row: ImportRow, works: WorksRecord, view: RegisterView): boolean =>
  !refuseUnknownRef(row, 'fenceRef', 'fences', works.fenceRef, view);

/**
 * Judges the works of the files fence by fence, in the order in which they were done, together with the stored ones.
 * @returns the refs of those refused
 */
export function checkWorks(
  candidates: Candidates<WorksRecord>,
  view: RegisterView,
  replaced: ReplacedNames,
): ReadonlySet<string> {
  const refused = new Set<string>();
  const byFence = new Map<string, Map<string, WorksRecord>>();
  for (const { record } of candidates.values()) {
    const all = byFence.get(record.fenceRef) ?? new Map(view.worksOfFence.get(record.fenceRef));
    byFence.set(record.fenceRef, all.set(record.ref, record));
  }
  for (const [fenceRef, works] of byFence) {
    const fence = view.fences.get(fenceRef);
    if (!fence) continue;
    const refuseRow = (ref: string, key: string, reason: string): void => {
      refused.add(ref);
      candidates.get(ref)?.row.refuseKey(key, reason);
    };
    refuseWorks([...works.values()], fence, ({ ref }) =>
      candidates.has(ref) ? (key, reason) => refuseRow(ref, key, reason) : null,
    );
    const sound = [...works.values()].filter(({ ref }) => !refused.has(ref));
    const posts = view.postsOfFence.get(fenceRef)?.values() ?? [];
    refuseForEvidence({ fence, posts, works: sound }, view, replaced, (_key, reason) => {
      for (const { ref } of sound) if (candidates.has(ref)) refuseRow(ref, 'kind', reason);
    });
  }
  return refused;
}
