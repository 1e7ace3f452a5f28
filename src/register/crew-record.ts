import { z } from 'zod';
import { RANGES } from './value-ranges.ts';
import { rangedSchema, refSchema, refuseInto, requiredTextSchema } from './value-schemas.ts';

/** People who go out together: where they start, how fast they travel, how much of their time is kept free for weather. */
export const crewSchema = z
  .object({
    ref: refSchema,
    name: requiredTextSchema(200),
    baseLatitude: rangedSchema(RANGES.latitude).nullable(),
    baseLongitude: rangedSchema(RANGES.longitude).nullable(),
    /** Along the great circle, so slower than on the road. */
    speedMps: rangedSchema(RANGES.travelMps),
    weatherReserve: rangedSchema(RANGES.weatherReserve),
  })
  .superRefine(({ baseLatitude, baseLongitude }, context) => {
    if ((baseLatitude === null) === (baseLongitude === null)) return;
    const key = baseLatitude === null ? 'baseLatitude' : 'baseLongitude';
    refuseInto(context)(key, 'missing; a base has a latitude and a longitude');
  });

export type CrewRecord = Readonly<z.infer<typeof crewSchema>>;
