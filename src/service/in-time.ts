import { setTimeout as wait } from 'node:timers/promises';

/**
 * What a promise gives, or null where it takes longer than somebody will wait; the work behind it goes on. Rejects where it fails in time.
 * @param patienceMs how long is waited [ms]; Infinity: until the end
 */
export async function inTime<T>(promise: Promise<T>, patienceMs: number): Promise<T | null> {
  if (patienceMs === Number.POSITIVE_INFINITY) return promise;
  const patience = new AbortController();
  try {
    return await Promise.race([promise, wait(patienceMs, null, { signal: patience.signal, ref: false })]);
  } finally {
    patience.abort();
  }
}
