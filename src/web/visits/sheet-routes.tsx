import { Hono } from 'hono';
import { daySheetHtml } from '../../drawing/day-sheet-html.ts';
import { daysOfWeek } from '../../season/visit/day-sheet.ts';
import { crewSheets, officeToday } from '../../service/crew-sheets.ts';
import { materialsAhead } from '../../service/materials-ahead.ts';
import type { AppParts } from '../../service/service.ts';
import { isCalendarDay } from '../../units/calendar-day.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { MaterialsPage } from './materials-page.tsx';

/** What crews take along: their day sheets to print, and materials to order. */
export function sheetRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  app.get('/sheets/:crew', async (context) => {
    const crewRef = context.req.param('crew');
    const { day, week, lang } = context.req.query();
    const asked = day !== undefined && isCalendarDay(day) ? day : await officeToday(register, clock);
    const days = week !== undefined && isCalendarDay(week) ? daysOfWeek(week) : [asked];
    const found = await crewSheets(register, crewRef, days);
    if (found.kind === 'no crew') {
      return sayProblem(context, {
        status: 404,
        title: 'No such crew',
        what: `There is no crew ${crewRef} in the register.`,
        wayOut: 'The list of visits names the crews there are.',
      });
    }
    if (found.sheets.length === 0) {
      return sayProblem(context, {
        status: 404,
        title: 'Nothing to print',
        what: `${found.crewName} has no visits ${days.length === 1 ? `on ${days[0]}` : `from ${days[0]} to ${days.at(-1)}`}.`,
        wayOut: found.nextDay === null ? 'None is planned after that.' : `The next begins on ${found.nextDay}.`,
      });
    }
    const language = lang === 'en' || lang === 'es' ? lang : found.language;
    // the sheet's own policy forbids the icon a browser would otherwise ask for
    return context.html(
      daySheetHtml(found.sheets, language).replace('<head>', '<head><link rel="icon" href="data:,">'),
    );
  });

  app.get('/materials', async (context) => {
    const { from = '', to = '' } = context.req.query();
    const today = await officeToday(register, clock);
    const first = isCalendarDay(from) ? from : today;
    const last = isCalendarDay(to) && to >= first ? to : null;
    return context.html(
      <MaterialsPage
        ahead={await materialsAhead(register, first, last)}
        asked={{ from, to }}
        today={today}
        frame={frameFor(context)}
      />,
    );
  });
  return app;
}
