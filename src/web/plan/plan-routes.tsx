import { Hono } from 'hono';
import { listPlanHeads, readPlan } from '../../register/plan-store.ts';
import { listRecords } from '../../register/record-store.ts';
import { countOwnersToTell } from '../../register/visit-notices.ts';
import { acceptSeasonPlan } from '../../service/accept-season-plan.ts';
import { isoUtc } from '../../service/clock.ts';
import { officeToday } from '../../service/crew-sheets.ts';
import { acceptanceOf } from '../../service/plan-visits.ts';
import type { AppParts } from '../../service/service.ts';
import { actingName } from '../access/acting.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { namesOf } from '../frame/season-names.ts';
import { textField } from '../frame/text-field.ts';
import { AcceptPage } from './accept-page.tsx';
import { PlanPage } from './plan-page.tsx';
import { PlansPage } from './plans-page.tsx';

/** Seconds after which the page asks again while a plan is made. */
const ASK_AGAIN_S = 3;

const NO_PLAN: Problem = {
  status: 404,
  title: 'No such plan',
  what: 'There is no season plan of that number.',
  wayOut: 'The list of plans shows those there are.',
};
const notAccepted = (what: string): Problem => ({
  status: 400,
  title: 'Not accepted',
  what: `${what} Nothing was changed.`,
  wayOut: 'Make a new plan to change what is proposed.',
});

/** Season plans: the list, the button that makes one, one plan, and its acceptance. */
export function planRoutes({
  register,
  clock,
  log,
  planner,
}: Pick<AppParts, 'register' | 'clock' | 'log' | 'planner'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();
  const planAsked = (context: PageContext) => readPlan(db, Number(context.req.param('number')));

  app.get('/plan', async (context) => {
    const state = planner.state();
    if (state.kind === 'at work') context.header('Refresh', `${ASK_AGAIN_S}; url=/plan`);
    return context.html(
      <PlansPage
        plans={await listPlanHeads(db)}
        state={state}
        hasCrews={(await listRecords(db, 'crews')).length > 0}
        today={await officeToday(register, clock)}
        formToken={formToken(context)}
        frame={frameFor(context)}
      />,
    );
  });

  app.post('/plan', (context) => {
    const by = actingName(context);
    // one at work already is left to end: the page shows how far it has come
    if (planner.begin({ by, weeks: null })) log.info({ by }, 'a season plan is made');
    return context.redirect('/plan', 303);
  });

  app.get('/plan/:number{[0-9]+}', async (context) => {
    const plan = await planAsked(context);
    if (!plan) return sayProblem(context, NO_PLAN);
    return context.html(
      <PlanPage
        plan={plan}
        {...(await namesOf(register))}
        currency={context.var.office.currency}
        today={await officeToday(register, clock)}
        frame={frameFor(context)}
      />,
    );
  });

  app.get('/plan/:number{[0-9]+}/accept', async (context) => {
    const plan = await planAsked(context);
    if (!plan) return sayProblem(context, NO_PLAN);
    const today = await officeToday(register, clock);
    if (plan.state !== 'made' || plan.firstWeek < today) return context.redirect(`/plan/${plan.number}`, 302);
    const changes = await acceptanceOf(db, { ...plan, visits: plan.content.visits }, { today, at: isoUtc(clock()) });
    return context.html(
      <AcceptPage
        plan={plan}
        changes={changes}
        {...(await namesOf(register))}
        today={today}
        ownersToTell={
          await countOwnersToTell(db, [
            ...new Set(
              [...changes.created, ...changes.moved, ...changes.cancelled].flatMap(({ items }) =>
                items.map(({ fenceRef }) => fenceRef),
              ),
            ),
          ])
        }
        formToken={formToken(context)}
        frame={frameFor(context)}
      />,
    );
  });

  app.post('/plan/:number{[0-9]+}/accept', async (context) => {
    const number = Number(context.req.param('number'));
    const because = textField(await context.req.parseBody(), 'because')
      .trim()
      .slice(0, 2000);
    const by = actingName(context);
    const result = await acceptSeasonPlan(register, { number, now: clock, by, because });
    switch (result.kind) {
      case 'no such plan':
        return sayProblem(context, NO_PLAN);
      case 'accepted before':
        return sayProblem(context, notAccepted(`Plan ${number} was accepted before.`));
      case 'begun already':
        return sayProblem(
          context,
          notAccepted(`Plan ${number} begins with the week of ${result.plan.firstWeek}, and today is ${result.today}.`),
        );
      case 'accepted':
        log.info({ plan: number, by }, 'a season plan was accepted');
        return context.redirect('/visits', 303);
    }
  });
  return app;
}
