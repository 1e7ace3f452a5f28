import { Hono } from 'hono';
import { learnedHistory, learnedInForce } from '../../register/learned-store.ts';
import { isoUtc } from '../../service/clock.ts';
import {
  acceptLearning,
  learnFromRegister,
  planLearning,
  type RefusedAcceptance,
  revertLearning,
} from '../../service/learn-register.ts';
import { quantityName } from '../../service/learned-words.ts';
import { previewLearned } from '../../service/preview-learned.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { textField, textFields } from '../frame/text-field.ts';
import { LearnedPage, LearnedPreviewPage } from './learned-pages.tsx';

const LONGEST_NOTE = 2000;

/** Why nothing could be accepted, in a sentence. */
function refusalText(refused: RefusedAcceptance): string {
  switch (refused.kind) {
    case 'not seen':
      return `Nothing was accepted: the register has seen nothing of ${refused.keys.join(', ')}.`;
    case 'too few':
      return refused.cells.length === 0
        ? 'Nothing was accepted: nothing was seen yet.'
        : `Nothing was accepted: too little was seen of ${refused.cells.map(quantityName).join('; ')}.`;
    case 'in force already':
      return 'Nothing was accepted: all of it is in force already.';
  }
}

/** What the register has learned: looked at, accepted, taken back. */
export function learnedRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  const page = async (context: PageContext, problem: string | null = null) => {
    const learning = await learnFromRegister(register);
    const asked = context.req.query('done');
    const done =
      asked === 'accepted'
        ? 'Accepted. The next sweep forecasts with it.'
        : asked === 'reverted'
          ? 'Taken back. The next sweep forecasts without it.'
          : null;
    return context.html(
      <LearnedPage
        frame={frameFor(context)}
        learning={learning}
        history={await learnedHistory(register.db)}
        done={done}
        problem={problem}
      />,
      problem === null ? 200 : 409,
    );
  };

  const act = (context: PageContext, note: string) => ({
    at: isoUtc(clock()),
    by: accountName(context.var),
    note: note.trim().slice(0, LONGEST_NOTE),
  });

  app.get('/learned', (context) => page(context));

  app.get('/learned/preview', async (context) => {
    const common = { frame: frameFor(context), formToken: formToken(context) };
    if (context.req.query('revert') === 'yes') {
      const now = await learnedInForce(register.db);
      if (!now) return page(context, 'Nothing is in force that could be taken back.');
      const after = await learnedInForce(register.db, now.number);
      const preview = await previewLearned(register, after, clock);
      return context.html(
        <LearnedPreviewPage {...common} after={after} reverts={now.number} only={[]} preview={preview} />,
      );
    }
    const only = context.req.queries('only') ?? [];
    if (only.length === 0) return page(context, 'Tick what is to be accepted.');
    const { plan } = await planLearning(register, act(context, ''), only);
    if (plan.kind !== 'planned') return page(context, refusalText(plan));
    const preview = await previewLearned(register, plan.version, clock);
    return context.html(
      <LearnedPreviewPage {...common} after={plan.version} reverts={null} only={only} preview={preview} />,
    );
  });

  app.post('/learned', async (context) => {
    const form = await context.req.parseBody({ all: true });
    const done = act(context, textField(form, 'note'));
    if (textField(form, 'act') === 'revert') {
      const inForce = await learnedInForce(register.db);
      if (!inForce || String(inForce.number) !== textField(form, 'reverts')) {
        return page(context, 'Nothing was taken back: another version is in force by now.');
      }
      await revertLearning(register, done);
      log.info({ by: done.by, version: inForce.number }, 'what was learned was taken back');
      return context.redirect('/learned?done=reverted', 303);
    }
    const only = textFields(form, 'only');
    if (only.length === 0) return page(context, 'Nothing was accepted: tick what is to be.');
    const { acceptance } = await acceptLearning(register, done, only);
    if (acceptance.kind !== 'accepted') return page(context, refusalText(acceptance));
    log.info({ by: done.by, version: acceptance.version.number }, 'what was learned was accepted');
    return context.redirect('/learned?done=accepted', 303);
  });
  return app;
}
