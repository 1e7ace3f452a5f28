import { z } from '@hono/zod-openapi';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import type { PageContext } from '../access/visitor.ts';
import { apiProblem } from './api-problem.ts';
import { dayGiven } from './api-schemas.ts';

/** What a quote is asked for. */
export const quoteWish = z
  .object({
    works: z
      .array(
        z.object({
          kind: z.enum(CATALOGUE_KINDS),
          posts: z.union([z.literal('all'), z.array(z.number().int().positive()).min(1)]).default('all'),
        }),
      )
      .min(1),
    taxPercent: z.number().min(0).max(100).default(0),
    validDays: z.number().int().min(1).max(365).default(30),
    currency: z.string().length(3).nullable().default(null).describe("the register's where left out"),
  })
  .openapi('QuoteWish');

const centsField = z.number().int();
const quoteSchema = z
  .object({
    number: z.string(),
    site: z.string(),
    owner: z.string(),
    fenceRefs: z.array(z.string()),
    issued: dayGiven,
    validUntil: dayGiven.describe('last day on which it may be accepted'),
    currency: z.string(),
    lines: z.array(
      z.object({
        what: z.string(),
        quantity: z.number(),
        unit: z.string(),
        unitPrice: centsField.describe('[cents]'),
        amount: centsField.describe('[cents]'),
      }),
    ),
    subtotal: centsField.describe('[cents]'),
    taxPercent: z.number(),
    tax: centsField.describe('[cents]'),
    total: centsField.describe('[cents]'),
    cautions: z.array(z.string()),
  })
  .openapi('Quote');

const partSchema = z.object({
  kind: z.enum(CATALOGUE_KINDS),
  posts: z.array(z.number().int()),
  postCount: z.number().int(),
  leftOut: z.array(z.number().int()).describe('posts that were asked for and to which the works do nothing'),
});

/** A quote as it was drawn up. */
export const drawnUpSchema = z
  .object({
    quote: quoteSchema,
    parts: z.array(partSchema),
    shippedPrices: z
      .array(z.enum(CATALOGUE_KINDS))
      .describe('kinds whose price the office has not set: an order of magnitude stands for it'),
  })
  .openapi('QuoteDrawnUp');

/** A quote that owners can accept by their links, and how it stands. */
export const offeredSchema = z
  .object({
    number: z.string(),
    fenceRef: z.string(),
    standing: z.enum(['open', 'accepted', 'over', 'withdrawn']),
    offeredAt: z.string(),
    validUntil: dayGiven,
    withdrawnAt: z.string().nullable(),
    sha256: z.string().describe('of the quote that is shown: an acceptance names it'),
    accepted: z
      .object({ at: z.string(), ownerRef: z.string(), ownerName: z.string().nullable() })
      .nullable()
      .describe('who accepted it, and when'),
    quote: quoteSchema,
    parts: z.array(partSchema),
  })
  .openapi('OfferedQuote');

/** Answers that a quote cannot be drawn up. */
export const notQuoted = (context: PageContext, ref: string, reason: string): never =>
  apiProblem(context, {
    status: 409,
    title: 'That cannot be done there',
    what: `fence ${ref}: ${reason}; nothing was quoted`,
    wayOut: 'GET /api/v1/fences/{ref}/what-if shows what can be done there',
  }) as never;
