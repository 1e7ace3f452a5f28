import { z } from '@hono/zod-openapi';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import { VISIT_STATES } from '../../season/visit/visit.ts';

/** A calendar day of what is sent. */
export const day = (what: string) =>
  z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, 'write it as 2026-11-24')
    .describe(what);
const visitWorksSchema = z.object({
  kind: z.enum(CATALOGUE_KINDS),
  posts: z.array(z.number().int()),
  postCount: z.number().int(),
});
/** A visit. */
export const visitSchema = z
  .object({
    uid: z.string(),
    siteRef: z.string(),
    crewRef: z.string(),
    firstDay: day('first day'),
    lastDay: day('last day; the first for a visit of one day'),
    startsAt: z.string().nullable().describe('local time at the site; null: some time that day'),
    state: z.enum(VISIT_STATES),
    sequence: z.number().int().describe('grows with every change that calendars must see'),
    travelPersonHours: z.number().describe('hours on the road, there and back [h]'),
    items: z.array(
      z.object({
        fenceRef: z.string(),
        optionKey: z.string(),
        works: z.array(visitWorksSchema),
        personHours: z.number().describe('[h]'),
        price: z.number().describe("before tax, in the register's currency"),
        mustRank: z.unknown(),
      }),
    ),
    planId: z.number().int().nullable().describe('season plan that it came from'),
    note: z.string(),
    changedAt: z.string(),
  })
  .openapi('Visit');

/** A visit with what became of it. */
export const visitDetailSchema = z
  .object({
    visit: visitSchema,
    history: z.array(z.record(z.string(), z.unknown())).describe('what became of it, oldest first'),
    entries: z.array(z.record(z.string(), z.unknown())).describe('works and inspections entered from it'),
    hours: z.array(z.record(z.string(), z.unknown())).describe('hours used'),
    returned: z.array(z.unknown()).describe('fences that went back to the plan'),
  })
  .openapi('VisitDetail');
