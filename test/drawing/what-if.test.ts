import { describe, expect, it } from 'vitest';
import { whatIfChart } from '../../src/drawing/what-if-chart.ts';
import { whatIfSeasonsTable, whatIfTable } from '../../src/drawing/what-if-table.ts';
import { lifeSentence, optionLines, postNumbersText, whatIfNotes } from '../../src/drawing/what-if-words.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import { fenceOutlook } from '../../src/season/fence-outlook.ts';
import { whatIf } from '../../src/season/what-if.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { EXAMPLE_FENCE } from '../forecast/example-fence.ts';

const RESULT = whatIf(fenceOutlook(EXAMPLE_FENCE, DEFAULT_SETTINGS, '2026-02-01', 2026), SHIPPED_CATALOGUE);
const indexOf = (key: string): number => RESULT.rows.findIndex(({ option }) => option.key === key) + 1;

describe('the table of what could be done', () => {
  const table = whatIfTable(RESULT, 'us');

  it('begins with doing nothing and has a row for each works, as wide as its headings', () => {
    expect(table.rows).toHaveLength(RESULT.rows.length + 1);
    for (const { cells } of table.rows) expect(cells).toHaveLength(table.columns.length - 2);
    // The example fence snaps at 51.0 m/s and leans at 26.8 m/s: 114 and 60 mph; once in 832 years, short from 2031.
    const [price, hours, snap, ends, lean, once, , , short, life, cost] = table.rows[0]!.cells;
    expect([price, hours, cost]).toEqual(['–', '–', '–']);
    expect([snap, lean, once, short, life]).toEqual(['114', '60', '830', '2031', '4.2']);
    expect(Number(ends)).toBeLessThan(114);
  });

  it('says what a year more costs, at most so much where its end is not in sight, and nothing where none is gained', () => {
    const cost = (key: string): string => table.rows[indexOf(key)]!.cells.at(-1)!;
    expect(cost('groundline-treatment')).toBe('102');
    expect(cost('steel-sleeve')).toMatch(/^at most \d+$/);
    expect(cost('footing-reset')).toBe('–');
    expect(table.rows[indexOf('steel-sleeve')]!.cells.at(-2)).toBe('over 28');
  });

  it('gives metric speeds to a metric site', () => {
    expect(whatIfTable(RESULT, 'metric').rows[0]!.cells[2]).toBe('184');
    expect(whatIfTable(RESULT, 'metric').columns.map(({ unit }) => unit)).toContain('km/h');
  });

  it('lists snap and lean season by season, in the same order', () => {
    const seasons = whatIfSeasonsTable(RESULT, 'us');
    expect(seasons.columns.slice(2).map(({ heading }) => heading)).toEqual([
      '2026',
      '2028',
      '2030',
      '2035',
      '2045',
      '2055',
    ]);
    expect(seasons.rows[0]!.cells[0]).toBe('114 / 60');
    expect(seasons.rows.map(({ name }) => name)).toEqual(table.rows.map(({ name }) => name));
    for (const { cells } of seasons.rows) expect(cells).toHaveLength(6);
  });
});

describe('the words of what could be done', () => {
  it('join post numbers into stretches', () => {
    expect(postNumbersText([1, 2, 3, 5, 8, 9])).toBe('1–3, 5, 8–9');
    expect(postNumbersText([])).toBe('');
  });

  it('name each part on its line, with its posts where it is not done to all', () => {
    const lines = RESULT.rows.map(({ option }) => optionLines(option));
    expect(lines).toContainEqual(['post swap', '+ footing reset']);
    expect(lines).toContainEqual(['added posts, 10 more']);
    expect(lines).toContainEqual(['steel sleeves, posts 2–3, 9–10', '+ groundline treatment, posts 1, 4–8, 11']);
  });

  it('say why parts belong together, with their rows, and what the numbers leave out', () => {
    const notes = whatIfNotes(RESULT);
    const liners = [indexOf('post-swap + liner'), indexOf('rebuild + liner')];
    expect(notes).toContain(`No. ${liners.join(', ')}: a liner goes on only before a post is set.`);
    expect(notes).toContain('A steel sleeve counts as lasting: corrosion is not reckoned with.');
    expect(whatIfNotes({ rows: RESULT.rows.filter(({ option }) => option.key === 'rebuild') })).toEqual([]);
  });

  it('say what ends a life', () => {
    expect(lifeSentence({ gustMps: 46.94, means: 'short' }, 'us')).toBe(
      'Life: years until it breaks below its design gust of 105 mph.',
    );
    expect(lifeSentence({ gustMps: 40, means: 'two thirds' }, 'metric')).toMatch(
      /never held its design gust.*two thirds.*144 km\/h/,
    );
  });
});

describe('the chart of what could be done', () => {
  const options = { units: 'us', columns: 80, rows: 16 } as const;
  const lines = whatIfChart(RESULT, options);

  it('keeps to its width, with a rule at the design gust and years below', () => {
    expect(Math.max(...lines.map((line) => [...line].length))).toBeLessThanOrEqual(80);
    expect(lines).toHaveLength(16 + 4);
    expect(lines.some((line) => /─.* gust 105$/.test(line))).toBe(true);
    expect(lines.at(-2)).toMatch(/2026 .*20\d\d/);
  });

  it('draws doing nothing and the three works that add years most cheaply, told apart by their dashes', () => {
    const drawn = lines.at(-1)!;
    expect(drawn).toMatch(/full line: nothing · long dashes: no\. \d+ · short dashes: no\. \d+ · dots: no\. \d+/);
    const cheapest = RESULT.rows.reduce(
      (best, { costPerYear }, index) =>
        costPerYear !== null && costPerYear < (RESULT.rows[best]!.costPerYear ?? Infinity) ? index : best,
      0,
    );
    expect(drawn).toContain(`long dashes: no. ${cheapest + 1}`);
    for (const name of drawn.match(/no\. \d+/g)!) expect(lines.some((line) => line.endsWith(name))).toBe(true);
  });

  it('lets the line of doing nothing fall through the rule', () => {
    const rule = lines.findIndex((line) => line.endsWith('gust 105'));
    const nothing = lines.findIndex((line) => line.endsWith('nothing'));
    expect(nothing).toBeGreaterThan(rule);
  });
});
