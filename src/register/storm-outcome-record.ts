import { z } from 'zod';
import { STORM_RESULTS, type StormOutcome } from '../forecast/evidence/storm-outcome.ts';
import { postNumbersSchema, refuseRepeatedPosts } from './post-numbers.ts';
import { RANGES } from './value-ranges.ts';
import {
  daySchema,
  evidenceRefSchema,
  rangedSchema,
  refSchema,
  refuseInto,
  requiredTextSchema,
  textSchema,
} from './value-schemas.ts';

/** Spread of ln gust where the gust was measured near the fence and nothing else is said [-]; judgement. */
export const DEFAULT_GUST_SPREAD = 0.1;

/** What one storm was reported to have done to some posts of a fence. */
export const stormOutcomeSchema = z
  .object({
    ref: evidenceRefSchema,
    storm: requiredTextSchema(100),
    fenceRef: refSchema,
    day: daySchema,
    gustMps: rangedSchema(RANGES.stormGustMps),
    gustSpread: rangedSchema(RANGES.gustSpread),
    posts: postNumbersSchema,
    result: z.enum(STORM_RESULTS),
    gustSource: textSchema(200),
    reportedBy: requiredTextSchema(200),
    notes: textSchema(4000),
  })
  .superRefine(({ posts }, context) => refuseRepeatedPosts(posts, refuseInto(context)));

export type StormOutcomeRecord = Readonly<z.infer<typeof stormOutcomeSchema>>;

/** A storm outcome as the forecast takes it. */
export const stormOutcomeFacts = (outcome: StormOutcomeRecord): StormOutcome => ({
  ref: outcome.ref,
  storm: outcome.storm,
  day: outcome.day,
  gustMps: outcome.gustMps,
  gustSpread: outcome.gustSpread,
  posts: outcome.posts,
  result: outcome.result,
});
