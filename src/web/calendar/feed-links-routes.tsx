import { Hono } from 'hono';
import { listFeedLinks, revokeFeedLink } from '../../register/feed-link-store.ts';
import { sitesToChoose } from '../../register/record-names.ts';
import { isoUtc } from '../../service/clock.ts';
import { type NewFeedLink, newFeedLink } from '../../service/feed-links.ts';
import type { AppParts } from '../../service/service.ts';
import { actingName } from '../access/acting.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { namesOf } from '../frame/season-names.ts';
import { textField } from '../frame/text-field.ts';
import { FeedLinksPage } from './feed-links-page.tsx';

/** Secret links to calendars of visits, as the office looks after them. */
export function feedLinkRoutes({
  register,
  config,
  clock,
  log,
}: Pick<AppParts, 'register' | 'config' | 'clock' | 'log'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  const show = async (
    context: PageContext,
    said: { readonly made?: NewFeedLink; readonly fault?: string } = {},
  ): Promise<Response> =>
    context.html(
      <FeedLinksPage
        links={await listFeedLinks(register.db)}
        {...(await namesOf(register))}
        sites={await sitesToChoose(register.db)}
        made={said.made ?? null}
        fault={said.fault ?? null}
        formToken={formToken(context)}
        frame={frameFor(context)}
      />,
      said.fault === undefined ? 200 : 400,
    );

  app.get('/feeds', (context) => show(context));

  // the address is in the answer itself: after a redirect it would have to be kept somewhere
  app.post('/feeds', async (context) => {
    const form = await context.req.parseBody();
    const typed = textField(form, 'site').trim();
    const subject = typed === '' ? textField(form, 'subject') : `site ${typed}`;
    const [, kind, ref = ''] = /^(crew|site) (.+)$/.exec(subject) ?? [];
    const { crewNames, siteNames } = await namesOf(register);
    const known = kind === 'crew' ? crewNames.has(ref) : siteNames.has(ref);
    if ((kind !== 'crew' && kind !== 'site') || !known) {
      return show(context, { fault: 'Choose a crew or a site first. No link was made.' });
    }
    const made = await newFeedLink(register.db, { kind, ref }, { publicUrl: config.publicUrl, now: clock });
    log.info({ link: made.link.id, kind, ref, by: actingName(context) }, 'a calendar link was made');
    return show(context, { made });
  });

  app.post('/feeds/:id{[0-9]+}/revoke', async (context) => {
    const id = Number(context.req.param('id'));
    const link = await revokeFeedLink(register.db, id, isoUtc(clock()));
    if (!link) {
      return sayProblem(context, {
        status: 404,
        title: 'No such link',
        what: `There is no calendar link ${id}.`,
        wayOut: 'The list of calendar links shows those there are.',
      });
    }
    log.info({ link: id, by: actingName(context) }, 'a calendar link was revoked');
    return context.redirect('/feeds', 303);
  });
  return app;
}
