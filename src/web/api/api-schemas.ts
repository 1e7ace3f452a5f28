import { z } from '@hono/zod-openapi';

/** Most rows of one page of an answer. */
const MOST_ROWS = 500;
const ROWS = 100;

/** What every list is asked with. */
export const pageQuery = {
  limit: z.coerce.number().int().min(1).max(MOST_ROWS).default(ROWS).describe(`rows of a page, at most ${MOST_ROWS}`),
  cursor: z.string().max(2000).optional().describe('`next` of the page before; leave it out for the first'),
};

/** A page of rows. */
export const pageOf = <T extends z.ZodType>(row: T) =>
  z.object({
    rows: z.array(row),
    next: z.string().nullable().describe('cursor of the page after; null where this is the last'),
  });

/** The ref of a record in an address. */
export const refParam = z.object({ ref: z.string().min(1).max(200) });

/** What a write may carry so that it is done once however often it is sent. */
export const idempotencyHeader = z.object({
  'idempotency-key': z
    .string()
    .min(1)
    .max(200)
    .optional()
    .describe(
      'made up by the program, one for each thing it wants done: a repeat within 7 days with the same key and body is answered with the first answer and does nothing',
    ),
});

/** Who did something, as the register keeps it beside the token's name. */
export const actFields = {
  because: z.string().max(500).default('').describe('why; kept beside what is done'),
};

/** A JSON answer. */
export const jsonAnswer = <T extends z.ZodType>(schema: T, description: string) => ({
  description,
  content: { 'application/json': { schema } },
});

/** A JSON body that must be there. */
export const jsonBody = <T extends z.ZodType>(schema: T) => ({
  required: true,
  content: { 'application/json': { schema } },
});

/** Whatever the model found out, too deep to be spelt out here. */
export const deepSchema = z.record(z.string(), z.unknown());
