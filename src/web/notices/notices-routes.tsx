import { Hono } from 'hono';
import { isMatter, MATTER_RULES, OWNER_MATTERS } from '../../notify/matter-rules.ts';
import {
  type HeldFilter,
  holdNoticesAgain,
  listHeldNotices,
  listReleasedUnwritten,
  overviewOfHeld,
  releaseHeldNotices,
} from '../../register/held-notices.ts';
import { holdMatter, listHeldMatters } from '../../register/holding.ts';
import { listOfficeNotices, settleOfficeNotice } from '../../register/office-notices.ts';
import { readSettings } from '../../register/settings-store.ts';
import { isoUtc } from '../../service/clock.ts';
import { coveringSentence, lookAtRelease, previewRelease } from '../../service/preview-release.ts';
import { createSeenMessages } from '../../service/seen-messages.ts';
import type { AppParts } from '../../service/service.ts';
import { officeGap } from '../../service/sweep-register.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';
import { MOST_HELD_SHOWN } from './held-list.tsx';
import { count } from './held-words.ts';
import { NoticesPage, type NoticesPageProps } from './notices-page.tsx';
import { PreviewPage } from './preview-page.tsx';
import { ReleasePage } from './release-page.tsx';

/** Messages kept for the frames that show them [characters]. */
const MOST_SEEN = 8_000_000;

const NUMBER = /^\d{1,15}$/;

const numbers = (form: SentForm, name: string): readonly number[] =>
  textFields(form, name).flatMap((text) => (NUMBER.test(text) ? [Number(text)] : []));

const filterOf = ({ matter, owner }: NoticesPageProps['asked']): Omit<HeldFilter, 'ids'> => ({
  ...(matter === '' ? {} : { matter }),
  ...(owner === '' ? {} : { ownerRef: owner }),
});

