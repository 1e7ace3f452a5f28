import type { Register } from '../../register/database.ts';
import { namesByRef } from '../../register/record-names.ts';

/** Currency in which the works catalogue and the ways are priced, as everywhere in the program where none is named. */
export const CURRENCY = 'USD';

/** What sites and crews are called, by ref. */
export interface SeasonNames {
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crewNames: ReadonlyMap<string, string>;
}

/** The names of every site and crew. */
export async function namesOf({ db }: Register): Promise<SeasonNames> {
  return {
    siteNames: await namesByRef(db, 'sites'),
    crewNames: await namesByRef(db, 'crews'),
  };
}
