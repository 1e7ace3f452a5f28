import { scaleLinear } from 'd3-scale';
import { describe, expect, it } from 'vitest';
import { fenceSeries } from '../../src/drawing/fence-series.ts';
import { drawFenceYears } from '../../src/drawing/fence-years.ts';
import { boxesOverlap } from '../../src/drawing/label-placement.ts';
import { displaySpeed } from '../../src/drawing/speed-text.ts';
import { attribute, drawnTexts } from './drawn-text.ts';
import type { FixtureShape } from './forecast-fixture.ts';
import { forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

const WIDE = { widthPx: 960, heightPx: 440 } as const;
const NARROW = { widthPx: 358, heightPx: 340 } as const;

const element = (svg: string, className: string): string => {
  const found = new RegExp(`<[a-z]+ class="${className}"[^>]*>`).exec(svg);
  if (!found) throw new Error(`no element of class ${className}`);
  return found[0];
};

describe("a fence's chart", () => {
  const cases = Object.entries(MADE_UP_FENCES).flatMap(([name, shape]) =>
    [WIDE, NARROW].flatMap((size) =>
      (['en', 'es'] as const).flatMap((language) =>
        (['us', 'metric'] as const).map((units) => ({ name, shape, size, language, units, widthPx: size.widthPx })),
      ),
    ),
  );

  it.each(cases)(
    'writes no text over another: $name, $widthPx px, $language, $units',
    ({ shape, size, language, units }) => {
      const texts = drawnTexts(drawFenceYears(forecastFixture(shape), { ...size, language, units }));
      expect(texts.length).toBeGreaterThan(10);
      for (const [index, text] of texts.entries()) {
        expect(text.box.left, text.text).toBeGreaterThanOrEqual(0);
        expect(text.box.right, text.text).toBeLessThanOrEqual(size.widthPx);
        for (const other of texts.slice(index + 1)) {
          expect(boxesOverlap(text.box, other.box), `${text.text} / ${other.text}`).toBe(false);
        }
      }
    },
  );

  it('names both speeds, the ends, the design gust, season 1, the short season and the turnover', () => {
    const forecast = forecastFixture(MADE_UP_FENCES.old as FixtureShape);
    const texts = drawnTexts(drawFenceYears(forecast, { ...WIDE, language: 'en', units: 'us' })).map(
      ({ text }) => text,
    );
    expect(texts).toContain('Snap speed, line posts');
    expect(texts).toContain('Lean speed');
    expect(texts).toContain('Snap speed, ends');
    expect(texts).toContain('Design gust 105 mph');
    expect(texts).toContain('Season 2027');
    expect(texts).toContain(`Leans first until ${forecast.turnover}: a repair`);
    expect(texts).toContain(`Snaps first from ${forecast.turnover}: a replacement`);
    expect(texts.some((text) => /^Short since 20\d\d$/.test(text))).toBe(true);
  });

  it('says in Spanish and in kilometres an hour what it says in English and in miles', () => {
    const forecast = forecastFixture(MADE_UP_FENCES.old as FixtureShape);
    const texts = drawnTexts(drawFenceYears(forecast, { ...WIDE, language: 'es', units: 'metric' })).map(
      ({ text }) => text,
    );
    expect(texts).toContain('Ráfaga de diseño 169 km/h');
    expect(texts).toContain('Velocidad de rotura, postes de línea');
  });

  it('marks a fence that was short when its wood was sound as short from new', () => {
    const forecast = forecastFixture(MADE_UP_FENCES['short from new'] as FixtureShape);
    const texts = drawnTexts(drawFenceYears(forecast, { ...WIDE, language: 'en', units: 'us' })).map(
      ({ text }) => text,
    );
    expect(texts).toContain('Short from new');
  });

  it('says what the forecast says of the short season, also where it was short once and no longer is', () => {
    const old = forecastFixture(MADE_UP_FENCES.old as FixtureShape);
    const textsOf = (shortFrom: string | null): readonly string[] =>
      drawnTexts(drawFenceYears({ ...old, shortFrom }, { ...WIDE, language: 'en', units: 'us' })).map(
        ({ text }) => text,
      );
    expect(textsOf(null).filter((text) => text.startsWith('Short'))).toEqual([]);
    expect(textsOf('2031')).toContain('Short from 2031');
    expect(textsOf('2024')).toContain('Short since 2024');
  });

  it('marks a build that was short from new where its stretch begins, not on the older build', () => {
    const old = forecastFixture(MADE_UP_FENCES.old as FixtureShape);
    const series = fenceSeries({ ...old, shortFrom: 'new' });
    expect(series.short?.sinceNew).toBe(true);
    expect(series.short?.point.snapMps.p50).toBeLessThan(series.designGustMps);
    expect(series.short?.point.label).not.toBe('new');
  });

  it('shows neither turnover nor short season where none lies in range', () => {
    const svg = drawFenceYears(forecastFixture(MADE_UP_FENCES.sound as FixtureShape), {
      ...WIDE,
      language: 'en',
      units: 'us',
    });
    expect(svg).not.toContain('fy-turnover');
    expect(svg).not.toContain('fy-short');
    expect(svg).not.toContain('Snaps first');
    expect(svg).toContain('Leans first in every season: a repair');
  });

  it('has no line of the ends where only end-zone posts stand', () => {
    const svg = drawFenceYears(forecastFixture(MADE_UP_FENCES['without line posts'] as FixtureShape), {
      ...WIDE,
      language: 'en',
      units: 'us',
    });
    expect(svg).not.toContain('fy-ends-line');
    expect(svg).toContain('>Snap speed, ends<');
  });

  it('draws speeds where its own axis says they are', () => {
    const forecast = forecastFixture(MADE_UP_FENCES.old as FixtureShape);
    const series = fenceSeries(forecast);
    const svg = drawFenceYears(forecast, { ...WIDE, language: 'en', units: 'us' });
    const labels = drawnTexts(svg).filter(
      ({ text, className }) => className === 'fy-muted-text' && /^\d{1,3}$/.test(text),
    );
    const rules = [...svg.matchAll(/<line class="fy-grid"[^>]*>/g)].map(([rule]) => Number(attribute(rule, 'y1')));
    expect(labels.length).toBe(rules.length);
    const speedAtY = scaleLinear()
      .domain([rules[0] as number, rules.at(-1) as number])
      .range([Number(labels[0]?.text), Number(labels.at(-1)?.text)]);
    const mph = (mps: number): number => displaySpeed(mps, 'us');
    expect(speedAtY(Number(attribute(element(svg, 'fy-gust'), 'y1')))).toBeCloseTo(mph(series.designGustMps), 1);
    expect(speedAtY(Number(attribute(element(svg, 'fy-snap-dot'), 'cy')))).toBeCloseTo(
      mph(series.today.snapMps.p50),
      1,
    );
    expect(speedAtY(Number(attribute(element(svg, 'fy-lean-dot'), 'cy')))).toBeCloseTo(
      mph(series.today.leanMps.p50),
      1,
    );
    const path = attribute(element(svg, 'fy-snap-line'), 'd').slice(1).split('L');
    expect(path.length).toBe(series.points.length);
    for (const [index, spot] of path.entries()) {
      expect(speedAtY(Number(spot.split(',')[1]))).toBeCloseTo(mph(series.points[index]?.snapMps.p50 ?? 0), 1);
    }
  });

  it('draws what works raised as a step at the season after them, not as a slope before', () => {
    const old = forecastFixture(MADE_UP_FENCES.old as FixtureShape);
    const [fresh] = old.seasons;
    const seasons = old.seasons.map((season) =>
      (season.season ?? -99) >= -3 && fresh ? { ...season, line: fresh.line } : season,
    );
    const series = fenceSeries({ ...old, seasons });
    const raised = series.points.findIndex(({ label }) => label === '2023');
    const path = attribute(
      element(drawFenceYears({ ...old, seasons }, { ...WIDE, language: 'en', units: 'us' }), 'fy-snap-line'),
      'd',
    )
      .slice(1)
      .split('L')
      .map((spot) => spot.split(',').map(Number));
    expect(path).toHaveLength(series.points.length + 1);
    expect(path[raised]?.[0]).toBe(path[raised + 1]?.[0]);
    expect(path[raised]?.[1]).toBe(path[raised - 1]?.[1]);
    expect(path[raised + 1]?.[1]).toBeLessThan(path[raised]?.[1] as number);
  });

  it('puts season 1 between the years around its opening', () => {
    const svg = drawFenceYears(forecastFixture(MADE_UP_FENCES.old as FixtureShape), {
      ...WIDE,
      language: 'en',
      units: 'us',
    });
    const ticks = [...svg.matchAll(/<line class="fy-tick"[^>]*>/g)].map(([tick]) => Number(attribute(tick, 'x1')));
    const years = drawnTexts(svg).filter(
      ({ text, className }) => className === 'fy-muted-text' && /^\d{4}$/.test(text),
    );
    const yearAtX = scaleLinear()
      .domain([ticks[0] as number, ticks.at(-1) as number])
      .range([Number(years[0]?.text), Number(years.at(-1)?.text)]);
    expect(yearAtX(Number(attribute(element(svg, 'fy-today'), 'x1')))).toBeCloseTo(2027.41, 1);
  });

  it('carries a title and a description that its role refers to', () => {
    const svg = drawFenceYears(forecastFixture({ ...(MADE_UP_FENCES.old as FixtureShape), ref: 'A&B <7>' }), {
      ...WIDE,
      language: 'en',
      units: 'us',
      idPrefix: 'wide',
    });
    expect(svg).toContain('role="img"');
    expect(svg).toContain('aria-labelledby="wide-title wide-desc"');
    expect(svg).toMatch(/<title id="wide-title">Snap speed and lean speed of fence A&amp;B &lt;7&gt;/);
    expect(svg).toMatch(/<desc id="wide-desc">In season 2027 it snaps at \d+ mph and leans at 60 mph/);
  });

  it('gives the same bytes for the same forecast', () => {
    const draw = (): string =>
      drawFenceYears(forecastFixture(MADE_UP_FENCES.new as FixtureShape), { ...NARROW, language: 'en', units: 'us' });
    expect(draw()).toBe(draw());
  });
});
