import type { GroundlineReading, InspectionMethod, PostReading } from '../forecast/evidence/inspection.ts';
import type { StormOutcome, StormResult } from '../forecast/evidence/storm-outcome.ts';
import { depthFigure, depthUnit } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';

const METHOD_WORDS: Readonly<Record<InspectionMethod, string>> = {
  'awl-or-probe': 'awl or probe',
  caliper: 'caliper on the sound shell',
  'drill-resistance': 'drill resistance',
  'circumference-tape': 'circumference tape',
  level: 'level',
  eye: 'by eye',
};

const RESULT_WORDS: Readonly<Record<StormResult, string>> = {
  stood: 'stood',
  leaned: 'leaned',
  snapped: 'snapped',
};

/** A method of inspection in words. */
export const methodText = (method: InspectionMethod): string => METHOD_WORDS[method];

const small = (mm: number, units: DisplayUnits): string => `${depthFigure(mm, units)} ${depthUnit(units)}`;

function groundlineText(reading: GroundlineReading, units: DisplayUnits): string {
  switch (reading.kind) {
    case 'depth':
      return reading.depthMm === 0 ? 'no rot' : `${small(reading.depthMm, units)} of rot on each face`;
    case 'residual-width':
      return `${small(reading.widthMm, units)} of sound width left`;
    case 'residual-circumference':
      return `${small(reading.circumferenceMm, units)} of sound girth left`;
    case 'sound-to':
      return `sound to ${small(reading.depthMm, units)}`;
    case 'soft-to':
      return `soft to ${small(reading.depthMm, units)} at least`;
    case 'broken':
      return 'broken at the groundline';
  }
}

/** What an inspection found at one post, in plain words: `0.24 in of rot on each face, 4° out of plumb`. */
export function readingText(reading: PostReading, units: DisplayUnits): string {
  const { groundline, cavityMm, leanDegrees, collarCracked, railConnection, trimmerCutMm, closedOff } = reading;
  return [
    ...(groundline ? [groundlineText(groundline, units)] : []),
    ...(cavityMm === null ? [] : [cavityMm === 0 ? 'no hollow' : `hollow, ${small(cavityMm, units)} across`]),
    ...(leanDegrees === null ? [] : [leanDegrees === 0 ? 'plumb' : `${leanDegrees}° out of plumb`]),
    ...(collarCracked === null ? [] : [collarCracked ? 'collar cracked' : 'collar sound']),
    ...(railConnection === null
      ? []
      : [`weakest rail connection at ${Math.round(railConnection * 100)} % of a sound one`]),
    ...(trimmerCutMm === null
      ? []
      : [trimmerCutMm === 0 ? 'no trimmer cut' : `trimmer cut ${small(trimmerCutMm, units)}`]),
    ...(closedOff ? ['dangerous, closed off'] : []),
  ].join(', ');
}

/** What a storm did, in words: `posts 3, 4 leaned`, `post 5 snapped`, `all posts stood`; `others` where some are named beside it. */
export function outcomeText({ posts, result }: Pick<StormOutcome, 'posts' | 'result'>, othersNamed: boolean): string {
  const word = RESULT_WORDS[result];
  if (posts === 'all') return `${othersNamed ? 'all other posts' : 'all posts'} ${word}`;
  return `${posts.length === 1 ? 'post' : 'posts'} ${posts.join(', ')} ${word}`;
}
