import type { RegisterDb } from './record-store.ts';

/**
 * Does some work in one transaction: that of the caller where one is open already, else one of its own. A caller's transaction
 * is the caller's to end: whoever gets back that nothing could be stored must leave no trace of what was begun.
 */
export const inTransaction = <R>(db: RegisterDb, work: (tx: RegisterDb) => Promise<R>): Promise<R> =>
  db.isTransaction ? work(db) : db.transaction().execute(work);

/** Reads in one transaction, that of the caller where one is open already: all of it as the register was at one moment, with no lock taken. */
export const inSnapshot = <R>(db: RegisterDb, read: (tx: RegisterDb) => Promise<R>): Promise<R> =>
  db.isTransaction ? read(db) : db.transaction().setAccessMode('read only').execute(read);
