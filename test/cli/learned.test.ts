import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../src/decay/decay-rate.ts';
import { openRegister } from '../../src/register/database.ts';
import type { LearnedCell } from '../../src/service/learn-register.ts';
import { DAYS_PER_YEAR, dayNumber } from '../../src/units/calendar-day.ts';
import { command } from './command-line.ts';

const READ_ON = '2026-05-12';
const CLIMATE = { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 } as const;
/** Posts of a fence scatter; these three do so evenly. */
const SCATTER = [-0.5, 0, 0.5];

const refOf = (index: number): string => `RF-${String(index + 1).padStart(2, '0')}`;
const builtOf = (index: number): string => `${2004 + (index % 8)}-04-15`;

/** CSV files of fences of ground-contact wood that all rot twice as fast as published, more of them that nobody read, by the day they were built, and two of other wood and soil. */
function files(fences: number, unread: readonly string[]): Readonly<Record<string, string>> {
  const rows = Array.from({ length: fences }, (_, index) => index);
  const fenceRow = (ref: string, site: string, treatment: string, built: string): string =>
    `${ref},${site},reed,solid-board,72,80,8,lane,return,24,return,24,4x4,southern-pine,no-2,${treatment},${built},24,concrete,9`;
  const readings = rows.flatMap((index) => {
    const years = (dayNumber(READ_ON) - dayNumber(builtOf(index))) / DAYS_PER_YEAR;
    const own = 0.2 * Math.sin(index * 2.4);
    return SCATTER.map((scatter, post) => {
      const rate = 2 * medianDecayRate('ground-contact', CLIMATE) * Math.exp(own + scatter);
      return `I-${refOf(index)},${post + 3},${Math.min(44, decayDepth(years, rate)).toFixed(2)},yes`;
    });
  });
  return {
    'owners.csv': 'ref,name,kind,channel,email\nreed,Reed Hollow Association,association,mail,board@example.org\n',
    'climate-zones.csv':
      'ref,name,rain_mm,mean_temperature_c,dry_months,source\nwarm,Warm coast,1600,19.5,0,invented\nplain,Plain,700,9,0,invented\n',
    'sites.csv': [
      'ref,name,place,time_zone,climate_zone,exposure,soil_class,wind_kind,wind_basis,design_gust_mph,return_period_years,wind_source',
      'hollow,Reed Hollow,"Reedham, Texas",America/Chicago,warm,B,medium-sand,map,ultimate,105,300,invented',
      'upland,Reed Upland,"Reedham, Texas",America/Chicago,plain,B,firm-clay,map,ultimate,105,300,invented',
      '',
    ].join('\n'),
    'fences.csv': [
      'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,end_a,end_a_return_ft,end_b,end_b_return_ft,section,species,grade,treatment_class,installed,embedment_in,footing,footing_diameter_in',
      ...rows.map((index) => fenceRow(refOf(index), 'hollow', 'ground-contact', builtOf(index))),
      ...unread.map((built, index) => fenceRow(`NR-0${index + 1}`, 'hollow', 'ground-contact', built)),
      fenceRow('UP-01', 'upland', 'ground-contact', '2010-04-15'),
      fenceRow('UP-02', 'hollow', 'heavy-duty', '2010-04-15'),
      '',
    ].join('\n'),
    'inspections.csv': `ref,fence,day,inspector,method\n${rows.map((index) => `I-${refOf(index)},${refOf(index)},${READ_ON},Tobin Astley,awl-or-probe\n`).join('')}`,
    'readings.csv': `inspection,post,depth_mm,sure\n${readings.join('\n')}\n`,
  };
}

/** A folder with a register into which these fences were imported. */
async function importedFolder(fences: number, unread: readonly string[] = []): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'learned-'));
  const written = Object.entries(files(fences, unread)).map(([name, text]) => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  });
  const { code, err } = await command(folder, ['import', ...written]);
  if (code !== 0) throw new Error(err);
  return folder;
}

async function onRegister<T>(
  folder: string,
  work: (db: Awaited<ReturnType<typeof openRegister>>['db']) => Promise<T>,
): Promise<T> {
  const register = await openRegister(join(folder, 'register.sqlite'));
  try {
    return await work(register.db);
  } finally {
    await register.close();
  }
}

