import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { DateTime } from 'luxon';
import type { Register } from '../register/database.ts';
import { isRegisterBusy } from '../register/database.ts';
import type { LeasedMessage, TryOutcome } from '../register/outbox-claims.ts';
import {
  endLostLeases,
  leaseDueMessages,
  mailServerTrouble,
  noteMailServer,
  recordTry,
  releaseLeases,
} from '../register/outbox-claims.ts';
import { holdLeased } from '../register/outbox-holds.ts';
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
import type { SendingRules } from './sending-rules.ts';
import { holdOf, LONGEST_HOLD_HOURS } from './sending-rules.ts';

/** Messages leased at once. */
const BATCH_SIZE = 10;
/** A lease that nobody ended is void after so long [s]; what it held is then sent again with the same bytes. */
const LEASE_SECONDS = 1200;
/** No message is begun with less than this left of its lease [s]: the server may take ten minutes to answer the last dot. */
const LEAST_LEASE_SECONDS = 800;
/** A try is broken off after this share of what is left of its lease [-], so that its end is recorded under the lease. */
const TRY_SHARE = 0.9;
/** Wait before the end of a try is recorded again where another program holds the write lock [ms]. */
const RECORD_AGAIN_MS = 200;
/** So long before the lease ends no more recording is begun [ms]: one may itself wait for the lock. */
const RECORD_MARGIN_MS = 20_000;
/** After so many conversations in a row that broke off in the middle, the server is left alone. */
const MOST_CUTS = 2;

/** How the outbox is drained. */
export interface DrainOptions {
  readonly now: Clock;
  readonly transport: MailTransport;
  readonly leaseSeconds?: number;
  readonly signal?: AbortSignal;
  /** When mails are sent and how fast; at once where not given. */
  readonly rules?: SendingRules;
  /** A message that failed for now for so long is parked [h]; 120 where not given. */
  readonly giveUpAfterHours?: number;
}

/** What one drain did. */
export interface DrainReport {
  readonly sent: number;
  /** Failed for now, will be tried again. */
  readonly again: number;
  readonly parked: number;
  /** Waiting for an hour or for their turn. */
  readonly held: number;
  /** Tries after which the server may have the message though it never said so. */
  readonly unsure: number;
  /** Why the server as a whole could not be used, and until when it is left alone; null where it could. */
  readonly unavailable: { readonly reply: string; readonly retryAt: string } | null;
}

const sinceFirstFailure = (message: LeasedMessage, now: DateTime): number =>
  message.firstFailedAt ? now.diff(DateTime.fromISO(message.firstFailedAt)).as('hours') : 0;

