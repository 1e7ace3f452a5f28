import { z } from '@hono/zod-openapi';
import { dayGiven } from './api-schemas.ts';

/** A season plan without what is in it. */
export const planHeadSchema = z
  .object({
    number: z.number().int(),
    state: z.enum(['made', 'accepted', 'superseded']),
    madeAt: z.string(),
    asOf: z.string(),
    firstWeek: dayGiven.describe('Monday of the first week that it fills'),
    weeks: z.number().int(),
    modelVersion: z.string(),
    acceptedAt: z.string().nullable(),
    by: z.string(),
    because: z.string(),
    visits: z.number().int(),
    unservedMusts: z.number().int().describe('fences that must be served and are not'),
  })
  .openapi('SeasonPlan');
