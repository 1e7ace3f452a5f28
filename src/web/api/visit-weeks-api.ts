import { createRoute, z } from '@hono/zod-openapi';
import { readVisit } from '../../register/visit-store.ts';
import { WEEK_BARS } from '../../season/plan/plan-problem.ts';
import type { WeekChoice } from '../../season/plan/week-choices.ts';
import { giveWeek, leaveToPlans, previewGiven } from '../../service/give-week.ts';
import type { AppParts } from '../../service/service.ts';
import { choicesFor } from '../../service/week-choices-of.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { actFields, day, dayGiven, idempotencyHeader, jsonAnswer, jsonBody, orNull, preview } from './api-schemas.ts';
import { tokenName } from './token-name.ts';
import { noVisit, uidParam } from './visit-answers.ts';
import { visitSchema } from './visit-schemas.ts';

const choiceSchema = z
  .object({
    week: dayGiven.describe('its Monday'),
    crewRef: z.string(),
    isNow: z.boolean().describe('true for the place that it has now'),
    bars: z.array(z.enum(WEEK_BARS)).describe('rules that forbid the week'),
    mayBeGiven: z.boolean().describe('no rule forbids it, its hours hold it, and it is another week than now'),
    worthLost: z
      .number()
      .nullable()
      .describe(
        "by how much less the works are worth there, in the register's currency; negative where more, null where a rule forbids the week",
      ),
    moreTravelCost: z.number().describe('by how much the ways of all visits cost more; negative where less'),
    cost: z.number().nullable().describe('what the choice costs in all; negative where it saves'),
    hoursLeft: z.number().describe("what the crew's week has left once it has the fence [h]"),
  })
  .openapi('WeekChoice');

const choicesSchema = z
  .object({ visitUid: z.string(), fenceRef: z.string(), personHours: z.number(), choices: z.array(choiceSchema) })
  .openapi('WeekChoices');

const givenSchema = z
  .object({
    applied: z.boolean().describe('false for a preview'),
    choice: choiceSchema,
    visit: visitSchema.describe('the visit that brings the fence in its new week'),
    rest: orNull(visitSchema).describe('what is left of the visit that had it; null where nothing is'),
  })
  .openapi('WeekGiven');

const numberOrNone = (value: number): number | null => (Number.isFinite(value) ? value : null);

const choiceOf = (choice: WeekChoice) => ({
  ...choice,
  worthLost: numberOrNone(choice.worthLost),
  cost: numberOrNone(choice.cost),
  mayBeGiven: !choice.isNow && choice.bars.length === 0 && choice.hoursLeft >= 0,
});

const notGiven = (context: PageContext, reason: string): never =>
  apiProblem(context, {
    status: 409,
    title: 'Not given',
    what: `${reason}; nothing was changed`,
    wayOut: 'GET /api/v1/visits/{uid}/fences/{ref}/weeks says which weeks there are; GET /api/v1/hours what they hold',
  }) as never;

const placeParam = uidParam.extend({ ref: z.string().min(1).max(200) });

/** Another week for a fence of a proposed visit, with what each choice costs, and leaving it to the plans again. */
export function addVisitWeeks(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  const isThere = async (uid: string): Promise<boolean> => (await readVisit(register.db, uid)) !== null;

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/visits/{uid}/fences/{ref}/weeks',
      tags: ['Visits'],
      summary: 'Every week of every crew to which a fence of a proposed visit could be given, with its cost',
      request: { params: placeParam },
      responses: {
        200: jsonAnswer(choicesSchema, 'by week and crew'),
        404: problemAnswer('no such visit'),
        409: problemAnswer('it cannot be given another week'),
      },
    }),
    async (context) => {
      const { uid, ref } = context.req.valid('param');
      if (!(await isThere(uid))) return apiProblem(context, noVisit(uid)) as never;
      const found = await choicesFor(register, { uid, fenceRef: ref, now: clock });
      if (found.kind === 'refused') return notGiven(context, found.reason);
      return answered(context, choicesSchema, {
        visitUid: uid,
        fenceRef: ref,
        personHours: found.item.personHours,
        choices: found.choices.map(choiceOf),
      });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/visits/{uid}/fences/{ref}/give',
      tags: ['Visits'],
      summary: 'Gives a fence of a proposed visit to a week of a crew: no plan moves it from then on',
      request: {
        params: placeParam,
        headers: idempotencyHeader,
        body: jsonBody(
          z.object({ ...actFields, week: day('Monday of the week'), crew: z.string().min(1).max(200), preview }),
        ),
      },
      responses: {
        200: jsonAnswer(givenSchema, 'the visits as they are now, or for a preview as they would be'),
        404: problemAnswer('no such visit'),
        409: problemAnswer('the rules forbid that week or its hours do not hold it: nothing was changed'),
      },
    }),
    async (context) => {
      const { uid, ref } = context.req.valid('param');
      const { week, crew, because, preview: onlyLook } = context.req.valid('json');
      if (!(await isThere(uid))) return apiProblem(context, noVisit(uid)) as never;
      const request = { uid, fenceRef: ref, week, crewRef: crew, now: clock, by: tokenName(context), because };
      const result = await (onlyLook ? previewGiven : giveWeek)(register, request);
      if (result.kind === 'refused') return notGiven(context, result.reason);
      const { choice, visit, rest } = result;
      return answered(context, givenSchema, { applied: !onlyLook, choice: choiceOf(choice), visit, rest });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/visits/{uid}/leave',
      tags: ['Visits'],
      summary: "Leaves a visit of the office's own to the plans again: the next one that is accepted may move it",
      request: { params: uidParam, headers: idempotencyHeader, body: jsonBody(z.object(actFields)) },
      responses: {
        200: jsonAnswer(z.object({ visit: visitSchema }), 'the visit as it is now'),
        404: problemAnswer('no such visit'),
        409: problemAnswer('it is not one that could be left to them: nothing was changed'),
      },
    }),
    async (context) => {
      const { uid } = context.req.valid('param');
      const { because } = context.req.valid('json');
      if (!(await isThere(uid))) return apiProblem(context, noVisit(uid)) as never;
      const result = await leaveToPlans(register, { uid, now: clock, by: tokenName(context), because });
      if (result.kind === 'left') return answered(context, z.object({ visit: visitSchema }), { visit: result.visit });
      return apiProblem(context, {
        status: 409,
        title: 'Not left',
        what: `${result.reason}; nothing was changed`,
        wayOut: 'look at the visit: GET /api/v1/visits/{uid}',
      }) as never;
    },
  );
}
