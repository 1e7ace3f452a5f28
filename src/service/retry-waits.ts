/** Waits before the next try of one message [min]: growing, then every eight hours. */
const MESSAGE_WAITS_MIN = [1, 5, 15, 60, 240, 480] as const;
/** A message that could not be handed over for so long is parked [h]. */
export const GIVE_UP_AFTER_HOURS = 120;
/** Waits before a mail server that could not be reached is tried again [min]. */
const SERVER_WAITS_MIN = [1, 2, 5, 10, 15] as const;

const nth = (waits: readonly number[], failures: number): number =>
  waits[Math.min(Math.max(failures, 1), waits.length) - 1] ?? 0;

/** Wait [min] after a message failed for now so many times, 1 or more. */
export const messageWaitMinutes = (failures: number): number => nth(MESSAGE_WAITS_MIN, failures);

/** Wait [min] after the mail server could not be reached so many times in a row, 1 or more. */
export const serverWaitMinutes = (failures: number): number => nth(SERVER_WAITS_MIN, failures);

/** The longest wait of one message [min]. */
export const LONGEST_MESSAGE_WAIT_MIN = Math.max(...MESSAGE_WAITS_MIN);

/** The longest wait for a mail server [min]. */
export const LONGEST_SERVER_WAIT_MIN = Math.max(...SERVER_WAITS_MIN);
