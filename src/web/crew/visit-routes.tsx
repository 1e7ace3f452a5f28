import { Hono } from 'hono';
import { returnedFences } from '../../register/visit-work-store.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { visitOfAccount } from '../../service/crew-visit.ts';
import { visitInspection } from '../../service/enter-visit-reading.ts';
import { finishVisit } from '../../service/finish-visit.ts';
import type { AppParts } from '../../service/service.ts';
import { visitSheet } from '../../service/visit-sheet.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { textField } from '../frame/text-field.ts';
import { isByScript, type NotTaken, notTaken, takenOrNot, tellScript, whyNotTaken } from './crew-answer.ts';
import { entryOf, finishForm, withoutToken } from './crew-form.ts';
import { visitPath } from './crew-marks.ts';
import { crewAccount, crewVisitor } from './crew-visitor.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import { type RefusedForm, VisitPage } from './visit-page.tsx';

/** Says on a page of its own why something of a visit cannot be had. */
export const sayNotTaken = (context: PageContext, { status, reasons }: NotTaken): Response | Promise<Response> => {
  const words = CREW_WORDS[crewAccount(context).language];
  return sayProblem(context, {
    status: status === 403 || status === 404 || status === 413 ? status : 400,
    title: words.notStored,
    what: reasons.join(' '),
    wayOut: words.backToToday,
    es: { title: words.notStored, what: reasons.join(' '), wayOut: words.backToToday },
  });
};

/** One visit: looked at, and finished. */
export function visitRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  const page = async (context: PageContext, uid: string, refused: RefusedForm | null) => {
    const visitor = crewVisitor(context);
    const found = await visitOfAccount(register.db, uid, visitor.account);
    if ('refused' in found) {
      return sayNotTaken(context, whyNotTaken(found.refused, CREW_WORDS[visitor.account.language]));
    }
    const { visit } = found;
    const entered = new Map<string, number>();
    for (const { fenceRef } of visit.items) {
      entered.set(fenceRef, (await visitInspection(register, uid, fenceRef))?.readings.length ?? 0);
    }
    const html = (
      <VisitPage
        visitor={visitor}
        sheet={await visitSheet(register, visit, clock)}
        entered={entered}
        refused={refused}
        returned={visit.state === 'done' ? await returnedFences(register.db, uid) : []}
      />
    );
    return context.html(html, refused ? 422 : 200);
  };

  app.get('/today/visits/:uid', (context) => page(context, context.req.param('uid'), null));

  app.post('/today/visits/:uid/done', async (context) => {
    const uid = context.req.param('uid');
    const account = crewAccount(context);
    const words = CREW_WORDS[account.language];
    const form = await context.req.parseBody({ all: true });
    const refuse = async (why: NotTaken): Promise<Response> => {
      if (isByScript(context)) return tellScript(context, why);
      return page(context, uid, { form, reasons: why.reasons, question: why.question });
    };
    const entry = entryOf(form);
    if (!entry) return refuse(notTaken(422, words.refusal.badForm));
    const finished = {
      ...entry,
      uid,
      said: (visit: Visit) => finishForm(form, visit, account.language),
      sent: withoutToken(form),
      remarks: textField(form, 'remarks').trim().slice(0, 2000),
      sure: textField(form, 'sure') === 'yes',
      account,
    };
    const taken = takenOrNot(await finishVisit(register, finished, clock), words);
    if (!('answer' in taken)) return refuse(taken);
    return isByScript(context) ? tellScript(context, taken) : context.redirect(visitPath(uid), 303);
  });
  return app;
}
