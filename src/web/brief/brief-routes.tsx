import { Hono } from 'hono';
import { readSettings } from '../../register/settings-store.ts';
import { seasonBrief } from '../../service/season-brief.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { BriefPage } from './brief-page.tsx';

/** The page with which the office begins. */
export function briefRoutes({ register, view, clock }: Pick<AppParts, 'register' | 'view' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  app.get('/brief', async (context) => {
    const sweep = await view.sweepStatus();
    const brief = await seasonBrief(register, clock, sweep.lastFinished);
    const { lookAheadSeasons } = await readSettings(register.db);
    return context.html(
      <BriefPage brief={brief} sweep={sweep} lookAheadSeasons={lookAheadSeasons} frame={frameFor(context)} />,
    );
  });
  return app;
}
