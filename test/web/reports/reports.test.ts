import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { htmlText, missingWords, pdfReaderIsThere, readPdf } from '../../pdf-reader.ts';
import { enterSeen, inspectionOn, readingOf } from '../../service/report/reported-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

let sample: SampleApp;
let board: string;
let spanish: string;
let crew: string;
beforeAll(async () => {
  sample = await sampleApp();
  await enterSeen(
    sample.register,
    {
      inspections: [inspectionOn('PR-03', '2025-05-15'), inspectionOn('PR-03', '2026-09-15')],
      readings: [readingOf('I-PR-03-2025-05-15', 3, 4), readingOf('I-PR-03-2026-09-15', 3, 9)],
      outcomes: [],
      works: [],
    },
    '2026-11-24T12:00:00.000Z',
  );
  await sample.sendMail();
  board = await sample.signIn({ name: 'board-reads', role: 'board', siteRefs: ['PELICAN'] });
  spanish = await sample.signIn({ name: 'junta-lee', role: 'board', siteRefs: ['PELICAN'], language: 'es' });
  crew = await sample.signIn({ name: 'crew-reads', role: 'crew', siteRefs: [] });
});
afterAll(() => sample.close());

const get = async (path: string, cookie: string | null = sample.cookie): Promise<Response> =>
  sample.pages.request(path, { headers: cookie === null ? {} : { cookie } });
const page = async (path: string, cookie: string | null = sample.cookie): Promise<string> => {
  const response = await get(path, cookie);
  expect(response.status, path).toBe(200);
  return response.text();
};
/** What a report's page says, without the page around it. */
const articleOf = (html: string): string => htmlText(/<article[\s\S]*<\/article>/.exec(html)?.[0] ?? '');

describe.runIf(pdfReaderIsThere())('reports on the pages', { timeout: 60_000 }, () => {
  it.each([
    '/fences/PR-03/report',
    '/fences/PR-04/evidence',
    '/fences/PR-03/evidence?on=2026-01-31',
    '/fences/PR-03/quote?works=post-swap&works=inspect&posts=2-4&tax=8',
    '/sites/SKERRY/plan?years=30',
    '/owners/QUINN/plan',
  ])('say the same as their PDF: %s', async (path) => {
    const text = articleOf(await page(path));
    const response = await get(path.replace(/(\?|$)/, '.pdf$1'));
    expect(response.headers.get('content-type')).toBe('application/pdf');
    const pdf = readPdf(new Uint8Array(await response.arrayBuffer()));
    expect(missingWords(text, pdf.text)).toEqual([]);
    expect(pdf.size).toEqual(path.includes('SKERRY') ? [595.28, 841.89] : [612, 792]);
  });

  it('say a letter of the outbox as it was written', async () => {
    const id = /\/outbox\/(\d+)\/letter"/.exec(await page('/outbox'))?.[1];
    const letter = await page(`/outbox/${id}/letter`);
    const response = await get(`/outbox/${id}/letter.pdf`);
    const pdf = readPdf(new Uint8Array(await response.arrayBuffer()));
    expect(missingWords(htmlText(letter), pdf.text)).toEqual([]);
    expect((await get('/outbox/9999/letter.pdf')).status).toBe(404);
  });

  it('take the language of a board and a crew from their account, of the office from the owner, unless asked', async () => {
    expect(await page('/fences/PR-03/report', spanish)).toContain('Cerca PR-03');
    expect(await page('/fences/PR-03/report', board)).toContain('Fence PR-03');
    expect(await page('/fences/PR-04/report')).toContain('Cerca PR-04');
    expect(await page('/fences/PR-04/report?lang=en')).toContain('Fence PR-04');
    expect(await page('/sites/PELICAN/plan', spanish)).toContain('Plan de reemplazo 2027 a 2046');
  });

  it('of a past day leave out what was read later', async () => {
    const then = articleOf(await page('/fences/PR-03/evidence?on=2026-01-31'));
    expect(then).toContain('2025-05-15');
    expect(then).not.toContain('2026-09-15');
    expect(articleOf(await page('/fences/PR-03/evidence'))).toContain('2026-09-15');
    expect((await get('/fences/PR-03/evidence?on=2026-13-01')).status).toBe(400);
    expect(await (await get('/fences/PR-03/evidence?on=2026-11-25')).text()).toContain('has not come yet');
  });

  it('show nobody notes of the office or addresses of owners', async () => {
    for (const cookie of [board, crew, sample.cookie]) {
      const text = await page('/fences/PR-03/report', cookie);
      expect(text).not.toContain('OFFICE NOTE');
      expect(text).not.toContain('board@pelican.example.org');
    }
    expect(await page('/fences/PR-02/report', board)).not.toContain('Runs behind');
  });

  it('are for a board of its own sites alone: what is another’s answers as what is not there', async () => {
    for (const path of ['report', 'report.pdf', 'evidence', 'evidence.pdf']) {
      const [others, nobodys] = [await get(`/fences/SK-01/${path}`, board), await get(`/fences/NOPE/${path}`, board)];
      expect(others.status).toBe(404);
      expect(await others.text()).toBe(await nobodys.text());
    }
    expect((await get('/sites/SKERRY/plan', board)).status).toBe(404);
    expect((await get('/owners/MASON/plan', board)).status).toBe(404);
    // part of this person's fences stands at the board's site, but the money of a person is no board's
    expect((await get('/owners/QUINN/plan', board)).status).toBe(404);
    expect((await get('/owners/HOA/plan', board)).status).toBe(200);
  });
});

