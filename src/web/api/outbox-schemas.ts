import { z } from '@hono/zod-openapi';
import { type ApiProblem, notThere } from './api-problem.ts';
import { pageOf } from './api-schemas.ts';

/** States of a message. */
export const MESSAGE_STATES = ['queued', 'leased', 'sent', 'parked', 'cancelled', 'to print'] as const;
const channel = z.enum(['mail', 'letter']);

const messageSchema = z
  .object({
    id: z.number().int(),
    messageId: z.string(),
    ownerRef: z.string().nullable().describe('null for a mail to the office itself'),
    ownerName: z.string(),
    channel,
    envelopeTo: z.string().nullable(),
    envelopeFrom: z.string().nullable(),
    subject: z.string(),
    sha256: z.string().describe('of its bytes'),
    state: z.enum(MESSAGE_STATES),
    attempts: z.number().int(),
    dueAt: z.string().nullable(),
    lastReply: z.string().nullable().describe("the mail server's words"),
    sentAt: z.string().nullable(),
    createdAt: z.string(),
    heldBy: z
      .enum(['quiet hours', 'sending rate', 'stopped address'])
      .nullable()
      .describe('what keeps a queued one back'),
    postedBy: z.string().describe('who posted a letter; empty where nobody said'),
    postedOn: z.string().nullable(),
  })
  .openapi('Message');

/** A page of messages. */
export const messagePageSchema = pageOf(messageSchema);

/** One message with what it carries. */
export const messageDetailSchema = messageSchema
  .extend({
    firstFailedAt: z.string().nullable().describe('when the first try failed for now; null where none did'),
    notices: z.array(
      z.object({
        id: z.number().int(),
        fenceRef: z.string(),
        matter: z.string(),
        createdAt: z.string(),
        releasedAt: z.string().nullable(),
      }),
    ),
  })
  .openapi('MessageDetail');

/** How a message reads. */
export const messageTextSchema = z.object({ id: z.number().int(), channel, html: z.string() }).openapi('MessageText');

/** How many mails were queued. */
export const queuedSchema = z.object({ queued: z.number().int() });

/** Addresses that are stopped. */
export const stoppedSchema = z
  .object({
    rows: z.array(
      z.object({
        address: z.string(),
        ownerRef: z.string(),
        ownerName: z.string(),
        since: z.string(),
        status: z.string(),
        diagnostic: z.string(),
        outboxId: z.number().int().describe('the mail that came back'),
        subject: z.string(),
        waiting: z.number().int().describe('mails that wait for it to be resumed'),
      }),
    ),
  })
  .openapi('StoppedAddresses');

/** That a message is not there. */
export const noMessage = (id: number): ApiProblem =>
  notThere(`there is no message ${id}`, 'GET /api/v1/outbox lists them');
