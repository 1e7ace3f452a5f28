import {
  changeSentences,
  evidenceCountSentence,
  nothingSeenSentence,
  surpriseSentences,
} from '../drawing/evidence-sentences.ts';
import { type BeliefFigures, beliefRows, readPostRows } from '../drawing/evidence-table.ts';
import { weighsMostSentences } from '../drawing/sensitivity-sentences.ts';
import { sensitivityLines } from '../drawing/sensitivity-terminal.ts';
import type { DisplayUnits } from '../drawing/speed-text.ts';
import type { EvidenceSummary } from '../forecast/evidence/evidence-summary.ts';
import type { Reasons } from '../forecast/reasons.ts';
import { plainTable } from './plain-table.ts';

const figures = ({ p10, p50, p90 }: BeliefFigures): string => `${p10} / ${p50} / ${p90}`;

/** Pace is told in both units, as every step of the reasons is. */
function beliefTable(evidence: EvidenceSummary): string {
  const rows = beliefRows(evidence, 'metric').flatMap((row, index) =>
    row.unit === '×' ? [row] : [row, { ...beliefRows(evidence, 'us')[index]!, unknown: '', movedBy: '' }],
  );
  return plainTable(
    ['', '', 'Before', 'After readings', 'After storms', 'Moved by'],
    rows.map(({ unknown, unit, before, afterReadings, afterStorms, movedBy }) => [
      unknown,
      unit === '×' ? 'factor' : unit,
      figures(before),
      figures(afterReadings),
      figures(afterStorms),
      movedBy,
    ]),
  );
}

function readingsTable(evidence: EvidenceSummary, units: DisplayUnits): readonly string[] {
  const rows = readPostRows(evidence, units);
  if (rows.length === 0) return [];
  return [
    'Rot in each face at the posts that were read; what is believed of that day counts all readings, in brackets the range that holds in 8 cases of 10.',
    plainTable(
      ['Post', 'Day', 'Seen', 'Rate it implies', 'Depth believed', 'How'],
      rows.map(({ post, day, seen, rate, believed, how }) => [post, day, seen, rate, believed, how]),
      [0],
    ),
  ];
}

/** What was seen of a fence and what it changed, as lines. */
function seenLines({ evidence, learnedVersion }: Reasons, units: DisplayUnits): readonly string[] {
  if (!evidence) return [nothingSeenSentence(learnedVersion), ''];
  return [
    evidenceCountSentence(evidence),
    ...changeSentences(evidence, learnedVersion, units),
    ...surpriseSentences(evidence),
    '',
    'What is believed, 10th / 50th / 90th percentile:',
    beliefTable(evidence),
    ...readingsTable(evidence, units),
  ];
}

/** The two last sections of the reasons: what was seen, and what weighs most. */
export function evidenceLines(reasons: Reasons, units: DisplayUnits, columns: number): readonly string[] {
  return [
    'WHAT WAS SEEN',
    ...seenLines(reasons, units),
    'WHAT WEIGHS MOST',
    ...weighsMostSentences(reasons.sensitivity, reasons.unknowns, units),
    '',
    ...sensitivityLines(reasons.sensitivity, { units, columns }),
    'One input is moved at a time, all others stand at their middle or as recorded. The short season of the forecast weighs all',
    'that is not known together, so it can lie a season or two beside it.',
  ];
}
