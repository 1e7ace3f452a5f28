import type { Register } from '../../register/database.ts';
import { listRecords } from '../../register/record-store.ts';

/** What sites and crews are called, by ref. */
export interface SeasonNames {
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crewNames: ReadonlyMap<string, string>;
}

/** The names of every site and crew. */
export async function namesOf({ db }: Register): Promise<SeasonNames> {
  return {
    siteNames: new Map((await listRecords(db, 'sites')).map(({ ref, name }) => [ref, name])),
    crewNames: new Map((await listRecords(db, 'crews')).map(({ ref, name }) => [ref, name])),
  };
}
