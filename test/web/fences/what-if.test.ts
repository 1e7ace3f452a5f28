import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readWorksChoice } from '../../../src/web/fences/what-if-choice.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

const cellsOf = (html: string, row: string): readonly string[] => {
  const at = html.indexOf(`<th scope="row">${row}</th>`);
  return [...html.slice(at, html.indexOf('</tr>', at)).matchAll(/<td[^>]*>([^<]*)<\/td>/g)].map(([, cell]) => cell!);
};

describe('what if something were done to a fence', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp();
  });
  afterAll(() => sample.close());

  it('offers the works of the catalogue, and compares nothing until some are chosen', async () => {
    const html = await sample.text('/fences/PR-02/what-if');
    expect(html.match(/name="do"/g)).toHaveLength(9);
    expect(html).not.toContain('Side by side');
    expect(html).toMatch(/it breaks in a gust of \d+ mph; its design gust is 105 mph/);
  });

  it('holds chosen works beside doing nothing: speeds, short season, price, chart', async () => {
    const html = await sample.text('/fences/PR-02/what-if?do=post-swap&at-post-swap=all');
    const [before, after] = cellsOf(html, 'Snap speed').map((text) => Number.parseInt(text, 10));
    expect(after).toBeGreaterThan(before!);
    expect(cellsOf(html, 'Standing')).toEqual(['short', 'clear']);
    expect(cellsOf(html, 'Short season')[1]).toMatch(/^20\d\d$|^not within 30$/);
    expect(cellsOf(html, 'Price')).toEqual(['–', '2,185 USD']);
    expect(html.match(/Snap and lean speed as it is and after the works/g)).toHaveLength(3);
  });

  it('says the same as the table of everything that could be done', async () => {
    const html = await sample.text('/fences/PR-02/what-if?do=rebuild&all=yes');
    const everything = html.slice(html.indexOf('id="everything"'));
    const row = everything.slice(everything.indexOf('<th scope="row">rebuild</th>'));
    const cells = [...row.slice(0, row.indexOf('</tr>')).matchAll(/<td[^>]*>([^<]*)<\/td>/g)].map(([, cell]) => cell);
    expect(`${cells[0]} USD`).toBe(cellsOf(html, 'Price')[1]);
    expect(everything).toContain('Prices in USD before tax. Posts short: how many posts may be expected');
    expect(`${cells[2]} mph`).toBe(cellsOf(html, 'Snap speed')[1]);
    expect(cells[8]).toBe(cellsOf(html, 'Short season')[1]);
  });

  it('takes several works in the order that lets one make another possible', async () => {
    const html = await sample.text('/fences/PR-02/what-if?do=liner&do=post-swap&at-post-swap=all');
    expect(html).toContain('post swap + liner');
  });

  it('says why works make no sense, and the way out', async () => {
    const swapped = await sample.text('/fences/PR-02/what-if?do=rebuild&do=post-swap');
    expect(swapped).toContain('No post swap: a rebuild sets every post anew, so there is none left to swap.');
    const found = await sample.text('/fences/PR-02/what-if?do=post-swap&at-post-swap=found');
    expect(found).toMatch(/class="alert">[^<]*No post swap: [^<]+ Choose other works or other posts\./);
  });

  it('answers a board for its own sites only, and passes over works that there are not', async () => {
    const cookie = await sample.signIn({ name: 'skerry', role: 'board', siteRefs: ['SKERRY'] });
    const status = async (path: string): Promise<number> =>
      (await sample.pages.request(path, { headers: { cookie } })).status;
    expect(await status('/fences/SK-01/what-if?do=gilding')).toBe(200);
    expect(await status('/fences/PR-02/what-if')).toBe(404);
  });
});

describe('the works that an address chooses', () => {
  it('come each once, at the posts asked for or the usual ones', () => {
    const read = (search: string) => readWorksChoice(new URLSearchParams(search));
    expect(read('do=rebuild&do=rebuild&do=nonsense')).toEqual([{ kind: 'rebuild', at: 'all' }]);
    expect(read('do=post-swap&at-post-swap=ends')).toEqual([{ kind: 'post-swap', at: 'ends' }]);
    expect(read('do=post-swap&at-post-swap=others')).toEqual([{ kind: 'post-swap', at: 'weak' }]);
    expect(read('at-post-swap=ends')).toEqual([]);
  });
});
