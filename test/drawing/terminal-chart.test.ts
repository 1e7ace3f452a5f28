import { describe, expect, it } from 'vitest';
import { terminalChart } from '../../src/drawing/terminal-chart.ts';
import type { FixtureShape } from './forecast-fixture.ts';
import { forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

describe("a fence's chart for a terminal", () => {
  for (const [name, shape] of Object.entries(MADE_UP_FENCES)) {
    it.each([40, 80, 120])(`keeps within the width and names its lines: ${name}, %i columns`, (columns) => {
      const lines = terminalChart(forecastFixture(shape), { units: 'us', columns, rows: 16 });
      for (const line of lines) expect([...line].length).toBeLessThanOrEqual(columns);
      const text = lines.join('\n');
      expect(text).toMatch(/ snap$/m);
      expect(text).toMatch(/ lean$/m);
      expect(text).toContain(`gust ${Math.round(shape.gustMps / 0.44704)}`);
    });
  }

  it('draws the snap speed at the row of its value', () => {
    const forecast = forecastFixture(MADE_UP_FENCES.sound as FixtureShape);
    const lines = terminalChart(forecast, { units: 'us', columns: 80, rows: 16 });
    const scale = lines.flatMap((line, row) => {
      const found = /^ *(\d+) ┤/.exec(line);
      return found ? [{ row, speed: Number(found[1]) }] : [];
    });
    const [high, low] = [scale[0], scale.at(-1)];
    if (!high || !low) throw new Error('the axis has no labels');
    const row = lines.findIndex((line) => / snap$/.test(line));
    const speed = high.speed + ((low.speed - high.speed) * (row - high.row)) / (low.row - high.row);
    const perRow = (high.speed - low.speed) / (low.row - high.row);
    const last = forecast.seasons.at(-1)?.line?.snapMps.p50 ?? 0;
    expect(Math.abs(speed - last / 0.44704)).toBeLessThanOrEqual(perRow);
  });
});
