import { Hono } from 'hono';
import { listMessageLinks } from '../../register/message-link-store.ts';
import { listOwnerAnswers, settleOwnerAnswer } from '../../register/owner-answer-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { AnswersPage } from './answers-page.tsx';

const LIMIT = 500;

/** What owners answered, for the office. */
export function answersRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  app.get('/answers', async (context) => {
    const [newest, open, links] = await Promise.all([
      listOwnerAnswers(register.db, { limit: LIMIT }),
      // whoever waits for a call is shown however long ago they asked
      listOwnerAnswers(register.db, { open: true }),
      listMessageLinks(register.db, { limit: LIMIT }),
    ]);
    const shown = new Set(newest.map(({ id }) => id));
    const answers = [...newest, ...open.filter(({ id }) => !shown.has(id))];
    return context.html(<AnswersPage answers={answers} links={links} limit={LIMIT} frame={frameFor(context)} />);
  });

  app.post('/answers/:id{[0-9]+}/called', async (context) => {
    const { visitor } = context.var;
    const by = visitor.kind === 'account' ? visitor.account.displayName : '';
    // a call that was noted already, by another click or another person, stays as it is
    await settleOwnerAnswer(register.db, Number(context.req.param('id')), { at: isoUtc(clock()), by });
    return context.redirect('/answers', 303);
  });
  return app;
}
