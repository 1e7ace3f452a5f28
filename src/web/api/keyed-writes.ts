import type { MiddlewareHandler } from 'hono';
import { beginKeyedWrite, endKeyedWrite } from '../../register/api-answer-store.ts';
import { sha256 } from '../../service/canonical-json.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { apiProblem } from './api-problem.ts';

const LONGEST_KEY = 200;
/** A repeat that comes within it is answered as the first was [d]. */
const KEPT_DAYS = 7;
/** A write that was begun so long ago and never answered is taken for one whose process ended [min]. */
const GIVEN_UP_MINUTES = 10;

/**
 * Does a write that carries an `Idempotency-Key` once: a repeat with the same body is answered with the first answer, and does
 * nothing; the same key with another body is refused.
 */
export const keyedWrites =
  ({ register, clock }: Pick<AppParts, 'register' | 'clock'>): MiddlewareHandler<PageEnv> =>
  async (context, next) => {
    const { method, path } = context.req;
    const key = context.req.header('idempotency-key');
    const visitor = context.get('visitor');
    if (key === undefined || method === 'GET' || method === 'HEAD' || visitor.kind !== 'token') return next();
    if (key === '' || key.length > LONGEST_KEY) {
      return apiProblem(context, {
        status: 400,
        title: 'That key cannot be taken',
        what: `Idempotency-Key has ${key.length} characters; nothing was done`,
        wayOut: `send one of 1 to ${LONGEST_KEY}, made up for this one write`,
      });
    }
    const requestSha256 = sha256(`${method} ${path}\n${await context.req.text()}`);
    const write = { tokenId: visitor.token.id, key, requestSha256 };
    const now = clock();
    const state = await beginKeyedWrite(register.db, write, {
      now: isoUtc(now),
      givenUpBefore: isoUtc(now.minus({ minutes: GIVEN_UP_MINUTES })),
      forgottenBefore: isoUtc(now.minus({ days: KEPT_DAYS })),
    });
    switch (state.kind) {
      case 'answered': {
        const { status, contentType, body } = state.answer;
        return context.body(body, status as 200, { 'Content-Type': contentType, 'Idempotency-Replayed': 'true' });
      }
      case 'other request':
        return apiProblem(context, {
          status: 422,
          title: 'That key was used for something else',
          what: 'another method, address or body came with this Idempotency-Key; nothing was done',
          wayOut: 'make up a key for each write, and repeat a write with its own',
        });
      case 'at work':
        context.header('Retry-After', '10');
        return apiProblem(context, {
          status: 409,
          title: 'Still at work',
          what: 'the first write with this Idempotency-Key has not been answered yet',
          wayOut: 'send it again in a while',
        });
      case 'begun':
        break;
    }
    try {
      await next();
    } catch (error) {
      await endKeyedWrite(register.db, write, null);
      throw error;
    }
    const { status, headers } = context.res;
    const contentType = headers.get('content-type') ?? '';
    // a document that is drawn up has written nothing, and its bytes are no text to keep
    const isKept = status < 500 && /\bjson\b/.test(contentType);
    await endKeyedWrite(
      register.db,
      write,
      isKept ? { status, contentType, body: await context.res.clone().text() } : null,
    );
    return undefined;
  };
