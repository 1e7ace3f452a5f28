import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import { forecastFence } from '../../src/forecast/forecast-fence.ts';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { forecastOf, loadStoredForecasts } from '../../src/register/forecast-store.ts';
import { loadUnwrittenNotices } from '../../src/register/notice-store.ts';
import { SweepClaimLost, takeSweepClaim } from '../../src/register/sweep-claim.ts';
import { newestSweep } from '../../src/register/sweep-store.ts';
import { addTextFunctions } from '../../src/register/text-order.ts';
import type { ForecastFunction } from '../../src/service/fence-to-judge.ts';
import { processStart } from '../../src/service/process-start.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import {
  at,
  changeFences,
  changeOwner,
  fenceRegister,
  forecastWith,
  JANUARY,
  manyFences,
  noticeLines,
  sweptBytes,
} from './fence-register.ts';

const CLEAR: Partial<FenceForecast> = {
  standing: 'clear',
  standingWithMargin: 'clear',
  shortSeason: null,
  marksCrossed: [],
};
const now = () => JANUARY;
/** One more day on the clock, so that a sweep is a new one. */
const day = (days: number) => () => JANUARY.plus({ days });

/** Changes a fence in a way that its forecast does not feel but its input hash does. */
const touch = (register: Parameters<typeof changeFences>[0], times: number) =>
  changeFences(register, [{ ref: 'F-000', trimmerGuards: 'no', yearlyTrimmerCutMm: times / 1000 }]);

