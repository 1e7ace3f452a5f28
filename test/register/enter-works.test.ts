import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Works } from '../../src/forecast/works.ts';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { enterWorks } from '../../src/register/enter-works.ts';
import { loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { listRecords } from '../../src/register/record-store.ts';
import { changeCount } from '../../src/register/register-changes.ts';
import { worksRecord } from '../../src/register/works-from-facts.ts';
import { visitingRegister } from '../service/visiting-register.ts';

const NOW = '2027-01-12T18:00:00.000Z';
const BASE = { ref: 'V1-1-aaaaaa.001', day: '2027-01-11' };
const SLEEVE: Works = { ...BASE, kind: 'steel-sleeve', posts: [1, 3], momentCapacityNm: 4881 };

describe('works that are entered at one fence', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
  });
  afterEach(() => sample.remove());
  const enter = async (works: Works): Promise<readonly string[]> => {
    const facts = (await loadFenceFacts(sample.register, ['PR-02'])).get('PR-02')!;
    return enterWorks(sample.register.db, facts, [worksRecord('PR-02', works)], NOW);
  };
  const stored = async (): Promise<readonly string[]> =>
    (await listRecords(sample.register.db, 'works')).map(({ ref }) => ref);

  it('are stored, and the next sweep has something to do', async () => {
    const before = await changeCount(sample.register.db);
    expect(await enter(SLEEVE)).toEqual([]);
    expect(await stored()).toEqual(['V1-1-aaaaaa.001']);
    expect(await changeCount(sample.register.db)).toBeGreaterThan(before);
  });

  it('never take the place of others of the same ref', async () => {
    await enter(SLEEVE);
    expect(await enter({ ...SLEEVE, posts: [4] })).toEqual(['works V1-1-aaaaaa.001 are in the register already']);
    expect(await listRecords(sample.register.db, 'works')).toMatchObject([{ posts: [1, 3] }]);
  });

  it('are refused where they break their rules or the fence had no such posts', async () => {
    expect(await enter({ ...SLEEVE, momentCapacityNm: 1 })).toEqual([
      expect.stringMatching(/^steel-sleeve, momentCapacityNm: outside the allowed/) as string,
    ]);
    expect(await enter({ ...SLEEVE, posts: [40] })).toEqual([
      expect.stringMatching(/^steel-sleeve, posts: fence PR-02 had posts 1 to 11/) as string,
    ]);
    expect(await stored()).toEqual([]);
  });

  it('are refused where an inspection in the register saw posts that there would not have been', async () => {
    const files = [{ name: 'readings.csv', text: 'inspection,post,broken\nI-1,10,yes\n' }];
    const report = await importCsv(sample.register, files, {
      acceptValid: false,
      dryRun: false,
      today: '2026-11-24',
      now: NOW,
    });
    expect(report.faults).toEqual([]);
    const facts = (await loadFenceFacts(sample.register, ['PR-02'])).get('PR-02')!;
    const rebuilt: Works = {
      ...BASE,
      day: '2026-01-05',
      kind: 'rebuild',
      posts: 'all',
      wood: facts.wood,
      // six posts at most; post 10 was found broken in May
      postSpacingM: 6,
    };
    const faults = await enter(rebuilt);
    expect(faults).toContainEqual(
      expect.stringMatching(/^does not fit the reading of post 10 in inspection I-1/) as string,
    );
    expect(await stored()).toEqual([]);
  });
});
