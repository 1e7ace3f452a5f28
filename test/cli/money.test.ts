import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command, CommanderError } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliError } from '../../src/cli/cli-error.ts';
import { addMoneyCommands } from '../../src/cli/money-commands.ts';
import { parseCsv } from '../../src/register/csv/csv-text.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

let sample: Awaited<ReturnType<typeof sampleRegister>>;
let folder: string;
beforeAll(async () => {
  sample = await sampleRegister({ swept: false });
  folder = mkdtempSync(join(tmpdir(), 'stormpale-money-'));
});
afterAll(async () => {
  await sample.remove();
  rmSync(folder, { recursive: true, force: true });
});

interface Run {
  readonly out: string;
  readonly err: string;
}

async function run(args: readonly string[], terminalKind: { readonly errIsTerminal?: boolean } = {}): Promise<Run> {
  let out = '';
  let err = '';
  const terminal = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    errIsTerminal: terminalKind.errIsTerminal ?? false,
    columns: 100,
  };
  const quiet = { writeOut: terminal.out, writeErr: terminal.err };
  const root = new Command().exitOverride().configureOutput(quiet);
  addMoneyCommands(root, { terminal, env: {}, clock: SAMPLE_NOW, end: () => undefined }, () => ({
    data: sample.folder,
  }));
  await root.parseAsync([...args], { from: 'user' });
  return { out, err };
}

const refusal = async (...args: readonly string[]): Promise<{ readonly message: string; readonly wayOut: string }> => {
  const error: unknown = await run(args).catch((each: unknown) => each);
  if (error instanceof CliError) return error;
  if (error instanceof CommanderError) return { message: error.message, wayOut: '' };
  throw new Error(`not refused: ${String(error)}`);
};

const cellsOf = (
  text: string,
): { readonly header: readonly string[]; readonly rows: readonly (readonly string[])[] } => {
  const table = parseCsv(text);
  if (!('rows' in table)) throw new Error(table.reason);
  return { header: table.header.cells, rows: table.rows.map(({ cells }) => cells) };
};

