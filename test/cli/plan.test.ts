import { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliError } from '../../src/cli/cli-error.ts';
import { addSeasonCommands } from '../../src/cli/season-commands.ts';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

interface PlanOutput {
  readonly weeks: readonly string[];
  readonly risk: { readonly lossBefore: number; readonly lossAfter: number };
  readonly visits: readonly {
    readonly week: string;
    readonly crewRef: string;
    readonly travelPersonHours: number;
    readonly items: readonly { readonly jobRef: string; readonly personHours: number }[];
  }[];
  readonly crews: readonly { readonly ref: string; readonly personHoursByWeek: readonly number[] }[];
  readonly stages: readonly { readonly value: number; readonly bound: number }[];
}

describe('plan', () => {
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
    await root.parseAsync(['plan', ...args], { from: 'user' });
    return out;
  };

  it('refuses to fill weeks where there is no crew, and says how to enter one', async () => {
    const refused = run('--weeks', '4');
    await expect(refused).rejects.toThrow(CliError);
    await expect(refused).rejects.toMatchObject({ message: expect.stringContaining('holds no crew') as string });
  });

  it('fills the weeks of a crew within its hours, and lowers the risk of the season', async () => {
    const files = [
      { name: 'crews.csv', text: 'ref,name,speed_mph\nnorth,North crew,40\n' },
      {
        name: 'crew-members.csv',
        text: 'ref,crew,name,hours_per_week,skills\nm1,north,Orla Finch,38,licensed-applicator\nm2,north,Tomas Reed,38,\n',
      },
    ];
    const report = await importCsv(sample.register, files, {
      acceptValid: false,
      dryRun: false,
      today: '2026-11-24',
      now: '2026-11-24T12:00:00.000Z',
    });
    expect(report.faults).toEqual([]);
    const made = JSON.parse(await run('--weeks', '6', '--json')) as PlanOutput;
    expect(made.weeks).toEqual(['2026-11-30', '2026-12-07', '2026-12-14', '2026-12-21', '2026-12-28', '2027-01-04']);
    expect(made.visits.length).toBeGreaterThan(0);
    for (const [index, week] of made.weeks.entries()) {
      const hours = made.visits
        .filter((visit) => visit.week === week)
        .reduce(
          (sum, visit) => sum + visit.travelPersonHours + visit.items.reduce((all, item) => all + item.personHours, 0),
          0,
        );
      expect(hours).toBeLessThanOrEqual(made.crews[0]!.personHoursByWeek[index]! + 1e-6);
      expect(made.crews[0]!.personHoursByWeek[index]).toBeCloseTo(76, 6);
    }
    for (const { value, bound } of made.stages) expect(bound).toBeGreaterThanOrEqual(value);
    expect(made.risk.lossAfter).toBeLessThan(made.risk.lossBefore);
    const text = await run('--weeks', '6');
    expect(text).toMatch(/^Season plan of 2026-11-24: 6 weeks from 2026-11-30, 1 crew,/);
    expect(text).toMatch(/Fences expected to snap +[\d.]+ +[\d.]+/);
    expect(text).toMatch(/not a structural certification/);
  });
});
