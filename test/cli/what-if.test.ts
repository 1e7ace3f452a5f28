import { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliError } from '../../src/cli/cli-error.ts';
import { addSeasonCommands } from '../../src/cli/season-commands.ts';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import type { WhatIf } from '../../src/season/what-if.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

describe('what-if', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeAll(async () => {
    sample = await sampleRegister();
  });
  afterAll(() => sample.remove());

  const run = async (...args: readonly string[]): Promise<string> => {
    let out = '';
    const terminal = {
      out: (text: string) => {
        out += text;
      },
      err: () => undefined,
      errIsTerminal: false,
      columns: 80,
    };
    const root = new Command().exitOverride();
    const context = { terminal, env: {}, clock: SAMPLE_NOW, end: () => undefined };
    addSeasonCommands(root, context, () => ({ data: sample.folder }));
    await root.parseAsync(['what-if', ...args], { from: 'user' });
    return out;
  };

  it('shows every works beside doing nothing, season by season and as a chart, with the cautions', async () => {
    const out = await run('PR-02');
    expect(out).toMatch(/^Fence PR-02, Pelican Reach: what if something were done on 2026-11-24\n/);
    expect(out).toMatch(/^ +0 +nothing +– +– +\d+/m);
    expect(out).toMatch(/^ +\d+ +groundline treatment +[\d,]+ /m);
    expect(out).toMatch(/\+ footing reset/);
    expect(out).toMatch(/full line: nothing · long dashes: no\. \d+/);
    expect(out).toMatch(/^No drainage: the soil of the site is not recorded as saturated\.$/m);
    expect(out).toMatch(/orders of magnitude/);
    expect(out.trimEnd().split('\n').slice(-2).join(' ')).toMatch(
      /not a structural certification.*Call before you dig/,
    );
  });

  it('gives the same as JSON, with the cautions and the hash of its inputs', async () => {
    const result = JSON.parse(await run('PR-02', '--day', '2027-02-01', '--json')) as WhatIf & {
      readonly cautions: readonly string[];
      readonly inputHash: string;
    };
    expect(result.day).toBe('2027-02-01');
    expect(result.nothing.seasons[0]!.label).toBe('2027');
    expect(result.rows.length).toBeGreaterThan(10);
    expect(result.rows.every(({ option }) => option.works.every(({ day }) => day === '2027-02-01'))).toBe(true);
    expect(result.cautions.join(' ')).toMatch(/not a structural certification/);
    expect(result.inputHash).toMatch(/^[0-9a-f]{64}$/);
  });

  it('refuses a day that is none, or that lies behind, and says what would do', async () => {
    await expect(run('PR-02', '--day', '2026-02-30')).rejects.toThrow('--day "2026-02-30" is not a calendar day');
    await expect(run('PR-02', '--day', '2026-11-23')).rejects.toThrow('--day 2026-11-23 lies before today, 2026-11-24');
    const error = await run('PR-02', '--day', '2026-11-23').catch((each: unknown) => each);
    expect(error).toBeInstanceOf(CliError);
    expect((error as CliError).wayOut).toMatch(/give 2026-11-24 or a later day/);
  });

  it('prices and builds by the catalogue that is in the register', async () => {
    const priced = async () => {
      const { rows } = JSON.parse(await run('PR-02', '--json')) as WhatIf;
      const row = rows.find(
        ({ option }) => option.parts.length === 1 && option.parts[0]!.kind === 'groundline-treatment',
      );
      return row!.cost;
    };
    const before = await priced();
    const text =
      'kind,person_hours_per_post,price_fixed,price_per_post,source\ngroundline-treatment,0.35,1090,38,invented\n';
    const { now, today } = { now: '2026-11-24T12:00:00.000Z', today: '2026-11-24' };
    await importCsv(sample.register, [{ name: 'catalogue.csv', text }], {
      acceptValid: false,
      dryRun: false,
      now,
      today,
    });
    expect(await priced()).toEqual({ ...before, price: before.price + 1000 });
  });

  it('does not know a fence that is not in the register', async () => {
    await expect(run('PR-99')).rejects.toThrow(/no fence "PR-99"/);
  });
});
