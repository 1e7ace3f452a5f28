import { z } from '@hono/zod-openapi';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import { VISIT_STATES } from '../../season/visit/visit.ts';
import { dayGiven } from './api-schemas.ts';

/** One kind of works at a fence, and at which posts. */
export const visitWorksSchema = z.object({
  kind: z.enum(CATALOGUE_KINDS),
  posts: z.array(z.number().int()),
  postCount: z.number().int(),
});

const visitItemSchema = z.object({
  fenceRef: z.string(),
  optionKey: z.string(),
  works: z.array(visitWorksSchema),
  personHours: z.number().describe('[h]'),
  price: z.number().describe("before tax, in the register's currency"),
  mustRank: z
    .union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)])
    .describe('1 a promised date or danger, 2 high consequence, 3 short; 0 only where it pays'),
});

/** A visit. */
export const visitSchema = z
  .object({
    uid: z.string(),
    siteRef: z.string(),
    crewRef: z.string(),
    firstDay: dayGiven,
    lastDay: dayGiven.describe('the first day for a visit of one day'),
    startsAt: z.string().nullable().describe('local time at the site; null: some time that day'),
    state: z.enum(VISIT_STATES),
    sequence: z.number().int().describe('grows with every change that calendars must see'),
    travelPersonHours: z.number().describe('hours on the road, there and back [h]'),
    items: z.array(visitItemSchema),
    planId: z
      .number()
      .int()
      .nullable()
      .describe("season plan that it came from; null: the office's own, which no plan moves while it stands"),
    note: z.string(),
    changedAt: z.string(),
  })
  .openapi('Visit');

/** A visit with what became of it. */
export const visitDetailSchema = z
  .object({
    visit: visitSchema,
    history: z
      .array(
        z.object({
          at: z.string(),
          state: z.enum(VISIT_STATES),
          firstDay: dayGiven,
          lastDay: dayGiven,
          crewRef: z.string(),
          sequence: z.number().int(),
          by: z.string(),
          because: z.string(),
        }),
      )
      .describe('what became of it, oldest first'),
    entries: z
      .array(
        z.object({ uid: z.string(), fenceRef: z.string(), kind: z.enum(['works', 'inspection']), ref: z.string() }),
      )
      .describe('works and inspections entered from it'),
    hours: z.array(z.record(z.string(), z.unknown())).describe('hours used [h]'),
    returned: z.array(z.string()).describe('fences that went back to the plan'),
  })
  .openapi('VisitDetail');

/** A visit after a change. */
export const visitChangedSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    visit: visitSchema,
    doubts: z.array(z.string()).describe('what speaks against it, taken all the same'),
  })
  .openapi('VisitChanged');
