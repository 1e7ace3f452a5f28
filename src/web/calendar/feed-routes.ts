import { Hono } from 'hono';
import { calendarFeedBehind } from '../../service/calendar-feed.ts';
import type { AppParts } from '../../service/service.ts';

const HEADERS = {
  'Content-Type': 'text/calendar; charset=utf-8',
  'Content-Disposition': 'inline; filename="visits.ics"',
  // the link is the secret: only whoever asked may keep a copy, and asks again before using it
  'Cache-Control': 'private, no-cache',
} as const;

/** True where one of the tags of an `If-None-Match` header is this one; weak tags compare as strong ones. Source: RFC 9110, 13.1.2. */
const matches = (header: string | undefined, etag: string): boolean =>
  (header ?? '').split(',').some((each) => each.trim() === '*' || each.trim().replace(/^W\//, '') === etag);

/** Calendars of visits behind secret links. What goes wrong is logged without the address: that is the secret. */
export function feedRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono {
  const app = new Hono();
  app.get('/feed/:file{[^/]+\\.ics}', async (context) => {
    const secret = context.req.param('file').replace(/\.ics$/, '');
    let feed: Awaited<ReturnType<typeof calendarFeedBehind>>;
    try {
      feed = await calendarFeedBehind(register, secret, clock);
    } catch (error) {
      log.error({ err: error }, 'a calendar feed could not be made');
      return context.text('The calendar could not be made just now. Try again later.\n', 503, { 'Retry-After': '600' });
    }
    if (!feed) {
      const gone =
        'There is no calendar behind this link. It may have been revoked: ask the fence office for another.\n';
      return context.text(gone, 404);
    }
    const headers = { ...HEADERS, ETag: feed.etag };
    if (matches(context.req.header('if-none-match'), feed.etag)) return context.body(null, 304, headers);
    return context.body(feed.text, 200, headers);
  });
  return app;
}
