import type { RegisterDb } from './record-store.ts';

/**
 * Does some work in one transaction: that of the caller where one is open already, else one of its own. A caller's transaction
 * is the caller's to end: whoever gets back that nothing could be stored must leave no trace of what was begun.
 */
export const inTransaction = <R>(db: RegisterDb, work: (tx: RegisterDb) => Promise<R>): Promise<R> =>
  db.isTransaction ? work(db) : db.transaction().execute(work);
