import { z } from '@hono/zod-openapi';
import { isCalendarDay } from '../../units/calendar-day.ts';

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

/** A calendar day of what is sent or asked. */
export const day = (what: string) =>
  z
    .string()
    .refine((text) => isCalendarDay(text), 'write it as 2026-11-24')
    .meta({ pattern: '^\\d{4}-\\d{2}-\\d{2}$' })
    .describe(what);

/** A calendar day of an answer. */
export const dayGiven = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

/** The number of something in an address. */
export const idParam = z.object({ id: z.coerce.number().int().positive() });

/** A schema that has a name, or null: a type beside a reference would forbid the null again. */
export const orNull = <T extends z.ZodType>(schema: T) => z.union([schema, z.null()]);

/** True where only what it would come to is asked: nothing is stored. */
export const preview = z.boolean().default(false).describe('true: only say what it would come to; nothing is stored');

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

/** What was settled. */
export const settledSchema = z.object({ settled: z.number().int().describe('its number') });
