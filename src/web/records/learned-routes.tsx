import { Hono } from 'hono';
import { learnedHistory } from '../../register/learned-store.ts';
import { isoUtc } from '../../service/clock.ts';
import type { RefusedAcceptance, RegisterLearning } from '../../service/learn-register.ts';
import { quantityName } from '../../service/learned-words.ts';
import type { LearnedDone } from '../../service/long-tasks.ts';
import type { WorkAnswer } from '../../service/long-work.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { textField, textFields } from '../frame/text-field.ts';
import { sayAtWork } from './at-work-page.tsx';
import { LearnedPage, LearnedPreviewPage } from './learned-pages.tsx';

const LONGEST_NOTE = 2000;

const DONE = {
  accepted: 'Accepted. The next sweep forecasts with it.',
  reverted: 'Taken back. The next sweep forecasts without it.',
} as const;

const BACK = { path: '/records', name: 'Records' } as const;
const LOOKING = {
  title: 'Looking what was learned',
  note: 'Every fence with its readings and storms is looked at. What comes of it is shown here as soon as it is ready.',
  counted: 'fences',
  back: BACK,
} as const;
const ACTING = {
  title: 'Reckoning once more before it is noted',
  note: 'What was learned is reckoned anew, then noted. What became of it is said here.',
  counted: 'fences',
  back: BACK,
} as const;

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
export function learnedRoutes({
  register,
  clock,
  log,
  work,
}: Pick<AppParts, 'register' | 'clock' | 'log' | 'work'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  const learnedPage = async (context: PageContext, learning: RegisterLearning, problem: string | null) => {
    const asked = context.req.query('done');
    const done = asked === 'accepted' || asked === 'reverted' ? DONE[asked] : null;
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

  const page = async (context: PageContext, problem: string | null = null) => {
    const learning = await work.ask('learn', 'learn', null);
    return learning.kind === 'at work'
      ? sayAtWork(context, { ...LOOKING, progress: learning.progress })
      : learnedPage(context, learning.value, problem);
  };

  const act = (context: PageContext, note: string) => ({
    at: isoUtc(clock()),
    by: accountName(context.var),
    note: note.trim().slice(0, LONGEST_NOTE),
  });

  /** The page of what came of accepting or taking back, or of how far that is. */
  const outcome = async (context: PageContext, answer: WorkAnswer<LearnedDone>): Promise<Response> => {
    if (answer.kind === 'at work') return sayAtWork(context, { ...ACTING, progress: answer.progress });
    const done = answer.value;
    switch (done.kind) {
      case 'accepted':
      case 'reverted':
        log.info({ by: accountName(context.var), version: done.number }, `what was learned was ${done.kind}`);
        return context.redirect(`/learned?done=${done.kind}`, 303);
      case 'refused':
        return learnedPage(context, done.learning, refusalText(done.refused));
      case 'another in force':
        return learnedPage(context, done.learning, 'Nothing was taken back: another version is in force by now.');
    }
  };

  /** Under which key the office's act is done: whoever asked hears what came of it. */
  const actKey = (context: PageContext, what: 'accept' | 'revert'): string =>
    `${what} what was learned, ${accountName(context.var)}`;

  app.get('/learned', async (context) => {
    for (const what of ['accept', 'revert'] as const) {
      const begun = await work.fetch(actKey(context, what), what);
      if (begun) return outcome(context, begun);
    }
    return page(context);
  });

  app.get('/learned/preview', async (context) => {
    const only = context.req.queries('only') ?? [];
    const reverts = context.req.query('revert') === 'yes';
    if (!reverts && only.length === 0) return page(context, 'Tick what is to be accepted.');
    const look = reverts
      ? await work.ask('look at reverting', 'look at reverting', null)
      : await work.ask(`look at accepting ${only.join(' ')}`, 'look at accepting', { act: act(context, ''), only });
    if (look.kind === 'at work') return sayAtWork(context, { ...LOOKING, progress: look.progress });
    const seen = look.value;
    switch (seen.kind) {
      case 'nothing in force':
        return learnedPage(context, seen.learning, 'Nothing is in force that could be taken back.');
      case 'refused':
        return learnedPage(context, seen.learning, refusalText(seen.refused));
      case 'preview':
        return context.html(
          <LearnedPreviewPage
            frame={frameFor(context)}
            formToken={formToken(context)}
            after={seen.after}
            reverts={seen.reverts}
            only={only}
            preview={seen.preview}
          />,
        );
    }
  });

  app.post('/learned', async (context) => {
    const form = await context.req.parseBody({ all: true });
    const by = act(context, textField(form, 'note'));
    const only = textFields(form, 'only');
    const reverts = textField(form, 'act') === 'revert';
    if (!reverts && only.length === 0) return page(context, 'Nothing was accepted: tick what is to be.');
    const done = reverts
      ? await work.act(actKey(context, 'revert'), 'revert', { act: by, number: Number(textField(form, 'reverts')) })
      : await work.act(actKey(context, 'accept'), 'accept', { act: by, only });
    return done.kind === 'at work' ? context.redirect('/learned', 303) : outcome(context, done);
  });
  return app;
}
