import type { Register } from '../register/database.ts';
import type { Clock } from './clock.ts';

/** What a long task works with. */
export interface TaskContext {
  readonly register: Register;
  readonly now: Clock;
  /** Told now and then: how many of how many are done. */
  readonly onProgress: (done: number, total: number) => void;
}
