import type { Account } from '../../register/account-store.ts';
import type { Register } from '../../register/database.ts';
import { listFences } from '../../register/fence-list.ts';
import { EVERY_FENCE } from '../../register/fence-query.ts';
import { newestLetters } from '../../register/outbox-page.ts';
import { type RecordPage, recordPage } from '../../register/record-pages.ts';
import { listRecords, readRecord } from '../../register/record-store.ts';
import { listVisits } from '../../register/visit-store.ts';
import { STATES_ON_SHEET } from '../../season/visit/day-sheet.ts';
import type { Clock } from '../../service/clock.ts';
import { officeToday } from '../../service/crew-sheets.ts';
import { addDays } from '../../units/calendar-day.ts';
import type { DocumentsListed, PageOf } from './documents-page.tsx';

const MOST_LETTERS = 30;
const MOST_SHEETS = 30;

/** The next days on which crews have visits; of one crew where its ref is given. */
async function sheetsAhead(register: Register, now: Clock, crewRef: string | null): Promise<DocumentsListed['sheets']> {
  const { db } = register;
  const today = await officeToday(register, now);
  const names = new Map((await listRecords(db, 'crews')).map(({ ref, name }) => [ref, name]));
  const visits = await listVisits(db, {
    from: today,
    states: STATES_ON_SHEET,
    ...(crewRef === null ? {} : { crewRef }),
  });
  const days = new Set<string>();
  for (const { crewRef: crew, firstDay, lastDay } of visits) {
    for (let day = firstDay < today ? today : firstDay; day <= lastDay; day = addDays(day, 1))
      days.add(`${day} ${crew}`);
  }
  return [...days]
    .sort()
    .slice(0, MOST_SHEETS)
    .map((each) => {
      const [day = '', crew = ''] = each.split(/ (.*)/);
      return { day, crewRef: crew, crewName: names.get(crew) ?? crew };
    });
}

async function fenceAsked(
  { db }: Register,
  ref: string,
  visible: readonly string[] | null,
): Promise<DocumentsListed['fence']> {
  const fence = ref === '' ? null : await readRecord(db, 'fences', ref);
  if (!fence || (visible !== null && !visible.includes(fence.siteRef))) return null;
  const site = await readRecord(db, 'sites', fence.siteRef);
  return site && { ref, siteName: site.name, units: site.units };
}

/** What is asked of the page of documents. */
export interface DocumentsAsked {
  /** Text that fences, sites and owners are looked for by; empty for none. */
  readonly text: string;
  /** Ref of a fence whose documents are all wanted; empty for none. */
  readonly fence: string;
  /** Which page of each list, 1 the first. */
  readonly pages: Readonly<Record<'fences' | 'sites' | 'owners', number>>;
}

const paged = <T>(page: RecordPage<'sites'> | RecordPage<'owners'>, rows: readonly T[]): PageOf<T> => ({
  rows,
  found: page.found,
  page: page.page,
  pages: page.pages,
});

async function fencesFound(
  register: Register,
  { text, pages }: DocumentsAsked,
  visible: readonly string[] | null,
): Promise<DocumentsListed['fences']> {
  if (text === '') return { rows: [], found: 0, page: 1, pages: 1 };
  const query = { ...EVERY_FENCE, text, sort: 'ref', page: pages.fences } as const;
  const { rows, found, page, pages: count } = await listFences(register, query, visible);
  return { rows: rows.map(({ ref, siteName }) => ({ ref, siteName })), found, page, pages: count };
}

/** What can be had by whoever is signed in: nothing of fences that are not theirs. */
export async function listDocuments(
  register: Register,
  by: {
    readonly account: Account;
    readonly visible: readonly string[] | null;
    readonly asked: DocumentsAsked;
    readonly now: Clock;
  },
): Promise<DocumentsListed> {
  const { account, visible, asked, now } = by;
  const { role } = account;
  const { text, pages } = asked;
  const isOffice = role === 'office';
  const [sites, owners] = await Promise.all([
    role === 'crew' ? null : recordPage(register.db, 'sites', { text, page: pages.sites, among: visible }),
    isOffice ? recordPage(register.db, 'owners', { text, page: pages.owners }) : null,
  ]);
  return {
    role,
    text,
    asked: asked.fence,
    fence: await fenceAsked(register, asked.fence, visible),
    fences: await fencesFound(register, asked, visible),
    sites:
      sites &&
      paged(
        sites,
        sites.records.map(({ ref, name }) => ({ ref, name })),
      ),
    owners:
      owners &&
      paged(
        owners,
        owners.records.map(({ ref, name }) => ({ ref, name })),
      ),
    letters: isOffice && text === '' ? await newestLetters(register.db, MOST_LETTERS) : [],
    sheets: role === 'board' || text !== '' ? [] : await sheetsAhead(register, now, account.crewRef),
  };
}
