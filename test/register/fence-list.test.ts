import { beforeEach, describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { listFences } from '../../src/register/fence-list.ts';
import { EVERY_FENCE, type FenceQuery, SORT_KEYS, type SortKey } from '../../src/register/fence-query.ts';
import type { FenceRecord } from '../../src/register/fence-record.ts';
import { readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { NOW, soundRegister } from './made-up-register.ts';

const QUERY: FenceQuery = { ...EVERY_FENCE, sort: 'ref' };

/** Numbers of a sweep: standing, ends' standing, short season, snap, lean, gust [m/s], once in [a]. */
type Swept = readonly [
  standing: 'clear' | 'closing' | 'short' | 'short from new',
  ends: 'clear' | 'closing' | 'short' | null,
  shortSeason: string | null,
  snapMps: number,
  leanMps: number,
  gustMps: number,
  onceInYears: number | null,
];

const SWEPT: Readonly<Record<string, Swept>> = {
  'CT-1': ['clear', 'clear', null, 60, 30, 45, 900],
  'CT-2': ['short', 'short', '2027', 40, 25, 45, 20],
  'CT-10': ['closing', null, '2028', 46, 28, 45, null],
  'CT-11': ['short from new', 'closing', '2026', 38, 20, 50, 12],
};

describe('the list of fences from the register', () => {
  let register: Register;
  const refs = async (query: Partial<FenceQuery>): Promise<readonly string[]> =>
    (await listFences(register, { ...QUERY, ...query })).rows.map(({ ref }) => ref);

  beforeEach(async () => {
    register = await soundRegister();
    const { db } = register;
    const [model, owner, site] = await Promise.all([
      readRecord(db, 'fences', 'F-1'),
      readRecord(db, 'owners', 'oda'),
      readRecord(db, 'sites', 'quill'),
    ]);
    if (!model || !owner || !site) throw new Error('the made-up register lacks F-1, oda or quill');
    await upsertRecords(
      db,
      'owners',
      [{ ...owner, ref: 'nino', name: 'Íñigo NUÑEZ', email: 'inigo@example.org' }],
      NOW,
    );
    await upsertRecords(db, 'sites', [{ ...site, ref: 'yard', name: 'Yard 100%_east' }], NOW);
    const fence = (ref: string, changes: Partial<FenceRecord> = {}): FenceRecord => ({ ...model, ref, ...changes });
    const day = (installed: string) => ({ installedEarliest: installed, installedLatest: installed });
    await upsertRecords(
      db,
      'fences',
      [
        fence('CT-10', { secondOwnerRef: 'nino', ...day('2010-01-01') }),
        fence('CT-2', { siteRef: 'yard', ...day('2002-01-01') }),
        fence('CT-1', { ownerRef: 'nino', treatmentClass: 'heavy-duty', ...day('2001-01-01') }),
        fence('CT-11', day('2011-01-01')),
        fence('ct-3', day('2003-01-01')),
      ],
      NOW,
    );
    const { id } = await db
      .insertInto('sweeps')
      .values({
        as_of: NOW,
        model_version: 'made up',
        settings: '{}',
        state: 'finished',
        started_at: NOW,
        finished_at: NOW,
        checkpoint_ref: null,
        change_count: null,
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    for (const [ref, [standing, ends, short, snap, lean, gust, once]] of Object.entries(SWEPT)) {
      await db
        .insertInto('forecasts')
        .values({
          fence_ref: ref,
          sweep_id: id,
          input_hash: 'made up',
          model_version: 'made up',
          computed_at: NOW,
          season_one: '2027',
          generation: '',
          standing,
          ends_standing: ends,
          short_season: short,
          ends_short_season: null,
          snap_mps: snap,
          lean_mps: lean,
          ends_snap_mps: null,
          design_gust_mps: gust,
          once_in_years: once,
          p_short: null,
          told_marks: '[]',
          told_findings: '[]',
          told_works: null,
          detail: '',
        })
        .execute();
    }
  });

  it('orders refs as people count, capitals among small letters', async () => {
    expect(await refs({})).toEqual(['CT-1', 'CT-2', 'ct-3', 'CT-10', 'CT-11', 'F-1', 'F-2']);
    expect(await refs({ descending: true })).toEqual(['F-2', 'F-1', 'CT-11', 'CT-10', 'ct-3', 'CT-2', 'CT-1']);
  });

  const sorts: readonly (readonly [SortKey, readonly string[]])[] = [
    ['standing', ['CT-11', 'CT-2', 'CT-10', 'CT-1']],
    ['ends', ['CT-2', 'CT-11', 'CT-1']],
    ['short', ['CT-11', 'CT-2', 'CT-10']],
    ['snap', ['CT-11', 'CT-2', 'CT-10', 'CT-1']],
    ['lean', ['CT-11', 'CT-2', 'CT-10', 'CT-1']],
    ['once', ['CT-11', 'CT-2', 'CT-1']],
  ];
  it.each(sorts)('orders by %s, and puts what has no value last both ways', async (sort, ordered) => {
    const up = await refs({ sort });
    const down = await refs({ sort, descending: true });
    expect(up.slice(0, ordered.length)).toEqual(ordered);
    expect(down.slice(0, ordered.length)).toEqual(ordered.toReversed());
    expect(up.slice(ordered.length).toSorted()).toEqual(down.slice(ordered.length).toSorted());
    expect(up).toHaveLength(7);
  });

  it('orders by gust, the weakest against it first among equals', async () => {
    expect(await refs({ sort: 'gust' })).toEqual(['CT-2', 'CT-10', 'CT-1', 'CT-11', 'ct-3', 'F-1', 'F-2']);
  });

  it('orders by install day, treatment, site and owner', async () => {
    expect((await refs({ sort: 'installed' })).slice(0, 4)).toEqual(['CT-1', 'CT-2', 'ct-3', 'F-2']);
    expect((await refs({ sort: 'treatment' })).slice(0, 1)).toEqual(['F-2']);
    expect((await refs({ sort: 'treatment', descending: true })).slice(0, 1)).toEqual(['CT-1']);
    expect((await refs({ sort: 'site' })).at(-1)).toBe('CT-2');
    expect((await refs({ sort: 'owner' }))[0]).toBe('CT-1');
    expect((await refs({ sort: 'owner' })).at(-1)).toBe('F-2');
  });

  it('knows every column by which it can be ordered', async () => {
    for (const sort of SORT_KEYS) expect(await refs({ sort }), sort).toHaveLength(7);
  });

  it('finds a first and a second owner, whatever the case, also outside ASCII', async () => {
    for (const text of ['NUÑEZ', 'nuñez', 'íñigo', 'Nun\u0303ez']) {
      expect(await refs({ text }), text).toEqual(['CT-1', 'CT-10']);
    }
    const { rows } = await listFences(register, { ...QUERY, text: 'CT-10' });
    expect(rows[0]).toMatchObject({ ownerName: 'Oda Marlowe', secondOwnerName: 'Íñigo NUÑEZ' });
  });

  it('takes the wildcards of its database as letters', async () => {
    expect(await refs({ text: '100%_E' })).toEqual(['CT-2']);
    expect(await refs({ text: '%' })).toEqual(['CT-2']);
    expect(await refs({ text: 'CT_1' })).toEqual([]);
    expect(await refs({ text: '\\' })).toEqual([]);
  });

  it('narrows by site, by standing and by the words of a treatment', async () => {
    expect(await refs({ siteRef: 'yard' })).toEqual(['CT-2']);
    expect(await refs({ standing: 'short from new' })).toEqual(['CT-11']);
    expect(await refs({ text: 'ABOVE-ground' })).toEqual(['F-2']);
  });

  it('counts standings and what was not swept, and leaves the numbers of those open', async () => {
    const page = await listFences(register, { ...QUERY, text: 'ct-3' });
    expect(page).toMatchObject({ found: 1, total: 7, unswept: 3, pages: 1 });
    expect(page.counts).toEqual({ clear: 1, closing: 1, short: 1, 'short from new': 1 });
    expect(page.rows[0]?.swept).toBeNull();
  });

  it('gives fifty a page, none twice, and the last page for one past the end', async () => {
    const model = await readRecord(register.db, 'fences', 'CT-1');
    if (!model) throw new Error('CT-1 is gone');
    const copies = Array.from({ length: 110 }, (_, index) => ({ ...model, ref: `Z-${index}` }));
    await upsertRecords(register.db, 'fences', copies, NOW);
    const pages = await Promise.all([1, 2, 3].map((page) => refs({ text: 'z-', page })));
    expect(pages.map(({ length }) => length)).toEqual([50, 50, 10]);
    expect(pages.flat()).toEqual(copies.map(({ ref }) => ref));
    const beyond = await listFences(register, { ...QUERY, text: 'z-', page: 9 });
    expect([beyond.page, beyond.pages, beyond.found]).toEqual([3, 3, 110]);
  });
});
