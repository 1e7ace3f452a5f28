import { createRoute } from '@hono/zod-openapi';
import { calendarFeed } from '../../service/calendar-feed.ts';
import type { AppParts } from '../../service/service.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { refParam } from './api-schemas.ts';

const TYPE = 'text/calendar';

/** The calendars of visits: the same as behind the secret links, for who shows a token. */
export function addCalendars(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  for (const kind of ['crew', 'site'] as const) {
    api.openapi(
      createRoute({
        method: 'get',
        path: `/api/v1/${kind}s/{ref}/calendar.ics`,
        tags: ['Calendars'],
        summary: `The visits of a ${kind} as a calendar (RFC 5545)`,
        request: { params: refParam },
        responses: {
          200: {
            description: 'a year back, and all that is ahead',
            content: { [TYPE]: { schema: { type: 'string' } } },
          },
          304: { description: 'as it was: the answer to `If-None-Match` with the ETag of it' },
          404: problemAnswer(`no such ${kind}`),
        },
      }),
      async (context) => {
        const { ref } = context.req.valid('param');
        const feed = await calendarFeed(register, { kind, ref }, clock);
        if (!feed) {
          const problem = notThere(
            `there is no ${kind} ${JSON.stringify(ref)}`,
            `GET /api/v1/records/${kind}s lists them`,
          );
          return apiProblem(context, problem);
        }
        const headers = { ETag: feed.etag, 'Content-Type': `${TYPE}; charset=utf-8` };
        if (context.req.header('if-none-match') === feed.etag) return context.body(null, 304, headers);
        return context.body(feed.text, 200, headers);
      },
    );
  }
}