/** What the sweep stored of each fence: the hash of its inputs and the bytes of its forecast. */
const storedForecasts = (folder: string) =>
  onRegister(folder, (db) =>
    db.selectFrom('forecasts').select(['fence_ref', 'input_hash', 'detail']).orderBy('fence_ref').execute(),
  );

interface Preview {
  readonly fences: readonly string[];
  readonly standings: readonly {
    readonly ref: string;
    readonly of: string;
    readonly from: string;
    readonly to: string;
  }[];
  readonly notices: readonly { readonly ref: string; readonly ownerRef: string; readonly matter: string }[];
}

const standings = (folder: string): Promise<ReadonlyMap<string, string>> =>
  onRegister(folder, async (db) => {
    const rows = await db.selectFrom('forecasts').select(['fence_ref', 'standing']).orderBy('fence_ref').execute();
    return new Map(rows.map((row) => [row.fence_ref, row.standing]));
  });

const notices = (folder: string): Promise<readonly string[]> =>
  onRegister(folder, async (db) => {
    const rows = await db.selectFrom('notices').select(['fence_ref', 'owner_ref', 'matter']).execute();
    return rows.map((row) => `${row.fence_ref} ${row.owner_ref} ${row.matter}`);
  });

const cellsOf = async (folder: string): Promise<readonly LearnedCell[]> => {
  const { out } = await command(folder, ['learned', '--json']);
  return (JSON.parse(out) as { cells: readonly LearnedCell[] }).cells;
};

