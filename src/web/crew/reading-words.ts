import { depthFigure, depthUnit } from '../../drawing/quantity-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { GroundlineReading, PostReading } from '../../forecast/evidence/inspection.ts';
import type { ReadingWords } from './crew-words.ts';

/** A small length [mm] with its unit: `2.40 in`, `61.0 mm`. */
export const smallText = (mm: number, units: DisplayUnits): string => `${depthFigure(mm, units)} ${depthUnit(units)}`;

function groundlineWords(reading: GroundlineReading, units: DisplayUnits, words: ReadingWords): string {
  switch (reading.kind) {
    case 'depth':
      return reading.depthMm === 0 ? words.noRot : words.depth(smallText(reading.depthMm, units));
    case 'residual-width':
      return words.width(smallText(reading.widthMm, units));
    case 'residual-circumference':
      return words.girth(smallText(reading.circumferenceMm, units));
    case 'sound-to':
      return words.soundTo(smallText(reading.depthMm, units));
    case 'soft-to':
      return words.softTo(smallText(reading.depthMm, units));
    case 'broken':
      return words.broken;
  }
}

/** What was found at one post, in the crew's language. */
export function readingWords(reading: PostReading, units: DisplayUnits, words: ReadingWords): string {
  const { groundline, cavityMm, leanDegrees, collarCracked, railConnection, trimmerCutMm, closedOff } = reading;
  const parts = [
    groundline && groundlineWords(groundline, units, words),
    cavityMm !== null && (cavityMm === 0 ? words.noHollow : words.hollow(smallText(cavityMm, units))),
    leanDegrees !== null && (leanDegrees === 0 ? words.plumb : words.lean(String(leanDegrees))),
    collarCracked !== null && (collarCracked ? words.collarCracked : words.collarSound),
    railConnection !== null && words.rail(Math.round(railConnection * 100)),
    trimmerCutMm !== null && (trimmerCutMm === 0 ? words.noCut : words.cut(smallText(trimmerCutMm, units))),
    closedOff && words.closedOff,
  ];
  return parts.filter((part): part is string => typeof part === 'string').join(', ');
}
