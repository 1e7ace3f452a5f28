import { Worker } from 'node:worker_threads';
import type { TaskInput, TaskName, TaskOutput } from './long-tasks.ts';

/** What a thread is told as it begins. */
export interface LongThreadSetting {
  readonly registerPath: string;
}

/** What a thread is asked to do. */
export interface LongThreadTask<N extends TaskName = TaskName> {
  readonly name: N;
  readonly input: TaskInput<N>;
  /** The moment at which it is done, ISO text in UTC. */
  readonly now: string;
}

/** How far a task has come, of rows or fences; a total of 0: it has not begun to count. */
export interface LongProgress {
  readonly done: number;
  readonly total: number;
}

/** What the thread tells. */
export type LongThreadMessage =
  | { readonly kind: 'progress'; readonly progress: LongProgress }
  | { readonly kind: 'done'; readonly output: unknown }
  | { readonly kind: 'failed'; readonly error: unknown };

/** A thread with a connection of its own that does one task after the other: pages never wait for it. */
export interface LongThread {
  /** Does a task; not while another one is at work. Rejects where it fails or the thread is ended. */
  run<N extends TaskName>(
    task: LongThreadTask<N>,
    onProgress: (progress: LongProgress) => void,
  ): Promise<TaskOutput<N>>;
  /** True once it has ended, by whatever cause: it takes no task any more. */
  isEnded(): boolean;
  /** Ends it at once; what a task had not committed is undone. */
  stop(): Promise<void>;
}

/** True where the program runs from its TypeScript source: the thread then begins by registering the loader. */
const fromSource = import.meta.url.endsWith('.ts');

function startWorker(setting: LongThreadSetting): Worker {
  const options = { workerData: setting, execArgv: [] };
  if (!fromSource) return new Worker(new URL('./long-work-worker.js', import.meta.url), options);
  const loader = import.meta.resolve('tsx/esm/api');
  const program = new URL('./long-work-worker.ts', import.meta.url).href;
  const begin = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(program)}); })`;
  return new Worker(begin, { ...options, eval: true });
}

/** Starts a thread; it waits for tasks. */
export function startLongThread(setting: LongThreadSetting): LongThread {
  const worker = startWorker(setting);
  let ended = false;
  let fail: (error: unknown) => void = () => undefined;
  worker.once('error', (error) => {
    ended = true;
    fail(error);
  });
  worker.once('exit', (code) => {
    ended = true;
    fail(new Error(`the thread for long work ended with code ${code} before its task was done`));
  });
  return {
    run: <N extends TaskName>(task: LongThreadTask<N>, onProgress: (progress: LongProgress) => void) =>
      new Promise<TaskOutput<N>>((resolve, reject) => {
        const hear = (message: LongThreadMessage): void => {
          if (message.kind === 'progress') onProgress(message.progress);
          else if (message.kind === 'done') resolve(message.output as TaskOutput<N>);
          else reject(message.error instanceof Error ? message.error : new Error(String(message.error)));
          if (message.kind !== 'progress') worker.off('message', hear);
        };
        fail = reject;
        worker.on('message', hear);
        worker.postMessage(task);
      }),
    isEnded: () => ended,
    stop: async () => {
      await worker.terminate();
    },
  };
}
