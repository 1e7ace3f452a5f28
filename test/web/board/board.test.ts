import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCsv } from '../../../src/register/csv/csv-text.ts';
import { listFences } from '../../../src/register/fence-list.ts';
import { EVERY_FENCE } from '../../../src/register/fence-query.ts';
import { htmlText } from '../../pdf-reader.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

let sample: SampleApp;
let board: string;
let spanish: string;
beforeAll(async () => {
  sample = await sampleApp();
  board = await sample.signIn({ name: 'board-looks', role: 'board', siteRefs: ['PELICAN'] });
  spanish = await sample.signIn({ name: 'junta-mira', role: 'board', siteRefs: ['PELICAN'], language: 'es' });
});
afterAll(() => sample.close());

const get = (path: string, cookie: string): Promise<Response> | Response =>
  sample.pages.request(path, { headers: { cookie } });
const page = async (path: string, cookie: string): Promise<string> => {
  const response = await get(path, cookie);
  expect(response.status, path).toBe(200);
  return response.text();
};

describe('the page on which a board begins', { timeout: 60_000 }, () => {
  it('is where a board is led to, with its own entry first', async () => {
    const response = await get('/', board);
    expect(response.headers.get('location')).toBe('/board');
    const html = await page('/board', board);
    expect(/<nav[\s\S]*?<\/nav>/.exec(html)?.[0]).toMatch(/href="\/board" aria-current="page">Our fences/);
    expect(await page('/board', spanish)).toContain('aria-current="page">Nuestras cercas');
  });

  it('says how the fences stand, counted from the register, and what they will cost', async () => {
    const text = htmlText(await page('/board', board));
    const { rows } = await listFences(sample.register, { ...EVERY_FENCE, sort: 'ref' }, ['PELICAN']);
    const isShort = (standing: string | null | undefined): boolean => standing?.startsWith('short') ?? false;
    const short = rows.filter(({ swept }) => isShort(swept?.standing) || isShort(swept?.endsStanding)).length;
    expect(rows).toHaveLength(6);
    expect(short).toBeGreaterThan(0);
    expect(text).toContain(`${short} of 6 fences ${short === 1 ? 'does' : 'do'} not hold the gust that`);
    expect(text).toMatch(/Put in [\d,]+ USD at once and then [\d,]+ USD every year: that pays for what is expected\./);
    expect(text).toContain('Money per year as a table');
    expect(text).toMatch(/Over all years the first way pays in [\d,]+ USD, the second [\d,]+ USD\./);
    expect(text).toContain('the expected sum of that year can stand above the range');
    expect(text).toContain('not a statutory reserve study');
    expect(text).toContain('One more fence stands at the site and is kept by others');
  });

  it('shows nothing of another site, no address and no note', async () => {
    for (const path of ['/board', '/board?years=30', '/board/PELICAN/years.csv', '/board/PELICAN/fences.csv']) {
      const text = await page(path, board);
      for (const hidden of ['SK-0', 'Skerry', 'Mason', '@', 'Runs behind']) expect(text, path).not.toContain(hidden);
    }
    expect((await get('/board/SKERRY/years.csv', board)).status).toBe(404);
    expect((await get('/board/NOPE/fences.csv', board)).status).toBe(404);
  });

  it('has nothing that changes anything', async () => {
    const html = await page('/board', board);
    expect(html.match(/method="post"/g)).toHaveLength(1); // to sign out
  });

  it('gives the plan for a spreadsheet, the same amounts as the page', async () => {
    const csv = await page('/board/PELICAN/years.csv?years=10', board);
    const table = parseCsv(csv);
    if (!('header' in table)) throw new Error(table.reason);
    expect(table.rows).toHaveLength(10);
    const at = table.header.cells.indexOf('spending_expected');
    const text = htmlText(await page('/board?years=10', board));
    for (const { cells } of table.rows) {
      const whole = Math.round(Number(cells[at])).toLocaleString('en-US');
      expect(text).toContain(`${cells[0]} `);
      expect(text).toContain(`${whole} (`);
    }
    const fences = parseCsv(await page('/board/PELICAN/fences.csv', board));
    if (!('header' in fences)) throw new Error(fences.reason);
    // the fence of a private owner is not in the association's plan
    expect(fences.rows.map(({ cells }) => cells[0])).toEqual(['PR-01', 'PR-02', 'PR-03', 'PR-05', 'PR-06']);
  });

  it('speaks the language of the account', async () => {
    const text = htmlText(await page('/board', spanish));
    expect(text).toMatch(/\d de 6 cercas no aguantan? la ráfaga que pide su lugar/);
    expect(text).toContain('cada año: eso paga lo que se espera');
    expect(text).not.toMatch(/\b(fences|every year|Show|replaced)\b/);
  });

  it('says so where a board has no site yet', async () => {
    const none = await sample.signIn({ name: 'new-board', role: 'board', siteRefs: [] });
    expect(await page('/board', none)).toContain('No fences are assigned to your account yet.');
  });
});
