import { Hono } from 'hono';
import { overviewOfHeld } from '../../register/held-notices.ts';
import { listOfficeNotices } from '../../register/office-notices.ts';
import { countOutbox, listOutbox, loadOutboxBytes } from '../../register/outbox.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { MOST_SHOWN } from './held-notices.tsx';
import { OUTBOX_STATES, OutboxPage } from './outbox-page.tsx';

const LIMIT = 200;

/** The outbox and its letters. */
export function outboxRoutes({ register }: Pick<AppParts, 'register'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  app.get('/outbox', async (context) => {
    const asked = context.req.query('state');
    const state = OUTBOX_STATES.find(([name]) => name === asked)?.[0] ?? null;
    const [entries, counts, held, office] = await Promise.all([
      listOutbox(register, state === null ? { limit: LIMIT } : { state, limit: LIMIT }),
      countOutbox(register),
      overviewOfHeld(register, MOST_SHOWN),
      listOfficeNotices(register),
    ]);
    return context.html(
      <OutboxPage
        entries={entries}
        counts={counts}
        state={state}
        limit={LIMIT}
        held={held}
        office={office}
        frame={frameFor(context)}
      />,
    );
  });

  app.get('/outbox/:id{[0-9]+}/letter', async (context) => {
    const message = await loadOutboxBytes(register, Number(context.req.param('id')));
    if (message?.channel !== 'letter') return context.notFound();
    const letter = new TextDecoder().decode(message.raw);
    // the letter's own policy forbids the icon a browser would otherwise ask for
    return context.html(letter.replace('<head>', '<head><link rel="icon" href="data:,">'));
  });
  return app;
}
