import { describe, expect, it } from 'vitest';
import { planReport } from '../../../src/drawing/report/plan-report.ts';
import type { Report } from '../../../src/drawing/report/report.ts';
import { reportBody } from '../../../src/drawing/report/report-html.ts';
import { reportPdf } from '../../../src/service/report/pdf-report.ts';
import { reportFonts } from '../../../src/service/report/report-fonts.ts';
import { drawnReserve } from '../../drawing/made-up-reserve.ts';
import { htmlText, missingWords, pdfReaderIsThere, type ReadPdf, readPdf } from '../../pdf-reader.ts';

const MAKING = {
  language: 'en',
  author: 'Sample Fence Office',
  madeAt: '2026-11-24T12:00:00.000Z',
  madeOn: '2026-11-24',
  madeThere: '2026-11-24 06:00 CST',
  timeZone: 'America/Chicago',
} as const;

const LONG_NAME = 'Featherstonehaugh-Cholmondeley-Marjoribanks-Beauchamp-Wriothesley-Leveson-Gower';
const UNBROKEN = 'Pneumonoultramicroscopicsilicovolcanoconiosis'.repeat(4);

const report = (change: Partial<Report> = {}): Report => ({
  language: 'en',
  paper: 'letter',
  title: 'A report of these tests',
  under: ['Pelican Reach, Bayou Vista'],
  subject: 'What these tests say',
  author: 'Sample Fence Office',
  madeAt: '2026-11-24T12:00:00.000Z',
  foot: ['Made on 2026-11-24', 'model 2026.11', 'data as of 2026-11-20'],
  blocks: [],
  ...change,
});

const longTable = (rows: number): Report['blocks'][number] => ({
  kind: 'table',
  caption: 'Many rows',
  columns: [
    { heading: 'Number', weight: 1, figures: true },
    { heading: 'Inspector', weight: 2 },
    { heading: 'Words', weight: 3 },
  ],
  rows: Array.from({ length: rows }, (_, index) => [
    String(index + 1),
    index % 9 === 4 ? LONG_NAME : `Inspector ${index + 1}`,
    `row ${index + 1} says ${'something of some length '.repeat(1 + (index % 4))}`.trim(),
  ]),
  sums: [['', 'All', `${rows} rows`]],
});

const read = async (of: Report): Promise<ReadPdf> => readPdf(await reportPdf(of, await reportFonts()));

/** Words that reach over the edge of the paper or into its margin. */
const outside = ({ words, size: [width, height] }: ReadPdf) =>
  words.filter(({ left, right, top, bottom }) => left < 49 || right > width - 49 || top < 20 || bottom > height - 15);

