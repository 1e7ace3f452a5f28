import { DateTime } from 'luxon';
import { MODEL_VERSION } from '../forecast/model-version.ts';
import type { Register } from '../register/database.ts';
import { listOwnersToWriteTo } from '../register/notice-store.ts';
import { changedSinceSweep } from '../register/register-changes.ts';
import { readSettings } from '../register/settings-store.ts';
import { newestSweep } from '../register/sweep-store.ts';
import type { Clock } from './clock.ts';
import type { ComposeReport } from './compose-notices.ts';
import type { Config } from './config.ts';
import type { Logger } from './log.ts';
import type { SweepProgress } from './run-sweep.ts';
import { type SweepOutcome, writeOfficeMail } from './sweep-register.ts';
import type { DueReason } from './sweep-schedule.ts';
import { sweepDue } from './sweep-schedule.ts';
import type { SweepThread } from './sweep-thread.ts';
import { startSweepThread } from './sweep-thread.ts';

/** Runs sweeps one at a time, when they are due or asked for. */
export interface SweepRunner {
  /** Progress of the sweep at work, or null where none is. */
  progress(): SweepProgress | null;
  /**
   * Asks the register what is due: sweeps where a sweep is, and writes the messages that are still to be written, whatever
   * came of the sweep. Returns why a sweep was due; null where none was. Throws where the register does not answer.
   */
  ask(options: { readonly onStart: boolean }): Promise<DueReason | null>;
  /** Sweeps now, due or not; joins the sweep that is at work. Null where the service is closing or the sweep failed. */
  sweepNow(): Promise<SweepOutcome | null>;
  close(): Promise<void>;
}

/** Why a sweep is due in a register, or null. */
async function dueInRegister(
  register: Register,
  options: { readonly now: DateTime; readonly zone: string | null; readonly at: string },
): Promise<DueReason | null> {
  const finished = await newestSweep(register, 'finished');
  return sweepDue({
    now: options.now,
    zone: options.zone ?? (await readSettings(register.db)).timeZone,
    at: options.at,
    modelVersion: MODEL_VERSION,
    last: finished && { asOf: DateTime.fromISO(finished.asOf), modelVersion: finished.modelVersion },
    unfinished: (await newestSweep(register, 'running')) !== null,
    changed: finished !== null && (await changedSinceSweep(register, finished.id)),
  });
}

function logMessages(log: Logger, composed: ComposeReport): void {
  for (const failure of composed.failures) log.error(failure, 'no message could be written to this owner');
}

function logOutcome(log: Logger, { report, composed }: SweepOutcome): void {
  if (report.kind === 'busy') {
    log.info({ pid: report.heldBy.pid }, 'another program is sweeping this register; its sweep counts');
    return;
  }
  if (report.kind === 'interrupted') {
    log.info({ checkpoint: report.sweep.checkpointRef }, 'sweep interrupted; it is resumed later');
    return;
  }
  const { id, computed, unchanged, failed, notices } = report.sweep;
  const { mails = 0, letters = 0 } = composed ?? {};
  log.info(
    { sweep: id, resumed: report.resumed, computed, unchanged, failed, notices, mails, letters },
    'sweep finished',
  );
  for (const failure of report.failures) log.warn(failure, 'fence could not be forecast');
  if (composed) logMessages(log, composed);
}

/** Makes the runner; it does nothing until asked. */
export function createSweepRunner(options: {
  readonly register: Register;
  readonly config: Config;
  readonly clock: Clock;
  readonly log: Logger;
  /** Called after each sweep. */
  readonly onOutcome: (outcome: SweepOutcome) => void;
  /** Called where messages were written that no sweep of this runner wrote. */
  readonly onMessages: () => void;
}): SweepRunner {
  const { register, config, clock, log } = options;
  let thread: SweepThread | null = null;
  let running: Promise<SweepOutcome | null> | null = null;
  let writing: Promise<void> | null = null;
  let progress: SweepProgress | null = null;
  let closing = false;

  async function sweep(): Promise<SweepOutcome | null> {
    await writing;
    try {
      if (closing) return null;
      progress = { done: 0, failed: 0, lastRef: '' };
      thread = startSweepThread(register, {
        work: 'sweep',
        clock,
        sender: config,
        onProgress: (latest) => {
          progress = latest;
        },
      });
      const outcome = await thread.done;
      if (outcome.report === null) return null;
      logOutcome(log, outcome);
      options.onOutcome(outcome);
      return outcome;
    } catch (error) {
      log.error({ err: error }, 'sweep failed; what it had written stands, and it is resumed later');
      return null;
    } finally {
      thread = null;
      progress = null;
      running = null;
    }
  }

  async function write(): Promise<void> {
    try {
      thread = startSweepThread(register, { work: 'messages', clock, sender: config, onProgress: () => undefined });
      const { composed } = await thread.done;
      if (!composed) return;
      const { mails, letters } = composed;
      if (mails + letters > 0) log.info({ mails, letters }, 'messages written that were still to be written');
      logMessages(log, composed);
      options.onMessages();
    } catch (error) {
      log.error({ err: error }, 'messages could not be written; they are tried again');
    } finally {
      thread = null;
      writing = null;
    }
  }

  async function writeWhatIsLeft(): Promise<void> {
    await running;
    if (closing || (await listOwnersToWriteTo(register)).length === 0) return;
    // asked anew: a sweep may have begun meanwhile, and writes them itself
    if (closing || running) return;
    writing ??= write();
    await writing;
  }

  /** The office hears even where no sweep ends: that none does is news for it. */
  async function tellOffice(): Promise<void> {
    if (closing) return;
    try {
      const named = await writeOfficeMail(register, { now: clock, sender: config });
      if (named === 0) return;
      log.info({ named }, 'mail to the office written');
      options.onMessages();
    } catch (error) {
      log.error({ err: error }, 'the mail to the office could not be written; it is tried again');
    }
  }

  async function sweepNow(): Promise<SweepOutcome | null> {
    if (closing) return null;
    running ??= sweep();
    return running;
  }

  return {
    progress: () => progress,
    sweepNow,
    ask: async ({ onStart }) => {
      const due = await dueInRegister(register, { now: clock(), zone: config.timeZone, at: config.sweepAt });
      // by day the office may still be entering records; the night takes them up
      const reason = due === 'register changed' && !onStart ? null : due;
      if (reason !== null) {
        log.info({ reason }, 'sweep is due');
        await sweepNow();
      }
      await writeWhatIsLeft();
      await tellOffice();
      return reason;
    },
    close: async () => {
      closing = true;
      thread?.stop();
      await writing;
      await running;
    },
  };
}
