import { Hono } from 'hono';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { editorRoutes } from './editor-routes.tsx';
import { evidenceRoutes } from './evidence-routes.tsx';
import { exportRoutes } from './export-routes.ts';
import { importRoutes } from './import-routes.tsx';
import { inspectRoutes } from './inspect-routes.tsx';
import { learnedRoutes } from './learned-routes.tsx';
import { listsRoutes } from './lists-routes.tsx';
import { ownersRoutes } from './owners-routes.tsx';
import { settingsRoutes } from './settings-routes.tsx';
import { sitesRoutes } from './sites-routes.tsx';
import { stormsRoutes } from './storms-routes.tsx';

/** The records of the office: owners, sites, what plans rest on, import and export. */
export function recordsRoutes(parts: AppParts): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  app.route('/', listsRoutes(parts));
  app.route('/', importRoutes(parts));
  app.route('/', exportRoutes(parts));
  app.route('/', ownersRoutes(parts));
  app.route('/', sitesRoutes(parts));
  app.route('/', inspectRoutes(parts));
  app.route('/', evidenceRoutes(parts));
  app.route('/', stormsRoutes(parts));
  app.route('/', settingsRoutes(parts));
  app.route('/', learnedRoutes(parts));
  app.route('/', editorRoutes(parts));
  return app;
}
