import { type DepthSeen, depthSeen } from '../../forecast/evidence/depth-likelihood.ts';
import { READING_METHODS } from '../../forecast/evidence/reading-method.ts';
import { stateBefore } from '../../forecast/fence-state.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import type { FenceRecord } from '../fence-record.ts';
import { type ReadingRecord, readingFacts } from '../reading-record.ts';
import { type Candidates, statesOf } from './evidence-checks.ts';
import type { ImportRow } from './import-row.ts';
import { type RegisterView, recordName } from './register-view.ts';

/** How many errors of both readings together a depth may be under an earlier one before that is doubtful [-]; judgement. */
const ERRORS_ALLOWED = 2;

interface DatedDepth {
  readonly day: CalendarDay;
  readonly ref: string;
  readonly seen: DepthSeen;
  readonly errorMm: number;
  readonly row: ImportRow | null;
}

/** The depths found at each piece of wood of a fence, stored and new, in the order of their days. */
function depthsByPiece(
  fence: FenceRecord,
  candidates: Candidates<ReadingRecord>,
  view: RegisterView,
): ReadonlyMap<string, { readonly post: number; readonly depths: DatedDepth[] }> {
  const byPiece = new Map<string, { readonly post: number; readonly depths: DatedDepth[] }>();
  const states = statesOf(fence, view);
  const inspections = [...(view.inspectionsOfFence.get(fence.ref)?.values() ?? [])].sort((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : 0,
  );
  for (const { ref, day, method } of inspections) {
    const { posts } = stateBefore(states, day);
    for (const reading of view.readingsOfInspection.get(ref)?.values() ?? []) {
      const post = posts.find(({ number }) => number === reading.post);
      const { groundline } = readingFacts(reading);
      if (!post || groundline === null || groundline.kind === 'broken') continue;
      const seen = depthSeen(groundline, post.wood.section, method);
      const errorMm = seen.kind === 'measured' ? seen.errorMm : READING_METHODS[method].errorMm;
      const row = candidates.get(recordName('readings', reading))?.row ?? null;
      const known = byPiece.get(post.piece) ?? { post: reading.post, depths: [] };
      known.depths.push({ day, ref, seen, errorMm, row });
      byPiece.set(post.piece, known);
    }
  }
  return byPiece;
}

/** By how much less rot was found later than earlier, beyond what both errors allow [mm]; 0 or less where they agree. */
function shrunkMm(earlier: DatedDepth, later: DatedDepth): number {
  if (earlier.seen.kind === 'below' || later.seen.kind === 'above') return 0;
  const allowed = ERRORS_ALLOWED * Math.hypot(earlier.errorMm, later.errorMm);
  return earlier.seen.depthMm - later.seen.depthMm - allowed;
}

const depthText = ({ seen }: DatedDepth): string => {
  const mm = `${seen.depthMm.toFixed(1)} mm`;
  return seen.kind === 'measured' ? `${mm} of depth` : seen.kind === 'below' ? `sound to ${mm}` : `soft to ${mm}`;
};

const placed = (depth: DatedDepth): string => `${depthText(depth)} on ${depth.day} (inspection ${depth.ref})`;

/**
 * Warns where a post is found with less rot than before, beyond what the errors of both readings allow, though it was not
 * swapped in between. Only pairs of which a row of the files is one are told.
 */
export function warnOfShrinkingDepths(candidates: Candidates<ReadingRecord>, view: RegisterView): void {
  const fenceRefs = new Set<string>();
  for (const { record } of candidates.values()) {
    const inspection = view.inspections.get(record.inspectionRef);
    if (inspection) fenceRefs.add(inspection.fenceRef);
  }
  for (const fenceRef of fenceRefs) {
    const fence = view.fences.get(fenceRef);
    if (!fence) continue;
    for (const { post, depths } of depthsByPiece(fence, candidates, view).values()) warnOfPiece(post, depths);
  }
}

function warnOfPiece(post: number, depths: readonly DatedDepth[]): void {
  for (const [index, later] of depths.entries()) {
    const [worst] = depths
      .slice(0, index)
      .filter((earlier) => (later.row ?? earlier.row) !== null && shrunkMm(earlier, later) > 0)
      .sort((a, b) => shrunkMm(b, later) - shrunkMm(a, later));
    if (!worst) continue;
    (later.row ?? worst.row)?.warnKey(
      'groundlineMm',
      `post ${post}: ${placed(later)}, but ${placed(worst)}, more than the errors of both allow, and no swap is recorded between; check both, or enter the swap`,
    );
  }
}