describe('money', () => {
  it('shows each fence, what to set aside and every year, with what the plan is and the cautions', async () => {
    const { out, err } = await run(['money', 'HOA', '--opening', '10,000', '--years', '15']);
    expect(out).toMatch(/^Pelican Reach Association \(HOA\): 5 fences, 2027 to 2041\n/);
    expect(out).toMatch(/This is a planning aid, not a statutory reserve study\./);
    expect(out).toMatch(/^PR-02 +2003-05 +24 +\d+ % +now +replace now/m);
    expect(out).toMatch(/^PR-01 +2024-04 +3 +under 1 % .*keep, to 2049 at most/m);
    expect(out).toMatch(/^for what is expected( +[\d,]+){4}$/m);
    expect(out).toMatch(/^enough in nine courses of ten( +[\d,]+){4}$/m);
    expect(out).toMatch(/^2027( +-?[\d,]+){9}$/m);
    expect(out).toMatch(/^2041( +-?[\d,]+){9}$/m);
    expect(out).toMatch(/^2027 +█+/m);
    expect(out).toMatch(/^Responsible: the association\.$/m);
    expect(out).toMatch(/^Reserve plan 2027 to 2041, paid by Pelican Reach Association$/m);
    expect(out).toMatch(/Putting every planned replacement off by a year (costs|saves|changes)/);
    expect(out.trimEnd().split('\n').slice(-2).join(' ')).toMatch(
      /not a structural certification.*Call before you dig/,
    );
    expect(err).toBe('');
  });

  it('gives the same as JSON, in decimal amounts', async () => {
    const found = JSON.parse((await run(['money', 'HOA', '--json', '--currency', 'cad'])).out) as {
      readonly label: string;
      readonly currency: string;
      readonly years: readonly Record<string, number>[];
      readonly fences: readonly Record<string, unknown>[];
      readonly setAside: { readonly expected: { readonly flat: Record<string, number | string> } };
      readonly contribution: unknown;
      readonly cautions: readonly string[];
    };
    expect(found).toMatchObject({ label: 'a planning aid, not a statutory reserve study', currency: 'CAD' });
    expect(found.years).toHaveLength(20);
    for (const year of found.years) {
      const { opening, contribution, spending, interest, closing } = year;
      expect(opening! + contribution! - spending! + interest!).toBeCloseTo(closing!, 6);
    }
    expect(found.fences.map(({ ref }) => ref)).toEqual(['PR-01', 'PR-02', 'PR-03', 'PR-05', 'PR-06']);
    expect(found.fences[0]).toMatchObject({
      rebuild: 5020,
      rebuildAfterSnap: 7028,
      consequence: 500,
      responsible: 'association',
    });
    expect(found.contribution).toEqual(found.setAside.expected.flat);
    expect(found.cautions.join(' ')).toMatch(/not a structural certification/);
  });

  it('writes the years and the fences as CSV, or the years to standard output', async () => {
    const target = join(folder, 'csv');
    const { err } = await run(['money', 'HOA', '--csv', target]);
    expect(readdirSync(target).sort()).toEqual(['money-HOA-fences.csv', 'money-HOA-years.csv']);
    expect(err).toContain(join(target, 'money-HOA-years.csv'));
    const years = cellsOf(readFileSync(join(target, 'money-HOA-years.csv'), 'utf8'));
    expect(years.header.slice(0, 5)).toEqual([
      'year',
      'opening_balance',
      'contribution',
      'repairs_expected',
      'replacements_expected',
    ]);
    expect(years.rows).toHaveLength(20);
    const fences = cellsOf(readFileSync(join(target, 'money-HOA-fences.csv'), 'utf8'));
    const column = (name: string): readonly (string | undefined)[] =>
      fences.rows.map((row) => row[fences.header.indexOf(name)]);
    expect(column('fence')).toEqual(['PR-01', 'PR-02', 'PR-03', 'PR-05', 'PR-06']);
    expect(column('rebuild')[0]).toBe('5020.00');
    expect(new Set(column('note'))).toEqual(new Set(['a planning aid, not a statutory reserve study']));
    const { out } = await run(['money', 'HOA', '--csv', '-']);
    expect(cellsOf(out)).toEqual(years);
  });

  it('marks the years in which what is paid in is not enough', async () => {
    const poor = await run(['money', 'HOA', '--yearly', '100', '--at-once', '50.50', '--rising']);
    expect(poor.out).toMatch(/51 USD at once, and 100 USD in the first year, rising with prices is paid in/);
    expect(poor.out).toMatch(/\* below the floor of 0 in the year/);
    expect(await refusal('money', 'HOA', '--at-once', '50')).toMatchObject({
      wayOut: expect.stringMatching(/give both/) as string,
    });
  });

  it('says by which rule it replaces, and how owners share', async () => {
    const short = (await run(['money', 'QUINN', '--replace', 'before-short', '--shared-part', '30'])).out.replaceAll(
      '\n',
      ' ',
    );
    expect(short).toMatch(/Fences are replaced before the season in which they go short .*--replace before-short\)/);
    expect(short).toMatch(/lot 30 %, with Mason Yards/);
    expect(short).toMatch(/the plan pays 30 % of it \(--shared-part\)/);
    expect((await run(['money', 'HOA'])).out).not.toMatch(/--shared-part/);
  });

  it('counts the fences on a terminal', async () => {
    const { err } = await run(['money', 'HOA'], { errIsTerminal: true });
    expect(err).toContain('Money: 5 of 5 fences');
  });

  it('refuses what it cannot understand, and says what would do', async () => {
    expect((await refusal('money', 'HOB')).message).toMatch(/no owner "HOB" in the register; did you mean HOA\?/);
    expect((await refusal('money', 'HOA', '--years', '9')).message).toMatch(/write a whole number from 10 to 30/);
    expect((await refusal('money', 'HOA', '--opening', '10.000,00')).message).toMatch(/write an amount with a point/);
    expect((await refusal('money', 'HOA', '--floor', '-1')).message).toMatch(/write an amount from 0/);
    expect((await refusal('money', 'HOA', '--inflation', '3%')).message).toMatch(/write a number from -30 to 30/);
    expect((await refusal('money', 'HOA', '--currency', 'dollars')).message).toMatch(/three letters/);
    expect((await refusal('money', 'HOA', '--csv', '-', '--json')).message).toMatch(/both write to standard output/);
  });
});

