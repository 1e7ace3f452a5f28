import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { daySheetHtml } from '../../src/drawing/day-sheet-html.ts';
import { crewSheets } from '../../src/service/crew-sheets.ts';
import { htmlText, missingWords, pdfReaderIsThere, type ReadPdf, readPdf } from '../pdf-reader.ts';
import { madeUpVisit, storeVisits, visitingRegister } from '../service/visiting-register.ts';
import { command } from './command-line.ts';

const containing = (text: string): unknown => expect.stringContaining(text);
const matching = (pattern: RegExp): unknown => expect.stringMatching(pattern);

let sample: Awaited<ReturnType<typeof visitingRegister>>;
const out = mkdtempSync(join(tmpdir(), 'reports-'));
beforeAll(async () => {
  sample = await visitingRegister();
  const item = madeUpVisit({ uid: 'x' }).items[0]!;
  await storeVisits(sample.register, [
    madeUpVisit({ uid: 'V-1', startsAt: '08:30', state: 'confirmed', note: 'Park on the street.' }),
    madeUpVisit({
      uid: 'V-2',
      siteRef: 'SKERRY',
      items: [{ ...item, fenceRef: 'SK-01', works: [{ kind: 'inspect', posts: [1, 2, 3], postCount: 3 }] }],
    }),
  ]);
  await command(sample.folder, ['sweep']);
});
afterAll(async () => {
  await sample.remove();
  rmSync(out, { recursive: true, force: true });
});

/** Runs `report` with both files, and reads them. */
async function both(args: readonly string[]): Promise<{ readonly html: string; readonly pdf: ReadPdf }> {
  const [pdf, html] = [join(out, 'report.pdf'), join(out, 'report.html')];
  const end = await command(sample.folder, ['report', ...args, '--pdf', pdf, '--html', html]);
  expect(end).toEqual({ code: 0, out: '', err: `Written: ${html}\nWritten: ${pdf}\n` });
  return { html: readFileSync(html, 'utf8'), pdf: readPdf(readFileSync(pdf)) };
}

const letterNumber = async (): Promise<string> => {
  const waiting = JSON.parse((await command(sample.folder, ['mail', 'queue', '--json'])).out) as readonly {
    readonly id: number;
    readonly channel: string;
  }[];
  return String(waiting.find(({ channel }) => channel === 'letter')?.id);
};

