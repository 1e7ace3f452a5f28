import { createRoute, z } from '@hono/zod-openapi';
import { cautionsIn } from '../../drawing/cautions.ts';
import {
  type OfferedQuote,
  offeredQuotesAfter,
  readOfferedQuote,
  withdrawQuote,
} from '../../register/offered-quote-store.ts';
import { isoUtc } from '../../service/clock.ts';
import { fenceQuote } from '../../service/fence-quote.ts';
import { offerToOwners, ownerQuoteOf } from '../../service/owner-quotes.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageContext } from '../access/visitor.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';
import { idempotencyHeader, jsonAnswer, jsonBody, pageOf, pageQuery } from './api-schemas.ts';
import { BAD_CURSOR, nextAfter, readOn } from './cursor.ts';
import { notAFence } from './fences-api.ts';
import { notQuoted, offeredSchema, quoteWish } from './quote-schemas.ts';

const offersSchema = pageOf(offeredSchema);
const numberParam = z.object({ number: z.string().min(1).max(40) });
const noQuote = (number: string) =>
  notThere(`no quote ${JSON.stringify(number)} was offered`, 'GET /api/v1/quotes lists those that were');

/** Quotes that owners can accept by their links: offered, looked at, taken back. */
export function addQuotes(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  const { db } = register;
  const offerOf = async (offered: OfferedQuote): Promise<z.infer<typeof offeredSchema>> => {
    const { accepted, quote, parts, standing } = await ownerQuoteOf(register, offered, clock);
    const { number, fenceRef, offeredAt, validUntil, withdrawnAt, sha256 } = offered;
    return {
      number,
      fenceRef,
      standing,
      offeredAt,
      validUntil,
      withdrawnAt,
      sha256,
      accepted: accepted && { at: accepted.at, ownerRef: accepted.ownerRef, ownerName: accepted.ownerName },
      quote: {
        ...quote,
        fenceRefs: [...quote.fenceRefs],
        lines: quote.lines.map((line) => ({ ...line })),
        cautions: [...quote.cautions],
      },
      parts: parts.map((part) => ({ ...part, posts: [...part.posts], leftOut: [...part.leftOut] })),
    };
  };
  const answerOffer = async (context: PageContext, number: string): Promise<never> => {
    const offered = await readOfferedQuote(db, number);
    if (!offered) return apiProblem(context, noQuote(number)) as never;
    return answered(context, offeredSchema, await offerOf(offered));
  };

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/quotes',
      tags: ['Quotes'],
      summary: 'Quotes that owners were offered and how they stand, the newest first',
      request: { query: z.object({ ...pageQuery, fence: z.string().optional().describe('ref of a fence') }) },
      responses: {
        200: jsonAnswer(offersSchema, 'a page of quotes'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, fence } = context.req.valid('query');
      const place = readOn(cursor, 2);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const [offeredAt, number] = (place.after ?? []).map(String);
      const rows = await offeredQuotesAfter(db, {
        ...(fence === undefined ? {} : { fenceRef: fence }),
        after: place.after === null ? null : { offeredAt: offeredAt!, number: number! },
        limit,
      });
      const next = nextAfter(rows, limit, (offered) => [offered.offeredAt, offered.number]);
      return answered(context, offersSchema, { rows: await Promise.all(rows.map(offerOf)), next });
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/quotes',
      tags: ['Quotes'],
      summary: 'Draws up a quote and offers it to the owners of its fence, who can accept it by their links',
      description:
        'POST /api/v1/fences/{ref}/quote draws up the same and offers nothing. Offering the same again changes nothing.',
      request: {
        headers: idempotencyHeader,
        body: jsonBody(
          quoteWish.extend({ fence: z.string().min(1).describe('ref of the fence') }).openapi('QuoteOffer'),
        ),
      },
      responses: {
        200: jsonAnswer(offeredSchema, 'the quote as it is offered'),
        404: problemAnswer('no such fence'),
        409: problemAnswer('that cannot be done there'),
      },
    }),
    async (context) => {
      const { fence, ...wanted } = context.req.valid('json');
      const result = await fenceQuote(register, {
        fenceRef: fence,
        ...wanted,
        cautions: cautionsIn('en').all,
        now: clock,
      });
      if (result.kind === 'no such fence') return apiProblem(context, notAFence(fence)) as never;
      if (result.kind === 'refused') return notQuoted(context, fence, result.reason);
      const { quote, parts } = result;
      await offerToOwners(register, { quote, parts }, clock);
      return answerOffer(context, quote.number);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/quotes/{number}',
      tags: ['Quotes'],
      summary: 'One quote that owners were offered, and how it stands',
      request: { params: numberParam },
      responses: { 200: jsonAnswer(offeredSchema, 'the quote'), 404: problemAnswer('no such quote') },
    }),
    (context) => answerOffer(context, context.req.valid('param').number),
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/quotes/{number}/withdraw',
      tags: ['Quotes'],
      summary: 'Takes an offer back: it cannot be accepted any more',
      request: { params: numberParam, headers: idempotencyHeader },
      responses: {
        200: jsonAnswer(offeredSchema, 'the quote as it stands now'),
        404: problemAnswer('no such quote'),
        409: problemAnswer('it was taken back before'),
      },
    }),
    async (context) => {
      const { number } = context.req.valid('param');
      if (!(await readOfferedQuote(db, number))) return apiProblem(context, noQuote(number)) as never;
      if (await withdrawQuote(db, number, isoUtc(clock()))) return answerOffer(context, number);
      return apiProblem(context, {
        status: 409,
        title: 'Taken back before',
        what: `quote ${number} was taken back before; nothing was changed`,
        wayOut: 'offer another one: POST /api/v1/quotes',
      }) as never;
    },
  );
}
