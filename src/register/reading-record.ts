import { z } from 'zod';
import type { GroundlineReading, PostReading } from '../forecast/evidence/inspection.ts';
import { RANGES, type ValueRange } from './value-ranges.ts';
import { evidenceRefSchema, type Refuse, rangedSchema, refuseInto, textSchema, wholeSchema } from './value-schemas.ts';

type GroundlineKind = GroundlineReading['kind'];

/** What can be found at a groundline with a number to it. */
export const MEASURED_KINDS = [
  'depth',
  'residual-width',
  'residual-circumference',
  'sound-to',
  'soft-to',
] as const satisfies readonly GroundlineKind[];
export type MeasuredKind = (typeof MEASURED_KINDS)[number];

/** What the number of each kind may be [mm]. */
export const MEASURED_RANGES: Readonly<Record<MeasuredKind, ValueRange>> = {
  depth: RANGES.rotDepthMm,
  'residual-width': RANGES.residualWidthMm,
  'residual-circumference': RANGES.residualCircumferenceMm,
  'sound-to': RANGES.soundOrSoftDepthMm,
  'soft-to': RANGES.soundOrSoftDepthMm,
};

const FOUND_KEYS = [
  'groundlineKind',
  'cavityMm',
  'leanDegrees',
  'collarCracked',
  'railConnection',
  'trimmerCutMm',
] as const;

/** What one inspection found at one post. Null: not looked at. */
export const readingSchema = z
  .object({
    inspectionRef: evidenceRefSchema,
    post: wholeSchema(RANGES.postNumber),
    groundlineKind: z.enum([...MEASURED_KINDS, 'broken']).nullable(),
    /** Depth lost, or width or girth left [mm]: the kind says which. Null where broken or not looked at. */
    groundlineMm: z.number().nullable(),
    cavityMm: rangedSchema(RANGES.cavityMm).nullable(),
    leanDegrees: rangedSchema(RANGES.leanDegrees).nullable(),
    collarCracked: z.boolean().nullable(),
    railConnection: rangedSchema(RANGES.railConnection).nullable(),
    trimmerCutMm: rangedSchema(RANGES.trimmerCutMm).nullable(),
    closedOff: z.boolean(),
    /** Confirmed, though it leaves almost nothing of the post. */
    sure: z.boolean(),
    notes: textSchema(2000),
  })
  .superRefine((reading, context) => {
    const refuse = refuseInto(context);
    refuseNumber(reading, refuse);
    if (!reading.closedOff && FOUND_KEYS.every((key) => reading[key] === null)) {
      refuse('post', 'nothing was found on this row; fill in what was, or leave the row out');
    }
  });

export type ReadingRecord = Readonly<z.infer<typeof readingSchema>>;

function refuseNumber(
  { groundlineKind: kind, groundlineMm: mm }: Pick<ReadingRecord, 'groundlineKind' | 'groundlineMm'>,
  refuse: Refuse,
): void {
  if (kind === null || kind === 'broken') {
    if (mm !== null) refuse('groundlineMm', 'a number without saying what was measured; name its kind');
    return;
  }
  const [lowest, highest] = MEASURED_RANGES[kind];
  if (mm === null) refuse('groundlineMm', `missing; a reading of kind ${kind} has a number`);
  else if (mm < lowest || mm > highest) refuse('groundlineMm', `outside the allowed ${lowest} to ${highest} mm`);
}

function groundlineFacts({ inspectionRef, post, groundlineKind: kind, groundlineMm: mm }: ReadingRecord) {
  if (kind === null) return null;
  if (kind === 'broken') return { kind } satisfies GroundlineReading;
  if (mm === null) throw new Error(`the reading of post ${post} in inspection ${inspectionRef} lacks its number`);
  switch (kind) {
    case 'residual-width':
      return { kind, widthMm: mm } satisfies GroundlineReading;
    case 'residual-circumference':
      return { kind, circumferenceMm: mm } satisfies GroundlineReading;
    case 'depth':
    case 'sound-to':
    case 'soft-to':
      return { kind, depthMm: mm } satisfies GroundlineReading;
  }
}

/** A reading as the forecast takes it. Throws where the record breaks its own rules. */
export const readingFacts = (reading: ReadingRecord): PostReading => ({
  post: reading.post,
  groundline: groundlineFacts(reading),
  cavityMm: reading.cavityMm,
  leanDegrees: reading.leanDegrees,
  collarCracked: reading.collarCracked,
  railConnection: reading.railConnection,
  trimmerCutMm: reading.trimmerCutMm,
  closedOff: reading.closedOff,
});
