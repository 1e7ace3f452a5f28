import { Hono } from 'hono';
import { sentMessagesOf } from '../../register/outbox.ts';
import { fencesOfOwner, isFenceOf } from '../../register/owner-fences.ts';
import { readRecord } from '../../register/record-store.ts';
import { dayInZone } from '../../service/clock.ts';
import { currentFences } from '../../service/current-fences.ts';
import { readFences } from '../../service/owner-answers.ts';
import { moneyAhead } from '../../service/owner-money-ahead.ts';
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

/** After how long the browser asks again for a plan that is being worked out [s]. */
const ASK_AGAIN_S = 4;

/** What a signed link shows its owner: their fences, what they cost, what there is in writing, and nobody else's. */
export function ownerRoutes({ register, clock, work }: Pick<AppParts, 'register' | 'clock' | 'work'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const parts = { register, clock };
  const askMoney = moneyAhead({ register, clock, work });

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
    const money = await askMoney(view.owner.ref);
    if (money.kind === 'being worked out') context.header('Refresh', String(ASK_AGAIN_S));
    return context.html(<OwnerMoneyPage view={view} money={money} />);
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
