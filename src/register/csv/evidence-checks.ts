import { fenceStates } from '../../forecast/fence-state.ts';
import { refuseEarlyDay, refuseOutcome, refuseReading, type States } from '../evidence-agreement.ts';
import { almostNothingLeft, doubtfulReading } from '../evidence-doubts.ts';
import type { FenceRecord } from '../fence-record.ts';
import { fenceFacts } from '../fence-record-facts.ts';
import type { InspectionRecord } from '../inspection-record.ts';
import type { PostRecord } from '../post-record.ts';
import type { ReadingRecord } from '../reading-record.ts';
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
      stormSeasons: view['storm-seasons'],
      zones: view['climate-zones'],
      sharedFences: view.fences,
      posts: new Map([[fence.ref, [...posts]]]),
      works: new Map([[fence.ref, [...works]]]),
      evidence: new Map(),
    }),
  );

/** The states that a fence goes through by its works, with the rows taken so far. */
export function statesOf(fence: FenceRecord, view: RegisterView): States {
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
  if (!fence) return !refuseUnknownRef(row, 'fenceRef', 'fences', inspection.fenceRef, view);
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
    return !refuseUnknownRef(row, 'inspectionRef', 'inspections', reading.inspectionRef, view);
  }
  const fence = view.fences.get(inspection.fenceRef);
  if (!fence) return !refuseUnknownRef(row, 'inspectionRef', 'fences', inspection.fenceRef, view);
  const { refuse, used } = refusal(row);
  const states = statesOf(fence, view);
  refuseReading(reading, inspection, states, refuse);
  if (reading.sure || used()) return !used();
  const nothing = almostNothingLeft(reading, inspection, states);
  if (nothing !== null) {
    row.askKey('groundlineMm', nothing);
    return false;
  }
  const doubt = doubtfulReading(reading, inspection, states);
  if (doubt !== null) row.warnKey('groundlineMm', doubt);
  return true;
}

/** Refuses an outcome at an unknown fence, before the fence stood, or of posts it had not. */
export function checkOutcome(row: ImportRow, outcome: StormOutcomeRecord, view: RegisterView): boolean {
  const fence = view.fences.get(outcome.fenceRef);
  if (!fence) return !refuseUnknownRef(row, 'fenceRef', 'fences', outcome.fenceRef, view);
  const { refuse, used } = refusal(row);
  refuseEarlyDay(outcome.day, fence, refuse);
  refuseOutcome(outcome, statesOf(fence, view), refuse);
  return !used();
}
