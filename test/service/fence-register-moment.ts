import { DateTime } from 'luxon';

/** A moment in winter: season 1 of a June to November window is the next to open. */
export const JANUARY = DateTime.fromISO('2027-01-15T12:00:00Z', { zone: 'utc' });
