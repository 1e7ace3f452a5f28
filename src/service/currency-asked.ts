import type { RegisterDb } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';

/** The currency in which amounts are named: the one asked for, or else that of the register's settings, as `USD`. */
export const currencyAsked = async (db: RegisterDb, asked: string | null | undefined): Promise<string> =>
  asked ?? (await readSettings(db)).currency;
