import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import type { Reasons } from '../../src/forecast/reasons.ts';
import { forecastOf, loadStoredForecasts } from '../../src/register/forecast-store.ts';
import { listRecords, upsertRecords } from '../../src/register/record-store.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

describe('forecast and reasons', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeAll(async () => {
    sample = await sampleRegister();
  });
  afterAll(() => sample.remove());

  it('forecasts to the number what the sweep stored, with the same input hash', async () => {
    const stored = (await loadStoredForecasts(sample.register, ['PR-02'])).get('PR-02');
    const { code, out } = await command(sample.folder, ['forecast', 'PR-02', '--seasons', '30', '--json']);
    expect(code).toBe(0);
    const { inputHash, keptStanding, keptEndsStanding, cautions, ...forecast } = JSON.parse(out) as FenceForecast & {
      inputHash: string;
      keptStanding: string;
      keptEndsStanding: string | null;
      cautions: readonly string[];
    };
    expect([keptStanding, keptEndsStanding]).toEqual([stored?.standing, stored?.endsStanding]);
    expect(cautions.join(' ')).toMatch(/not a structural certification.*Call before you dig/);
    expect(stored).toBeDefined();
    expect(inputHash).toBe(stored?.inputHash);
    expect(forecast).toEqual(stored && forecastOf(stored));
  });

  it('forecasts a fence that was never swept', async () => {
    const fresh = await sampleRegister({ swept: false });
    try {
      const { code, out } = await command(fresh.folder, ['forecast', 'PR-01']);
      expect(code).toBe(0);
      expect(out).toContain('Breaks in a gust of');
    } finally {
      await fresh.remove();
    }
  });

  it('shows sentences, the seasons asked for, the chart, the model and two lines of cautions', async () => {
    const { out } = await command(sample.folder, ['forecast', 'PR-03', '--seasons', '4']);
    expect(out).toMatch(/^Fence PR-03, Pelican Reach\n\nBreaks in a gust of \d+ mph/);
    expect(out.match(/^20\d\d {2,}/gm)).toHaveLength(4);
    expect(out).toMatch(/^2026 +8\.2 +0\.\d\d \(0\.\d\d–\d\.\d\d\) +\d+ \(\d+–\d+\) +60 /m);
    expect(out).toMatch(/ gust 105$/m);
    expect(out).toMatch(/^Model \S+, inputs [0-9a-f]{64}$/m);
    expect(out.trimEnd().split('\n').slice(-2).join(' ')).toMatch(
      /not a structural certification.*Call before you dig/,
    );
  });

  it('shows the standing that the register keeps, and says where the bare comparison is another', async () => {
    const kept = await sampleRegister();
    try {
      const bare = (await command(kept.folder, ['forecast', 'PR-03'])).out;
      expect(bare).not.toContain('Compared with the design gust alone');
      const stored = (await loadStoredForecasts(kept.register, ['PR-03'])).get('PR-03');
      const gustMps = stored?.designGustMps ?? 0;
      // the entered gust is put just under what the fence holds, and the register told that it was short before
      const site = (await listRecords(kept.register.db, 'sites')).find(({ ref }) => ref === 'PELICAN');
      if (!stored || !site) throw new Error('the sample lacks PR-03 or its site');
      const barely = { ...site, designGustMps: (site.designGustMps * stored.snapMps) / gustMps / 1.015 };
      await upsertRecords(kept.register.db, 'sites', [barely], '2026-11-24T12:00:00.000Z');
      await kept.register.db
        .updateTable('forecasts')
        .set({ standing: 'short' })
        .where('fence_ref', '=', 'PR-03')
        .execute();
      const { out } = await command(kept.folder, ['forecast', 'PR-03']);
      expect(out).toMatch(/^Short: its line posts hold \d+ mph, less than 3 % above the design gust/m);
      expect(out).toMatch(/^Compared with the design gust alone it would stand (closing|clear)\.$/m);
    } finally {
      await kept.remove();
    }
  });

  it('dates the verdict of a checker by its season', async () => {
    const { out } = await command(sample.folder, ['forecast', 'PR-02']);
    expect(out).toMatch(/^By allowable stress, as built, for the entered gust of 105 mph: the post holds \d+ mph/m);
    expect(out).toMatch(/^By allowable stress, in season 2026 \(on 2026-06-01\), /m);
  });

  it('shows a metric site in kilometres an hour and millimetres', async () => {
    const { out } = await command(sample.folder, ['forecast', 'SK-01']);
    expect(out).toContain("its site's design gust is 173 km/h.");
    expect(out).toMatch(/years +mm +km\/h/);
    expect(out).toContain('2026/27');
  });

  it('explains every step with symbol, number, unit, basis, equation, source and tag', async () => {
    const { code, out } = await command(sample.folder, ['reasons', 'PR-02', '--season', '2035', '--json']);
    expect(code).toBe(0);
    const reasons = JSON.parse(out) as Reasons & { readonly cautions: readonly string[] };
    expect(reasons.cautions).toContain('Call before you dig: 811 has buried lines marked.');
    expect(reasons.season).toBe('2035');
    expect(reasons.steps.length).toBeGreaterThan(20);
    for (const step of reasons.steps) {
      for (const key of ['basis', 'group', 'symbol', 'quantity', 'equation', 'source', 'tag'] as const) {
        expect(step[key], JSON.stringify(step)).not.toBe('');
      }
    }
    const text = (await command(sample.folder, ['reasons', 'PR-02', '--season', '2035'])).out;
    for (const { symbol, equation, source } of reasons.steps) {
      expect(text).toContain(`${symbol} = `);
      expect(text).toContain(equation);
      expect(text).toContain(source);
    }
  });

  it('says of a fence at which nothing was seen that published priors stand, and what weighs most', async () => {
    const { out } = await command(sample.folder, ['reasons', 'PR-06']);
    expect(out).toContain('WHAT WAS SEEN\nNothing was read or reported that moves a belief: published priors stand.\n');
    expect(out).toMatch(/WHAT WEIGHS MOST\n[\w ]+ weighs most of all on when this fence goes short: /);
    expect(out).toContain('What moves the short season of fence PR-06');
    const json = JSON.parse((await command(sample.folder, ['reasons', 'PR-06', '--json'])).out) as Reasons;
    expect(json.evidence).toBeNull();
    expect(json.sensitivity.bars[0]?.swingYears).toBeGreaterThan(0);
    expect((await command(sample.folder, ['forecast', 'PR-06'])).out).not.toContain('Without them');
  });

  it('ends with 4 and says which seasons there are where one is asked for that is not', async () => {
    const { code, err, out } = await command(sample.folder, ['reasons', 'PR-02', '--season', '1999']);
    expect(code).toBe(4);
    expect(out).toBe('');
    expect(err).toMatch(/^no season "1999": fence PR-02 is forecast for new, 2003 to 2055\n.*--season/);
  });

  it('ends with 4 for a fence or a register that is not there, and creates nothing', async () => {
    for (const name of ['forecast', 'reasons']) {
      const { code, err } = await command(sample.folder, [name, 'NOPE']);
      expect(code).toBe(4);
      expect(err).toMatch(/^no fence "NOPE" in the register at .*\n.*stormpale export fences.*\n$/);
    }
    const missing = await command(`${sample.folder}/elsewhere`, ['forecast', 'PR-01']);
    expect(missing.code).toBe(4);
    expect(missing.err).toContain('there is no register at');
    expect((await command(`${sample.folder}/elsewhere`, ['sweep'])).code).toBe(4);
  });

  it('ends with 2 where the command line makes no sense', async () => {
    for (const args of [
      ['forecast'],
      ['forecast', 'PR-01', '--seasons', '31'],
      ['forecast', 'PR-01', '--seasons', 'ten'],
      ['forcast', 'PR-01'],
      ['forecast', 'PR-01', '--colour'],
    ]) {
      const { code, err } = await command(sample.folder, args);
      expect(code, args.join(' ')).toBe(2);
      expect(err, args.join(' ')).toMatch(/^error: .*\n/);
    }
  });

  it('ends with 2 and names the variable where the configuration is wrong', async () => {
    const { code, err } = await command(sample.folder, ['forecast', 'PR-01'], { env: { STORMPALE_PORT: 'many' } });
    expect(code).toBe(2);
    expect(err).toContain('STORMPALE_PORT = "many"');
  });

  it('lists every command and every exit code in its help', async () => {
    const { code, out } = await command(sample.folder, ['--help']);
    expect(code).toBe(0);
    for (const name of ['serve', 'import', 'export', 'sweep', 'forecast', 'reasons', 'mail'])
      expect(out).toContain(`  ${name} `);
    for (const exit of [0, 1, 2, 3, 4, 5]) expect(out).toMatch(new RegExp(`^  ${exit}  `, 'm'));
  });
});

