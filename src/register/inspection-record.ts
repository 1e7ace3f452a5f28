import { z } from 'zod';
import { INSPECTION_METHODS, type InspectionFacts } from '../forecast/evidence/inspection.ts';
import { type ReadingRecord, readingFacts } from './reading-record.ts';
import { daySchema, evidenceRefSchema, refSchema, requiredTextSchema, textSchema } from './value-schemas.ts';

/** One inspection of a fence: who looked, how, with what and when. What was found is in its readings. */
export const inspectionSchema = z.object({
  ref: evidenceRefSchema,
  fenceRef: refSchema,
  day: daySchema,
  inspector: requiredTextSchema(200),
  qualification: textSchema(200),
  method: z.enum(INSPECTION_METHODS),
  instrument: textSchema(200),
  notes: textSchema(4000),
});

export type InspectionRecord = Readonly<z.infer<typeof inspectionSchema>>;

/** An inspection as the forecast takes it, its readings in the order of their posts. */
export const inspectionFacts = (
  inspection: Pick<InspectionRecord, 'ref' | 'day' | 'method'>,
  readings: readonly ReadingRecord[],
): InspectionFacts => ({
  ref: inspection.ref,
  day: inspection.day,
  method: inspection.method,
  readings: [...readings].sort((a, b) => a.post - b.post).map(readingFacts),
});
