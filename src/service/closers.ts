import type { Logger } from './log.ts';

/** What has been opened and how to close it again. */
export interface Closers {
  add(close: () => Promise<void>): void;
  /**
   * Closes everything, last opened first. One that fails is logged and keeps none of the others open; the first failure is
   * thrown once all have been tried.
   */
  closeAll(): Promise<void>;
}

/** Begins with nothing opened. */
export function createClosers(log: Logger): Closers {
  const closers: (() => Promise<void>)[] = [];
  return {
    add: (close) => void closers.push(close),
    closeAll: async () => {
      const failures: unknown[] = [];
      for (let close = closers.pop(); close; close = closers.pop()) {
        try {
          await close();
        } catch (error) {
          failures.push(error);
          log.error({ err: error }, 'a part of the service could not be closed; the others are');
        }
      }
      if (failures.length > 0) throw failures[0];
    },
  };
}
