import type { DrainReport } from './drain-outbox.ts';
import type { Logger } from './log.ts';

/** Runs one drain after another: on a timer, and at once when nudged. */
export interface DrainLoop {
  /** Asks for a drain now; one that is under way is followed by another. */
  nudge(): void;
  /** Stops the loop and waits for the drain under way. */
  close(): Promise<void>;
}

const EVERY_MS = 15_000;

/** Starts the loop; the first drain runs at once. A drain that throws is logged, and the next one tries again. */
export function startDrainLoop(options: {
  readonly drain: (signal: AbortSignal) => Promise<DrainReport>;
  readonly log: Logger;
  readonly onReport?: (report: DrainReport) => void;
}): DrainLoop {
  const { log } = options;
  const stop = new AbortController();
  let wanted = false;
  let running: Promise<void> | null = null;
  let lastTrouble: string | null = null;

  async function drainOnce(): Promise<void> {
    try {
      const report = await options.drain(stop.signal);
      if (report.sent + report.again + report.parked > 0) log.info({ ...report }, 'outbox drained');
      const trouble = report.unavailable?.reply ?? null;
      if (trouble && trouble !== lastTrouble) log.warn({ reply: trouble }, 'mail server cannot be used; mails wait');
      lastTrouble = trouble;
      options.onReport?.(report);
    } catch (error) {
      log.error({ err: error }, 'drain failed; it is tried again');
    }
  }

  async function drainWhileWanted(): Promise<void> {
    while (wanted && !stop.signal.aborted) {
      wanted = false;
      await drainOnce();
    }
    running = null;
  }

  function nudge(): void {
    wanted = true;
    running ??= drainWhileWanted();
  }

  const timer = setInterval(nudge, EVERY_MS);
  nudge();
  return {
    nudge,
    close: async () => {
      clearInterval(timer);
      stop.abort();
      await running;
    },
  };
}
