import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { DateTime } from 'luxon';
import type { Register } from '../register/database.ts';
import { isRegisterBusy } from '../register/database.ts';
import type { LeasedMessage, TryOutcome } from '../register/outbox-claims.ts';
import {
  leaseDueMessages,
  mailServerTrouble,
  noteMailServer,
  recordTry,
  releaseLeases,
} from '../register/outbox-claims.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import type { MailSession, MailTransport, SendResult } from './mail-transport.ts';
import { MailServerUnavailable } from './mail-transport.ts';
import {
  GIVE_UP_AFTER_HOURS,
  LONGEST_MESSAGE_WAIT_MIN,
  LONGEST_SERVER_WAIT_MIN,
  messageWaitMinutes,
  serverWaitMinutes,
} from './retry-waits.ts';

/** Messages leased at once. */
const BATCH_SIZE = 10;
/** A lease that nobody ended is void after so long [s]; what it held is then sent again with the same bytes. */
const LEASE_SECONDS = 300;
/** No message is begun with less than this left of its lease [s]. */
const LEAST_LEASE_SECONDS = 100;
/** A try is broken off after this share of what is left of its lease [-], so that its end is recorded under the lease. */
const TRY_SHARE = 0.9;
/** Wait before the end of a try is recorded again where another program holds the write lock [ms]. */
const RECORD_AGAIN_MS = 200;
/** So long before the lease ends no more recording is begun [ms]: one may itself wait for the lock. */
const RECORD_MARGIN_MS = 20_000;

/** How the outbox is drained. */
export interface DrainOptions {
  readonly now: Clock;
  readonly transport: MailTransport;
  readonly leaseSeconds?: number;
  readonly signal?: AbortSignal;
}

/** What one drain did. */
export interface DrainReport {
  readonly sent: number;
  /** Failed for now, will be tried again. */
  readonly again: number;
  readonly parked: number;
  /** Why the server as a whole could not be used, and until when it is left alone; null where it could. */
  readonly unavailable: { readonly reply: string; readonly retryAt: string } | null;
}

/** How a try ends for a message: sent, tried again after a growing wait, or parked with the server's words. */
function outcomeOf(message: LeasedMessage, result: SendResult, now: DateTime): TryOutcome {
  const at = isoUtc(now);
  const { reply } = result;
  if (result.kind === 'accepted') return { kind: 'sent', at, reply };
  if (result.kind === 'refused') return { kind: 'parked', at, reply };
  const since = message.firstFailedAt ? DateTime.fromISO(message.firstFailedAt) : now;
  if (now.diff(since).as('hours') >= GIVE_UP_AFTER_HOURS) {
    return {
      kind: 'parked',
      at,
      reply: `given up after ${GIVE_UP_AFTER_HOURS / 24} days of tries; the last answer: ${reply}`,
    };
  }
  const dueAt = isoUtc(now.plus({ minutes: messageWaitMinutes(message.attempts + 1) }));
  return { kind: 'again', at, dueAt, reply };
}

async function standingWait(register: Register, now: DateTime): Promise<DrainReport['unavailable']> {
  const trouble = await mailServerTrouble(register);
  if (!trouble || trouble.retryAt <= isoUtc(now)) return null;
  // a wait longer than any we set means that the clock was put back since
  const longest = now.plus({ minutes: LONGEST_SERVER_WAIT_MIN });
  return trouble.retryAt > isoUtc(longest) ? null : { reply: trouble.lastReply, retryAt: trouble.retryAt };
}

async function noteUnavailable(
  register: Register,
  now: DateTime,
  reply: string,
): Promise<NonNullable<DrainReport['unavailable']>> {
  const failures = ((await mailServerTrouble(register))?.failures ?? 0) + 1;
  const retryAt = isoUtc(now.plus({ minutes: serverWaitMinutes(failures) }));
  await noteMailServer(register, { failures, retryAt, lastReply: reply });
  return { reply, retryAt };
}

/**
 * Records how a try ended, trying anew while another program holds the write lock: a mail that the server took and that is
 * not recorded would be sent twice. Throws the last failure shortly before the lease ends.
 */
async function recordWithinLease(
  register: Register,
  id: number,
  end: { readonly token: string; readonly outcome: TryOutcome; readonly leaseLeftMs: number },
): Promise<boolean> {
  const lastBegin = performance.now() + end.leaseLeftMs - RECORD_MARGIN_MS;
  for (;;) {
    try {
      return await recordTry(register, id, end.token, end.outcome);
    } catch (error) {
      if (!isRegisterBusy(error) || performance.now() > lastBegin) throw error;
      await pause(RECORD_AGAIN_MS);
    }
  }
}

/**
 * Hands over what is due, batch by batch: leased, sent with the bytes that were stored, and recorded with the server's
 * words. A message that fails for now waits longer each time; a server that cannot be reached stops the drain and spends
 * no message's tries. Killed at any point, what it held is sent again once the lease runs out, with the same bytes.
 */
export async function drainOutbox(register: Register, options: DrainOptions): Promise<DrainReport> {
  const counts = { sent: 0, again: 0, parked: 0 };
  const waiting = await standingWait(register, options.now());
  if (waiting) return { ...counts, unavailable: waiting };
  const leaseSeconds = options.leaseSeconds ?? LEASE_SECONDS;
  const token = randomUUID();
  let session: MailSession | null = null;
  let answered = false;
  try {
    while (!options.signal?.aborted) {
      const leasedAt = options.now();
      const until = leasedAt.plus({ seconds: leaseSeconds });
      const latestDue = isoUtc(leasedAt.plus({ minutes: LONGEST_MESSAGE_WAIT_MIN }));
      const terms = { token, at: isoUtc(leasedAt), until: isoUtc(until), latestDue, limit: BATCH_SIZE };
      const tryMs = (): number | null => {
        const leftS = until.diff(options.now()).as('seconds');
        return leftS < Math.min(LEAST_LEASE_SECONDS, leaseSeconds / 2) ? null : leftS * TRY_SHARE * 1000;
      };
      const batch = await leaseDueMessages(register, terms);
      if (batch.length === 0) break;
      for (const message of batch) {
        if (options.signal?.aborted || tryMs() === null) break;
        session ??= await options.transport.open(tryMs() ?? 0, options.signal);
        // opening may have taken most of the lease; the conversation is kept for what is leased next
        const withinMs = tryMs();
        if (withinMs === null) break;
        const envelope = { from: message.envelopeFrom, to: message.envelopeTo };
        const result = await session.send(envelope, message.raw, withinMs);
        const now = options.now();
        const outcome = outcomeOf(message, result, now);
        const leaseLeftMs = until.diff(now).as('milliseconds');
        const recorded = await recordWithinLease(register, message.id, { token, outcome, leaseLeftMs });
        if (!answered) await noteMailServer(register, null);
        answered = true;
        // whoever holds the lease by now records how its own try ends
        if (recorded) counts[outcome.kind] += 1;
        // after a failure the conversation may be in any state; the next message gets a new one
        if (result.kind !== 'accepted') {
          session.close();
          session = null;
        }
      }
      await releaseLeases(register, token);
    }
    return { ...counts, unavailable: null };
  } catch (error) {
    if (!(error instanceof MailServerUnavailable)) throw error;
    // what was broken off because we stop says nothing about the server
    if (options.signal?.aborted) return { ...counts, unavailable: null };
    return { ...counts, unavailable: await noteUnavailable(register, options.now(), error.message) };
  } finally {
    session?.close();
    await releaseLeases(register, token);
  }
}
