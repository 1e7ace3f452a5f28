import { Hono } from 'hono';
import { oneLine } from '../../notify/plain-words.ts';
import { acknowledge, askForCall, type CallWish, openCall } from '../../service/owner-answers.ts';
import { acceptQuote, quotesOfOwner } from '../../service/owner-quotes.ts';
import { chooseDay, markDays, visitsOfOwner } from '../../service/owner-visits.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';
import { CALL_WORDS, OwnerCallPage } from './call-page.tsx';
import { NO_FENCE } from './owner-routes.tsx';
import { type OwnerView, ownerView } from './owner-view.ts';
import { OwnerQuotePage, OwnerQuotesPage } from './quotes-pages.tsx';
import { QUOTES_WORDS } from './quotes-words.ts';
import { OwnerVisitsPage } from './visits-page.tsx';
import { VISITS_WORDS } from './visits-words.ts';

/** Longest texts of the form that asks for a call, and of the name under a quote [characters]. */
const LONGEST: Readonly<Record<keyof CallWish, number>> = { phone: 50, when: 200, about: 1000 };
const LONGEST_NAME = 200;

/** What the page says of days that were marked, also where they had been before. */
const MARKED = 'marked';

const NOTHING: CallWish = { phone: '', when: '', about: '' };

/** Notes the days that were ticked; none only where the owner says that none suits. */
const markedDays = async (
  register: AppParts['register'],
  link: OwnerView['link'],
  { uid, form }: { readonly uid: string; readonly form: SentForm },
  clock: AppParts['clock'],
): Promise<Awaited<ReturnType<typeof markDays>> | 'nothing marked'> => {
  const isNone = textField(form, 'none') !== '';
  const days = isNone ? [] : textFields(form, 'day');
  return days.length === 0 && !isNone ? 'nothing marked' : markDays(register, link, { uid, days }, clock);
};

/** What an owner answers through a link: read, a day, a quote, a call. Nothing changes but by the button of a page. */
export function ownerAnswerRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const parts = { register, clock };

  app.post('/owner/:token/read', async (context) => {
    const view = await ownerView(context, parts, 'read');
    if (!view) return sayProblem(context, NO_FENCE);
    const ref = textField(await context.req.parseBody(), 'fence') || null;
    const done = await acknowledge(register, view.link, ref, clock);
    if (done === 'no such fence') return sayProblem(context, NO_FENCE);
    const page = ref === null ? view.home : `${view.home}/fences/${encodeURIComponent(ref)}`;
    return context.redirect(`${page}?said=${done}#read`, 303);
  });

  app.get('/owner/:token/visits', async (context) => {
    const view = await ownerView(context, parts, 'visits');
    if (!view) return sayProblem(context, NO_FENCE);
    const isMarked = context.req.query('said') === MARKED;
    const visits = await visitsOfOwner(register, view.owner.ref, clock);
    return context.html(<OwnerVisitsPage view={view} visits={visits} isMarked={isMarked} />);
  });

  app.post('/owner/:token/visits/:uid', async (context) => {
    const view = await ownerView(context, parts, 'visit');
    if (!view) return sayProblem(context, NO_FENCE);
    const uid = context.req.param('uid');
    const form = await context.req.parseBody({ all: true });
    const words = VISITS_WORDS[view.owner.language];
    const isMark = textField(form, 'rule') === 'mark';
    const kind = isMark
      ? await markedDays(register, view.link, { uid, form }, clock)
      : (await chooseDay(register, view.link, { uid, day: textField(form, 'day') }, clock)).kind;
    switch (kind) {
      case 'no such visit':
        return sayProblem(context, { status: 404, ...words.noVisit });
      case 'not offered':
        return sayProblem(context, { status: 400, ...words.notOffered });
      case 'nothing marked':
        return sayProblem(context, { status: 400, ...words.nothingMarked });
      case 'chosen':
      case 'marked':
      case 'already':
        return context.redirect(
          `${view.home}/visits?said=${isMark ? MARKED : kind === 'chosen' ? 'noted' : 'already'}`,
          303,
        );
    }
  });

  app.get('/owner/:token/quotes', async (context) => {
    const view = await ownerView(context, parts, 'quotes');
    if (!view) return sayProblem(context, NO_FENCE);
    return context.html(<OwnerQuotesPage view={view} quotes={await quotesOfOwner(register, view.owner.ref, clock)} />);
  });

  app.get('/owner/:token/quotes/:number', async (context) => {
    const view = await ownerView(context, parts, 'quote');
    if (!view) return sayProblem(context, NO_FENCE);
    const offered = (await quotesOfOwner(register, view.owner.ref, clock)).find(
      ({ number }) => number === context.req.param('number'),
    );
    if (!offered) {
      return sayProblem(context, {
        status: 404,
        ...QUOTES_WORDS[view.owner.language].notAccepted['no such quote'],
      });
    }
    return context.html(<OwnerQuotePage view={view} offered={offered} />);
  });

  app.post('/owner/:token/quotes/:number', async (context) => {
    const view = await ownerView(context, parts, 'quote');
    if (!view) return sayProblem(context, NO_FENCE);
    const form = await context.req.parseBody();
    const number = context.req.param('number');
    const name = oneLine(textField(form, 'name'));
    const words = QUOTES_WORDS[view.owner.language];
    const known = (await quotesOfOwner(register, view.owner.ref, clock)).find((each) => each.number === number);
    if (known?.standing === 'open' && (name === '' || name.length > LONGEST_NAME)) {
      const page = <OwnerQuotePage view={view} offered={known} fault={words.accept.nameMissing} name={name} />;
      return context.html(page, 400);
    }
    const done = await acceptQuote(register, view.link, { number, sha256: textField(form, 'quote'), name }, clock);
    if (done === 'accepted' || done === 'already') {
      const said = done === 'accepted' ? 'noted' : 'already';
      return context.redirect(`${view.home}/quotes/${encodeURIComponent(number)}?said=${said}`, 303);
    }
    return sayProblem(context, { status: done === 'no such quote' ? 404 : 400, ...words.notAccepted[done] });
  });

  app.get('/owner/:token/call', async (context) => {
    const view = await ownerView(context, parts, 'call');
    if (!view) return sayProblem(context, NO_FENCE);
    const open = await openCall(register, view.owner.ref);
    return context.html(<OwnerCallPage view={view} open={open} wish={NOTHING} faults={{}} />);
  });

  app.post('/owner/:token/call', async (context) => {
    const view = await ownerView(context, parts, 'call');
    if (!view) return sayProblem(context, NO_FENCE);
    const form = await context.req.parseBody();
    const wish: CallWish = {
      phone: oneLine(textField(form, 'phone')),
      when: oneLine(textField(form, 'when')),
      about: oneLine(textField(form, 'about')),
    };
    const { tooLong } = CALL_WORDS[view.owner.language];
    const faults = Object.fromEntries(
      (['phone', 'when', 'about'] as const)
        .filter((field) => wish[field].length > LONGEST[field])
        .map((field) => [field, tooLong(LONGEST[field])]),
    );
    if (Object.keys(faults).length > 0) {
      return context.html(<OwnerCallPage view={view} open={null} wish={wish} faults={faults} />, 400);
    }
    const done = await askForCall(register, view.link, wish, clock);
    return context.redirect(`${view.home}/call?said=${done}`, 303);
  });
  return app;
}
