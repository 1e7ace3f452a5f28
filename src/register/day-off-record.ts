import { z } from 'zod';
import { daySchema, refSchema, refuseInto, textSchema } from './value-schemas.ts';

/** Days on which a crew, or one of it, does not go out. */
export const dayOffSchema = z
  .object({
    ref: refSchema,
    crewRef: refSchema,
    /** Null: the whole crew. */
    memberRef: refSchema.nullable(),
    firstDay: daySchema,
    lastDay: daySchema,
    reason: textSchema(500),
  })
  .superRefine(({ firstDay, lastDay }, context) => {
    if (lastDay < firstDay) refuseInto(context)('lastDay', 'before the first day; write the later day last');
  });

export type DayOffRecord = Readonly<z.infer<typeof dayOffSchema>>;
