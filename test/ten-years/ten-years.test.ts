import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { loadFenceParties } from '../../src/register/fence-parties-store.ts';
import { beyondRules, late, mostAllowed, untold } from './check-years.ts';
import type { NoticeRecord } from './notice-record.ts';
import { noticeRecords } from './notice-record.ts';
import type { SeenChange } from './simulate-years.ts';
import { FIRST_NIGHT, simulateYears } from './simulate-years.ts';

const YEARS = 3;
/** Two owners of the demo, and a third who shares a fence and gets letters: twelve fences in three storm seasons. */
const OWNERS = ['orrowby', 'tordesol'];
const END = FIRST_NIGHT.plus({ years: YEARS }).toISO() ?? '';

describe('three years of nights over some owners of the demo', () => {
  let records: readonly NoticeRecord[];
  let seen: readonly SeenChange[];
  let owners: ReadonlyMap<string, readonly string[]>;

  beforeAll(async () => {
    const folder = mkdtempSync(join(tmpdir(), 'stormpale-years-'));
    const register = await openRegister(join(folder, 'register.sqlite'));
    seen = await simulateYears(register, { years: YEARS, mailFolder: join(folder, 'mail'), owners: OWNERS });
    records = await noticeRecords(register);
    const parties = await loadFenceParties(register, [...new Set(seen.map(({ fenceRef }) => fenceRef))]);
    owners = new Map([...parties].map(([ref, place]) => [ref, place.owners.map((owner) => owner.ref)]));
    await register.close();
    rmSync(folder, { recursive: true, force: true });
  }, 300_000);
  const ownersOf = (ref: string): readonly string[] => owners.get(ref) ?? [];

  it('tells no owner more often than the rule of a matter allows', () => {
    expect(records.length).toBeGreaterThan(20);
    expect(beyondRules(records, YEARS)).toEqual([]);
  });

  it('decides every standing that worsened and every mark crossed in the sweep that stored it', () => {
    expect(seen.length).toBeGreaterThan(5);
    expect(untold(seen, records, ownersOf)).toEqual([]);
  });

  it('sends everything within a day, or has it held by a rule that is named', () => {
    expect(late(records, END)).toEqual([]);
    expect(new Set(records.map(({ held }) => held))).toEqual(new Set([null, 'first sweep', 'matter']));
    // a reminder that was held until its season had opened is not sent any more
    const reasons = records.filter(({ held }) => held === 'matter').map(({ voidReason }) => voidReason);
    expect(new Set(reasons)).toEqual(new Set([null, 'the season it reminded of has opened']));
    expect(new Set(records.map(({ channel }) => channel))).toEqual(new Set([null, 'mail', 'letter']));
  });

  it('reminds each year of what is short, and tells of the broken post at once', () => {
    expect(records.filter(({ matter }) => matter === 'reminder').length).toBeGreaterThan(3);
    const [broken] = records.filter(({ matter, held }) => matter === 'dangerous' && held === null);
    expect(broken?.fenceRef).toBe('PF-03');
    expect(broken?.occasion).toContain('broken 4');
    expect(records.filter(({ matter }) => matter === 'works done')).toHaveLength(2);
  });

  it('would see a notice too many, one that was lost and one that was late', () => {
    const [one] = records.filter(({ matter, voidReason }) => matter === 'reminder' && voidReason === null);
    expect(beyondRules([...records, one as NoticeRecord], YEARS)).toHaveLength(1);
    const told = records.filter(({ sweepId }) => sweepId !== seen[0]?.sweepId);
    expect(untold(seen, told, ownersOf).length).toBeGreaterThan(0);
    const lost = { ...(one as NoticeRecord), sentAt: null, writtenAt: null };
    expect(late([lost], END)).toHaveLength(1);
    expect(mostAllowed('no matter', 'PF-03', 9)).toBe(0);
  });
});
