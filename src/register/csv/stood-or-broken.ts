import { refuseContradictions } from '../evidence-agreement.ts';
import { type BrokenSeen, type StoodClash, stoodClashes } from '../evidence-broken.ts';
import type { ReadingRecord } from '../reading-record.ts';
import type { StormOutcomeRecord } from '../storm-outcome-record.ts';
import { type Candidates, type ReplacedEvidence, statesOf } from './evidence-checks.ts';
import type { ImportRow } from './import-row.ts';
import type { RegisterView } from './register-view.ts';

/** The clashes at a fence with these outcomes and the inspections of the view. */
function clashesAt(
  fenceRef: string,
  outcomes: readonly StormOutcomeRecord[],
  view: RegisterView,
): readonly StoodClash[] {
  const fence = view.fences.get(fenceRef);
  if (!fence || outcomes.length === 0) return [];
  return stoodClashes({
    inspections: [...(view.inspectionsOfFence.get(fenceRef)?.values() ?? [])].map((record) => ({
      record,
      readings: [...(view.readingsOfInspection.get(record.ref)?.values() ?? [])],
    })),
    outcomes,
    works: [...(view.worksOfFence.get(fenceRef)?.values() ?? [])],
    states: statesOf(fence, view),
  });
}

const brokenText = ({ by, ref, day }: BrokenSeen): string =>
  by === 'inspection' ? `found broken at inspection ${ref} of ${day}` : `snapped by ${ref} on ${day}`;

const stormText = ({ ref, storm, day }: StormOutcomeRecord): string =>
  `storm outcome ${ref} (storm ${JSON.stringify(storm)}, ${day})`;

/**
 * Judges the outcomes of the files fence by fence, together with the stored ones and with what inspections found.
 * @returns the refs of those refused
 */
export function checkOutcomes(
  candidates: Candidates<StormOutcomeRecord>,
  view: RegisterView,
  _replaced: ReplacedEvidence,
  questions: 'warn' | 'refuse',
): ReadonlySet<string> {
  const refused = new Set<string>();
  const byFence = new Map<string, Map<string, StormOutcomeRecord>>();
  for (const { record } of candidates.values()) {
    const stored = [...(view.outcomesOfFence.get(record.fenceRef) ?? [])].filter(([ref]) => !candidates.has(ref));
    const all = byFence.get(record.fenceRef) ?? new Map(stored);
    byFence.set(record.fenceRef, all.set(record.ref, record));
  }
  for (const [fenceRef, outcomes] of byFence) {
    refuseContradictions([...outcomes.values()], ({ ref }) => {
      const candidate = candidates.get(ref);
      if (!candidate) return null;
      return (key, reason) => {
        refused.add(ref);
        candidate.row.refuseKey(key, reason);
      };
    });
    const sound = [...outcomes.values()].filter(({ ref }) => !refused.has(ref));
    for (const clash of clashesAt(fenceRef, sound, view)) sayClash(clash, candidates, questions, refused);
  }
  return refused;
}

function sayClash(
  { outcome, when, broken }: StoodClash,
  candidates: Candidates<StormOutcomeRecord>,
  questions: 'warn' | 'refuse',
  refused: Set<string>,
): void {
  const candidate = candidates.get(outcome.ref);
  if (!candidate) {
    candidates
      .get(broken.ref)
      ?.row.warnKey('posts', `post ${broken.post}: ${stormText(outcome)} says that it stood after that; check both`);
    return;
  }
  if (when === 'before') {
    refused.add(outcome.ref);
    candidate.row.refuseKey(
      'posts',
      `post ${broken.post} was ${brokenText(broken)}, before this storm, and no swap is recorded between: a broken post cannot have stood; leave it out of the posts that stood, enter the swap as works, or correct what says that it was broken`,
    );
    return;
  }
  const reason = `post ${broken.post} was ${brokenText(broken)}, and nothing is recorded of it in between: it may well have broken in this storm; name it as snapped, leave it out where nobody looked, or keep it where it was seen standing`;
  if (questions === 'warn') candidate.row.warnKey('posts', reason);
  else {
    refused.add(outcome.ref);
    candidate.row.askKey('posts', reason);
  }
}

/** Warns of readings that find a post broken that a stored storm outcome says stood, with nothing seen of it in between. */
export function warnOfBroken(
  candidates: Candidates<ReadingRecord>,
  view: RegisterView,
  replaced: ReplacedEvidence,
): void {
  const rowOf = new Map<string, ImportRow>();
  const fenceRefs = new Set<string>();
  for (const [name, { row, record }] of candidates) {
    if (record.groundlineKind !== 'broken') continue;
    rowOf.set(name, row);
    const inspection = view.inspections.get(record.inspectionRef);
    if (inspection) fenceRefs.add(inspection.fenceRef);
  }
  for (const fenceRef of fenceRefs) {
    const stored = [...(view.outcomesOfFence.get(fenceRef)?.values() ?? [])];
    const kept = stored.filter(({ ref }) => !replaced.outcomes.has(ref));
    for (const { outcome, when, broken } of clashesAt(fenceRef, kept, view)) {
      if (broken.by !== 'inspection') continue;
      const order = when === 'before' ? 'later' : 'before, and nothing is recorded of it in between';
      rowOf
        .get(`${broken.ref} post ${broken.post}`)
        ?.warnKey(
          'groundlineKind',
          `post ${broken.post} is found broken, but ${stormText(outcome)} says that it stood ${order}; check both`,
        );
    }
  }
}