describe('runSweep', () => {
  it('stores a forecast for every fence and one notice for each that is not clear', async () => {
    const register = await fenceRegister({ fences: manyFences(12) });
    const report = await runSweep(register, { now, chunkSize: 5 });
    expect(report).toMatchObject({
      kind: 'finished',
      resumed: false,
      failures: [],
      sweep: { computed: 12, failed: 0 },
    });
    const rows = await register.db.selectFrom('forecasts').selectAll().execute();
    expect(rows).toHaveLength(12);
    const lines = await noticeLines(register);
    expect(new Set(lines.map((line) => line.split(':')[0])).size).toBe(lines.length);
    for (const row of rows.filter((each) => each.standing !== 'clear')) {
      expect(lines).toContain(`${row.fence_ref}: ${row.standing}`);
    }
  });

  it('stores exactly what forecastFence returns', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    let made: FenceForecast | null = null;
    await runSweep(register, {
      now,
      forecast: (facts, year, settings) => {
        made = forecastFence(facts, year, settings);
        return made;
      },
    });
    const stored = (await loadStoredForecasts(register, ['F-000'])).get('F-000');
    expect(stored && forecastOf(stored)).toEqual(made);
  });

  it('gives no second notice and computes nothing when nothing changed', async () => {
    const register = await fenceRegister({ fences: manyFences(10) });
    await runSweep(register, { now });
    const before = await sweptBytes(register);
    const again = await runSweep(register, { now: day(1) });
    expect(again).toMatchObject({ kind: 'finished', sweep: { computed: 0, unchanged: 10, notices: 0 } });
    expect(await sweptBytes(register)).toBe(before);
  });

  it('stores the same bytes whatever the chunk size and the time of day', async () => {
    const plan = { fences: manyFences(9) };
    const whole = await fenceRegister(plan);
    const pieces = await fenceRegister(plan);
    await runSweep(whole, { now });
    await runSweep(pieces, { now: () => JANUARY.plus({ hours: 5 }), chunkSize: 2 });
    expect(await sweptBytes(pieces)).toBe(await sweptBytes(whole));
  });

  it('does not resume a sweep that a wrong clock began more than a day ahead', async () => {
    const register = await fenceRegister({ fences: manyFences(3) });
    const stop = new AbortController();
    const ahead = { now: day(400), chunkSize: 1, signal: stop.signal, onProgress: () => stop.abort() };
    expect(await runSweep(register, ahead)).toMatchObject({ kind: 'interrupted' });
    expect(await runSweep(register, { now })).toMatchObject({ kind: 'finished', resumed: false });
    const rows = await register.db.selectFrom('forecasts').select('season_one').execute();
    expect(new Set(rows.map((row) => row.season_one))).toEqual(new Set(['2027']));
  });

  it('leaves out a fence and an owner that are deleted while it computes', async () => {
    const register = await fenceRegister({ owners: [{}, { ref: 'BEA' }], fences: manyFences(3) });
    await changeFences(register, [{ ref: 'F-002', secondOwnerRef: 'BEA' }]);
    const other = new Sqlite(register.path);
    addTextFunctions(other);
    let deleted = false;
    const report = await runSweep(register, {
      now,
      forecast: (facts, year, settings) => {
        if (!deleted && facts.ref === 'F-002') {
          other.pragma('foreign_keys = on');
          other.exec(`delete from fences where ref = 'F-001';
            update fences set second_owner_ref = null where ref = 'F-002'; delete from owners where ref = 'BEA'`);
          deleted = true;
        }
        return forecastFence(facts, year, settings);
      },
    });
    other.close();
    expect(report).toMatchObject({ kind: 'finished', failures: [], sweep: { computed: 2, failed: 0 } });
  });

  it('recomputes everything when a setting changes', async () => {
    const register = await fenceRegister({ fences: manyFences(3) });
    await runSweep(register, { now });
    const settings = { standingReturnPeriodYears: 100, lookAheadSeasons: 2 };
    expect(await runSweep(register, { now: day(1), settings })).toMatchObject({ sweep: { computed: 3 } });
  });

  it('turns the season with the year: new labels, standings judged again, nothing told twice', async () => {
    const register = await fenceRegister({ fences: manyFences(6) });
    await runSweep(register, { now: () => at('2026-11-30T12:00:00Z') });
    const first = await noticeLines(register);
    const labels = async () =>
      new Set((await register.db.selectFrom('forecasts').select('season_one').execute()).map((row) => row.season_one));
    expect(await labels()).toEqual(new Set(['2026']));
    const turned = await runSweep(register, { now: () => at('2026-12-01T12:00:00Z') });
    expect(turned).toMatchObject({ sweep: { computed: 6 } });
    expect(await labels()).toEqual(new Set(['2027']));
    expect((await noticeLines(register)).slice(0, first.length)).toEqual(first);
    const keys = await noticeLines(register);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('takes the day at the site, not the day in UTC', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    // in New York it is still the last day of the season
    await runSweep(register, { now: () => at('2026-12-01T03:00:00Z') });
    expect((await loadStoredForecasts(register, ['F-000'])).get('F-000')?.seasonOne).toBe('2026');
  });

  it('repeats nothing when the clock goes back an hour over the turn of the season', async () => {
    const register = await fenceRegister({ fences: manyFences(8) });
    for (const instant of ['2026-12-01T05:30:00Z', '2026-12-01T04:30:00Z', '2026-12-01T05:30:00Z']) {
      await runSweep(register, { now: () => at(instant) });
    }
    const keys = await register.db.selectFrom('notices').select(['fence_ref', 'matter', 'occasion']).execute();
    expect(new Set(keys.map((key) => JSON.stringify(key))).size).toBe(keys.length);
    const lines = await noticeLines(register);
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('keeps the last forecast of a fence that cannot be forecast, reports it and goes on', async () => {
    const register = await fenceRegister({ fences: manyFences(4) });
    const failing: ForecastFunction = (facts, year, settings) => {
      if (facts.ref === 'F-002') throw new Error('post 99 is not in this run');
      return forecastFence(facts, year, settings);
    };
    const report = await runSweep(register, { now, forecast: failing, chunkSize: 2 });
    expect(report).toMatchObject({
      kind: 'finished',
      failures: [{ ref: 'F-002', message: 'post 99 is not in this run' }],
      sweep: { computed: 3, failed: 1 },
    });
    expect(await runSweep(register, { now: day(1) })).toMatchObject({ failures: [], sweep: { computed: 1 } });
  });

  it('goes on where the facts of one fence cannot even be read', async () => {
    const register = await fenceRegister({ fences: manyFences(4) });
    const side = new Sqlite(register.path);
    addTextFunctions(side);
    side.pragma('foreign_keys = off');
    side.exec(`create temp table broken as select * from sites;
      update broken set ref = 'BROKEN', climate_zone_ref = 'GONE';
      insert into sites select * from broken;
      update fences set site_ref = 'BROKEN' where ref = 'F-001'`);
    side.close();
    const report = await runSweep(register, { now });
    expect(report).toMatchObject({ kind: 'finished', sweep: { computed: 3, failed: 1 } });
    expect(report.kind === 'finished' && report.failures[0]).toMatchObject({ ref: 'F-001' });
    expect(report.kind === 'finished' && report.failures[0]?.message).toContain('GONE');
  });

  it('writes neither forecast nor notice where the chunk cannot be committed', async () => {
    const register = await fenceRegister({ fences: manyFences(3, { installedEarliest: '2000-01-01' }) });
    const side = new Sqlite(register.path);
    side.exec(
      "create trigger no_notices before insert on notices when new.fence_ref = 'F-002' begin select raise(abort, 'disk is full'); end",
    );
    await expect(runSweep(register, { now })).rejects.toThrow('disk is full');
    expect(await register.db.selectFrom('forecasts').selectAll().execute()).toEqual([]);
    expect(await noticeLines(register)).toEqual([]);
    side.exec('drop trigger no_notices');
    side.close();
    expect(await runSweep(register, { now })).toMatchObject({
      kind: 'finished',
      resumed: true,
      sweep: { computed: 3 },
    });
    expect(await noticeLines(register)).not.toEqual([]);
  });

  it('is refused while another sweep is at work, and takes over once that one is silent too long', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    const expiresAt = JANUARY.plus({ minutes: 3 }).toISO() ?? '';
    const other = { token: 'other', pid: process.pid, processStart: processStart(process.pid), expiresAt };
    expect(await takeSweepClaim(register, other, JANUARY.toISO() ?? '', null)).toBeNull();
    expect(await runSweep(register, { now })).toEqual({ kind: 'busy', heldBy: other });
    const late = await runSweep(register, { now: () => JANUARY.plus({ minutes: 4 }) });
    expect(late.kind).toBe('finished');
  });

  it('takes over at once from a process that is gone, though another has its number by now', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    const expiresAt = JANUARY.plus({ minutes: 3 }).toISO() ?? '';
    // as in a container: killed and started again, with the same number
    const killed = { token: 'killed', pid: process.pid, processStart: 'another boot 4711', expiresAt };
    await takeSweepClaim(register, killed, JANUARY.toISO() ?? '', null);
    expect((await runSweep(register, { now })).kind).toBe('finished');
  });

  it('writes nothing more once another sweep has taken over', async () => {
    const register = await fenceRegister({ fences: manyFences(4) });
    const side = new Sqlite(register.path);
    const forecast: ForecastFunction = (facts, year, settings) => {
      if (facts.ref === 'F-003') side.exec("update sweep_claim set token = 'other'");
      return forecastFence(facts, year, settings);
    };
    await expect(runSweep(register, { now, forecast, chunkSize: 2 })).rejects.toThrow(SweepClaimLost);
    expect(side.prepare('select fence_ref from forecasts order by 1').pluck().all()).toEqual(['F-000', 'F-001']);
    expect(side.prepare('select token from sweep_claim').pluck().all()).toEqual(['other']);
    side.close();
  });

  it('stops at a signal and goes on from there', async () => {
    const register = await fenceRegister({ fences: manyFences(9) });
    const stop = new AbortController();
    const onProgress = () => stop.abort();
    const cut = await runSweep(register, { now, chunkSize: 3, signal: stop.signal, onProgress });
    expect(cut).toMatchObject({ kind: 'interrupted', sweep: { checkpointRef: 'F-002', computed: 3 } });
    expect(await runSweep(register, { now: day(0.2), chunkSize: 3 })).toMatchObject({
      kind: 'finished',
      resumed: true,
      sweep: { computed: 9, asOf: cut.kind === 'interrupted' ? cut.sweep.asOf : '' },
    });
  });

  it('begins anew where the unfinished sweep is older than a day', async () => {
    const register = await fenceRegister({ fences: manyFences(4) });
    const stop = new AbortController();
    await runSweep(register, { now, chunkSize: 2, signal: stop.signal, onProgress: () => stop.abort() });
    const fresh = await runSweep(register, { now: day(3) });
    expect(fresh).toMatchObject({ kind: 'finished', resumed: false, sweep: { computed: 2, unchanged: 2 } });
    expect(await newestSweep(register, 'running')).toBeNull();
  });
});

