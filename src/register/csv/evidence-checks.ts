import { depthSeen } from '../../forecast/evidence/depth-likelihood.ts';
import { fenceStates, stateBefore } from '../../forecast/fence-state.ts';
import {
  doubtfulReading,
  refuseContradictions,
  refuseEarlyDay,
  refuseOutcome,
  refuseReading,
  type States,
} from '../evidence-agreement.ts';
import type { FenceRecord } from '../fence-record.ts';
import { fenceFacts } from '../fence-record-facts.ts';
import type { InspectionRecord } from '../inspection-record.ts';
import type { PostRecord } from '../post-record.ts';
import { type ReadingRecord, readingFacts } from '../reading-record.ts';
import type { StormOutcomeRecord } from '../storm-outcome-record.ts';
import type { Refuse } from '../value-schemas.ts';
import type { WorksRecord } from '../works-record.ts';
import type { ImportRow } from './import-row.ts';
import type { RegisterView } from './register-view.ts';
import { recordName } from './register-view.ts';
import { refuseUnknownRef } from './unknown-ref.ts';

/** Names of the inspections, readings and outcomes that the files replace: they are judged on their own rows. */
export interface ReplacedEvidence {
  readonly inspections: ReadonlySet<string>;
  readonly readings: ReadonlySet<string>;
  readonly outcomes: ReadonlySet<string>;
}

/** Rows of a kind that were read and fit on their own, by the name of their record. */
export type Candidates<R> = ReadonlyMap<string, { readonly row: ImportRow; readonly record: R }>;

/** How much less rot may be found later than earlier before that is doubtful [mm]: twice the error of a reading; judgement. */
const SHRINKING_DEPTH_MM = 4;

interface FenceParts {
  readonly fence: FenceRecord;
  readonly posts: Iterable<PostRecord>;
  readonly works: Iterable<WorksRecord>;
}

/** The states that a fence goes through with these posts and works. */
const statesWith = ({ fence, posts, works }: FenceParts, view: RegisterView): States =>
  fenceStates(
    fenceFacts(fence, {
      sites: view.sites,
      zones: view['climate-zones'],
      sharedFences: view.fences,
      posts: new Map([[fence.ref, [...posts]]]),
      works: new Map([[fence.ref, [...works]]]),
      evidence: new Map(),
    }),
  );

function statesOf(fence: FenceRecord, view: RegisterView): States {
  const known = view.statesOfFence.get(fence.ref);
  if (known) return known;
  const posts = view.postsOfFence.get(fence.ref)?.values() ?? [];
  const works = view.worksOfFence.get(fence.ref)?.values() ?? [];
  const states = statesWith({ fence, posts, works }, view);
  view.statesOfFence.set(fence.ref, states);
  return states;
}

/**
 * Finds stored inspections and storm outcomes that a fence no longer fits, once it has these posts and works.
 * @param refuse gets the key of the inspection, reading or outcome that does not fit, and which it is and why
 */
export function refuseForEvidence(
  parts: FenceParts,
  view: RegisterView,
  replaced: ReplacedEvidence,
  refuse: Refuse,
): void {
  const { fence } = parts;
  const inspections = [...(view.inspectionsOfFence.get(fence.ref)?.values() ?? [])];
  const outcomes = [...(view.outcomesOfFence.get(fence.ref)?.values() ?? [])];
  if (inspections.length + outcomes.length === 0) return;
  const states = statesWith(parts, view);
  const unfit =
    (what: string): Refuse =>
    (key, reason) =>
      refuse(key, `does not fit ${what} in the register: ${reason}`);
  for (const inspection of inspections) {
    if (replaced.inspections.has(inspection.ref)) continue;
    refuseEarlyDay(inspection.day, fence, unfit(`inspection ${inspection.ref}`));
    for (const reading of view.readingsOfInspection.get(inspection.ref)?.values() ?? []) {
      if (replaced.readings.has(recordName('readings', reading))) continue;
      const what = `the reading of post ${reading.post} in inspection ${inspection.ref}`;
      refuseReading(reading, inspection, states, unfit(what));
    }
  }
  for (const outcome of outcomes) {
    if (replaced.outcomes.has(outcome.ref)) continue;
    refuseEarlyDay(outcome.day, fence, unfit(`storm outcome ${outcome.ref}`));
    refuseOutcome(outcome, states, unfit(`storm outcome ${outcome.ref}`));
  }
}

/** A way to refuse a row that remembers whether it was used. */
function refusal(row: ImportRow): { readonly refuse: Refuse; readonly used: () => boolean } {
  let used = false;
  return {
    refuse: (key, reason) => {
      used = true;
      row.refuseKey(key, reason);
    },
    used: () => used,
  };
}

/** Refuses an inspection of an unknown fence, before the fence stood, or that its stored readings no longer fit. */
export function checkInspection(
  row: ImportRow,
  inspection: InspectionRecord,
  view: RegisterView,
  replaced: ReplacedEvidence,
): boolean {
  const fence = view.fences.get(inspection.fenceRef);
  if (!fence) return !refuseUnknownRef(row, 'fenceRef', 'fence', inspection.fenceRef, view.fences);
  const { refuse, used } = refusal(row);
  refuseEarlyDay(inspection.day, fence, refuse);
  for (const reading of view.readingsOfInspection.get(inspection.ref)?.values() ?? []) {
    if (replaced.readings.has(recordName('readings', reading))) continue;
    refuseReading(reading, inspection, statesOf(fence, view), (key, reason) =>
      refuse(
        key === 'post' ? 'day' : 'method',
        `does not fit the reading of post ${reading.post} in the register: ${reason}`,
      ),
    );
  }
  return !used();
}

