import { Hono } from 'hono';
import { namesByRef, sitesToChoose } from '../../register/record-names.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import { listVisitPage } from '../../register/visit-page.ts';
import { readVisit, visitHistory } from '../../register/visit-store.ts';
import { listVisitHours, returnedFences, visitEntries } from '../../register/visit-work-store.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { cancelVisit, confirmVisit, dayAtSite, missVisit, type VisitChangeResult } from '../../service/change-visit.ts';
import { officeToday } from '../../service/crew-sheets.ts';
import { type DoResult, doVisit, previewDone } from '../../service/do-visit.ts';
import type { AppParts } from '../../service/service.ts';
import { daysOfVisit } from '../../service/visit-days.ts';
import { isCalendarDay } from '../../units/calendar-day.ts';
import { actingName } from '../access/acting.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { namesOf } from '../frame/season-names.ts';
import { type SentForm, textField } from '../frame/text-field.ts';
import { askedDone } from './done-form.ts';
import { doneSentences, SAID, wouldBeConfirmed } from './visit-answers.ts';
import type { VisitAction } from './visit-forms.tsx';
import { VisitPage } from './visit-page.tsx';
import { askedVisits, visitQueryOf } from './visit-query.ts';
import { VisitsPage } from './visits-page.tsx';

const LONGEST_REASON = 2000;

const NO_VISIT: Problem = {
  status: 404,
  title: 'No such visit',
  what: 'There is no visit of that name in the register.',
  wayOut: 'The list of visits shows those there are.',
};

/** What the page of a visit says besides the visit. */
interface Answer {
  readonly done?: readonly string[];
  readonly faults?: readonly string[];
  readonly asked?: { readonly action: VisitAction; readonly form: SentForm; readonly mayBeSure: boolean };
}

/** Visits: the list, one visit, and what becomes of it. */
export function visitRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const show = async (context: PageContext, visit: Visit, { done = [], faults = [], asked }: Answer = {}) =>
    context.html(
      <VisitPage
        visit={visit}
        {...(await namesOf(register))}
        history={await visitHistory(db, visit.uid)}
        entries={await visitEntries(db, visit.uid)}
        hours={await listVisitHours(db, visit.uid)}
        days={await daysOfVisit(register, visit, await dayAtSite(register, visit.siteRef, clock))}
        returned={await returnedFences(db, visit.uid)}
        inspections={[
          ...(await recordsWhereIn(
            db,
            'inspections',
            'fence_ref',
            visit.items.map(({ fenceRef }) => fenceRef),
          )),
        ].sort((a, b) => (a.day < b.day ? 1 : -1))}
        today={await officeToday(register, clock)}
        done={done}
        faults={faults}
        asked={asked ?? null}
        formToken={formToken(context)}
        frame={frameFor(context)}
      />,
      faults.length > 0 ? 400 : 200,
    );

  /** Answers a form about a visit: what stands against it on the page again, else the visit as it is now. */
  const answer = async (
    context: PageContext,
    {
      visit,
      form,
      action,
      look,
    }: { readonly visit: Visit; readonly form: SentForm; readonly action: VisitAction; readonly look: boolean },
    result: VisitChangeResult,
  ) => {
    if (result.kind === 'no such visit') return sayProblem(context, NO_VISIT);
    if (result.kind !== 'changed') {
      return show(context, visit, {
        faults: result.reasons,
        asked: { action, form, mayBeSure: result.kind === 'asked' },
      });
    }
    if (look) {
      return show(context, visit, {
        done: wouldBeConfirmed(result.visit, await officeToday(register, clock)),
        asked: { action, form, mayBeSure: false },
      });
    }
    log.info({ visit: visit.uid, action, by: actingName(context) }, 'a visit was changed');
    return context.redirect(`/visits/${encodeURIComponent(visit.uid)}?said=${action}`, 303);
  };

  const asking = async (context: PageContext) => {
    const form = await context.req.parseBody({ all: true });
    const visit = await readVisit(db, context.req.param('id') ?? '');
    return {
      form,
      visit,
      look: textField(form, 'step') === 'look',
      because: textField(form, 'because').trim().slice(0, LONGEST_REASON),
      by: actingName(context),
    };
  };

  app.get('/visits', async (context) => {
    const asked = askedVisits(context.req.query());
    const today = await officeToday(register, clock);
    return context.html(
      <VisitsPage
        page={await listVisitPage(db, visitQueryOf(asked, today))}
        asked={asked}
        crewNames={await namesByRef(db, 'crews')}
        sites={await sitesToChoose(db)}
        today={today}
        frame={frameFor(context)}
      />,
    );
  });

  app.get('/visits/:id', async (context) => {
    const visit = await readVisit(db, context.req.param('id'));
    if (!visit) return sayProblem(context, NO_VISIT);
    const said = SAID.get(context.req.query('said') ?? '');
    return show(context, visit, said === undefined ? {} : { done: [said] });
  });

  app.post('/visits/:id/confirm', async (context) => {
    const { form, visit, look, because, by } = await asking(context);
    if (!visit) return sayProblem(context, NO_VISIT);
    const day = textField(form, 'day').trim();
    const at = textField(form, 'at').trim();
    const faults = [
      ...(isCalendarDay(day) ? [] : [`the day ${JSON.stringify(day)} is no day; write it as 2027-01-05`]),
      ...(at === '' || /^([01]\d|2[0-3]):[0-5]\d$/.test(at)
        ? []
        : [`the hour ${JSON.stringify(at)} is no time; write the local time at the site as 08:30`]),
    ];
    if (faults.length > 0)
      return show(context, visit, { faults, asked: { action: 'confirm', form, mayBeSure: false } });
    const result = await confirmVisit(register, {
      uid: visit.uid,
      now: clock,
      day,
      startsAt: at === '' ? null : at,
      crewRef: textField(form, 'crew') || null,
      sure: textField(form, 'sure') === 'yes',
      onlyLook: look,
      because,
      by,
    });
    return answer(context, { visit, form, action: 'confirm', look }, result);
  });

  for (const [action, change] of [
    ['miss', missVisit],
    ['cancel', cancelVisit],
  ] as const) {
    app.post(`/visits/:id/${action}`, async (context) => {
      const { form, visit, because, by } = await asking(context);
      if (!visit) return sayProblem(context, NO_VISIT);
      if (because === '') {
        const faults = ['say why, in a few words'];
        return show(context, visit, { faults, asked: { action, form, mayBeSure: false } });
      }
      const result = await change(register, { uid: visit.uid, now: clock, because, by });
      return answer(context, { visit, form, action, look: false }, result);
    });
  }

  app.post('/visits/:id/done', async (context) => {
    const { form, visit, look, because, by } = await asking(context);
    if (!visit) return sayProblem(context, NO_VISIT);
    const asked = { action: 'done', form, mayBeSure: false } as const;
    const read = askedDone(form, visit);
    if ('faults' in read) return show(context, visit, { faults: read.faults, asked });
    const request = { uid: visit.uid, now: clock, because, by, ...read };
    const result: DoResult = look ? await previewDone(register, request) : await doVisit(register, request);
    if (result.kind === 'no such visit') return sayProblem(context, NO_VISIT);
    if (result.kind !== 'done') {
      return show(context, visit, {
        faults: result.reasons,
        asked: { ...asked, mayBeSure: result.kind === 'asked' },
      });
    }
    if (look) return show(context, visit, { done: doneSentences(result), asked });
    log.info({ visit: visit.uid, action: 'done', by }, 'a visit was changed');
    return context.redirect(`/visits/${encodeURIComponent(visit.uid)}?said=done`, 303);
  });
  return app;
}
