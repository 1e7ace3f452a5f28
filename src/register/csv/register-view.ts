import type { CatalogueRecord } from '../catalogue-record.ts';
import type { ClimateZoneRecord } from '../climate-zone-record.ts';
import type { CrewMemberRecord } from '../crew-member-record.ts';
import type { CrewRecord } from '../crew-record.ts';
import type { DayOffRecord } from '../day-off-record.ts';
import type { States } from '../evidence-agreement.ts';
import type { FenceRecord } from '../fence-record.ts';
import type { InspectionRecord } from '../inspection-record.ts';
import type { MaterialRecord } from '../material-record.ts';
import type { OwnerRecord } from '../owner-record.ts';
import type { PostRecord } from '../post-record.ts';
import type { ReadingRecord } from '../reading-record.ts';
import {
  listRecords,
  RECORD_KINDS,
  type RecordKind,
  type RecordOf,
  type RegisterDb,
  readingsOfFences,
  recordsWhereIn,
} from '../record-store.ts';
import type { SiteRecord } from '../site-record.ts';
import type { StormOutcomeRecord } from '../storm-outcome-record.ts';
import type { StormSeasonRecord } from '../storm-season-record.ts';
import type { WorksRecord } from '../works-record.ts';

/** The register as it would be: what is stored, overlaid with the rows taken so far. */
export interface RegisterView {
  readonly owners: Map<string, OwnerRecord>;
  readonly 'climate-zones': Map<string, ClimateZoneRecord>;
  readonly 'storm-seasons': Map<string, StormSeasonRecord>;
  readonly sites: Map<string, SiteRecord>;
  readonly fences: Map<string, FenceRecord>;
  readonly posts: Map<string, PostRecord>;
  readonly works: Map<string, WorksRecord>;
  readonly inspections: Map<string, InspectionRecord>;
  readonly readings: Map<string, ReadingRecord>;
  readonly outcomes: Map<string, StormOutcomeRecord>;
  readonly catalogue: Map<string, CatalogueRecord>;
  readonly materials: Map<string, MaterialRecord>;
  readonly crews: Map<string, CrewRecord>;
  readonly 'crew-members': Map<string, CrewMemberRecord>;
  readonly 'days-off': Map<string, DayOffRecord>;
  readonly postsOfFence: Map<string, Map<number, PostRecord>>;
  readonly worksOfFence: Map<string, Map<string, WorksRecord>>;
  readonly inspectionsOfFence: Map<string, Map<string, InspectionRecord>>;
  readonly readingsOfInspection: Map<string, Map<number, ReadingRecord>>;
  readonly outcomesOfFence: Map<string, Map<string, StormOutcomeRecord>>;
  /** States of fences worked out so far; those of a changed fence are worked out anew. */
  readonly statesOfFence: Map<string, States>;
  /** Kinds of which only a part was read: what is not in it may be in the register, unless a row names it. */
  readonly inPart: ReadonlySet<RecordKind>;
  /** Where the rows stand that were refused, by kind and name. */
  readonly refusedRows: ReadonlyMap<RecordKind, Map<string, string>>;
}

/**
 * The name of a record within its kind: its ref; that of a post is its fence's ref and its number, of a reading its
 * inspection's, of a line of the catalogue its kind, of a material that and its name.
 */
export function recordName<K extends RecordKind>(kind: K, record: RecordOf[K]): string {
  if (kind === 'posts') {
    const post = record as PostRecord;
    return `${post.fenceRef} post ${post.number}`;
  }
  if (kind === 'readings') {
    const reading = record as ReadingRecord;
    return `${reading.inspectionRef} post ${reading.post}`;
  }
  if (kind === 'catalogue') return (record as CatalogueRecord).kind;
  if (kind === 'materials') {
    const material = record as MaterialRecord;
    return `${material.kind} ${material.name}`;
  }
  return (record as { readonly ref: string }).ref;
}

function within<K, V>(outer: Map<string, Map<K, V>>, ref: string): Map<K, V> {
  const found = outer.get(ref);
  if (found) return found;
  const made = new Map<K, V>();
  outer.set(ref, made);
  return made;
}

interface OfFence {
  readonly ref: string;
  readonly fenceRef: string;
}

/** Puts a record under its fence, and takes it from under another one that had it before. */
function place<R extends OfFence>(groups: Map<string, Map<string, R>>, before: R | undefined, record: R): void {
  if (before && before.fenceRef !== record.fenceRef) groups.get(before.fenceRef)?.delete(record.ref);
  within(groups, record.fenceRef).set(record.ref, record);
}

