import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { digestCsv } from '../../src/notify/digest-csv.ts';
import { digestMessage } from '../../src/notify/digest-message.ts';
import { ANN, noticedFence, OFFICE } from './noticed-fence.ts';

const fences = ['2004-04-15', '2009-04-15', '2013-04-15', '2016-04-15', '2019-04-15'].map((installed, index) =>
  noticedFence({ ref: `F-${index}`, installed, siteName: index % 2 ? 'Heron Landing' : 'Bittern Court' }),
);
const digest = (language: 'en' | 'es' = 'en') =>
  digestMessage({ fences: [...fences].reverse(), recipient: { ...ANN, language }, office: OFFICE });

describe('digestMessage', () => {
  it('says how many are short, and which is the weakest, in its first lines', () => {
    const { subject, text } = digest();
    const short = fences.filter((fence) => fence.standing === 'short').length;
    expect(short).toBeGreaterThan(0);
    expect(subject).toBe(`5 of your fences have news: ${short} short of the design gust`);
    expect(text.replace(/\s+/g, ' ')).toMatch(
      /^Of the 5 fences in this message .* Furthest below its design gust is F-0 at Bittern Court/,
    );
  });

  it('has a table a site with every fence, and draws the three weakest', () => {
    const { html, pictures } = digest();
    expect(html.match(/<table class="wide">/g)).toHaveLength(2);
    for (const fence of fences) expect(html).toContain(`<td>${fence.forecast.fenceRef}</td>`);
    expect(pictures.map((picture) => picture.alt.slice(0, 18))).toEqual([
      'Chart of fence F-0',
      'Chart of fence F-1',
      'Chart of fence F-2',
    ]);
    expect(new Set(pictures.map((picture) => picture.cid)).size).toBe(3);
  });

  it('attaches the table as CSV that reads back, weakest first', () => {
    const [file] = digest().files;
    const rows = parse<Record<string, string>>(file?.text ?? '', { columns: true });
    expect(rows.map((row) => row.fence)).toEqual(['F-0', 'F-1', 'F-2', 'F-3', 'F-4']);
    expect(rows[0]).toMatchObject({
      speed_unit: 'mph',
      should_hold: '105',
      matters: 'short',
      place: 'Marshfield, Georgia',
    });
  });

  it('stays under 100 KB of HTML for eighty fences and for a thousand', () => {
    for (const count of [80, 1000]) {
      const many = Array.from({ length: count }, (_, index) => {
        const fence = fences[index % fences.length] ?? noticedFence();
        return { ...fence, forecast: { ...fence.forecast, fenceRef: `FENCE-${index}` } };
      });
      expect(digestMessage({ fences: many, recipient: ANN, office: OFFICE }).html.length).toBeLessThan(100_000);
    }
  });

  it('writes out thirty fences of many, the weakest, says how many more there are, and has all of them in its file', () => {
    const many = Array.from({ length: 242 }, (_, index) => {
      const fence = fences[index % fences.length] ?? noticedFence();
      return { ...fence, forecast: { ...fence.forecast, fenceRef: `FENCE-${index}` } };
    });
    const { text, html, files } = digestMessage({ fences: many, recipient: ANN, office: OFFICE });
    expect(html.match(/<td>FENCE-/g)).toHaveLength(30);
    expect(text).toContain('And 212 more: see the attached table.');
    expect(parse<Record<string, string>>(files[0]?.text ?? '', { columns: true })).toHaveLength(242);
    // no sentence names more than a dozen
    for (const [line] of text.matchAll(/^- .*(?:\n {2}.*)*/gm))
      expect(line.match(/FENCE-\d+/g)?.length ?? 0).toBeLessThan(13);
  });

  it('adds up the least of what it suggests, and has it fence by fence in its file', () => {
    const offer = {
      currency: 'USD',
      works: [
        { kind: 'post-swap' as const, postCount: 11, cost: { low: 900, high: 1700 } },
        { kind: 'rebuild' as const, postCount: 11, cost: { low: 2900, high: 5500 } },
      ],
      nextOpening: '2027-06-01',
      latestDay: '2027-05-24',
      waiting: { chance: 0.25, extra: 2000 },
    };
    const { text, files } = digestMessage({
      fences: fences.map((fence) => ({ ...fence, offer, matters: ['short'] })),
      recipient: ANN,
      office: OFFICE,
    });
    expect(text.replace(/\s+/g, ' ')).toContain(
      'We suggest works at 5 of them: the least of it comes to about 4,500 to 8,500 dollars, a budget figure and not a quote.',
    );
    expect(text.replace(/\s+/g, ' ')).toContain(
      'Leaving all of them for a season costs about 2,500 dollars more, on the average over what may happen',
    );
    const [row] = parse<Record<string, string>>(files[0]?.text ?? '', { columns: true });
    expect(row).toMatchObject({ suggested: 'post-swap', cost_low: '900', cost_high: '1700', currency: 'USD' });
  });

  it('says once what leaning means, for each site where its gust comes from, and how sure it is of each drawn fence', () => {
    const text = digest().text.replace(/\s+/g, ' ');
    expect(text.match(/Then the fence leans, which is a repair/g)).toHaveLength(1);
    expect(text.match(/The design gust of 105 mph is the gust/g)).toHaveLength(2);
    expect(text.match(/8 chances in 10 that it holds/g)).toHaveLength(3);
    expect(text).not.toMatch(/\b0 (are|is)\b/);
  });

  it('opens with the fences that are dangerous now, and suggests to keep away from them first', () => {
    const broken = fences.map((fence, index) =>
      index < 2
        ? {
            ...fence,
            forecast: { ...fence.forecast, found: { ...fence.forecast.found, broken: [4], leaning: [4, 5] } },
          }
        : fence,
    );
    const told = broken.map((fence, index) =>
      index < 2 ? { ...fence, matters: ['dangerous', 'short'] as const } : fence,
    );
    const text = digestMessage({ fences: told, recipient: ANN, office: OFFICE }).text.replace(/\s+/g, ' ');
    expect(text).toMatch(
      /^Dangerous now: F-0 \(post 4 is broken and post 5 leans\); F-1 \(post 4 is broken and post 5 leans\)\. Keep people away from them/,
    );
    expect(text).toContain('- F-0, F-1: Keep people and vehicles away');
  });

  it('says what the office wants said after the greeting', () => {
    const covering = 'We meet on the 12th.';
    const { text } = digestMessage({ fences, recipient: { ...ANN, covering }, office: OFFICE });
    expect(text).toContain('Dear Ann Tidewell,\n\nWe meet on the 12th.\n\nYour fences');
  });

  it('is in Spanish for an owner who reads Spanish', () => {
    const { subject, text } = digest('es');
    expect(subject).toMatch(/^5 de sus cercas tienen novedades/);
    expect(text).not.toMatch(/undefined|null|NaN|\b(fence|holds|season)\b/);
  });
});

describe('digestCsv', () => {
  it('keeps a spreadsheet from taking a name for a formula', () => {
    const text = digestCsv([noticedFence({ siteName: '=HYPERLINK("x")', place: 'A, B' })]);
    expect(text).toContain(`"'=HYPERLINK(""x"")"`);
    expect(text).toContain('"A, B"');
  });

  it('says how often a gust comes as the pages do: no figure beyond a thousand years, none without a curve', () => {
    const once = (onceInYears: number | null): readonly (string | undefined)[] => {
      const fence = noticedFence();
      const seasons = fence.forecast.seasons.map((season) => ({
        ...season,
        line: season.line && { ...season.line, onceInYears },
      }));
      const [row] = parse<Record<string, string>>(digestCsv([{ ...fence, forecast: { ...fence.forecast, seasons } }]), {
        columns: true,
      });
      return [row?.once_in_years, row?.once_in_years_is];
    };
    expect(once(24.26)).toEqual(['24.3', 'about']);
    expect(once(1000)).toEqual(['1000', 'about']);
    expect(once(10_000)).toEqual(['1000', 'more than']);
    expect(once(null)).toEqual(['', '']);
  });
});
