import type { Register } from '../register/database.ts';
import { type Clock, isoUtc } from './clock.ts';
import { inTime } from './in-time.ts';
import type { Logger } from './log.ts';
import type { TaskInput, TaskName, TaskOutput } from './long-tasks.ts';
import { type LongProgress, type LongThread, startLongThread } from './long-work-thread.ts';

/** Tasks done at once at most; what is more waits its turn. */
const MOST_THREADS = 2;
/** A thread without a task ends after so long [ms]. */
const IDLE_MS = 60_000;
/** An answer that nobody came for is forgotten after so long [min], and of those that wait the oldest where there are more than so many. */
const KEPT_MINUTES = 2;
const MOST_KEPT = 50;

/** The answer to somebody who asks for work: what came of it, or how far it is. */
export type WorkAnswer<T> =
  | { readonly kind: 'done'; readonly value: T }
  | { readonly kind: 'at work'; readonly progress: LongProgress };

/** Does long work in threads of its own and keeps each answer until it was fetched once. */
export interface LongWork {
  /** How long somebody who asks waits for the end [ms]; Infinity: until the end. */
  readonly patienceMs: number;
  /**
   * Begins a task under a key, or joins the one that was begun under it. Waits a moment for its end; whoever is told that it is still
   * at work asks again under the key. Rejects where the task failed.
   */
  ask<N extends TaskName>(key: string, name: N, input: TaskInput<N>): Promise<WorkAnswer<TaskOutput<N>>>;
  /** As `ask`, for what changes something: an answer to an earlier one under the key, which nobody fetched, is not its answer. */
  act<N extends TaskName>(key: string, name: N, input: TaskInput<N>): Promise<WorkAnswer<TaskOutput<N>>>;
  /** As `ask`, but begins nothing: null where nothing is at work under the key and no answer waits. */
  fetch<N extends TaskName>(key: string, name: N): Promise<WorkAnswer<TaskOutput<N>> | null>;
  /** Does a task and waits for its end, however long that takes. */
  finish<N extends TaskName>(name: N, input: TaskInput<N>): Promise<TaskOutput<N>>;
  close(): Promise<void>;
}

interface Job {
  readonly name: TaskName;
  readonly ended: Promise<unknown>;
  progress: LongProgress;
  /** Null while it is at work. */
  endedAt: number | null;
}

interface Place {
  readonly thread: LongThread;
  isBusy: boolean;
  idle: NodeJS.Timeout | null;
}

/** Makes it; no thread runs until work is asked for. */
export function createLongWork(options: {
  readonly register: Register;
  readonly clock: Clock;
  readonly log: Logger;
  /** How long somebody who asks waits for the end before being told how far it is [ms]; Infinity: until the end. */
  readonly patienceMs: number;
}): LongWork {
  const { register, clock, log, patienceMs } = options;
  const jobs = new Map<string, Job>();
  const places = new Set<Place>();
  const queue: (() => void)[] = [];
  let closing = false;

  function freePlace(): Place | null {
    for (const place of places) if (place.thread.isEnded()) places.delete(place);
    const free = [...places].find(({ isBusy }) => !isBusy);
    if (free) return free;
    if (places.size >= MOST_THREADS) return null;
    const place: Place = { thread: startLongThread({ registerPath: register.path }), isBusy: false, idle: null };
    places.add(place);
    return place;
  }

  async function takePlace(): Promise<Place> {
    for (;;) {
      if (closing) throw new Error('the service is closing');
      const place = freePlace();
      if (place) {
        if (place.idle) clearTimeout(place.idle);
        place.isBusy = true;
        return place;
      }
      await new Promise<void>((resolve) => queue.push(resolve));
    }
  }

  function leave(place: Place): void {
    place.isBusy = false;
    place.idle = setTimeout(() => {
      places.delete(place);
      void place.thread.stop();
    }, IDLE_MS).unref();
    queue.shift()?.();
  }

  async function run(name: TaskName, input: unknown, onProgress: (progress: LongProgress) => void): Promise<unknown> {
    const place = await takePlace();
    try {
      const task = { name, input: input as never, now: isoUtc(clock()) };
      return await place.thread.run(task, onProgress);
    } finally {
      leave(place);
    }
  }

  function begin(key: string, name: TaskName, input: unknown): Job {
    const job: Job = {
      name,
      progress: { done: 0, total: 0 },
      endedAt: null,
      ended: run(name, input, (progress) => {
        job.progress = progress;
      }).finally(() => {
        job.endedAt = clock().toMillis();
      }),
    };
    // it is told to whoever asks; where nobody does, it must be told all the same
    job.ended.catch((error: unknown) => {
      if (!closing) log.error({ err: error, task: name }, 'long work failed');
    });
    jobs.set(key, job);
    return job;
  }

  function forgetOld(): void {
    const oldest = clock().toMillis() - KEPT_MINUTES * 60_000;
    const waiting = [...jobs].filter(([, { endedAt }]) => endedAt !== null);
    for (const [index, [key, { endedAt }]] of waiting.entries()) {
      if ((endedAt ?? 0) < oldest || index < waiting.length - MOST_KEPT) jobs.delete(key);
    }
  }

  async function endOf(job: Job): Promise<boolean> {
    const ended = job.ended.then(
      () => true,
      () => true,
    );
    return (await inTime(ended, patienceMs)) === true;
  }

  async function answer<T>(key: string, job: Job): Promise<WorkAnswer<T>> {
    if (!(await endOf(job))) return { kind: 'at work', progress: job.progress };
    if (jobs.get(key) === job) jobs.delete(key);
    return { kind: 'done', value: (await job.ended) as T };
  }

  const known = (key: string, name: TaskName): Job | null => {
    forgetOld();
    const job = jobs.get(key);
    if (job && job.name !== name) throw new Error(`under ${key} ${job.name} was begun, and ${name} is asked for`);
    return job ?? null;
  };

  return {
    patienceMs,
    ask: (key, name, input) => answer(key, known(key, name) ?? begin(key, name, input)),
    act: (key, name, input) => {
      const job = known(key, name);
      return answer(key, job?.endedAt === null ? job : begin(key, name, input));
    },
    fetch: async (key, name) => {
      const job = known(key, name);
      return job && answer(key, job);
    },
    finish: async <N extends TaskName>(name: N, input: TaskInput<N>) =>
      (await run(name, input, () => undefined)) as TaskOutput<N>,
    close: async () => {
      closing = true;
      for (const go of queue.splice(0)) go();
      await Promise.all([...places].map(({ thread }) => thread.stop()));
      await Promise.allSettled([...jobs.values()].map(({ ended }) => ended));
      for (const { idle } of places) if (idle) clearTimeout(idle);
    },
  };
}