/** Refuses a reading of an unknown inspection, or that its inspection or its post cannot have given. */
export function checkReading(row: ImportRow, reading: ReadingRecord, view: RegisterView): boolean {
  const inspection = view.inspections.get(reading.inspectionRef);
  if (!inspection) {
    return !refuseUnknownRef(row, 'inspectionRef', 'inspection', reading.inspectionRef, view.inspections);
  }
  const fence = view.fences.get(inspection.fenceRef);
  if (!fence) return !refuseUnknownRef(row, 'inspectionRef', 'fence', inspection.fenceRef, view.fences);
  const { refuse, used } = refusal(row);
  const states = statesOf(fence, view);
  refuseReading(reading, inspection, states, refuse);
  const doubt = used() ? null : doubtfulReading(reading, inspection, states);
  if (doubt !== null) row.warnKey('groundlineMm', doubt);
  return !used();
}

/** Refuses an outcome at an unknown fence, before the fence stood, or of posts it had not. */
export function checkOutcome(row: ImportRow, outcome: StormOutcomeRecord, view: RegisterView): boolean {
  const fence = view.fences.get(outcome.fenceRef);
  if (!fence) return !refuseUnknownRef(row, 'fenceRef', 'fence', outcome.fenceRef, view.fences);
  const { refuse, used } = refusal(row);
  refuseEarlyDay(outcome.day, fence, refuse);
  refuseOutcome(outcome, statesOf(fence, view), refuse);
  return !used();
}

/**
 * Judges the outcomes of the files fence by fence, together with the stored ones.
 * @returns the refs of those refused
 */
export function checkOutcomes(candidates: Candidates<StormOutcomeRecord>, view: RegisterView): ReadonlySet<string> {
  const refused = new Set<string>();
  const byFence = new Map<string, Map<string, StormOutcomeRecord>>();
  for (const { record } of candidates.values()) {
    const stored = [...(view.outcomesOfFence.get(record.fenceRef) ?? [])].filter(([ref]) => !candidates.has(ref));
    const all = byFence.get(record.fenceRef) ?? new Map(stored);
    byFence.set(record.fenceRef, all.set(record.ref, record));
  }
  for (const outcomes of byFence.values()) {
    refuseContradictions([...outcomes.values()], ({ ref }) => {
      const candidate = candidates.get(ref);
      if (!candidate) return null;
      return (key, reason) => {
        refused.add(ref);
        candidate.row.refuseKey(key, reason);
      };
    });
  }
  return refused;
}

interface DatedDepth {
  readonly day: string;
  readonly ref: string;
  readonly depthMm: number;
  readonly row: ImportRow | null;
}

/** The depths found at each post of a fence, stored and new, in the order of their days. */
function depthsByPost(
  fence: FenceRecord,
  candidates: Candidates<ReadingRecord>,
  view: RegisterView,
): ReadonlyMap<number, readonly DatedDepth[]> {
  const byPost = new Map<number, DatedDepth[]>();
  const states = statesOf(fence, view);
  const inspections = [...(view.inspectionsOfFence.get(fence.ref)?.values() ?? [])].sort((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : 0,
  );
  for (const { ref, day, method } of inspections) {
    const { posts } = stateBefore(states, day);
    for (const reading of view.readingsOfInspection.get(ref)?.values() ?? []) {
      const section = posts.find(({ number }) => number === reading.post)?.wood.section;
      const { groundline } = readingFacts(reading);
      const seen = section && groundline ? depthSeen(groundline, section, method) : null;
      if (seen?.kind !== 'measured') continue;
      const row = candidates.get(recordName('readings', reading))?.row ?? null;
      byPost.set(reading.post, [...(byPost.get(reading.post) ?? []), { day, ref, depthMm: seen.depthMm, row }]);
    }
  }
  return byPost;
}

/** Warns where a post is found with clearly less rot than before, though nothing was done to it in between. */
export function warnOfShrinkingDepths(candidates: Candidates<ReadingRecord>, view: RegisterView): void {
  const fenceRefs = new Set<string>();
  for (const { record } of candidates.values()) {
    const inspection = view.inspections.get(record.inspectionRef);
    if (inspection) fenceRefs.add(inspection.fenceRef);
  }
  for (const fenceRef of fenceRefs) {
    const fence = view.fences.get(fenceRef);
    if (!fence) continue;
    const works = [...(view.worksOfFence.get(fenceRef)?.values() ?? [])];
    for (const [post, depths] of depthsByPost(fence, candidates, view)) {
      const touching = works.filter(({ posts }) => posts === 'all' || posts.includes(post));
      for (const [index, later] of depths.entries()) {
        const comparable = depths
          .slice(0, index)
          .filter((each) => !touching.some(({ day }) => day >= each.day && day < later.day));
        const deepest = comparable.reduce<DatedDepth | null>(
          (most, each) => (most === null || each.depthMm > most.depthMm ? each : most),
          null,
        );
        if (deepest && deepest.depthMm - later.depthMm > SHRINKING_DEPTH_MM) warnOf(post, deepest, later);
      }
    }
  }
}

function warnOf(post: number, earlier: DatedDepth, later: DatedDepth): void {
  const row = later.row ?? earlier.row;
  row?.warnKey(
    'groundlineMm',
    `${later.depthMm.toFixed(1)} mm of depth on ${later.day}, but post ${post} had ${earlier.depthMm.toFixed(1)} mm on ${earlier.day} (inspection ${earlier.ref}) and no works are recorded between; check both, or enter the works`,
  );
}
