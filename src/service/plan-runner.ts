import type { Register } from '../register/database.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import type { Logger } from './log.ts';
import { type PlanProgress, type PlanThread, startPlanThread } from './plan-thread.ts';

/** Where the making of plans stands in this service. Times are ISO text in UTC. */
export type PlanState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'at work'; readonly startedAt: string; readonly by: string; readonly progress: PlanProgress }
  | { readonly kind: 'made'; readonly number: number; readonly at: string }
  /** Nothing was stored. */
  | { readonly kind: 'failed'; readonly reason: string; readonly at: string };

/** Makes season plans, one at a time, in a thread of their own: pages never wait for one. */
export interface PlanRunner {
  /** What is at work, or what came of the last one since the service started. */
  state(): PlanState;
  /** Begins to make a plan; false where one is at work already, which is then left to end. */
  begin(request: { readonly by: string; readonly weeks: number | null }): boolean;
  /** Settles once nothing is at work. */
  settled(): Promise<void>;
  close(): Promise<void>;
}

const NO_CREW =
  'the register holds no crew, so there are no weeks to fill: import crews and crew-members (docs/csv.md), then plan again';

/** Makes the runner; it does nothing until asked. */
export function createPlanRunner(options: {
  readonly register: Register;
  readonly clock: Clock;
  readonly log: Logger;
}): PlanRunner {
  const { register, clock, log } = options;
  let state: PlanState = { kind: 'idle' };
  let thread: PlanThread | null = null;
  let running: Promise<void> | null = null;
  let closing = false;

  async function make(by: string, weeks: number | null): Promise<void> {
    const startedAt = isoUtc(clock());
    state = { kind: 'at work', startedAt, by, progress: { done: 0, total: 0 } };
    try {
      thread = startPlanThread(register, {
        clock,
        weeks,
        onProgress: (progress) => {
          state = { kind: 'at work', startedAt, by, progress };
        },
      });
      const end = await thread.done;
      const at = isoUtc(clock());
      state = end.kind === 'made' ? { kind: 'made', number: end.number, at } : { kind: 'failed', reason: NO_CREW, at };
      log.info({ by, ...end }, 'season plan ended');
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      state = { kind: 'failed', reason, at: isoUtc(clock()) };
      if (!closing) log.error({ err: error }, 'the season plan could not be made; nothing was stored');
    } finally {
      thread = null;
      running = null;
    }
  }

  return {
    state: () => state,
    begin: ({ by, weeks }) => {
      if (closing || running) return false;
      running = make(by, weeks);
      return true;
    },
    settled: async () => {
      await running;
    },
    close: async () => {
      closing = true;
      await thread?.stop();
      await running;
    },
  };
}