describe('quote', () => {
  it('is a document of the works, with its number and how long it holds', async () => {
    const { out, err } = await run([
      'quote',
      'PR-02',
      'post-swap:3,4,7',
      'groundline-treatment',
      '--tax',
      '8.25',
      '--valid-days',
      '14',
    ]);
    expect(out).toMatch(/^Quote Q-20261124-[0-9A-F]{8}\nPelican Reach Association, Pelican Reach/);
    expect(out).toMatch(/^Issued 2026-11-24, valid until 2026-12-08\. Amounts in USD\.$/m);
    expect(out).toMatch(/^post swap, posts 3–4, 7: 3 posts at 185\.00 +555\.00$/m);
    expect(out).toMatch(/^Tax 8\.25 % +83\.24$/m);
    expect(out).toMatch(/^Total USD +1,092\.24$/m);
    expect(out).toMatch(/not a structural certification/);
    expect(out.split('\n').filter((line) => line.length > 72)).toEqual([]);
    expect(err).toMatch(/Prices of post swap, groundline treatment are orders of magnitude/);
  });

  it('takes --posts for works that name none, and says where they do nothing', async () => {
    const { out } = await run(['quote', 'PR-02', 'steel-sleeve', 'inspect', '--posts', '2-4']);
    expect(out).toMatch(/steel sleeves, posts 2–4: 3 posts/);
    expect(out).toMatch(/inspection, posts 2–4: 3 posts/);
    const mixed = await run(['quote', 'PR-02', 'post-swap:3', 'groundline-treatment:2,3']);
    expect(mixed.err).toMatch(/Not quoted: groundline treatment at post 3, where it does nothing/);
    const whole = await run(['quote', 'PR-02', 'rebuild', 'inspect', '--posts', '2']);
    expect(whole.out).toMatch(/rebuild, every post: 11 posts/);
    expect((await refusal('quote', 'PR-02', 'rebuild', '--posts', '2')).message).toMatch(
      /always done to the whole fence/,
    );
  });

  it('is written to files, and never over one that is there', async () => {
    const [text, csv] = [join(folder, 'quote.txt'), join(folder, 'quote.csv')];
    const { out } = await run(['quote', 'PR-02', 'inspect', '--out', text, '--csv', csv]);
    expect(out).toBe('');
    expect(readFileSync(text, 'utf8')).toMatch(/^Quote Q-20261124-/);
    const { header, rows } = cellsOf(readFileSync(csv, 'utf8'));
    expect(header[0]).toBe('quote');
    expect(rows.map((row) => row[3])).toEqual(['line', 'line', 'subtotal', 'tax', 'total']);
    writeFileSync(text, 'signed');
    expect(await refusal('quote', 'PR-02', 'inspect', '--out', text)).toMatchObject({
      message: expect.stringMatching(/there is such a file already/) as string,
    });
    expect(readFileSync(text, 'utf8')).toBe('signed');
    expect((await refusal('quote', 'PR-02', 'inspect', '--out', join(folder, 'no', 'q.txt'))).message).toMatch(
      /ENOENT/,
    );
    expect(existsSync(join(folder, 'no'))).toBe(false);
  });

  it('gives the same as JSON and CSV on standard output', async () => {
    const found = JSON.parse((await run(['quote', 'PR-02', 'inspect', '--json'])).out) as Record<string, unknown>;
    expect(found).toMatchObject({ total: 126, tax: 0, currency: 'USD', parts: [{ kind: 'inspect', postCount: 11 }] });
    const { rows } = cellsOf((await run(['quote', 'PR-02', 'inspect', '--csv', '-'])).out);
    expect(rows.at(-1)).toContain('126.00');
    expect(rows[0]![0]).toBe(found.number);
    expect((await refusal('quote', 'PR-02', 'inspect', '--csv', '-', '--json')).message).toMatch(/only one/);
  });

  it('refuses what it cannot quote, and says what would do', async () => {
    expect(await refusal('quote', 'PR-02', 'post-swop')).toMatchObject({
      message: 'there are no works called "post-swop"; did you mean post-swap?',
      wayOut: expect.stringMatching(/inspect, groundline-treatment/) as string,
    });
    expect((await refusal('quote', 'PR-02', 'post-swap:3-x')).message).toMatch(/3-x are no numbers of posts/);
    expect((await refusal('quote', 'PR-02', 'inspect', '--posts', '7-3')).message).toMatch(/write numbers of posts/);
    expect((await refusal('quote', 'PR-02', 'drainage')).message).toMatch(/no drainage: the soil/);
    expect((await refusal('quote', 'PR-2', 'inspect')).message).toMatch(
      /no fence "PR-2" in the register; did you mean PR-02\?/,
    );
    expect((await refusal('quote', 'PR-02', 'inspect', '--tax', '101')).message).toMatch(
      /write a number from 0 to 100/,
    );
  });
});
