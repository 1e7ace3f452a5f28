import type { DateTime } from 'luxon';
import type { Register } from '../register/database.ts';
import { countOutbox } from '../register/outbox.ts';
import type { MailServerTrouble } from '../register/outbox-claims.ts';
import { mailServerTrouble } from '../register/outbox-claims.ts';
import { readSettings } from '../register/settings-store.ts';
import type { Sweep, SweepFailure } from '../register/sweep-store.ts';
import { listSweepFailures, newestSweep } from '../register/sweep-store.ts';
import type { OutboxState } from '../register/sweep-tables.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import type { Config } from './config.ts';
import type { MailCatcher } from './mail-catcher.ts';
import type { SweepProgress } from './run-sweep.ts';
import type { ServiceMetrics } from './service-metrics.ts';
import { officeGap } from './sweep-register.ts';
import type { SweepRunner } from './sweep-runner.ts';
import { lastScheduledMoment } from './sweep-schedule.ts';

/** Where the sweep stands. */
export interface SweepStatus {
  /** The sweep at work in this service; null where none is. */
  readonly progress: SweepProgress | null;
  readonly lastFinished: Sweep | null;
  /** Fences the last finished sweep could not forecast. */
  readonly failures: readonly SweepFailure[];
  /** The next scheduled moment, ISO text in UTC. */
  readonly nextAt: string;
}

/** Where the mail stands. */
interface MailStatus {
  readonly counts: Readonly<Record<OutboxState, number>>;
  /** What stands against the mail server; null where it answered last. */
  readonly trouble: MailServerTrouble | null;
  /** `caught`: mails go to the service's own catcher and reach nobody else. */
  readonly delivery: 'caught' | 'smtp';
}

/** The answer of a health question. */
interface Health {
  readonly ok: boolean;
  readonly checks: Readonly<Record<string, string>>;
}

/** What pages may ask of the running service. */
export interface ServiceView {
  sweepStatus(): Promise<SweepStatus>;
  mailStatus(): Promise<MailStatus>;
  /** For `/healthz`: the process is up. */
  health(): Health;
  /** For `/readyz`: the register answers and the service is not closing. */
  readiness(): Promise<Health>;
  /** For `/metrics`. */
  readonly metrics: Pick<ServiceMetrics, 'contentType' | 'text'>;
  /** Begins a sweep, or the writing of messages that are still to be written, without waiting for it; false where nothing does either. */
  begin(work: 'sweep' | 'messages'): boolean;
  /** The caught mails; null where mails are sent for real. */
  readonly catcher: Pick<MailCatcher, 'list' | 'get'> | null;
}

function nextMoment(now: DateTime, zone: string, at: string): DateTime {
  return lastScheduledMoment(now, zone, at).setZone(zone).plus({ days: 1 });
}

/** Makes the view of one service. */
export function createServiceView(parts: {
  readonly register: Register;
  readonly config: Config;
  readonly clock: Clock;
  readonly catcher: MailCatcher | null;
  readonly metrics: ServiceMetrics;
  readonly progress: () => SweepProgress | null;
  readonly isClosing: () => boolean;
  /** Does what `begin` begins; none where nothing does. */
  readonly runner?: Pick<SweepRunner, 'sweepNow' | 'ask'>;
}): ServiceView {
  const { register, config, clock } = parts;
  return {
    sweepStatus: async () => {
      const lastFinished = await newestSweep(register, 'finished');
      const zone = config.timeZone ?? (await readSettings(register.db)).timeZone;
      return {
        progress: parts.progress(),
        lastFinished,
        failures: lastFinished ? await listSweepFailures(register, lastFinished.id) : [],
        nextAt: isoUtc(nextMoment(clock(), zone, config.sweepAt)),
      };
    },
    mailStatus: async () => ({
      counts: await countOutbox(register),
      trouble: await mailServerTrouble(register),
      delivery: parts.catcher ? 'caught' : 'smtp',
    }),
    health: () => ({ ok: true, checks: { process: 'up' } }),
    readiness: async () => {
      if (parts.isClosing()) return { ok: false, checks: { service: 'closing' } };
      try {
        const gap = officeGap(config, await readSettings(register.db));
        const office = gap !== null && config.smtpUrl !== null ? { messages: `not written: ${gap}` } : {};
        await newestSweep(register);
        return { ok: true, checks: { register: 'answers', ...office } };
      } catch (error) {
        return { ok: false, checks: { register: error instanceof Error ? error.message : String(error) } };
      }
    },
    metrics: parts.metrics,
    begin: (work) => {
      const { runner } = parts;
      if (!runner || parts.isClosing()) return false;
      // how it ended, the runner says in the log
      void (work === 'sweep' ? runner.sweepNow() : runner.ask({ onStart: false })).catch(() => undefined);
      return true;
    },
    catcher: parts.catcher,
  };
}
