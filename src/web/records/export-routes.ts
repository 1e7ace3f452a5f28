import { Hono } from 'hono';
import { emptyCsv, exportCsv } from '../../register/csv/export-csv.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { kindNamed } from './kind-words.ts';

const csv = (context: PageContext, name: string, text: string) =>
  context.body(text, 200, {
    'Content-Type': 'text/csv; charset=utf-8',
    'Content-Disposition': `attachment; filename="${name}"`,
  });

/** What the register holds as CSV files that an import reads back, and files of columns alone. */
export function exportRoutes({ register }: Pick<AppParts, 'register'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const kindOf = (context: PageContext) => kindNamed((context.req.param('file') ?? '').replace(/\.csv$/, ''));
  const unitsOf = (context: PageContext): 'us' | 'metric' | null => {
    const asked = context.req.query('units');
    return asked === 'us' || asked === 'metric' ? asked : null;
  };

  app.get('/export/:file{[a-z-]+\\.csv}', async (context) => {
    const kind = kindOf(context);
    if (!kind) return context.notFound();
    return csv(context, `${kind}.csv`, await exportCsv(register, kind, { units: unitsOf(context) ?? 'site' }));
  });

  app.get('/export/columns/:file{[a-z-]+\\.csv}', (context) => {
    const kind = kindOf(context);
    return kind ? csv(context, `${kind}.csv`, emptyCsv(kind, unitsOf(context) ?? 'us')) : context.notFound();
  });
  return app;
}
