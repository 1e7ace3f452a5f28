import type { Register } from '../../register/database.ts';
import { namesByRef } from '../../register/record-names.ts';

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
