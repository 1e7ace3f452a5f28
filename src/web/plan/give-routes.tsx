import { Hono } from 'hono';
import { namesByRef } from '../../register/record-names.ts';
import { lastVisitDay, listVisits } from '../../register/visit-store.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import { officeToday } from '../../service/crew-sheets.ts';
import { type GiveRequest, giveWeek, leaveToPlans, previewGiven } from '../../service/give-week.ts';
import { hoursAhead, inFewColumns } from '../../service/hours-ahead.ts';
import type { AppParts } from '../../service/service.ts';
import { choicesFor } from '../../service/week-choices-of.ts';
import { addDays, dayNumber } from '../../units/calendar-day.ts';
import { actingName } from '../access/acting.ts';
import { formToken } from '../access/form-token.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { namesOf } from '../frame/season-names.ts';
import { textField } from '../frame/text-field.ts';
import { GivenPreview, GivePage } from './give-page.tsx';
import { HoursPage } from './hours-page.tsx';

/** Weeks that the ledger shows at least and at most. */
const FEWEST_WEEKS = 10;
const MOST_WEEKS = 40;
const DAYS_PER_WEEK = 7;

const notGiven = (reason: string): Problem => ({
  status: 400,
  title: 'Not given',
  what: `It cannot be given another week: ${reason}. Nothing was changed.`,
  wayOut: 'The hours left, under Season plan, show what every week holds.',
});

/** The ledger of hours left, and the weeks to which a fence can be given. */
export function giveRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  app.get('/plan/hours', async (context) => {
    const today = await officeToday(register, clock);
    const crewNames = await namesByRef(register.db, 'crews');
    const asked = context.req.query('crew') ?? '';
    const crewRef = crewNames.has(asked) ? asked : null;
    const last = (await lastVisitDay(register.db, ['proposed', 'confirmed'])) ?? today;
    const needed = Math.ceil((dayNumber(last) - dayNumber(mondayOf(today))) / DAYS_PER_WEEK) + 2;
    const weeks = Math.min(MOST_WEEKS, Math.max(FEWEST_WEEKS, needed));
    const hours = inFewColumns(await hoursAhead(register, { today, weeks, crewRef }));
    const visits = hours.crews.some(({ ref }) => ref === '')
      ? []
      : await listVisits(register.db, {
          from: today,
          to: addDays(mondayOf(today), weeks * DAYS_PER_WEEK - 1),
          states: ['proposed', 'confirmed'],
          ...(crewRef === null ? {} : { crewRef }),
        });
    return context.html(
      <HoursPage
        hours={hours}
        visits={visits}
        crewNames={crewNames}
        crewRef={crewRef}
        siteNames={(await namesOf(register)).siteNames}
        today={today}
        frame={frameFor(context)}
      />,
    );
  });

  app.get('/plan/give', async (context) => {
    const { visit: uid = '', fence: fenceRef = '', week, crew } = context.req.query();
    const common = {
      ...(await namesOf(register)),
      today: await officeToday(register, clock),
      currency: context.var.office.currency,
      frame: frameFor(context),
    };
    if (week !== undefined && crew !== undefined) {
      const request = { uid, fenceRef, week, crewRef: crew, now: clock, by: actingName(context), because: '' };
      const result = await previewGiven(register, request);
      if (result.kind === 'refused') return sayProblem(context, notGiven(result.reason));
      return context.html(
        <GivenPreview {...common} uid={uid} fenceRef={fenceRef} given={result} formToken={formToken(context)} />,
      );
    }
    const found = await choicesFor(register, { uid, fenceRef, now: clock });
    if (found.kind === 'refused') return sayProblem(context, notGiven(found.reason));
    return context.html(<GivePage {...common} found={found} />);
  });

  app.post('/plan/give', async (context) => {
    const form = await context.req.parseBody();
    const request: GiveRequest = {
      uid: textField(form, 'visit'),
      fenceRef: textField(form, 'fence'),
      week: textField(form, 'week'),
      crewRef: textField(form, 'crew'),
      because: textField(form, 'because').trim().slice(0, 2000),
      by: actingName(context),
      now: clock,
    };
    const result = await giveWeek(register, request);
    if (result.kind === 'refused') return sayProblem(context, notGiven(result.reason));
    const { fenceRef, week, crewRef, by } = request;
    log.info({ fence: fenceRef, week, crew: crewRef, by }, 'a fence was given a week');
    return context.redirect(`/visits/${encodeURIComponent(result.visit.uid)}?said=given`, 303);
  });

  app.post('/plan/leave', async (context) => {
    const uid = textField(await context.req.parseBody(), 'visit');
    const result = await leaveToPlans(register, { uid, now: clock, by: actingName(context), because: '' });
    if (result.kind === 'refused') return sayProblem(context, notGiven(result.reason));
    return context.redirect(`/visits/${encodeURIComponent(uid)}?said=left`, 303);
  });
  return app;
}
