import { Hono } from 'hono';
import type { Register } from '../../register/database.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import { forecastOf, loadStoredForecasts } from '../../register/forecast-store.ts';
import { fencesOfOwner, isFenceOf } from '../../register/owner-fences.ts';
import type { OwnerLink } from '../../register/owner-link-store.ts';
import type { OwnerRecord } from '../../register/owner-record.ts';
import { readRecord, recordsWhereIn } from '../../register/record-store.ts';
import { ownerPath } from '../../service/owner-links.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { type OwnedFence, OwnerFencePage, OwnerFencesPage } from './owner-pages.tsx';

const NO_FENCE: Problem = {
  status: 404,
  title: 'No such fence · No existe esa cerca',
  what: 'This link opens no fence of that name. · Este enlace no abre ninguna cerca con ese nombre.',
  wayOut: 'Open the list of your fences. · Abra la lista de sus cercas.',
};

async function withForecasts(register: Register, fences: readonly FenceRecord[]): Promise<readonly OwnedFence[]> {
  const refs = fences.map(({ ref }) => ref);
  const [sites, stored] = await Promise.all([
    recordsWhereIn(register.db, 'sites', 'ref', [...new Set(fences.map(({ siteRef }) => siteRef))]),
    loadStoredForecasts(register, refs),
  ]);
  const siteOf = new Map(sites.map((site) => [site.ref, site]));
  return fences.map((fence) => {
    const site = siteOf.get(fence.siteRef);
    if (!site) throw new Error(`the register lacks the site of fence ${fence.ref}`);
    const last = stored.get(fence.ref);
    return { fence, site, swept: last ? { stored: last, forecast: forecastOf(last) } : null };
  });
}

/** What a signed link shows its owner: their fences, and nobody else's. */
export function ownerRoutes({ register }: Pick<AppParts, 'register'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  /** Whose link it is; the authorization lets nobody else to these routes. */
  const behindLink = async (
    context: PageContext,
  ): Promise<{ readonly link: OwnerLink; readonly owner: OwnerRecord } | null> => {
    const visitor = context.get('visitor');
    if (visitor.kind !== 'owner') throw new Error('a page of an owner was asked for without a link');
    const owner = await readRecord(register.db, 'owners', visitor.link.ownerRef);
    return owner && { link: visitor.link, owner };
  };

  app.get('/owner/:token', async (context) => {
    const shown = await behindLink(context);
    if (!shown) return sayProblem(context, NO_FENCE);
    const fences = await withForecasts(register, await fencesOfOwner(register.db, shown.owner.ref));
    const home = ownerPath(context.req.param('token'));
    return context.html(<OwnerFencesPage {...shown} fences={fences} home={home} frame={frameFor(context)} />);
  });

  app.get('/owner/:token/fences/:ref', async (context) => {
    const [shown, fence] = await Promise.all([
      behindLink(context),
      readRecord(register.db, 'fences', context.req.param('ref')),
    ]);
    if (!shown || !fence || !isFenceOf(fence, shown.owner.ref)) return sayProblem(context, NO_FENCE);
    const [owned] = await withForecasts(register, [fence]);
    if (!owned) return sayProblem(context, NO_FENCE);
    const home = ownerPath(context.req.param('token'));
    return context.html(<OwnerFencePage {...shown} owned={owned} home={home} frame={frameFor(context)} />);
  });
  return app;
}
