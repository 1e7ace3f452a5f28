import { z } from '@hono/zod-openapi';
import type { LearnedVersion } from '../../register/learned-store.ts';
import type { LearnedPreview } from '../../service/preview-learned.ts';
import { orNull } from './api-schemas.ts';

const STANDINGS = ['clear', 'closing', 'short', 'short from new'] as const;
/** Most changes that a preview names, of each kind; all of them are counted. */
const MOST_NAMED = 500;

const shared = {
  kind: z.enum(['pace', 'footing']),
  key: z.string().describe('as `ground-contact/4` and `footing/sand`'),
  logShift: z.number().describe('natural logarithm of the factor over the published value [-]'),
  low: z.number().describe('5 in 100, as `logShift` [-]'),
  high: z.number().describe('95 in 100, as `logShift` [-]'),
  spread: z.number().describe('between fences, of the natural logarithm [-]'),
  fences: z.number().int(),
  treatmentClass: z.string().optional().describe('of a rot pace'),
  climateBand: z.number().optional().describe('of a rot pace'),
  soilKind: z.string().optional().describe('of footings'),
};

const valueSchema = z
  .object({
    ...shared,
    seen: z.number().int().describe('readings, or posts whose footing a storm tried'),
    since: z.number().int().describe('version in which it came in'),
  })
  .openapi('LearnedValue');

const versionSchema = z
  .object({ number: z.number().int(), at: z.string(), by: z.string(), note: z.string(), values: z.array(valueSchema) })
  .openapi('LearnedVersion');

const changesSchema = z
  .object({
    standings: z.object({
      count: z.number().int(),
      named: z
        .array(
          z.object({
            ref: z.string(),
            of: z.enum(['fence', 'ends']),
            from: z.enum(STANDINGS).nullable(),
            to: z.enum(STANDINGS).nullable(),
          }),
        )
        .describe(`the first ${MOST_NAMED}, by ref`),
    }),
    notices: z.object({
      count: z.number().int(),
      named: z
        .array(z.object({ ref: z.string(), ownerRef: z.string(), matter: z.string() }))
        .describe(`notices that are written only because of it: the first ${MOST_NAMED}`),
    }),
    unread: z.array(z.object({ ref: z.string(), message: z.string() })).describe('fences that cannot be forecast'),
  })
  .openapi('LearnedChanges');

const fences = z.number().int().describe('whose forecasts the next sweep makes anew');

/** What was learned, what is in force, and everything that was accepted and taken back. */
export const learnedSchema = z
  .object({
    quantities: z.array(
      z.looseObject({
        ...shared,
        enough: z.boolean().describe('true where enough was seen for it to be accepted'),
        state: z.enum(['in force', 'can be accepted', 'too few']),
        held: orNull(valueSchema).describe('what of it is in force'),
      }),
    ),
    unread: z
      .array(z.object({ ref: z.string(), message: z.string() }))
      .describe('fences whose evidence cannot be read'),
    history: z
      .array(
        z.object({
          act: z.enum(['accepted', 'reverted']),
          number: z.number().int(),
          at: z.string(),
          by: z.string(),
          note: z.string(),
          values: z.array(valueSchema).optional().describe('of an acceptance: all that holds under it'),
          inForce: z.boolean().optional(),
          revertedBy: z.number().int().nullable().optional(),
          reverted: z.number().int().optional().describe('number of the acceptance that was taken back'),
        }),
      )
      .describe('oldest first'),
  })
  .openapi('Learned');

/** What came of accepting. */
export const acceptedSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    version: versionSchema,
    fences,
    preview: changesSchema.optional().describe('of a preview: what the next sweep would find changed'),
  })
  .openapi('LearningAccepted');

/** What came of taking back. */
export const revertedSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    reverted: z.number().int().describe('number of the version'),
    inForce: orNull(versionSchema).describe('what holds then; null: the published values'),
    fences,
    preview: changesSchema.optional(),
  })
  .openapi('LearningReverted');

/** A version as it is answered. */
export const versionOf = ({ number, at, by, note, values }: LearnedVersion): z.infer<typeof versionSchema> => ({
  number,
  at,
  by,
  note,
  values: values.map((value) => ({ ...value })),
});

/** A preview as it is answered: what it names is cut, what it counts is not. */
export const previewOf = ({ standings, notices, unread }: LearnedPreview): z.infer<typeof changesSchema> => ({
  standings: { count: standings.length, named: standings.slice(0, MOST_NAMED).map((each) => ({ ...each })) },
  notices: { count: notices.length, named: notices.slice(0, MOST_NAMED).map((each) => ({ ...each })) },
  unread: unread.map((each) => ({ ...each })),
});
