import { expect, it, onTestFinished } from 'vitest';
import { fenceSummaries, type StandingCounts, standingCounts } from '../../src/register/fence-summaries.ts';
import { recordNames, recordPage, usualUnits } from '../../src/register/record-pages.ts';
import { listRecords } from '../../src/register/record-store.ts';
import { sampleRegister } from '../web/sample-register.ts';

it('counts the standings of owners’ and sites’ fences as their fences have them, one by one', async () => {
  const { register, remove } = await sampleRegister({ swept: true });
  onTestFinished(remove);
  const { db } = register;
  const plain = (counts: ReadonlyMap<string, StandingCounts>) =>
    Object.fromEntries([...counts].map(([ref, of]) => [ref, Object.fromEntries(of)]));
  for (const kind of ['owners', 'sites'] as const) {
    const refs = (await listRecords(db, kind)).map(({ ref }) => ref);
    const of = kind === 'owners' ? { ownerRefs: refs } : { siteRefs: refs };
    const expected: Record<string, Record<string, number>> = {};
    for (const fence of await fenceSummaries(db, of)) {
      const parties = kind === 'sites' ? [fence.siteRef] : [fence.ownerRef, fence.secondOwnerRef ?? fence.ownerRef];
      for (const ref of new Set(parties)) {
        const counts = expected[ref] ?? {};
        const standing = String(fence.standing);
        expected[ref] = { ...counts, [standing]: (counts[standing] ?? 0) + 1 };
      }
    }
    expect(plain(await standingCounts(db, of))).toEqual(expected);
    expect(Object.keys(expected).length).toBeGreaterThan(1);
  }
});

it('gives names and units without reading whole records, and pages among some', async () => {
  const { register, remove } = await sampleRegister({ swept: false });
  onTestFinished(remove);
  const { db } = register;
  const sites = await listRecords(db, 'sites');
  expect(await recordNames(db, 'sites')).toEqual(sites.map(({ ref, name }) => ({ ref, name })));
  expect(await usualUnits(db)).toBe(sites[0]?.units);
  const among = await recordPage(db, 'sites', { text: '', page: 1, among: ['PELICAN'] });
  expect([among.total, among.records.map(({ ref }) => ref)]).toEqual([1, ['PELICAN']]);
  expect((await recordPage(db, 'sites', { text: 'skerry', page: 1, among: ['PELICAN'] })).found).toBe(0);
});