/** Puts a record into the view, in place of the one of the same name. */
export function overlay<K extends RecordKind>(view: RegisterView, kind: K, record: RecordOf[K]): void {
  const name = recordName(kind, record);
  switch (kind) {
    case 'fences':
      view.statesOfFence.clear();
      break;
    case 'posts': {
      const post = record as PostRecord;
      within(view.postsOfFence, post.fenceRef).set(post.number, post);
      view.statesOfFence.delete(post.fenceRef);
      break;
    }
    case 'works': {
      const before = view.works.get(name);
      place(view.worksOfFence, before, record as WorksRecord);
      if (before) view.statesOfFence.delete(before.fenceRef);
      view.statesOfFence.delete((record as WorksRecord).fenceRef);
      break;
    }
    case 'inspections':
      place(view.inspectionsOfFence, view.inspections.get(name), record as InspectionRecord);
      break;
    case 'readings': {
      const reading = record as ReadingRecord;
      within(view.readingsOfInspection, reading.inspectionRef).set(reading.post, reading);
      break;
    }
    case 'outcomes':
      place(view.outcomesOfFence, view.outcomes.get(name), record as StormOutcomeRecord);
      break;
    case 'owners':
    case 'climate-zones':
    case 'storm-seasons':
    case 'sites':
    case 'catalogue':
    case 'materials':
    case 'crews':
    case 'crew-members':
    case 'days-off':
  }
  (view[kind] as unknown as Map<string, RecordOf[K]>).set(name, record);
}

/** What some fences and their evidence are judged by: the fences themselves, those that share posts with them, and what lies around. */
async function aroundFences(db: RegisterDb, refs: readonly string[]): Promise<Partial<RecordLists>> {
  const posts = await recordsWhereIn(db, 'posts', 'fence_ref', refs);
  const shared = posts.flatMap(({ sharedFenceRef }) => (sharedFenceRef === null ? [] : [sharedFenceRef]));
  return {
    'climate-zones': await listRecords(db, 'climate-zones'),
    'storm-seasons': await listRecords(db, 'storm-seasons'),
    sites: await listRecords(db, 'sites'),
    fences: await recordsWhereIn(db, 'fences', 'ref', [...new Set([...refs, ...shared])]),
    posts,
    works: await recordsWhereIn(db, 'works', 'fence_ref', refs),
    inspections: await recordsWhereIn(db, 'inspections', 'fence_ref', refs),
    readings: await readingsOfFences(db, refs),
    outcomes: await recordsWhereIn(db, 'outcomes', 'fence_ref', refs),
  };
}

type RecordLists = { readonly [K in RecordKind]: readonly RecordOf[K][] };

/** Kinds of which a view may hold only what belongs to some fences. */
const IN_PART: readonly RecordKind[] = RECORD_KINDS.filter(
  (kind) => !['climate-zones', 'storm-seasons', 'sites'].includes(kind),
);

/** A part of the register: some fences with all that is known of them, and all records of some kinds. */
export interface ViewPart {
  /** Refs of the fences. */
  readonly fences: readonly string[];
  /** Kinds of which all records are wanted, besides places and storm seasons, which are always there. */
  readonly whole: readonly RecordKind[];
}

/**
 * The stored register as a view.
 * @param part what of it is wanted; null for all of it
 */
export async function registerView(db: RegisterDb, part: ViewPart | null): Promise<RegisterView> {
  const view: RegisterView = {
    owners: new Map(),
    'climate-zones': new Map(),
    'storm-seasons': new Map(),
    sites: new Map(),
    fences: new Map(),
    posts: new Map(),
    works: new Map(),
    inspections: new Map(),
    readings: new Map(),
    outcomes: new Map(),
    catalogue: new Map(),
    materials: new Map(),
    crews: new Map(),
    'crew-members': new Map(),
    'days-off': new Map(),
    postsOfFence: new Map(),
    worksOfFence: new Map(),
    inspectionsOfFence: new Map(),
    readingsOfInspection: new Map(),
    outcomesOfFence: new Map(),
    statesOfFence: new Map(),
    inPart: new Set(part === null ? [] : IN_PART.filter((kind) => !part.whole.includes(kind))),
    refusedRows: new Map(RECORD_KINDS.map((kind) => [kind, new Map()])),
  };
  const few = part === null ? null : await aroundFences(db, part.fences);
  const fill = async <K extends RecordKind>(kind: K): Promise<void> => {
    const isWhole = part === null || part.whole.includes(kind);
    const records: readonly RecordOf[K][] = isWhole ? await listRecords(db, kind) : (few?.[kind] ?? []);
    for (const record of records) overlay(view, kind, record);
  };
  for (const kind of RECORD_KINDS) await fill(kind);
  return view;
}
