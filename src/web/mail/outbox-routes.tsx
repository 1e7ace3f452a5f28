import { Hono } from 'hono';
import { isMatter } from '../../notify/matter-rules.ts';
import { listStoppedAddresses } from '../../register/delivery-reports.ts';
import { overviewOfHeld } from '../../register/held-notices.ts';
import { listOfficeNotices } from '../../register/office-notices.ts';
import { cancelMessage, countOutbox, loadOutboxBytes, markLetterPosted, retryMessages } from '../../register/outbox.ts';
import { listOutboxPage, readOutboxDetail } from '../../register/outbox-page.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone, isoUtc } from '../../service/clock.ts';
import { messageHtml } from '../../service/message-html.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { textField } from '../frame/text-field.ts';
import { type MessageAct, OneMessagePage } from './one-message-page.tsx';
import { OUTBOX_STATES, type OutboxAsked, OutboxPage } from './outbox-page.tsx';

/** Messages of one page. */
const LIMIT = 50;
/** Longest text that a list is narrowed by [characters]. */
const LONGEST_ASKED = 100;

const ACTS: readonly MessageAct[] = ['retry', 'cancel', 'posted'];

/** The outbox, its messages and letters. */
export function outboxRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  const askedIn = (context: PageContext): OutboxAsked => ({
    state: OUTBOX_STATES.find(([name]) => name === context.req.query('state'))?.[0] ?? null,
    matter: (context.req.query('matter') ?? '').slice(0, LONGEST_ASKED),
    owner: (context.req.query('owner') ?? '').trim().slice(0, LONGEST_ASKED),
  });

  app.get('/outbox', async (context) => {
    const asked = askedIn(context);
    const before = Number(context.req.query('before') ?? '');
    const isFirst = !(Number.isInteger(before) && before > 0);
    const queued = context.req.query('queued');
    const [page, counts, held, office, stopped] = await Promise.all([
      listOutboxPage(register, {
        limit: LIMIT,
        ...(asked.state === null ? {} : { state: asked.state }),
        ...(asked.owner === '' ? {} : { ownerRef: asked.owner }),
        ...(isMatter(asked.matter) ? { matter: asked.matter } : {}),
        ...(isFirst ? {} : { before }),
      }),
      countOutbox(register),
      overviewOfHeld(register, 0),
      listOfficeNotices(register),
      listStoppedAddresses(register),
    ]);
    return context.html(
      <OutboxPage
        page={page}
        counts={counts}
        asked={asked}
        isFirst={isFirst}
        waiting={{ held: held.notices, office: office.length }}
        stopped={stopped}
        frame={frameFor(context)}
        formToken={formToken(context)}
        done={queued && /^\d{1,9}$/.test(queued) ? `${queued} queued for a try at once.` : null}
      />,
    );
  });

  app.post('/outbox/retry', async (context) => {
    const queued = await retryMessages(register, 'all', isoUtc(clock()));
    log.info({ by: accountName(context.var), queued }, 'messages were queued again');
    return context.redirect(`/outbox?queued=${queued}`, 303);
  });

  const one = async (context: PageContext, problem: string | null = null) => {
    const message = await readOutboxDetail(register, Number(context.req.param('id')));
    if (!message) return context.notFound();
    return context.html(
      <OneMessagePage frame={frameFor(context)} formToken={formToken(context)} message={message} problem={problem} />,
      problem === null ? 200 : 409,
    );
  };

  app.get('/outbox/:id{[0-9]+}', (context) => one(context));

  app.post('/outbox/:id{[0-9]+}', async (context) => {
    const id = Number(context.req.param('id'));
    const sent = textField(await context.req.parseBody(), 'act');
    const act = ACTS.find((known) => known === sent);
    const at = isoUtc(clock());
    const did = {
      retry: async () => (await retryMessages(register, id, at)) === 1,
      cancel: () => cancelMessage(register, id),
      posted: async () => {
        const { timeZone } = await readSettings(register.db);
        return markLetterPosted(register, id, { by: accountName(context.var), on: dayInZone(clock(), timeZone), at });
      },
    };
    if (!act || !(await did[act]())) {
      return one(context, 'Nothing was done: the message is no longer in a state in which that can be done.');
    }
    log.info({ by: accountName(context.var), message: id, act }, 'a message of the outbox was looked after');
    return context.redirect(`/outbox/${id}`, 303);
  });

  // the message's own policy forbids the icon a browser would otherwise ask for
  const withoutIcon = (html: string): string => html.replace('<head>', '<head><link rel="icon" href="data:,">');

  app.get('/outbox/:id{[0-9]+}/letter', async (context) => {
    const message = await loadOutboxBytes(register, Number(context.req.param('id')));
    if (message?.channel !== 'letter') return context.notFound();
    return context.html(withoutIcon(await messageHtml(message)));
  });

  app.get('/outbox/:id{[0-9]+}/message', async (context) => {
    const message = await loadOutboxBytes(register, Number(context.req.param('id')));
    if (message?.channel !== 'mail') return context.notFound();
    return context.html(withoutIcon(await messageHtml(message)));
  });
  return app;
}