describe('the page of documents', () => {
  it('lists what each may have', async () => {
    const [office, ofBoard, ofCrew] = [
      await page('/documents'),
      await page('/documents', board),
      await page('/documents', crew),
    ];
    expect(office).toContain('/sites/SKERRY/plan');
    expect(office).toContain('/owners/QUINN/plan');
    expect(office).toMatch(/\/outbox\/\d+\/letter\.pdf/);
    expect(ofBoard).toContain('/sites/PELICAN/plan.pdf');
    expect(ofBoard).not.toMatch(/SKERRY|owners\/|outbox|Skerry/);
    expect(ofCrew).not.toMatch(/\/plan|owners\/|outbox/);
  });

  it('finds a fence by its ref, and none that is not the visitor’s', async () => {
    expect(await page('/documents?fence=PR-02')).toContain('/fences/PR-02/quote');
    const seen = await page('/documents?fence=PR-02', board);
    expect(seen).toContain('/fences/PR-02/evidence.pdf');
    expect(seen).not.toContain('/quote');
    expect(await page('/documents?fence=SK-01', board)).toContain('There is no fence SK-01 here.');
    expect(await page('/documents?fence=PR-02', crew)).not.toContain('/evidence');
    expect(await page('/documents', spanish)).toContain('Planes de reemplazo');
  });
});

describe('the search of documents', () => {
  it('finds fences, sites and owners by a part of their name, and says where it finds nothing', async () => {
    const found = await page('/documents?q=pelican');
    expect(found).toContain('/documents?fence=PR-02');
    expect(found).toContain('/sites/PELICAN/plan.pdf');
    expect(found).not.toContain('/sites/SKERRY/plan');
    expect(await page('/documents?q=QUINN')).toContain('/owners/QUINN/plan');
    expect(await page('/documents?q=nowhere-at-all')).toContain('Nothing here has “nowhere-at-all”');
    expect(await page('/documents?q=pr-0&lang=es', spanish)).toContain('Todos sus documentos');
  });

  it('finds nothing that is not the visitor’s', async () => {
    const found = await page('/documents?q=skerry', board);
    expect(found).toContain('Nothing here has “skerry”');
    expect(found).not.toMatch(/SKERRY|SK-0/);
    expect(await page('/documents?q=pelican', board)).toContain('/sites/PELICAN/plan.pdf');
    expect(await page('/documents?q=pelican', board)).not.toContain('/owners/');
    expect(await page('/documents?q=SK-01', crew)).not.toMatch(/\/plan|owners\//);
  });

  it('takes a page past the end as the last', async () => {
    expect(await page('/documents?sites=99&owners=x&fences=-1')).toContain('/sites/SKERRY/plan');
  });
});

describe('the page of a quote', () => {
  it('asks for the works, and says what is wrong with what was chosen', async () => {
    expect(await page('/fences/PR-02/quote')).toContain('Draw up the quote');
    for (const [query, said] of [
      ['works=post-swap&posts=x', 'are no numbers of posts'],
      ['works=nonsense', 'There are no works called'],
      ['works=post-swap&tax=101', 'write per cent from 0 to 100'],
      ['works=post-swap&days=400', 'write a whole number from 0 to 365'],
      ['works=post-swap&works=rebuild', 'a rebuild sets every post anew'],
      ['works=post-swap&posts=40', 'the fence has no post 40'],
    ] as const) {
      const response = await get(`/fences/PR-02/quote?${query}`);
      expect(response.status, query).toBe(400);
      expect(await response.text()).toContain(said);
    }
    const quoted = articleOf(await page('/fences/PR-02/quote?works=post-swap&posts=2-4&lang=es'));
    expect(quoted).toContain('cambio de postes, postes 2–4');
    expect(quoted).toContain('3 postes');
  });
});
