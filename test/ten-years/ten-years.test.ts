import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { loadFenceParties } from '../../src/register/fence-parties-store.ts';
import { listOutbox, type OutboxEntry } from '../../src/register/outbox.ts';
import { beyondRules, type EnteredWorks, late, mostAllowed, untold, visitFaults } from './check-years.ts';
import type { NoticeRecord } from './notice-record.ts';
import { noticeRecords } from './notice-record.ts';
import type { SeenChange } from './simulate-years.ts';
import { FIRST_NIGHT, simulateYears } from './simulate-years.ts';
import { enteredWorks, type SeenVisitChange, visitChanges } from './visit-acts.ts';

const YEARS = 2;
/** Two owners of the demo, and a third who shares a fence and gets letters: twelve fences in three storm seasons. */
const OWNERS = ['orrowby', 'tordesol'];
const END = FIRST_NIGHT.plus({ years: YEARS }).toISO() ?? '';

describe('two years of nights over some owners of the demo', () => {
  let records: readonly NoticeRecord[];
  let seen: readonly SeenChange[];
  let entered: EnteredWorks;
  let visits: readonly SeenVisitChange[];
  let officeMails: readonly OutboxEntry[];
  let owners: ReadonlyMap<string, readonly string[]>;

  beforeAll(async () => {
    const folder = mkdtempSync(join(tmpdir(), 'stormpale-years-'));
    const register = await openRegister(join(folder, 'register.sqlite'));
    seen = await simulateYears(register, { years: YEARS, mailFolder: join(folder, 'mail'), owners: OWNERS });
    records = await noticeRecords(register);
    entered = await enteredWorks(register, FIRST_NIGHT.toISODate() ?? '');
    visits = await visitChanges(register);
    officeMails = (await listOutbox(register, { limit: 9999 })).filter(({ ownerRef }) => ownerRef === null);
    const parties = await loadFenceParties(register, [...new Set(seen.map(({ fenceRef }) => fenceRef))]);
    owners = new Map([...parties].map(([ref, place]) => [ref, place.owners.map((owner) => owner.ref)]));
    await register.close();
    rmSync(folder, { recursive: true, force: true });
  }, 900_000);
  const ownersOf = (ref: string): readonly string[] => owners.get(ref) ?? [];

  it('tells no owner more often than the rule of a matter allows', () => {
    expect(records.length).toBeGreaterThan(20);
    expect(beyondRules(records, YEARS, entered)).toEqual([]);
  });

  it('decides every standing that worsened and every mark crossed in the sweep that stored it', () => {
    expect(seen.length).toBeGreaterThan(5);
    expect(untold(seen, records, ownersOf)).toEqual([]);
  });

  it('sends everything within a day, or has it held by a rule that is named', () => {
    expect(late(records, END)).toEqual([]);
    expect(new Set(records.map(({ held }) => held))).toEqual(new Set([null, 'first sweep', 'matter']));
    // a reminder that was held until its season had opened, or the fence was mended, is not sent any more
    const reasons = records.filter(({ held }) => held === 'matter').map(({ voidReason }) => voidReason);
    const known = [null, 'the season it reminded of has opened'];
    expect(reasons.filter((reason) => !known.includes(reason) && !reason?.startsWith('it is no longer so'))).toEqual(
      [],
    );
    expect(new Set(records.map(({ channel }) => channel))).toEqual(new Set([null, 'mail', 'letter']));
  });

  it('reminds each year of what is short, and tells of the broken post at once', () => {
    expect(records.filter(({ matter }) => matter === 'reminder').length).toBeGreaterThan(1);
    const [broken] = records.filter(({ matter, held }) => matter === 'dangerous' && held === null);
    expect(broken?.fenceRef).toBe('PF-03');
    expect(broken?.occasion).toContain('broken 4');
    const works = records.filter(({ matter }) => matter === 'works done');
    expect(works.filter(({ occasion }) => occasion.includes('TY-'))).toHaveLength(2);
  });

  it('queues every change of a visit with the change, once, and mails the office only where something is new', () => {
    expect(visits.length).toBeGreaterThan(5);
    expect(visitFaults(visits, records)).toEqual([]);
    const matters = new Set(records.map(({ matter }) => matter));
    for (const matter of ['visit proposed', 'visit confirmed']) expect(matters).toContain(matter);
    expect(officeMails.length).toBeGreaterThan(0);
    const days = officeMails.map(({ createdAt }) => createdAt.slice(0, 10));
    expect(new Set(days).size).toBe(days.length);
    expect(officeMails.length).toBeLessThan(YEARS * 60);
    // and would see one that was lost, and one told twice
    const lost = records.filter(({ visitUid }) => visitUid !== visits[0]?.uid);
    expect(visitFaults(visits, lost).length).toBeGreaterThan(0);
    const [first] = records.filter(({ visitUid, voidReason }) => visitUid !== null && voidReason === null);
    expect(visitFaults(visits, [...records, first as NoticeRecord])).toHaveLength(1);
  });

  it('would see a notice too many, one that was lost and one that was late', () => {
    const [one] = records.filter(({ matter, voidReason }) => matter === 'reminder' && voidReason === null);
    expect(beyondRules([...records, one as NoticeRecord], YEARS, entered)).toHaveLength(1);
    const told = records.filter(({ sweepId }) => sweepId !== seen[0]?.sweepId);
    expect(untold(seen, told, ownersOf).length).toBeGreaterThan(0);
    const lost = { ...(one as NoticeRecord), sentAt: null, writtenAt: null };
    expect(late([lost], END)).toHaveLength(1);
    expect(mostAllowed('no matter', 'PF-03', 9, entered)).toBe(0);
  });
});