/** Notices that wait for the office: looked at, released, held again. */
export function noticesRoutes(parts: AppParts): Hono<PageEnv> {
  const { register, clock, config, view, log } = parts;
  const app = new Hono<PageEnv>();
  const seen = createSeenMessages(MOST_SEEN);

  const page = async (
    context: PageContext,
    said: Partial<Pick<NoticesPageProps, 'asked' | 'sentence' | 'problem' | 'done'>> = {},
  ) => {
    const asked = said.asked ?? { matter: context.req.query('matter') ?? '', owner: context.req.query('owner') ?? '' };
    const [allHeld, held, released, office, heldMatters, settings] = await Promise.all([
      overviewOfHeld(register, 0),
      overviewOfHeld(register, MOST_HELD_SHOWN, filterOf(asked)),
      listReleasedUnwritten(register),
      listOfficeNotices(register),
      listHeldMatters(register),
      readSettings(register.db),
    ]);
    return context.html(
      <NoticesPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        held={held}
        allHeld={allHeld}
        asked={asked}
        released={released}
        office={office}
        heldMatters={heldMatters}
        gap={officeGap(config, settings)}
        sentence={said.sentence ?? ''}
        problem={said.problem ?? null}
        done={said.done ?? doneIn(context)}
      />,
      said.problem === undefined ? 200 : 400,
    );
  };

  const doneIn = (context: PageContext): string | null => {
    const [released, owners] = [context.req.query('released'), context.req.query('owners')];
    if (released && owners && NUMBER.test(released) && NUMBER.test(owners)) {
      return `Released ${count(Number(released), 'notice')} to ${count(Number(owners), 'owner')}. Their messages are written now and appear in the outbox.`;
    }
    const again = context.req.query('again');
    if (again && NUMBER.test(again)) return `${count(Number(again), 'notice')} held again.`;
    return context.req.query('settled') === undefined ? null : 'Settled.';
  };

  app.get('/notices', (context) => page(context));

  app.post('/notices/release', async (context) => {
    const form = await context.req.parseBody({ all: true });
    const asked = { matter: textField(form, 'matter'), owner: textField(form, 'owner') };
    const typed = textField(form, 'sentence');
    const sentence = coveringSentence(typed);
    if ('reason' in sentence) {
      return page(context, { asked, sentence: typed, problem: `Nothing was released: ${sentence.reason}.` });
    }
    const isBulk = textField(form, 'act') === 'all';
    const newest = textField(form, 'newest');
    if (isBulk && textField(form, 'sure') !== 'yes') {
      const query = new URLSearchParams({ ...asked, newest, sentence: sentence.value ?? '' });
      return context.redirect(`/notices/release?${query.toString()}`, 303);
    }
    // what came after the page was opened was not seen, so it is not released
    const upTo = NUMBER.test(newest) ? Number(newest) : 0;
    const ids = numbers(form, 'id');
    const release = { at: isoUtc(clock()), covering: sentence.value };
    const wanted = isBulk ? { ...filterOf(asked), upTo } : { ids };
    const released = await releaseHeldNotices(register, wanted, release);
    if (released.notices === 0) {
      const problem = isBulk
        ? 'Nothing was released: none of these is held any more.'
        : 'Nothing was released: tick what is to go out.';
      return page(context, { asked, sentence: typed, problem });
    }
    log.info(
      { by: accountName(context.var), ...released, ...(isBulk ? { ...asked, upTo } : { ids: ids.slice(0, 100) }) },
      'held notices were released',
    );
    view.begin('messages');
    return context.redirect(`/notices?released=${released.notices}&owners=${released.owners}`, 303);
  });

  app.get('/notices/release', async (context) => {
    const { matter = '', owner = '', newest = '', sentence: typed = '' } = context.req.query();
    const asked = { matter, owner, newest: NUMBER.test(newest) ? Number(newest) : 0 };
    const sentence = coveringSentence(typed);
    const covering = 'value' in sentence ? sentence.value : null;
    const filter = { ...filterOf(asked), upTo: asked.newest };
    const look = await lookAtRelease(register, filter, { covering, now: clock, sender: config });
    if (look.notices === 0) {
      return page(context, { asked, sentence: typed, problem: 'Nothing of this list is held any more.' });
    }
    const message = look.sample?.message;
    return context.html(
      <ReleasePage
        frame={frameFor(context)}
        formToken={formToken(context)}
        asked={{ ...asked, sentence: covering ?? '' }}
        look={look}
        sample={message ? { ...message, print: seen.keep(message.html) } : null}
        gap={officeGap(config, await readSettings(register.db))}
        problem={'reason' in sentence ? `It would go out without your sentence: ${sentence.reason}.` : null}
      />,
    );
  });

  app.post('/notices/hold-again', async (context) => {
    const again = await holdNoticesAgain(register, numbers(await context.req.parseBody({ all: true }), 'id'));
    log.info({ by: accountName(context.var), notices: again }, 'released notices were held again');
    return context.redirect(`/notices?again=${again}`, 303);
  });

  app.post('/notices/settle', async (context) => {
    const [id] = numbers(await context.req.parseBody(), 'id');
    const by = accountName(context.var);
    const settled = id !== undefined && (await settleOfficeNotice(register, id, { at: isoUtc(clock()), by }));
    return settled
      ? context.redirect('/notices?settled', 303)
      : page(context, { problem: 'Nothing was settled: somebody else has settled it meanwhile.' });
  });

  app.post('/notices/matters', async (context) => {
    const wanted = new Set(textFields(await context.req.parseBody({ all: true }), 'held').filter(isMatter));
    const held = new Set(await listHeldMatters(register));
    for (const matter of OWNER_MATTERS.filter((each) => MATTER_RULES[each].mayBeHeld)) {
      const hold = wanted.has(matter);
      if (hold !== held.has(matter)) await holdMatter(register, matter, hold, isoUtc(clock()));
    }
    log.info({ by: accountName(context.var), matters: [...wanted] }, 'the matters that are held were set');
    return context.redirect('/notices#hold', 303);
  });

  const previewed = async (context: PageContext) => {
    const ownerRef = context.req.query('owner') ?? '';
    const typed = context.req.query('sentence') ?? '';
    const sentence = coveringSentence(typed);
    const covering = 'value' in sentence ? sentence.value : null;
    const asked = { ownerRef, ids: null, covering };
    const messages = await previewRelease(register, asked, { now: clock, sender: config });
    return {
      ownerRef,
      typed,
      messages,
      problem: 'reason' in sentence ? `The message is shown without it: ${sentence.reason}.` : null,
    };
  };

  app.get('/notices/preview', async (context) => {
    const { ownerRef, typed, messages, problem } = await previewed(context);
    return context.html(
      <PreviewPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        ownerRef={ownerRef}
        held={await listHeldNotices(register, { ownerRef })}
        messages={messages.map((message) => ({ ...message, print: seen.keep(message.html) }))}
        sentence={typed}
        problem={problem}
      />,
    );
  });

  app.get('/notices/message', async (context) => {
    const asked = context.req.query('print');
    const kept = asked === undefined ? null : seen.read(asked);
    const html = kept ?? (await previewed(context)).messages[Number(context.req.query('message') ?? '0')]?.html;
    if (html === undefined) return context.notFound();
    // the message's own policy forbids the icon a browser would otherwise ask for
    return context.html(html.replace('<head>', '<head><link rel="icon" href="data:,">'));
  });
  return app;
}
