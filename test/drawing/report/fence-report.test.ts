import { describe, expect, it } from 'vitest';
import { fenceReport } from '../../../src/drawing/report/fence-report.ts';
import { reportBody, reportHtml } from '../../../src/drawing/report/report-html.ts';
import type { ReportedFence } from '../../../src/drawing/report/reported-fence.ts';
import { forecastFence } from '../../../src/forecast/forecast-fence.ts';
import { EXAMPLE_FENCE } from '../../forecast/example-fence.ts';
import { htmlText } from '../../pdf-reader.ts';

const SETTINGS = { standingReturnPeriodYears: 300, lookAheadSeasons: 2 } as const;

function reported(change: Partial<ReportedFence> = {}): ReportedFence {
  const forecast = forecastFence(EXAMPLE_FENCE, 2027, SETTINGS);
  return {
    ref: 'A <1>',
    site: { name: 'Pelican & Reach', place: 'Bayou Vista', windSource: 'a map' },
    owners: ['Rosa Quinn', 'Mason Yards'],
    style: 'solid-board',
    namedEnd: 'street end',
    consequence: 'pool-barrier',
    units: 'us',
    facts: EXAMPLE_FENCE,
    forecast,
    standing: forecast.standing,
    endsStanding: forecast.endsStanding,
    inspections: [],
    storms: [
      {
        storm: 'June squall',
        day: '2026-06-01',
        gustMps: 30,
        gustSpread: 0.1,
        posts: [3],
        result: 'leaned',
        gustSource: 'airport',
        reportedBy: 'Ann Tern',
        enteredOn: null,
      },
    ],
    works: [{ kind: 'drainage', day: '2026-07-01', posts: 'all', enteredOn: '2026-07-02' }],
    inputHash: 'abc',
    ...change,
  };
}

const making = (language: 'en' | 'es') =>
  ({
    language,
    author: 'Office',
    madeAt: '2026-11-24T12:00:00.000Z',
    madeOn: '2026-11-24',
    madeThere: '2026-11-24 06:00 CST',
    timeZone: 'America/Chicago',
  }) as const;

describe('the report of a fence', () => {
  it('names fence, place, owners, what stands at stake, storms and works, in English', () => {
    const text = htmlText(reportBody(fenceReport(reported(), making('en'))));
    for (const said of [
      'Fence A <1> Pelican & Reach, Bayou Vista Owner: Rosa Quinn and Mason Yards',
      'pool barrier',
      'June squall, gust 67 mph ± 10 %',
      'post 3 leaned',
      'reported by Ann Tern',
      'drainage, the whole fence',
      'No inspection is on record.',
      'Made on 2026-11-24 · model',
    ]) {
      expect(text).toContain(said);
    }
  });

  it('says the same in Spanish, with no English left but what people recorded', () => {
    const text = htmlText(reportBody(fenceReport(reported(), making('es'))));
    for (const said of [
      'Cerca A <1>',
      'Dueño: Rosa Quinn y Mason Yards',
      'barrera de piscina',
      'June squall, ráfaga de 67 mph ± 10 %',
      'el poste 3 se inclinó',
      'drenaje, toda la cerca',
      'No consta ninguna inspección.',
      'Hecho el 2026-11-24',
    ]) {
      expect(text).toContain(said);
    }
    expect(text).not.toMatch(/\b(the|fence|post|holds|not|season|years|and|with)\b/i);
  });

  it('has the same parts and the same numbers in both languages', () => {
    const [en, es] = [fenceReport(reported(), making('en')), fenceReport(reported(), making('es'))];
    expect(es.blocks.map(({ kind }) => kind)).toEqual(en.blocks.map(({ kind }) => kind));
    const cells = (report: typeof en) =>
      report.blocks.flatMap((block) =>
        block.kind === 'table' && block.columns.length === 8 ? block.rows.map((row) => row.slice(0, 6)) : [],
      );
    expect(cells(es)).toEqual(cells(en));
    expect(cells(en)).toHaveLength(14);
  });

  it('escapes what people typed, and stands alone without loading anything', () => {
    const html = reportHtml(fenceReport(reported(), making('en')));
    expect(html).toContain('Fence A &lt;1&gt;');
    expect(html).not.toMatch(/<script|<link|src="http/);
    expect(html.match(/id="([^"]+)"/g)?.length).toBe(new Set(html.match(/id="([^"]+)"/g)).size);
  });

  it('is on Letter where the site is shown in feet, on A4 in metres', () => {
    expect(fenceReport(reported(), making('en')).paper).toBe('letter');
    expect(fenceReport(reported({ units: 'metric' }), making('en')).paper).toBe('a4');
  });
});
