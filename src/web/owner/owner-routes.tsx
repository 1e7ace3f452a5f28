import { Hono } from 'hono';
import { sentMessagesOf } from '../../register/outbox.ts';
import { fencesOfOwner, isFenceOf } from '../../register/owner-fences.ts';
import { readRecord } from '../../register/record-store.ts';
import { NO_MONEY } from '../../season/money/money.ts';
import { dayInZone } from '../../service/clock.ts';
import { currentFences } from '../../service/current-fences.ts';
import { readFences } from '../../service/owner-answers.ts';
import { ownerMoney } from '../../service/owner-money.ts';
import { quotesOfOwner } from '../../service/owner-quotes.ts';
import type { AppParts } from '../../service/service.ts';
import { worksOffers } from '../../service/works-offers.ts';
import type { PageEnv } from '../access/visitor.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { OwnerDocumentsPage } from './documents-page.tsx';
import { OwnerMoneyPage } from './money-page.tsx';
import { withForecasts } from './owned-fence.ts';
import { OwnerFencePage, OwnerFencesPage } from './owner-pages.tsx';
import { ownerView } from './owner-view.ts';

/** Said where a link's owner, or the fence asked for, is not there: somebody else's fence answers as none. */
export const NO_FENCE: Problem = {
  status: 404,
  title: 'No such fence · No existe esa cerca',
  what: 'This link opens no fence of that name. · Este enlace no abre ninguna cerca con ese nombre.',
  wayOut: 'Open the list of your fences. · Abra la lista de sus cercas.',
};

/** How an owner's money is planned where the office said nothing else; the command line takes the same. Source: judgement. */
const MONEY_TERMS = {
  years: 20,
  openingBalance: NO_MONEY,
  contribution: { kind: 'find', course: 'flat', cover: 'expected' },
  inflation: 0.03,
  interest: 0.02,
  floor: NO_MONEY,
  dependence: 'independent',
  rule: 'cheapest',
  longestServiceYears: 25,
  inspectEveryYears: 5,
  sharedPart: 0.5,
} as const;

/** What a signed link shows its owner: their fences, what they cost, what there is in writing, and nobody else's. */
export function ownerRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const parts = { register, clock };

  app.get('/owner/:token', async (context) => {
    const view = await ownerView(context, parts, 'fences');
    if (!view) return sayProblem(context, NO_FENCE);
    const fences = await withForecasts(register, await fencesOfOwner(register.db, view.owner.ref));
    const stored = fences.flatMap(({ swept }) => (swept ? [swept.stored] : []));
    const readAt = await readFences(register, view.owner.ref, stored);
    const isAllRead = stored.length > 0 && stored.every(({ fenceRef }) => readAt.has(fenceRef));
    const last = [...readAt.values()].sort().at(-1) ?? null;
    return context.html(<OwnerFencesPage view={view} fences={fences} readAt={isAllRead ? last : null} />);
  });

  app.get('/owner/:token/fences/:ref', async (context) => {
    const [view, fence] = await Promise.all([
      ownerView(context, parts, 'fence'),
      readRecord(register.db, 'fences', context.req.param('ref')),
    ]);
    if (!view || !fence || !isFenceOf(fence, view.owner.ref)) return sayProblem(context, NO_FENCE);
    const [owned] = await withForecasts(register, [fence]);
    if (!owned) return sayProblem(context, NO_FENCE);
    const readAt = await readFences(register, view.owner.ref, owned.swept ? [owned.swept.stored] : []);
    const today = dayInZone(clock(), owned.site.timeZone);
    const offers = await worksOffers(register, await currentFences(register, [fence.ref]), clock);
    return context.html(
      <OwnerFencePage
        view={view}
        owned={owned}
        today={today}
        readAt={readAt.get(fence.ref) ?? null}
        offer={offers.get(fence.ref) ?? null}
      />,
    );
  });

  app.get('/owner/:token/money', async (context) => {
    const view = await ownerView(context, parts, 'money');
    if (!view) return sayProblem(context, NO_FENCE);
    const request = { ...MONEY_TERMS, ownerRef: view.owner.ref, now: clock, onProgress: () => undefined };
    const money = await ownerMoney(register, request);
    return context.html(<OwnerMoneyPage view={view} money={money.kind === 'planned' ? money : null} />);
  });

  app.get('/owner/:token/documents', async (context) => {
    const view = await ownerView(context, parts, 'documents');
    if (!view) return sayProblem(context, NO_FENCE);
    const messages = await sentMessagesOf(register, view.owner.ref);
    const mayAccept = view.link.scopes.includes('accept');
    const quotes = mayAccept ? await quotesOfOwner(register, view.owner.ref, clock) : [];
    return context.html(<OwnerDocumentsPage view={view} messages={messages} quotes={quotes} />);
  });
  return app;
}