describe.runIf(pdfReaderIsThere())('a report as PDF', { timeout: 60_000 }, () => {
  it('has title, language, author, subject and moment, is tagged, and carries its fonts', async () => {
    const pdf = await read(report({ blocks: [{ kind: 'paragraph', text: 'Plain and semibold.' }] }));
    expect(pdf.info).toMatchObject({
      Title: 'A report of these tests',
      Author: 'Sample Fence Office',
      Subject: 'What these tests say',
      Tagged: 'yes',
      JavaScript: 'no',
      Encrypted: 'no',
      Pages: '1',
    });
    expect(pdf.info.CreationDate).toContain('Nov 24 12:00:00 2026');
    expect(pdf.fonts.length).toBe(2);
    for (const { name, embedded } of pdf.fonts) {
      expect(name).toContain('SourceSans3');
      expect(embedded).toBe(true);
    }
    const bytes = Buffer.from(await reportPdf(report({ language: 'es' }), await reportFonts())).toString('latin1');
    expect(bytes).toContain('/Lang (es-US)');
  });

  it('has the same bytes for the same report and moment, and others at another', async () => {
    const fonts = await reportFonts();
    const one = report({ blocks: [longTable(40)] });
    const [first, second] = [await reportPdf(one, fonts), await reportPdf(one, fonts)];
    expect(Buffer.compare(Buffer.from(first), Buffer.from(second))).toBe(0);
    const later = await reportPdf({ ...one, madeAt: '2026-11-25T12:00:00.000Z' }, fonts);
    expect(Buffer.compare(Buffer.from(first), Buffer.from(later))).not.toBe(0);
  });

  it('is Letter or A4 as the report asks', async () => {
    expect((await read(report())).size).toEqual([612, 792]);
    expect((await read(report({ paper: 'a4' }))).size).toEqual([595.28, 841.89]);
  });

  it('breaks a table over pages with its headings on each, and loses no row and no word', async () => {
    const whole = report({ blocks: [longTable(150)] });
    const pdf = await read(whole);
    expect(pdf.pages).toBeGreaterThan(3);
    for (const text of pdf.pageTexts) expect(text).toMatch(/Number Inspector Words|Inspector/);
    for (const [index, text] of pdf.pageTexts.entries()) {
      expect(text).toContain(`page ${index + 1} of ${pdf.pages}`);
      expect(text).toContain('Made on 2026-11-24 · model 2026.11 · data as of 2026-11-20');
      const heads = pdf.words.filter((word) => word.page === index + 1 && word.text === 'Words');
      expect(heads).toHaveLength(1);
    }
    for (let row = 1; row <= 150; row += 1) expect(pdf.text).toContain(`row ${row} says something`);
    expect(pdf.text).toContain('150 rows');
    expect(outside(pdf)).toEqual([]);
  });

  it('wraps long names, within a word where it must, and cuts nothing off', async () => {
    const names = [LONG_NAME, UNBROKEN];
    const pdf = await read(
      report({
        title: `Fence of ${LONG_NAME} at ${LONG_NAME}`,
        blocks: [
          { kind: 'facts', facts: names.map((value) => ({ name: 'Owner', value, small: value })) },
          { kind: 'paragraph', text: UNBROKEN, look: 'lead' },
          { kind: 'list', items: names },
          {
            kind: 'table',
            caption: UNBROKEN,
            columns: Array.from({ length: 8 }, (_, index) => ({
              heading: index === 3 ? UNBROKEN : `Heading ${index}`,
              weight: 1,
            })),
            rows: [Array.from({ length: 8 }, (_, index) => names[index % 2] ?? '')],
          },
        ],
      }),
    );
    expect(outside(pdf)).toEqual([]);
    // put together again, every letter is there: title, two facts twice, lead, list, table
    const letters = (text: string): string => text.replace(/[^A-Za-z]/g, '');
    const count = (name: string): number => letters(pdf.text).split(letters(name).slice(0, 20)).length - 1;
    expect(count(UNBROKEN)).toBeGreaterThanOrEqual(4);
  });

  it('goes on with a row that is higher than a page on the next', async () => {
    const lines = Array.from({ length: 130 }, (_, index) => `post ${index + 1}: sound`).join('\n');
    const pdf = await read(
      report({
        blocks: [
          {
            kind: 'table',
            caption: 'One row',
            columns: [
              { heading: 'Day', weight: 1 },
              { heading: 'Found', weight: 4 },
            ],
            rows: [['2026-05-12', lines]],
          },
        ],
      }),
    );
    expect(pdf.pages).toBe(3);
    for (let post = 1; post <= 130; post += 1) expect(pdf.text).toContain(`post ${post}: sound`);
    expect(outside(pdf)).toEqual([]);
  });

  it('never leaves a heading alone at the foot of a page', async () => {
    for (let lines = 34; lines <= 46; lines += 1) {
      const pdf = await read(
        report({
          blocks: [
            ...Array.from({ length: lines }, (_, index) => ({ kind: 'paragraph', text: `Line ${index}.` }) as const),
            { kind: 'heading', level: 2, text: 'Followed' },
            { kind: 'paragraph', text: 'What follows.' },
          ],
        }),
      );
      const page = pdf.pageTexts.findIndex((text) => text.includes('Followed'));
      expect(pdf.pageTexts[page]).toContain('What follows.');
    }
  });

  it('draws charts as lines and letters: their words can be found, and nothing is a picture', async () => {
    const plan = drawnReserve();
    const whole = planReport(
      {
        payer: 'Pelican Reach Association',
        where: ['Pelican Reach'],
        units: 'us',
        currency: 'USD',
        plan,
        fences: [],
        unseen: [],
        others: 2,
        inflationPercent: 3,
        interestPercent: 2,
        longestServiceYears: 25,
        inspectEveryYears: 5,
        sharedPercent: 50,
        modelVersion: '2026.11',
      },
      MAKING,
    );
    const bytes = await reportPdf(whole, await reportFonts());
    const pdf = readPdf(bytes);
    expect(pdf.text).toContain('fund at the end of the year');
    expect(pdf.text).toContain('Bands: when each fence is replaced');
    expect(Buffer.from(bytes).toString('latin1')).not.toContain('/Subtype /Image');
    expect(outside(pdf)).toEqual([]);
    // the same words as the page: the chart has some more
    expect(missingWords(htmlText(reportBody(whole)), pdf.text)).toEqual([]);
  });
});