describe('what a sweep tells', () => {
  it('tells the worst first, then each worsening and each newly crossed mark once, and that it is clear again', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    const steps: readonly Partial<FenceForecast>[] = [
      CLEAR,
      { ...CLEAR, marksCrossed: [{ mark: 'two thirds', season: '2027' }] },
      {
        ...CLEAR,
        standing: 'closing',
        standingWithMargin: 'closing',
        marksCrossed: [{ mark: 'two thirds', season: '2027' }],
      },
      {
        ...CLEAR,
        standing: 'short',
        standingWithMargin: 'short',
        marksCrossed: [{ mark: 'two thirds', season: '2027' }],
      },
      CLEAR,
    ];
    for (const [index, step] of steps.entries()) {
      await touch(register, index + 1);
      await runSweep(register, { now: day(index), forecast: forecastWith(step) });
    }
    expect(await noticeLines(register)).toEqual([
      'F-000: two thirds',
      'F-000: closing',
      'F-000: short',
      'F-000: better',
    ]);
  });

  it('takes an improvement only past the margin, so that a standing does not flap', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    const verdicts = [
      { ...CLEAR, standing: 'short', standingWithMargin: 'short' },
      { ...CLEAR, standing: 'clear', standingWithMargin: 'short' },
      { ...CLEAR, standing: 'short', standingWithMargin: 'short' },
    ] as const;
    for (const [index, verdict] of verdicts.entries()) {
      await touch(register, index + 1);
      await runSweep(register, { now: day(index), forecast: forecastWith(verdict) });
    }
    expect(await noticeLines(register)).toEqual(['F-000: short']);
  });

  it('writes to both owners of a fence, and to nobody who is not enrolled', async () => {
    const owners = [{ ref: 'ANN' }, { ref: 'BO', name: 'Bo Fenn' }, { ref: 'CAL', name: 'Cal Oxley', enrolled: false }];
    const register = await fenceRegister({
      owners,
      fences: [
        { ref: 'F-1', ownerRef: 'ANN', secondOwnerRef: 'BO' },
        { ref: 'F-2', ownerRef: 'CAL' },
      ],
    });
    await runSweep(register, { now });
    const rows = await register.db
      .selectFrom('notices')
      .select(['fence_ref', 'owner_ref'])
      .orderBy('owner_ref')
      .execute();
    expect(rows).toEqual([
      { fence_ref: 'F-1', owner_ref: 'ANN' },
      { fence_ref: 'F-1', owner_ref: 'BO' },
    ]);
  });

  it('gives a first notice to an owner who enrols later, though the fence did not change', async () => {
    const register = await fenceRegister({ owners: [{ enrolled: false }], fences: manyFences(1) });
    await runSweep(register, { now });
    expect(await noticeLines(register)).toEqual([]);
    await changeOwner(register, { enrolled: true });
    expect(await runSweep(register, { now: day(1) })).toMatchObject({
      sweep: { computed: 0, unchanged: 1, notices: 1 },
    });
    await runSweep(register, { now: day(2) });
    expect(await noticeLines(register)).toHaveLength(1);
    expect(await loadUnwrittenNotices(register, 'ANN')).toMatchObject([{ first: true }]);
  });

  it('can tell a mark again after the fence was rebuilt, and only then', async () => {
    const register = await fenceRegister({ fences: manyFences(1) });
    const crossed = { ...CLEAR, marksCrossed: [{ mark: 'two thirds', season: '2027' }] } as const;
    const run = async (days: number, verdict: Partial<FenceForecast>) => {
      await touch(register, days + 1);
      await runSweep(register, { now: day(days), forecast: forecastWith(verdict) });
    };
    await run(0, crossed);
    await run(1, CLEAR);
    await run(2, crossed);
    expect(await noticeLines(register)).toEqual(['F-000: two thirds']);
    const text =
      'ref,fence,day,kind,posts,section,species,treatment_class\nW-1,F-000,2027-01-10,rebuild,all,4x4,southern-pine,ground-contact\n';
    const options = { acceptValid: false, dryRun: false, today: '2027-01-15', now: '2027-01-15T12:00:00.000Z' };
    const imported = await importCsv(register, [{ name: 'works.csv', text }], options);
    expect(imported.faults).toEqual([]);
    await run(3, CLEAR);
    await run(4, crossed);
    expect(await noticeLines(register)).toEqual(['F-000: two thirds', 'F-000: works done', 'F-000: two thirds']);
  });
});