describe('forecast and reasons of a fence at which something was seen', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeAll(async () => {
    sample = await sampleRegister({ swept: false });
    const looked = ['--day', '2026-05-12', '--inspector', 'Nell Fox', '--method', 'awl-or-probe'];
    const readings = ['3 depth 0.7in', '4 depth 0.8in', '5 sound-to 0.3in', '7 broken closed-off'];
    const posts = readings.flatMap((reading) => ['--post', reading]);
    expect(await command(sample.folder, ['inspect', 'PR-03', ...looked, ...posts])).toMatchObject({ code: 0 });
    const gale = ['--day', '2026-03-14', '--gust', '50mph', '--name', 'March gale', '--reported-by', 'Nell Fox'];
    expect(await command(sample.folder, ['storm', 'PR-03', ...gale, '--stood', 'all', '--unseen', '7'])).toMatchObject({
      code: 0,
    });
  });
  afterAll(() => sample.remove());

  it('forecasts with it and without it, and tells what was found', async () => {
    const { out } = await command(sample.folder, ['forecast', 'PR-03']);
    const breaks = Number(/Breaks in a gust of (\d+) mph/.exec(out)?.[1]);
    expect(out).toContain('Post 7 is recorded dangerous and closed off: keep people away.');
    const line =
      /^4 readings at 4 posts and 1 storm count\. Without them it would break at (\d+) mph instead of (\d+) mph\./m.exec(
        out,
      );
    expect(Number(line?.[2])).toBe(breaks);
    const fresh = await sampleRegister({ swept: false });
    try {
      expect((await command(fresh.folder, ['forecast', 'PR-03'])).out).toContain(
        `Breaks in a gust of ${line?.[1]} mph`,
      );
    } finally {
      await fresh.remove();
    }
    expect(line?.[1]).not.toBe(line?.[2]);
  });

  it('shows in the reasons what was believed before and after, as the forecast has it', async () => {
    const { out } = await command(sample.folder, ['reasons', 'PR-03']);
    const { evidence } = JSON.parse((await command(sample.folder, ['reasons', 'PR-03', '--json'])).out) as Reasons;
    const forecast = JSON.parse((await command(sample.folder, ['forecast', 'PR-03', '--json'])).out) as FenceForecast;
    expect(evidence).toEqual(forecast.evidence);
    const seen = out.slice(out.indexOf('WHAT WAS SEEN'), out.indexOf('WHAT WEIGHS MOST'));
    for (const { unknown, prior, afterReadings, posterior } of forecast.evidence?.unknowns ?? []) {
      const figure = (value: number): string => (unknown === 'pace' ? value.toPrecision(2) : value.toFixed(2));
      const cell = (band: typeof prior): string => [band.p10, band.p50, band.p90].map(figure).join(' / ');
      expect(seen).toMatch(new RegExp(` {2,}${cell(prior)} {2,}${cell(afterReadings)} {2,}${cell(posterior)} `, 'm'));
    }
    expect(seen).toMatch(/^ +in\/a +0\.\d+ \/ 0\.\d+ \/ 0\.\d+/m);
    expect(seen).toMatch(
      /^ +5 +2026-05-12 +at most 0\.30 in +at most 0\.\d+ in\/a +0\.\d\d in \(0\.\d\d–0\.\d\d\) +awl or probe$/m,
    );
  });
});
