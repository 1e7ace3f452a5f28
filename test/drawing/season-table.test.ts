import { describe, expect, it } from 'vitest';
import { seasonTable } from '../../src/drawing/season-table.ts';
import type { FixtureShape } from './forecast-fixture.ts';
import { forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

const old = forecastFixture(MADE_UP_FENCES.old as FixtureShape);

describe("the table of a fence's seasons", () => {
  it('has a row for new, one for each season since, and thirty ahead', () => {
    const table = seasonTable(old, 'us');
    expect(table.rows[0]?.label).toBe('new');
    expect(table.rows.filter((row) => (row.season ?? 0) >= 1)).toHaveLength(30);
    expect(table.rows).toHaveLength(old.seasons.length);
    for (const row of table.rows) expect(row.cells).toHaveLength(table.columns.length - 1);
  });

  it('gives middle and band in the units of the site', () => {
    const [us] = seasonTable(old, 'us', { keep: (season) => season.season === null }).rows;
    const [metric] = seasonTable(old, 'metric', { keep: (season) => season.season === null }).rows;
    expect(us?.cells[2]).toBe('129 (114–144)');
    expect(metric?.cells[2]).toBe('208 (183–233)');
  });

  it('leaves the risks of past seasons open and never claims certainty', () => {
    const table = seasonTable(old, 'us');
    expect(table.rows[3]?.cells.slice(6)).toEqual(['–', '–', '–']);
    const text = table.rows.map((row) => row.cells.join(' ')).join(' ');
    expect(text).not.toMatch(/\b(0|100) %/);
    expect(text).toContain('over 99 %');
  });
});