describe.runIf(pdfReaderIsThere())('report', { timeout: 90_000 }, () => {
  it.each([
    ['fence', ['fence', 'PR-02'], 'Fence PR-02'],
    ['fence in Spanish', ['fence', 'PR-04'], 'Cerca PR-04'],
    ['evidence', ['evidence', 'PR-02', '--on', '2026-10-01'], 'Fence PR-02: what it holds, and the care it had'],
    ['evidence in Spanish', ['evidence', 'SK-02', '--language', 'es'], 'Cerca SK-02: qué aguanta y qué cuidados tuvo'],
    ['plan of an owner', ['plan', 'HOA', '--years', '10'], 'Replacement plan 2027 to 2036: Pelican Reach Association'],
    [
      'plan of a site',
      ['plan', 'PELICAN', '--site', '--language', 'es'],
      'Plan de reemplazo 2027 a 2046: Pelican Reach Association',
    ],
    ['quote', ['quote', 'PR-02', 'post-swap:2,3', 'inspect', '--tax', '8.25'], 'Quote Q-20261124-'],
  ])('writes the same words as a page and as PDF: %s', async (_name, args, title) => {
    const { html, pdf } = await both(args);
    expect(html).toContain(title);
    expect(pdf.text).toContain(title);
    expect(missingWords(htmlText(html), pdf.text)).toEqual([]);
    const [width, height] = pdf.size;
    expect(
      pdf.words.filter(
        ({ left, right, top, bottom }) => left < 49 || right > width - 49 || top < 20 || bottom > height - 15,
      ),
    ).toEqual([]);
    expect(pdf.fonts.every(({ embedded }) => embedded)).toBe(true);
    expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
  });

  it('goes by the paper of the place: Letter where it is measured in feet, A4 where in metres', async () => {
    expect((await both(['fence', 'PR-01'])).pdf.size).toEqual([612, 792]);
    expect((await both(['fence', 'SK-02'])).pdf.size).toEqual([595.28, 841.89]);
  });

  it('writes a letter as it was written, word for word', async () => {
    const id = await letterNumber();
    const { html, pdf } = await both(['letter', id]);
    expect(html).toContain('data:image/png;base64');
    const told = (await command(sample.folder, ['mail', 'show', id])).out;
    const body = told
      .slice(told.indexOf('Sample Fence Office'))
      .replace(/^ *\* /gm, '')
      .replace(/^-+$/gm, '');
    expect(missingWords(body.toLowerCase(), pdf.text.toLowerCase())).toEqual([]);
    expect(pdf.info.Tagged).toBe('yes');
  });

  it("writes a crew's day with everything its page has", async () => {
    const { pdf } = await both(['sheet', 'north', '--day', '2027-01-11']);
    const found = await crewSheets(sample.register, 'north', ['2027-01-11']);
    if (found.kind !== 'sheets') throw new Error(found.kind);
    const page = htmlText(
      daySheetHtml(found.sheets, 'en')
        // on a phone the headings are said again in each row
        .replace(/<span class="stacked">[^<]*<\/span>/g, ' ')
        .replace(/<span class="turn">(\d+)<\/span>/g, '$1. '),
    );
    const words = (text: string): ReadonlySet<string> => new Set(text.split(' ').map((word) => word.replace(/:$/, '')));
    const there = words(pdf.text);
    expect([...words(page)].filter((word) => !there.has(word))).toEqual([]);
    for (const said of ['Park on the street.', 'post swap', 'Left undone, and why', 'Load'])
      expect(pdf.text).toContain(said);
    expect(pdf.text).toContain('811 is to be called by 2027-01-08, 3 days before.');
  });

  it('is the same file every time', async () => {
    const files = [join(out, 'one.pdf'), join(out, 'two.pdf')];
    for (const file of files) await command(sample.folder, ['report', 'evidence', 'PR-02', '--pdf', file]);
    expect(readFileSync(files[0]!).equals(readFileSync(files[1]!))).toBe(true);
  });

  it('says what is wrong, and the way out, and writes nothing', async () => {
    const file = join(out, 'none.pdf');
    const ends = async (args: readonly string[]) => command(sample.folder, ['report', ...args]);
    expect(await ends(['fence', 'PR-02'])).toMatchObject({
      code: 2,
      err: containing('give --pdf FILE, --html FILE, or both'),
    });
    expect(await ends(['fence', 'PR-99', '--pdf', file])).toMatchObject({
      code: 4,
      err: matching(/no fence "PR-99" in the register; did you mean PR-0\d\?/),
    });
    expect(await ends(['plan', 'HOB', '--pdf', file])).toMatchObject({
      code: 4,
      err: containing('did you mean HOA?'),
    });
    expect(await ends(['plan', 'NOWHERE', '--site', '--pdf', file])).toMatchObject({ code: 4 });
    expect(await ends(['evidence', 'PR-02', '--on', '2026-11-25', '--pdf', file])).toMatchObject({
      code: 3,
      err: containing('2026-11-25 has not come yet: today is 2026-11-24 at the site'),
    });
    expect(await ends(['evidence', 'PR-02', '--on', '2026-02-30', '--pdf', file])).toMatchObject({ code: 2 });
    expect(await ends(['quote', 'PR-02', 'rebuild', 'post-swap', '--pdf', file])).toMatchObject({
      code: 3,
      err: containing('a rebuild sets every post anew'),
    });
    expect(await ends(['letter', 'x', '--pdf', file])).toMatchObject({ code: 2 });
    expect(await ends(['letter', '999', '--pdf', file])).toMatchObject({ code: 4 });
    expect(await ends(['sheet', 'north', '--day', '2026-12-24', '--pdf', file])).toMatchObject({
      code: 3,
      err: containing('has no visits on 2026-12-24'),
    });
    expect(await ends(['fence', 'PR-02', '--pdf', join(out, 'nowhere', 'x.pdf')])).toMatchObject({
      code: 3,
      err: containing('it cannot be written (ENOENT)'),
    });
    expect(() => readFileSync(file)).toThrow();
  });
});
