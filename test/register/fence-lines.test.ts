import { type RawBuilder, sql } from 'kysely';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { everyFence, listFences } from '../../src/register/fence-list.ts';
import { EVERY_FENCE, type FenceQuery, SORT_KEYS } from '../../src/register/fence-query.ts';
import { readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { countFencesByRegion } from '../../src/register/season-counts.ts';
import { NOW, soundRegister } from './made-up-register.ts';

const STANDINGS = ['short from new', 'short', 'closing', 'clear'] as const;
const TREATMENTS = ['ground-contact', 'heavy-duty', 'above-ground-stock'] as const;

/** A column of every line, kept and as it would be worked out anew. */
const lines = async ({ db }: Register, from: 'fence_lines' | 'fence_lines_now'): Promise<readonly unknown[]> =>
  (
    await sql`select ref, ref_key, site_ref, site_key, owner_ref, second_owner_ref, owner_key, folded, treatment_class,
      installed_earliest, built_from, built_to, standing_rank, ends_rank, short_season, short_year, snap_mps, lean_mps,
      design_gust_mps, once_in_years, worst, tie from ${sql.table(from)} order by ref`.execute(db)
  ).rows;

const standings = async ({ db }: Register): Promise<readonly unknown[]> =>
  (
    await sql`select site_ref, standing_rank, ends_rank, fences from site_standings where fences > 0 order by 1, 2, 3`.execute(
      db,
    )
  ).rows;
const standingsAnew = async ({ db }: Register): Promise<readonly unknown[]> =>
  (
    await sql`select site_ref, coalesce(standing_rank, 4) as standing_rank, coalesce(ends_rank, 4) as ends_rank,
      count(*) as fences from fence_lines_now group by 1, 2, 3 order by 1, 2, 3`.execute(db)
  ).rows;

const SHORT = sql`('short', 'short from new')`;
/** Fences by region, counted from records and forecasts: short or closing at the line posts or at the ends. */
const COUNTED_PLAINLY = sql`
  select count(*) as fences,
    coalesce(sum(standing in ${SHORT} or coalesce(ends_standing, '') in ${SHORT}), 0) as short,
    coalesce(sum(standing not in ${SHORT} and coalesce(ends_standing, '') not in ${SHORT}
      and 'closing' in (standing, coalesce(ends_standing, ''))), 0) as closing,
    sum(standing is null) as unswept
  from fences join sites on sites.ref = fences.site_ref left join forecasts on forecasts.fence_ref = fences.ref
  group by sites.region, sites.season_opens, sites.season_closes order by sites.region`;

const inAll = async ({ db }: Register, statement: RawBuilder<unknown>): Promise<readonly unknown[]> =>
  (await statement.execute(db)).rows;

async function sweepOf({ db }: Register): Promise<number> {
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
  return id;
}

/** A forecast of the n-th fence: standings, speeds and short seasons in turn. */
const forecastOf = (ref: string, n: number, sweepId: number) => ({
  fence_ref: ref,
  sweep_id: sweepId,
  input_hash: 'made up',
  model_version: 'made up',
  computed_at: NOW,
  season_one: '2027',
  generation: '',
  standing: STANDINGS[n % 4]!,
  ends_standing: n % 3 === 0 ? null : STANDINGS[(n + 1) % 4]!,
  short_season: n % 5 === 0 ? null : `${2027 + (n % 7)}`,
  ends_short_season: null,
  snap_mps: 20 + ((n * 37) % 41),
  lean_mps: 15 + ((n * 13) % 17),
  ends_snap_mps: null,
  design_gust_mps: 40 + (n % 3),
  once_in_years: n % 6 === 0 ? null : 5 + n,
  p_short: null,
  told_marks: '[]',
  told_findings: '[]',
  told_works: null,
  detail: '',
});

describe('the lines that lists are read from', () => {
  let register: Register;
  let sweepId: number;

  const kept = async (): Promise<void> => {
    expect(await lines(register, 'fence_lines')).toEqual(await lines(register, 'fence_lines_now'));
    expect(await standings(register)).toEqual(await standingsAnew(register));
    expect(
      await inAll(
        register,
        sql`select standing_rank, ends_rank, fences from register_standings where fences > 0 order by 1, 2`,
      ),
    ).toEqual(
      await inAll(
        register,
        sql`select coalesce(standing_rank, 4) as standing_rank, coalesce(ends_rank, 4) as ends_rank, count(*) as fences
          from fence_lines_now group by 1, 2 order by 1, 2`,
      ),
    );
    expect(
      (await countFencesByRegion(register, '2026-11-25')).map(({ fences, short, closing, unswept }) => ({
        fences,
        short,
        closing,
        unswept,
      })),
    ).toEqual(await inAll(register, COUNTED_PLAINLY));
    // the index of texts compares itself with the lines, and throws where they differ
    await sql`insert into fence_text (fence_text, rank) values ('integrity-check', 1)`.execute(register.db);
  };

  beforeEach(async () => {
    register = await soundRegister();
    sweepId = await sweepOf(register);
  });

  it('follow fences, sites, owners and forecasts through every change', async () => {
    const { db } = register;
    await kept();
    const model = (await readRecord(db, 'fences', 'F-1'))!;
    const site = (await readRecord(db, 'sites', 'quill'))!;
    await upsertRecords(db, 'sites', [{ ...site, ref: 'yard', name: 'East Yard' }], NOW);
    const copies = Array.from({ length: 9 }, (_, n) => ({ ...model, ref: `Z-${n}` }));
    await upsertRecords(db, 'fences', copies, NOW);
    await kept();
    for (const [n, { ref }] of copies.entries()) {
      await db
        .insertInto('forecasts')
        .values(forecastOf(ref, n, sweepId))
        .execute();
    }
    await kept();
    await upsertRecords(db, 'fences', [{ ...model, ref: 'Z-1', siteRef: 'yard', installedLatest: '2026-01-01' }], NOW);
    await kept();
    await upsertRecords(db, 'sites', [{ ...site, ref: 'yard', name: 'Östlicher Hof' }], NOW);
    const owner = (await readRecord(db, 'owners', model.ownerRef))!;
    await upsertRecords(db, 'owners', [{ ...owner, name: 'Renamed Ltd' }], NOW);
    await kept();
    await db
      .updateTable('forecasts')
      .set({ standing: 'closing', snap_mps: 33 })
      .where('fence_ref', '=', 'Z-2')
      .execute();
    await kept();
    await db.updateTable('forecasts').set({ ends_standing: 'short' }).where('fence_ref', '=', 'Z-5').execute();
    await kept();
    await db.deleteFrom('forecasts').where('fence_ref', '=', 'Z-3').execute();
    await kept();
    await db.deleteFrom('fences').where('ref', '=', 'Z-4').execute();
    await kept();
    expect(await lines(register, 'fence_lines')).toHaveLength(10);
  });

  it('order fences of which nothing sound is left by what is at stake', async () => {
    const { db } = register;
    const model = (await readRecord(db, 'fences', 'F-1'))!;
    const rotten = {
      'A-ordinary': { consequence: 'ordinary', runLengthM: 12 },
      'B-long': { consequence: 'ordinary', runLengthM: 60 },
      'C-animals': { consequence: 'livestock', runLengthM: 12 },
      'D-path': { consequence: 'over-footpath', runLengthM: 12 },
      'E-high': { consequence: 'other-high', runLengthM: 12 },
      'F-pool': { consequence: 'pool-barrier', runLengthM: 12 },
      'G-pool-long': { consequence: 'pool-barrier', runLengthM: 24 },
      'H-danger': { consequence: 'ordinary', runLengthM: 12 },
      'I-a-percent-more': { consequence: 'pool-barrier', runLengthM: 60 },
    } as const;
    const refs = Object.keys(rotten);
    await upsertRecords(
      db,
      'fences',
      Object.entries(rotten).map(([ref, of]) => ({ ...model, ref, ...of })),
      NOW,
    );
    for (const [n, ref] of refs.entries()) {
      // all under 5 mph, the ordinary one the weakest; the last holds some per cent of its gust, the dangerous one more than its gust
      const snap_mps = ref === 'I-a-percent-more' ? 3 : ref === 'H-danger' ? 66 : 0.2 + n * 0.2;
      await db
        .insertInto('forecasts')
        .values({ ...forecastOf(ref, 1, sweepId), snap_mps, design_gust_mps: 45 })
        .execute();
    }
    await db
      .insertInto('office_notices')
      .values({
        fence_ref: 'H-danger',
        matter: 'dangerous',
        occasion: 'broken 4',
        facts: '{}',
        sweep_id: sweepId,
        created_at: NOW,
        settled_at: null,
      })
      .execute();
    await kept();
    const worst = async (): Promise<readonly string[]> =>
      (await listFences(register, EVERY_FENCE)).rows.map(({ ref }) => ref).filter((ref) => refs.includes(ref));
    const byStake = ['G-pool-long', 'F-pool', 'E-high', 'D-path', 'C-animals', 'B-long', 'A-ordinary'];
    expect(await worst()).toEqual(['H-danger', ...byStake, 'I-a-percent-more']);
    const dangerous = await listFences(register, { ...EVERY_FENCE, dangerous: true });
    expect(dangerous.rows.map(({ ref, isDangerous }) => [ref, isDangerous])).toEqual([['H-danger', true]]);
    expect([dangerous.found, dangerous.dangerous]).toEqual([1, 1]);
    expect((await listFences(register, EVERY_FENCE, [])).dangerous).toBe(0);
    // dealt with: what it holds counts again
    await db.updateTable('office_notices').set({ settled_at: NOW }).execute();
    await kept();
    expect((await worst()).indexOf('H-danger')).toBe(8);
    expect((await listFences(register, EVERY_FENCE)).dangerous).toBe(0);
    // the record changes, no sweep in between
    await upsertRecords(db, 'fences', [{ ...model, ref: 'A-ordinary', ...rotten['F-pool'], runLengthM: 90 }], NOW);
    await kept();
    expect((await worst())[0]).toBe('A-ordinary');
  });

  describe('found, many or few', () => {
    const COUNT = 3_400;
    const order = (query: Partial<FenceQuery>): Promise<readonly string[]> => everyRef({ ...EVERY_FENCE, ...query });
    const everyRef = async (query: FenceQuery): Promise<readonly string[]> => {
      const refs: string[] = [];
      for await (const rows of everyFence(register, query)) refs.push(...rows.map(({ ref }) => ref));
      return refs;
    };

    beforeEach(async () => {
      const { db } = register;
      const model = (await readRecord(db, 'fences', 'F-1'))!;
      const copies = Array.from({ length: COUNT }, (_, n) => ({
        ...model,
        ref: `Z-${n}`,
        treatmentClass: TREATMENTS[n % 3]!,
        momentCapacityNm: null,
        installedEarliest: `${1990 + (n % 30)}-05-01`,
        installedLatest: `${1990 + (n % 30) + (n % 4)}-05-01`,
      }));
      await upsertRecords(db, 'fences', copies, NOW);
      const rows = copies.flatMap(({ ref }, n) => (n % 50 === 0 ? [] : [forecastOf(ref, n, sweepId)]));
      for (let from = 0; from < rows.length; from += 500) {
        await db
          .insertInto('forecasts')
          .values(rows.slice(from, from + 500))
          .execute();
      }
      await kept();
    });

    it('come page by page in the very order in which they come all at once, from either end', async () => {
      for (const sort of SORT_KEYS) {
        for (const descending of [false, true]) {
          const query = { ...EVERY_FENCE, sort, descending };
          const all = await order(query);
          expect(new Set(all).size, sort).toBe(COUNT + 2);
          for (const page of [1, 2, 34, 35, 68, 69]) {
            const { rows } = await listFences(register, { ...query, page });
            expect(
              rows.map(({ ref }) => ref),
              `${sort} ${descending} ${page}`,
            ).toEqual(all.slice((page - 1) * 50, page * 50));
          }
        }
      }
    });

    it('are the same whether they are few and sorted or many and met on the way', async () => {
      const wanted: readonly Partial<FenceQuery>[] = [
        { text: 'z-' },
        { text: 'z-3' },
        { text: 'z-12', treatmentClass: 'heavy-duty' },
        { text: '"quill' },
        { builtFrom: 1990, builtTo: 2030 },
        { text: 'z-', standing: 'short' },
        { endsStanding: 'clear' },
        { shortFrom: 2028, shortTo: 2030 },
        { anywhere: 'short' },
        { anywhere: 'closing', builtTo: 2000 },
        { builtFrom: 2001, builtTo: 2001 },
        { treatmentClass: 'heavy-duty', standing: 'closing' },
        { text: 'heavy', shortFrom: 2029 },
      ];
      const everything = await Promise.all(
        (['worst', 'short', 'ref'] as const).map(async (sort) => [sort, await order({ sort })] as const),
      );
      for (const narrowing of wanted) {
        const page = await listFences(register, { ...EVERY_FENCE, ...narrowing });
        for (const [sort, all] of everything) {
          const found = await order({ ...narrowing, sort });
          expect(found, JSON.stringify(narrowing)).toHaveLength(page.found);
          const kept = new Set(found);
          expect(found, `${sort} ${JSON.stringify(narrowing)}`).toEqual(all.filter((ref) => kept.has(ref)));
        }
      }
    });

    it('are those that a plain look at every record finds', async () => {
      const { db } = register;
      const plain = async (where: ReturnType<typeof sql<boolean>>): Promise<number> =>
        (
          await db
            .selectFrom('fences')
            .leftJoin('forecasts', 'forecasts.fence_ref', 'fences.ref')
            .select((eb) => eb.fn.countAll<number>().as('count'))
            .where(where)
            .executeTakeFirstOrThrow()
        ).count;
      const found = async (query: Partial<FenceQuery>): Promise<number> =>
        (await listFences(register, { ...EVERY_FENCE, ...query })).found;
      const short = sql<boolean>`(standing in ('short', 'short from new') or ends_standing in ('short', 'short from new'))`;
      expect(await found({ anywhere: 'short' })).toBe(await plain(short));
      const closing = sql<boolean>`not coalesce(${short}, false) and (standing = 'closing' or ends_standing = 'closing')`;
      expect(await found({ anywhere: 'closing' })).toBe(await plain(closing));
      expect((await listFences(register, EVERY_FENCE)).anywhere).toEqual({
        short: await plain(short),
        shortAtEndsAlone: await plain(sql<boolean>`${short} and standing in ('closing', 'clear')`),
        closing: await plain(closing),
      });
      expect(await found({ builtFrom: 2000, builtTo: 2004 })).toBe(
        await plain(sql<boolean>`installed_latest >= '2000' and installed_earliest < '2005'`),
      );
      expect(await found({ shortFrom: 2028, shortTo: 2029 })).toBe(
        await plain(sql<boolean>`short_season in ('2028', '2029')`),
      );
      expect(await found({ endsStanding: 'short', treatmentClass: 'ground-contact' })).toBe(
        await plain(sql<boolean>`ends_standing = 'short' and treatment_class = 'ground-contact'`),
      );
      expect(await found({ standing: 'clear' })).toBe(await plain(sql<boolean>`standing = 'clear'`));
    });
  });

  it('are walked along an index, never sorted, where many are found', async () => {
    const { db } = register;
    const plan = async (order: string, index: string): Promise<string> =>
      (
        await sql<{ detail: string }>`explain query plan select id from fence_lines indexed by ${sql.ref(index)}
          where treatment_class = 'ground-contact' order by ${sql.raw(order)} limit 50`.execute(db)
      ).rows
        .map(({ detail }) => detail)
        .join('; ');
    for (const order of [
      'snap_mps asc nulls last, tie asc, ref_key asc, id asc',
      'snap_mps desc nulls last, tie desc, ref_key desc, id desc',
      'snap_mps desc nulls first, tie desc, ref_key desc, id desc',
    ]) {
      const how = await plan(order, 'fence_lines_by_snap');
      expect(how, order).toContain('USING COVERING INDEX fence_lines_by_snap');
      expect(how, order).not.toContain('TEMP B-TREE');
    }
  });
});