describe('a register of fifteen fences that all rot twice as fast as published', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await importedFolder(15);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('learns it, forecasts with it once it is accepted, and gives the old bytes back once that is taken back', async () => {
    expect((await command(folder, ['sweep'])).code).toBe(0);
    const before = await storedForecasts(folder);
    expect(before).toHaveLength(17);

    const [cell, ...others] = await cellsOf(folder);
    expect(others).toEqual([]);
    expect(cell).toMatchObject({
      key: 'ground-contact/5',
      fences: 15,
      readings: 45,
      state: 'can be accepted',
      held: null,
    });
    expect(Math.exp(cell?.logShift ?? 0)).toBeGreaterThan(1.3);
    expect(Math.exp(cell?.low ?? 0)).toBeLessThan(2);
    expect(Math.exp(cell?.high ?? 0)).toBeGreaterThan(2);

    // looking changes nothing
    expect((await command(folder, ['sweep'])).out).toMatch(/^0 forecast, 17 unchanged/);

    const accepted = await command(folder, ['learned', 'accept', '--by', 'Nell Ardmore', '--note', 'spring round']);
    expect(accepted.code).toBe(0);
    expect(accepted.out).toMatch(
      /^Accepted as version 1 by Nell Ardmore:\n {2}rot pace of sawn southern pine, ground contact \(UC4A\) in climate band 5 \(ground-contact\/5\): [12]\.\d\d \(/,
    );
    expect(accepted.out).toContain('The next sweep forecasts 15 fences anew: RF-01, RF-02,');
    expect((await command(folder, ['sweep'])).out).toMatch(/^15 forecast, 2 unchanged, 0 failed/);
    const learned = await storedForecasts(folder);
    for (const [index, row] of learned.entries()) {
      const concerned = row.fence_ref.startsWith('RF-');
      expect(row.detail !== before[index]?.detail).toBe(concerned);
      expect(row.input_hash !== before[index]?.input_hash).toBe(concerned);
    }

    const shown = await command(folder, ['learned']);
    expect(shown.out).toMatch(
      /ground contact \(UC4A\) +5 +1\.00 \(0\.50–2\.01\) +\d\.\d\d \(.+ in force: 15 fences, 45 readings +ground-contact\/5$/m,
    );
    expect(shown.out).toContain('Version 1 is in force: accepted by Nell Ardmore on 2026-11-24.');
    const again = await command(folder, ['learned', 'accept', '--by', 'Nell Ardmore']);
    expect(again.code).toBe(3);
    expect(again.err).toMatch(
      /ground contact \(UC4A\) in climate band 5: in force already.*\nNothing was accepted\. Version 1 stays/,
    );

    const reverted = await command(folder, ['learned', 'revert', '--by', 'Tobin Astley']);
    expect(reverted.out).toMatch(/^Version 1 was taken back by Tobin Astley\. The published values hold again\.\n/);
    expect(reverted.out).toContain('forecasts 15 fences anew');
    expect((await command(folder, ['sweep'])).out).toMatch(/^15 forecast, 2 unchanged, 0 failed/);
    expect(await storedForecasts(folder)).toEqual(before);

    const history = await command(folder, ['learned', 'history']);
    expect(history.out).toMatch(
      /^1 {2}2026-11-24 12:00 UTC, Nell Ardmore accepted \(taken back by 2\): spring round\n/,
    );
    expect(history.out).toMatch(/^2 {2}2026-11-24 12:00 UTC, Tobin Astley took version 1 back$/m);
    const twice = await command(folder, ['learned', 'revert', '--by', 'Tobin Astley']);
    expect([twice.code, twice.err]).toEqual([3, expect.stringContaining('nothing is in force')]);
  });
});

describe('a dry run', () => {
  it('says which standings change and who gets a notice, as the next sweep finds them, and changes nothing', async () => {
    const folder = await importedFolder(10, ['2012-04-15', '2015-04-15', '2018-04-15', '2021-04-15', '2024-04-15']);
    try {
      expect((await command(folder, ['sweep'])).code).toBe(0);
      const standingsBefore = await standings(folder);
      const noticesBefore = await notices(folder);
      const accept = ['learned', 'accept', '--by', 'Nell Ardmore'];
      const planned = await command(folder, [...accept, '--dry-run', '--json']);
      const preview = JSON.parse(planned.out) as Preview;
      expect(preview).toMatchObject({ dryRun: true, wouldAccept: { number: 1 }, unread: [] });
      expect(preview.fences).toHaveLength(15);
      expect(JSON.parse((await command(folder, ['learned', 'history', '--json'])).out)).toEqual([]);
      expect((await command(folder, ['sweep'])).out).toMatch(/^0 forecast, 17 unchanged/);

      expect((await command(folder, accept)).code).toBe(0);
      expect((await command(folder, ['sweep'])).out).toMatch(/^15 forecast, 2 unchanged/);
      const changed = [...(await standings(folder))].filter(([ref, to]) => standingsBefore.get(ref) !== to);
      expect(preview.standings.filter(({ of }) => of === 'fence')).toEqual(
        changed.map(([ref, to]) => ({ ref, of: 'fence', from: standingsBefore.get(ref), to })),
      );
      const written = (await notices(folder)).filter((notice) => !noticesBefore.includes(notice));
      expect(preview.notices.map(({ ref, ownerRef, matter }) => `${ref} ${ownerRef} ${matter}`).toSorted()).toEqual(
        written.toSorted(),
      );
      expect(changed.length).toBeGreaterThan(0);
      expect(written.length).toBeGreaterThan(0);

      const back = await command(folder, ['learned', 'revert', '--by', 'Tobin Astley', '--dry-run']);
      expect(back.out).toMatch(/^Would take version 1 back\. The published values would hold again\.\n/);
      expect(back.out).toContain('The next sweep would forecast 15 fences anew; the standing of ');
      expect(back.out).toMatch(/Nothing was changed: this was a dry run\.\n$/);
      expect(JSON.parse((await command(folder, ['learned', 'history', '--json'])).out)).toHaveLength(1);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }, 180_000);
});

describe('what cannot be accepted', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await importedFolder(3);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const nothingStored = async (): Promise<void> => {
    expect(JSON.parse((await command(folder, ['learned', 'history', '--json'])).out)).toEqual([]);
  };

  it('is shown with what is missing, and refused', async () => {
    const shown = await command(folder, ['learned']);
    expect(shown.out).toMatch(
      /ground contact \(UC4A\) +5 .+ published +too few: 3 of 10 fences, 9 of 30 readings +ground-contact\/5$/m,
    );
    expect(shown.out).toContain('A pace can be accepted from 10 fences and 30 readings on');
    expect(shown.out).toContain('Nothing of this is in force: forecasts use the published values.');
    for (const only of [[], ['--only', 'ground-contact/5']]) {
      const { code, err } = await command(folder, ['learned', 'accept', '--by', 'Nell', ...only]);
      expect(code).toBe(3);
      expect(err).toContain(
        'rot pace of sawn southern pine, ground contact (UC4A) in climate band 5, named ground-contact/5 (3 fences of 10 and 9 readings of 30 needed)',
      );
      expect(err).toContain('Nothing was accepted.');
    }
    await nothingStored();
  });

  it('is refused where it is not known, with what is', async () => {
    const { code, err } = await command(folder, ['learned', 'accept', '--by', 'Nell', '--only', 'ground-contact/4']);
    expect(code).toBe(3);
    expect(err).toMatch(
      /--only ground-contact\/4: the register has seen nothing of that; did you mean ground-contact\/5\?/,
    );
    await nothingStored();
  });

  it('is refused where nobody says who accepts', async () => {
    expect((await command(folder, ['learned', 'accept'])).code).toBe(2);
    const { code, err } = await command(folder, ['learned', 'accept', '--by', '  ']);
    expect([code, err]).toEqual([2, expect.stringContaining('--by')]);
    await nothingStored();
  });

  it('counts the fences on a terminal', async () => {
    const { err } = await command(folder, ['learned', '--json'], { errIsTerminal: true });
    expect(err).toContain('Learning: 5 of 5 fences');
  });

  it('says so where one fence cannot be read, and learns from the others', async () => {
    await onRegister(folder, (db) =>
      db
        .updateTable('readings')
        .set({ post: 99 })
        .where('inspection_ref', '=', 'I-RF-02')
        .where('post', '=', 3)
        .execute(),
    );
    const { code, err, out } = await command(folder, ['learned', '--json']);
    expect(code).toBe(5);
    expect(err).toMatch(/^Fence RF-02: .*post 99/);
    expect(JSON.parse(out)).toMatchObject({ cells: [{ fences: 2 }], unread: [{ ref: 'RF-02' }] });
  });

  it('shows nothing where nothing was read, and says how to enter it', async () => {
    const empty = await importedFolder(0);
    try {
      const { out } = await command(empty, ['learned']);
      expect(out).toContain('Nothing has been learned');
      const { code, err } = await command(empty, ['learned', 'accept', '--by', 'Nell']);
      expect([code, err]).toEqual([3, expect.stringContaining('there is nothing to accept')]);
    } finally {
      rmSync(empty, { recursive: true, force: true });
    }
  });
});

describe('footings of a register', () => {
  it('are learned apart from paces, and accepted by their own name', async () => {
    const folder = await importedFolder(3);
    try {
      const outcomes = [0, 1, 2].flatMap((index) => [
        `S-${index}-a,spring squall,${refOf(index)},2024-03-14,50,8,"4 5",leaned,invented,Reed Hollow board`,
        `S-${index}-b,spring squall,${refOf(index)},2024-03-14,50,8,all,stood,invented,Reed Hollow board`,
      ]);
      const path = join(folder, 'outcomes.csv');
      writeFileSync(
        path,
        `ref,storm,fence,day,gust_mph,gust_spread_percent,posts,result,gust_source,reported_by\n${outcomes.join('\n')}\n`,
      );
      const imported = await command(folder, ['import', path]);
      expect(imported.code, imported.err).toBe(0);
      expect(await cellsOf(folder)).toMatchObject([
        { key: 'ground-contact/5', state: 'too few' },
        { key: 'footing/sand', fences: 3, tried: 33, leaned: 6, state: 'can be accepted' },
      ]);
      const { code, out } = await command(folder, [
        'learned',
        'accept',
        '--by',
        'Nell',
        '--only',
        'footing/sand',
        '--json',
      ]);
      expect(code).toBe(0);
      // every fence in sand, whatever its wood; the one in clay keeps its forecast
      expect(JSON.parse(out)).toMatchObject({
        accepted: { number: 1, values: [{ key: 'footing/sand', leaned: 6, since: 1 }] },
        fencesForecastAnew: ['RF-01', 'RF-02', 'RF-03', 'UP-02'],
      });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
