import type { Account } from '../../register/account-store.ts';
import type { Register } from '../../register/database.ts';
import { listOutbox } from '../../register/outbox.ts';
import { listRecords, readRecord } from '../../register/record-store.ts';
import { listVisits } from '../../register/visit-store.ts';
import { STATES_ON_SHEET } from '../../season/visit/day-sheet.ts';
import type { Clock } from '../../service/clock.ts';
import { officeToday } from '../../service/crew-sheets.ts';
import { addDays } from '../../units/calendar-day.ts';
import type { DocumentsListed } from './documents-page.tsx';

const MOST_LETTERS = 30;
const MOST_MESSAGES = 500;
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

/** What can be had by whoever is signed in: nothing of fences that are not theirs. */
export async function listDocuments(
  register: Register,
  by: {
    readonly account: Account;
    readonly visible: readonly string[] | null;
    readonly asked: string;
    readonly now: Clock;
  },
): Promise<DocumentsListed> {
  const { account, visible, asked, now } = by;
  const { role } = account;
  const isOffice = role === 'office';
  const sites = role === 'crew' ? [] : await listRecords(register.db, 'sites');
  const letters = isOffice
    ? (await listOutbox(register, { limit: MOST_MESSAGES })).filter(({ channel }) => channel === 'letter')
    : [];
  return {
    role,
    asked,
    fence: await fenceAsked(register, asked, visible),
    sites: sites.filter(({ ref }) => visible === null || visible.includes(ref)).map(({ ref, name }) => ({ ref, name })),
    owners: isOffice ? (await listRecords(register.db, 'owners')).map(({ ref, name }) => ({ ref, name })) : [],
    letters: letters.slice(0, MOST_LETTERS).map(({ id, ownerName, subject }) => ({ id, ownerName, subject })),
    sheets: role === 'board' ? [] : await sheetsAhead(register, now, account.crewRef),
  };
}
