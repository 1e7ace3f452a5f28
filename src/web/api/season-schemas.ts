import { z } from '@hono/zod-openapi';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import { type ApiProblem, notThere } from './api-problem.ts';
import { dayGiven, deepSchema, orNull } from './api-schemas.ts';
import { planHeadSchema } from './plan-schemas.ts';
import { visitSchema } from './visit-schemas.ts';

const count = z.number().int();
const STANDINGS = ['clear', 'closing', 'short', 'short from new'] as const;

/** The hours of the crews, week by week. */
export const hoursSchema = z
  .object({
    crews: z.array(z.object({ ref: z.string(), name: z.string() })),
    weeks: z.array(
      z.object({
        monday: dayGiven,
        cells: z
          .array(
            z.object({
              crewRef: z.string(),
              thereAre: z.number().describe("what the crew's people have, days off and weather reserve taken off [h]"),
              confirmed: z.number().describe('what visits on promised days take, their ways counted [h]'),
              proposed: z.number().describe('what proposed visits take [h]'),
              left: z.number().describe('negative where more was promised than there is [h]'),
            }),
          )
          .describe('in the order of the crews'),
      }),
    ),
  })
  .openapi('HoursAhead');

/** What to order. */
export const materialsSchema = z
  .object({
    from: dayGiven,
    to: dayGiven.nullable().describe('null: to the last visit there is'),
    visits: count,
    confirmedVisits: count,
    days: z.object({ first: dayGiven, last: dayGiven }).nullable().describe('null without visits'),
    materials: z.array(
      z.object({
        name: z.string(),
        unit: z.string(),
        quantity: z.number().describe('what the catalogue reckons with'),
        toTake: z.number().describe('whole units of what only comes whole'),
        unitCost: z.number(),
        cost: z.number(),
        kinds: z.array(z.enum(CATALOGUE_KINDS)),
        visits: count,
        neededBy: dayGiven.describe('first day of the first visit that takes some'),
        confirmedQuantity: z.number(),
      }),
    ),
    cost: z.number().describe("of all materials, in the register's currency"),
  })
  .openapi('MaterialsAhead');

/** The season brief. */
export const briefSchema = z
  .object({
    today: dayGiven,
    sweptAt: z.string().nullable().describe('when the last sweep was finished; null where none was'),
    danger: z.object({
      total: count,
      named: z.array(
        z.object({
          fenceRef: z.string(),
          siteName: z.string(),
          findings: z.array(z.object({ found: z.enum(['closed off', 'broken', 'leaning']), post: count })),
          sinceSweep: z.boolean().describe('true where some of it was entered after the last sweep began'),
        }),
      ),
    }),
    regions: z
      .array(
        z.object({
          region: z.string(),
          seasonName: z.string().nullable(),
          opens: z.string().describe('month and day'),
          closes: z.string(),
          season: deepSchema.describe('`kind` is `all year`, `runs` or `ahead`; days to the opening and the closing'),
          fences: count,
          short: count,
          closing: count,
          unswept: count,
          shortUnvisited: count.describe('short fences without a proposed or confirmed visit'),
          sites: count.describe('sites that have fences'),
          siteRef: z.string().describe('the first of them'),
        }),
      )
      .describe('those that open next first'),
    changes: z.object({
      counts: z.array(z.object({ before: z.enum(STANDINGS), after: z.enum(STANDINGS), fences: count })),
      named: z.array(
        z.object({
          fenceRef: z.string(),
          siteName: z.string(),
          before: z.enum(STANDINGS),
          after: z.enum(STANDINGS),
          endsBefore: z.enum(STANDINGS).nullable(),
          endsAfter: z.enum(STANDINGS).nullable(),
          causes: z.array(z.string()),
        }),
      ),
      isFirstSweep: z.boolean(),
      betterButDangerous: count.describe('recorded dangerous and standing better; counts and named leave them out'),
    }),
    hours: hoursSchema,
    plan: z.object({ inForce: orNull(planHeadSchema), newest: orNull(planHeadSchema) }),
    mail: z.object({
      held: z.object({ notices: count, owners: count }),
      office: count.describe('open notices to the office itself'),
      outbox: z.record(z.string(), count).describe('messages by state'),
    }),
    visits: z.object({
      thisWeek: z.array(visitSchema),
      missed: count.describe('within the last two weeks'),
      overdue: count.describe('promised for days that are past, and nobody said what became of them'),
      toCome: count,
    }),
  })
  .openapi('SeasonBrief');

/** That a crew is not there. */
export const noCrew = (ref: string): ApiProblem =>
  notThere(`there is no crew ${JSON.stringify(ref)}`, 'GET /api/v1/records/crews lists them');