/** How a try ends for a message: sent, tried again after a growing wait, or parked with the server's words. */
function outcomeOf(message: LeasedMessage, result: SendResult, now: DateTime, giveUpAfterHours: number): TryOutcome {
  const at = isoUtc(now);
  const { reply } = result;
  if (result.kind === 'accepted') return { kind: 'sent', at, reply };
  if (result.kind === 'refused') return { kind: 'parked', at, reply };
  const { mayHaveArrived } = result;
  if (sinceFirstFailure(message, now) >= giveUpAfterHours) {
    return {
      kind: 'parked',
      at,
      reply: `given up after ${giveUpAfterHours / 24} days of tries; the last answer: ${reply}`,
      mayHaveArrived,
    };
  }
  const dueAt = isoUtc(now.plus({ minutes: messageWaitMinutes(message.attempts + 1) }));
  return { kind: 'again', at, dueAt, reply, mayHaveArrived };
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

/** One batch at a time is leased and tried; what a try needs to know of its lease. */
interface Lease {
  readonly until: DateTime;
  /** Time that a try begun now may take [ms]; null where too little of the lease is left. */
  readonly tryMs: () => number | null;
}

/** Takes out of a batch what has to wait, and has it wait. */
async function passOn(
  register: Register,
  batch: readonly LeasedMessage[],
  options: DrainOptions,
  token: string,
): Promise<readonly LeasedMessage[]> {
  const { rules } = options;
  if (!rules) return batch;
  const now = options.now();
  const holds: (NonNullable<Awaited<ReturnType<typeof holdOf>>> & { readonly domain: string })[] = [];
  const passed: LeasedMessage[] = [];
  for (const message of batch) {
    const { domain } = message;
    const ahead = [...holds, ...passed].filter((other) => other.domain === domain).length;
    const hold = await holdOf(register, message, { rules, now, ahead });
    if (hold) holds.push({ ...hold, domain });
    else passed.push(message);
  }
  await holdLeased(register, token, holds);
  return passed;
}

/**
 * Hands over what is due, batch by batch: leased, sent with the bytes that were stored, and recorded with the server's
 * words. A message that fails for now waits longer each time; a server that cannot be reached, or breaks off one
 * conversation after another, stops the drain. Killed at any point, what it held is sent again once the lease runs out, with
 * the same bytes.
 */
export async function drainOutbox(register: Register, options: DrainOptions): Promise<DrainReport> {
  const counts = { sent: 0, again: 0, parked: 0, held: 0, unsure: 0 };
  const waiting = await standingWait(register, options.now());
  if (waiting) return { ...counts, unavailable: waiting };
  const leaseSeconds = options.leaseSeconds ?? LEASE_SECONDS;
  const giveUpAfterHours = options.giveUpAfterHours ?? GIVE_UP_AFTER_HOURS;
  const token = randomUUID();
  let session: MailSession | null = null;
  let answered = false;
  let cuts = 0;

  async function tryMessage(message: LeasedMessage, { until, tryMs }: Lease): Promise<boolean> {
    if (options.signal?.aborted || tryMs() === null) return false;
    session ??= await options.transport.open(tryMs() ?? 0, options.signal);
    // opening may have taken most of the lease; the conversation is kept for what is leased next
    const withinMs = tryMs();
    if (withinMs === null) return false;
    const result = await session.send({ from: message.envelopeFrom, to: message.envelopeTo }, message.raw, withinMs);
    const now = options.now();
    const outcome = outcomeOf(message, result, now, giveUpAfterHours);
    const leaseLeftMs = until.diff(now).as('milliseconds');
    const recorded = await recordWithinLease(register, message.id, { token, outcome, leaseLeftMs });
    if (!answered) await noteMailServer(register, null);
    answered = true;
    // whoever holds the lease by now records how its own try ends
    if (recorded) counts[outcome.kind] += 1;
    if (outcome.mayHaveArrived) counts.unsure += 1;
    // after a failure the conversation may be in any state; the next message gets a new one
    if (result.kind !== 'accepted') {
      session.close();
      session = null;
    }
    cuts = result.kind === 'not now' && result.cut ? cuts + 1 : 0;
    if (cuts >= MOST_CUTS && !options.signal?.aborted) throw new MailServerUnavailable(result.reply);
    return true;
  }

  try {
    const begun = options.now();
    await endLostLeases(register, { at: isoUtc(begun), until: isoUtc(begun.plus({ seconds: leaseSeconds })) });
    while (!options.signal?.aborted) {
      const leasedAt = options.now();
      const until = leasedAt.plus({ seconds: leaseSeconds });
      const batch = await leaseDueMessages(register, {
        token,
        at: isoUtc(leasedAt),
        until: isoUtc(until),
        latestDue: isoUtc(leasedAt.plus({ minutes: LONGEST_MESSAGE_WAIT_MIN })),
        latestHeld: isoUtc(leasedAt.plus({ hours: LONGEST_HOLD_HOURS })),
        limit: BATCH_SIZE,
      });
      if (batch.length === 0) break;
      const tryMs = (): number | null => {
        const leftS = until.diff(options.now()).as('seconds');
        return leftS < Math.min(LEAST_LEASE_SECONDS, leaseSeconds / 2) ? null : leftS * TRY_SHARE * 1000;
      };
      const passed = await passOn(register, batch, options, token);
      counts.held += batch.length - passed.length;
      for (const message of passed) {
        if (!(await tryMessage(message, { until, tryMs }))) break;
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
    // assigned by the tries: what the compiler knows of it ends at the function above
    (session as MailSession | null)?.close();
    await releaseLeases(register, token);
  }
}
