import { type PostSection, shortestSideMm } from '../capacity/post-section.ts';
import { depthSeen } from '../forecast/evidence/depth-likelihood.ts';
import { stateBefore } from '../forecast/fence-state.ts';
import { figure, installedWidthMm, type States } from './evidence-agreement.ts';
import type { InspectionRecord } from './inspection-record.ts';
import { type ReadingRecord, readingFacts } from './reading-record.ts';

/** Under this share of the installed width a width left is more often the depth lost [-]; judgement. */
const DOUBTFUL_WIDTH_SHARE = 1 / 3;
/** Rot on each face over this share of the width leaves less than a quarter of it [-]: a post so far gone seldom still stands; judgement. */
const HOPELESS_DEPTH_SHARE = 3 / 8;
/** What a number computed from a width or a girth may be off by [mm]. */
const ROUNDING_MM = 1e-6;

function sectionOf(reading: ReadingRecord, inspection: InspectionRecord, states: States): PostSection | null {
  const { posts } = stateBefore(states, inspection.day);
  return posts.find(({ number }) => number === reading.post)?.wood.section ?? null;
}

/** A doubt about a reading that is no contradiction; null where there is none. */
export function doubtfulReading(reading: ReadingRecord, inspection: InspectionRecord, states: States): string | null {
  if (reading.groundlineKind !== 'residual-width' || reading.groundlineMm === null) return null;
  const section = sectionOf(reading, inspection, states);
  if (!section) return null;
  const width = installedWidthMm(section);
  if (reading.groundlineMm >= width * DOUBTFUL_WIDTH_SHARE) return null;
  return `less than a third of the installed width, ${figure(width)}; if it is the depth lost, it belongs under depth`;
}

const MEANT: Partial<Record<NonNullable<ReadingRecord['groundlineKind']>, string>> = {
  'residual-width': 'if it is the depth lost, it belongs under depth; ',
  depth: 'if it is the width left, it belongs under residual width; ',
};

/** Why a reading that leaves almost nothing of a post is to be confirmed before it is taken; null where it leaves enough. */
export function almostNothingLeft(reading: ReadingRecord, inspection: InspectionRecord, states: States): string | null {
  const section = sectionOf(reading, inspection, states);
  const { groundline } = readingFacts(reading);
  if (!section || groundline === null || groundline.kind === 'broken') return null;
  const seen = depthSeen(groundline, section, inspection.method);
  const width = groundline.kind === 'residual-width' ? installedWidthMm(section) : shortestSideMm(section);
  if (seen.kind === 'below' || seen.depthMm <= width * HOPELESS_DEPTH_SHARE + ROUNDING_MM) return null;
  const left = figure(Math.max(0, width - 2 * seen.depthMm));
  return `leaves ${left} of ${figure(width)} sound, less than a quarter, and such a post seldom still stands; ${MEANT[groundline.kind] ?? ''}if it gave way, write broken; if it is so, confirm it: yes in the column sure, or --sure of inspect`;
}
