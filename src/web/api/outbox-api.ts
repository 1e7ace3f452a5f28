import { createRoute, z } from '@hono/zod-openapi';
import { OWNER_MATTERS } from '../../notify/matter-rules.ts';
import { listStoppedAddresses } from '../../register/delivery-reports.ts';
import { cancelMessage, loadOutboxBytes, markLetterPosted, retryMessages } from '../../register/outbox.ts';
import { listOutboxPage, readOutboxDetail } from '../../register/outbox-page.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone, isoUtc } from '../../service/clock.ts';
import { messageHtml } from '../../service/message-html.ts';
import type { AppParts } from '../../service/service.ts';
import { answered } from './answered.ts';
import type { Api } from './api.ts';
import { apiProblem, problemAnswer } from './api-problem.ts';
import { day, idempotencyHeader, idParam, jsonAnswer, jsonBody, pageQuery } from './api-schemas.ts';
import { BAD_CURSOR, cursorText, readOn } from './cursor.ts';
import {
  MESSAGE_STATES,
  messageDetailSchema,
  messagePageSchema,
  messageTextSchema,
  noMessage,
  queuedSchema,
  stoppedSchema,
} from './outbox-schemas.ts';
import { tokenName } from './token-name.ts';

/** Messages to owners: listed, looked at, tried again, cancelled; letters posted; addresses that are written to no more. */
export function addOutbox(api: Api, { register, clock }: Pick<AppParts, 'register' | 'clock'>): void {
  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/outbox',
      tags: ['Outbox'],
      summary: 'Messages to owners, newest first, without their bytes',
      request: {
        query: z.object({
          ...pageQuery,
          state: z.enum(MESSAGE_STATES).optional(),
          owner: z.string().optional().describe('ref of an owner'),
          matter: z.enum(OWNER_MATTERS).optional().describe('a matter that one of its notices is about'),
        }),
      },
      responses: {
        200: jsonAnswer(messagePageSchema, 'a page of messages'),
        400: problemAnswer('the question makes no sense'),
      },
    }),
    async (context) => {
      const { limit, cursor, state, owner, matter } = context.req.valid('query');
      const place = readOn(cursor, 1);
      if (place.kind === 'no cursor') return apiProblem(context, BAD_CURSOR) as never;
      const { entries, next } = await listOutboxPage(register, {
        limit,
        ...(state === undefined ? {} : { state }),
        ...(owner === undefined ? {} : { ownerRef: owner }),
        ...(matter === undefined ? {} : { matter }),
        ...(place.after === null ? {} : { before: Number(place.after[0]) }),
      });
      return answered(context, messagePageSchema, { rows: entries, next: next === null ? null : cursorText([next]) });
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/outbox/{id}',
      tags: ['Outbox'],
      summary: 'One message with its notices and how far it came',
      request: { params: idParam },
      responses: { 200: jsonAnswer(messageDetailSchema, 'the message'), 404: problemAnswer('no such message') },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const message = await readOutboxDetail(register, id);
      return message ? answered(context, messageDetailSchema, message) : (apiProblem(context, noMessage(id)) as never);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/outbox/{id}/message',
      tags: ['Outbox'],
      summary: 'How a message reads, as HTML',
      request: { params: idParam },
      responses: { 200: jsonAnswer(messageTextSchema, 'a mail or a letter'), 404: problemAnswer('no such message') },
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const message = await loadOutboxBytes(register, id);
      if (!message) return apiProblem(context, noMessage(id)) as never;
      const { channel } = message;
      return answered(context, messageTextSchema, { id, channel, html: await messageHtml(message) });
    },
  );

  const acts = [
    {
      act: 'retry',
      summary: 'Queues a parked or waiting mail for a try at once',
      body: z.object({}),
      does: async (id: number) => (await retryMessages(register, id, isoUtc(clock()))) === 1,
    },
    {
      act: 'cancel',
      summary: 'Takes a message that has not left out of the queue',
      body: z.object({}),
      does: (id: number) => cancelMessage(register, id),
    },
    {
      act: 'posted',
      summary: 'Notes that a letter was posted',
      body: z.object({ on: day('the day on which it was; today unless given').optional() }),
      does: async (id: number, by: string, on: string | undefined) => {
        const { timeZone } = await readSettings(register.db);
        const posting = { by, on: on ?? dayInZone(clock(), timeZone), at: isoUtc(clock()) };
        return markLetterPosted(register, id, posting);
      },
    },
  ] as const;
  for (const { act, summary, body, does } of acts) {
    api.openapi(
      createRoute({
        method: 'post',
        path: `/api/v1/outbox/{id}/${act}`,
        tags: ['Outbox'],
        summary,
        request: { params: idParam, headers: idempotencyHeader, body: { ...jsonBody(body), required: false } },
        responses: {
          200: jsonAnswer(messageDetailSchema, 'the message as it is now'),
          404: problemAnswer('no such message'),
          409: problemAnswer('it is no longer in a state in which that can be done'),
        },
      }),
      async (context) => {
        const { id } = context.req.valid('param');
        const sent: { readonly on?: string | undefined } = context.req.valid('json');
        if (!(await readOutboxDetail(register, id))) return apiProblem(context, noMessage(id)) as never;
        const done = await does(id, tokenName(context), sent.on);
        const message = await readOutboxDetail(register, id);
        if (done && message) return answered(context, messageDetailSchema, message);
        return apiProblem(context, {
          status: 409,
          title: 'That cannot be done',
          what: `message ${id} is ${message?.state}; nothing was done`,
          wayOut: 'GET /api/v1/outbox/{id} says how far it came',
        }) as never;
      },
    );
  }

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/outbox/retry',
      tags: ['Outbox'],
      summary: 'Queues every parked or waiting mail for a try at once',
      request: { headers: idempotencyHeader },
      responses: { 200: jsonAnswer(queuedSchema, 'how many') },
    }),
    async (context) =>
      answered(context, queuedSchema, { queued: await retryMessages(register, 'all', isoUtc(clock())) }),
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/stopped-addresses',
      tags: ['Outbox'],
      summary: 'Addresses that are written to no more since a mail came back, the newest first',
      responses: { 200: jsonAnswer(stoppedSchema, 'every one; `stormpale mail` resumes one') },
    }),
    async (context) => answered(context, stoppedSchema, { rows: await listStoppedAddresses(register) }),
  );
}
