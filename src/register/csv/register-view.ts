import type { ClimateZoneRecord } from '../climate-zone-record.ts';
import type { FenceRecord } from '../fence-record.ts';
import type { OwnerRecord } from '../owner-record.ts';
import type { PostRecord } from '../post-record.ts';
import { listRecords, type RecordKind, type RecordOf, type RegisterDb } from '../record-store.ts';
import type { SiteRecord } from '../site-record.ts';
import type { WorksRecord } from '../works-record.ts';

/** The register as it would be: what is stored, overlaid with the rows taken so far. */
export interface RegisterView {
  readonly owners: Map<string, OwnerRecord>;
  readonly 'climate-zones': Map<string, ClimateZoneRecord>;
  readonly sites: Map<string, SiteRecord>;
  readonly fences: Map<string, FenceRecord>;
  readonly posts: Map<string, PostRecord>;
  readonly works: Map<string, WorksRecord>;
  readonly postsOfFence: Map<string, Map<number, PostRecord>>;
  readonly worksOfFence: Map<string, Map<string, WorksRecord>>;
}

/** The name of a record within its kind: its ref; a post has its fence's ref and its number. */
export function recordName<K extends RecordKind>(kind: K, record: RecordOf[K]): string {
  if (kind !== 'posts') return (record as { readonly ref: string }).ref;
  const post = record as PostRecord;
  return `${post.fenceRef} post ${post.number}`;
}

function within<K, V>(outer: Map<string, Map<K, V>>, ref: string): Map<K, V> {
  const found = outer.get(ref);
  if (found) return found;
  const made = new Map<K, V>();
  outer.set(ref, made);
  return made;
}

/** Puts a record into the view, in place of the one of the same name. */
export function overlay<K extends RecordKind>(view: RegisterView, kind: K, record: RecordOf[K]): void {
  if (kind === 'posts') {
    const post = record as PostRecord;
    within(view.postsOfFence, post.fenceRef).set(post.number, post);
  }
  if (kind === 'works') {
    const works = record as WorksRecord;
    const before = view.works.get(works.ref);
    if (before && before.fenceRef !== works.fenceRef) view.worksOfFence.get(before.fenceRef)?.delete(works.ref);
    within(view.worksOfFence, works.fenceRef).set(works.ref, works);
  }
  (view[kind] as unknown as Map<string, RecordOf[K]>).set(recordName(kind, record), record);
}

/** The stored register as a view. */
export async function registerView(db: RegisterDb): Promise<RegisterView> {
  const byName = async <K extends RecordKind>(kind: K): Promise<Map<string, RecordOf[K]>> =>
    new Map((await listRecords(db, kind)).map((record) => [recordName(kind, record), record]));
  const view: RegisterView = {
    owners: await byName('owners'),
    'climate-zones': await byName('climate-zones'),
    sites: await byName('sites'),
    fences: await byName('fences'),
    posts: await byName('posts'),
    works: await byName('works'),
    postsOfFence: new Map(),
    worksOfFence: new Map(),
  };
  for (const post of view.posts.values()) within(view.postsOfFence, post.fenceRef).set(post.number, post);
  for (const works of view.works.values()) within(view.worksOfFence, works.fenceRef).set(works.ref, works);
  return view;
}
