import { Hono } from 'hono';
import { newestDayWishes } from '../../register/day-wish-store.ts';
import { listMessageLinks } from '../../register/message-link-store.ts';
import { countOpenAnswers, listOwnerAnswers, settleOwnerAnswer } from '../../register/owner-answer-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { AnswersPage } from './answers-page.tsx';

/** Answers of one page, and links of messages shown beside the newest. */
const LIMIT = 100;
/** Calls to make that are shown, those who have waited longest first. */
const MOST_CALLS = 50;

/** What owners answered, for the office. */
export function answersRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  app.get('/answers', async (context) => {
    const asked = context.req.query('before') ?? '';
    const before = /^\d{1,15}$/.test(asked) ? { before: Number(asked) } : {};
    const isFirst = !('before' in before);
    const [found, open, waiting, links, marks] = await Promise.all([
      listOwnerAnswers(register.db, { ...before, limit: LIMIT + 1 }),
      // whoever waits for a call is shown however long ago they asked
      isFirst ? listOwnerAnswers(register.db, { open: true, oldestFirst: true, limit: MOST_CALLS }) : [],
      isFirst ? countOpenAnswers(register.db) : 0,
      isFirst ? listMessageLinks(register.db, { limit: LIMIT }) : [],
      isFirst ? newestDayWishes(register.db, LIMIT) : [],
    ]);
    const newest = found.slice(0, LIMIT);
    const shown = new Set(newest.map(({ id }) => id));
    const answers = [...newest, ...open.filter(({ id }) => !shown.has(id))];
    return context.html(
      <AnswersPage
        answers={answers}
        waiting={waiting}
        links={links}
        marks={marks}
        isFirst={isFirst}
        next={found.length > LIMIT ? (newest.at(-1)?.id ?? null) : null}
        frame={frameFor(context)}
      />,
    );
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
