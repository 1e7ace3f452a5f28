import { DateTime } from 'luxon';
import type { Register } from '../register/database.ts';
import type { LeasedMessage } from '../register/outbox-claims.ts';
import { domainTraffic } from '../register/outbox-holds.ts';
import type { WaitsFor } from '../register/sweep-tables.ts';
import { isoUtc } from './clock.ts';
import type { QuietHours } from './quiet-hours.ts';
import { quietUntil } from './quiet-hours.ts';

/** When mails are sent, and how fast. */
export interface SendingRules {
  /** Null: mails go out at any hour. */
  readonly quietHours: QuietHours | null;
  /** Most mails to one domain within a minute; null for no limit. */
  readonly perMinute: number | null;
  /** Zone whose clock counts for a mail that tells of no site. */
  readonly timeZone: string;
}

/** No mail waits for an hour or its turn longer than this before it is asked anew [h]. */
export const LONGEST_HOLD_HOURS = 25;

/** Why a leased message waits, and until when. */
interface Hold {
  readonly id: number;
  readonly dueAt: string;
  readonly waitsFor: WaitsFor;
}

const WINDOW_S = 60;

/**
 * Whether a message has to wait now: null where it may go. What is urgent never waits. In the quiet hours of the owner's
 * clock an ordinary one waits for their end; beyond so many a minute to its domain it waits for its turn, in the order in
 * which they were asked.
 * @param context.ahead messages to the same domain that were asked before it and are not counted in the register yet
 */
export async function holdOf(
  register: Register,
  message: Pick<LeasedMessage, 'id' | 'urgent' | 'timeZone' | 'domain'>,
  context: { readonly rules: SendingRules; readonly now: DateTime; readonly ahead: number },
): Promise<Hold | null> {
  const { rules, now } = context;
  if (message.urgent) return null;
  const end = rules.quietHours ? quietUntil(now, message.timeZone ?? rules.timeZone, rules.quietHours) : null;
  if (end) return { id: message.id, dueAt: isoUtc(end), waitsFor: 'quiet hours' };
  if (rules.perMinute === null) return null;
  const since = isoUtc(now.minus({ seconds: WINDOW_S }));
  const traffic = await domainTraffic(register, message.domain, { since, now: isoUtc(now) });
  // those ahead in the batch are on their way, or wait already
  if (traffic.tries + context.ahead < rules.perMinute) return null;
  const turns = Math.floor((traffic.waiting + context.ahead) / rules.perMinute);
  const seconds = Math.min(WINDOW_S * (turns + 1), LONGEST_HOLD_HOURS * 3600);
  const windowBegan = traffic.oldestAt === null ? now : DateTime.fromISO(traffic.oldestAt);
  const dueAt = isoUtc(windowBegan.plus({ seconds }));
  return { id: message.id, dueAt, waitsFor: 'sending rate' };
}
