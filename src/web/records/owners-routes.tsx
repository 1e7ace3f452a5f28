import { Hono } from 'hono';
import { fenceSummaries, standingCounts } from '../../register/fence-summaries.ts';
import { listHeldNotices } from '../../register/held-notices.ts';
import { purposesOfLinks } from '../../register/message-link-store.ts';
import { listOutboxPage } from '../../register/outbox-page.ts';
import { listOwnerLinks, revokeOwnerLink } from '../../register/owner-link-store.ts';
import { listEdits } from '../../register/record-edit-store.ts';
import { recordPage } from '../../register/record-pages.ts';
import { readRecord } from '../../register/record-store.ts';
import { isoUtc } from '../../service/clock.ts';
import { newOwnerLink } from '../../service/owner-links.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { textField } from '../frame/text-field.ts';
import { askedPage } from './asked-page.ts';
import { OwnerPage, type OwnerPageProps, OwnersPage } from './owners-pages.tsx';

const MESSAGES_SHOWN = 10;
const EDITS_SHOWN = 20;
const LONGEST_LINK_DAYS = 3650;

const NO_OWNER: Problem = {
  status: 404,
  title: 'No such owner',
  what: 'The register has no owner of that ref.',
  wayOut: 'Refs are compared letter by letter, capitals too. The list of owners has a field to look for one.',
};

/** Owners: the list, one of them, their links. */
export function ownersRoutes(parts: Pick<AppParts, 'register' | 'clock' | 'config' | 'log'>): Hono<PageEnv> {
  const { register, clock, config, log } = parts;
  const { db } = register;
  const app = new Hono<PageEnv>();

  app.get('/owners', async (context) => {
    const asked = askedPage(context);
    const list = await recordPage(db, 'owners', asked);
    const standings = await standingCounts(db, { ownerRefs: list.records.map(({ ref }) => ref) });
    return context.html(<OwnersPage frame={frameFor(context)} list={list} text={asked.text} standings={standings} />);
  });

  const show = async (
    context: PageContext,
    said: Partial<Pick<OwnerPageProps, 'done' | 'problem' | 'newLink'>> = {},
  ) => {
    const owner = await readRecord(db, 'owners', context.req.param('ref') ?? '');
    if (!owner) return sayProblem(context, NO_OWNER);
    const { ref } = owner;
    const [fences, { entries }, held, links, carriedBy, edits] = await Promise.all([
      fenceSummaries(db, { ownerRefs: [ref] }),
      listOutboxPage(register, { ownerRef: ref, limit: MESSAGES_SHOWN }),
      listHeldNotices(register, { ownerRef: ref }),
      listOwnerLinks(db, ref),
      purposesOfLinks(db, ref),
      listEdits(db, 'owners', ref, EDITS_SHOWN),
    ]);
    const saved = context.req.query('saved') === undefined ? null : 'Saved.';
    return context.html(
      <OwnerPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        owner={owner}
        fences={fences}
        messages={entries}
        held={held.length}
        links={links}
        carriedBy={carriedBy}
        edits={edits}
        now={isoUtc(clock())}
        done={said.done ?? saved}
        problem={said.problem ?? null}
        newLink={said.newLink ?? null}
      />,
      said.problem === undefined ? 200 : 400,
    );
  };

  app.get('/owners/:ref', (context) => show(context));

  app.post('/owners/:ref/links', async (context) => {
    const owner = await readRecord(db, 'owners', context.req.param('ref'));
    if (!owner) return sayProblem(context, NO_OWNER);
    const text = textField(await context.req.parseBody(), 'days').trim();
    const days = /^\d{1,4}$/.test(text) ? Number(text) : 0;
    if (days < 1 || days > LONGEST_LINK_DAYS) {
      return show(context, { problem: `${JSON.stringify(text)} is no number of days from 1 to ${LONGEST_LINK_DAYS}.` });
    }
    const wanted = { ownerRef: owner.ref, scopes: ['see'], days } as const;
    const { link, url } = await newOwnerLink(db, wanted, { publicUrl: config.publicUrl, now: clock });
    log.info({ by: accountName(context.var), owner: owner.ref, link: link.id }, 'an owner link was made');
    return show(context, { newLink: url });
  });

  app.post('/owners/:ref/links/:id{[0-9]+}/revoke', async (context) => {
    const ref = context.req.param('ref');
    const id = Number(context.req.param('id'));
    const theirs = (await listOwnerLinks(db, ref)).some((link) => link.id === id);
    if (!theirs) return sayProblem(context, NO_OWNER);
    await revokeOwnerLink(db, id, isoUtc(clock()));
    log.info({ by: accountName(context.var), owner: ref, link: id }, 'an owner link was revoked');
    return context.redirect(`/owners/${encodeURIComponent(ref)}#links`, 303);
  });
  return app;
}
