import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hoursAhead } from '../../../src/service/hours-ahead.ts';
import { answeringSample } from '../owner/answering-sample.ts';
import type { SampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

describe('the season by the API', { timeout: 60_000 }, () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await answeringSample();
    program = await apiClient(sample, ['read-register']);
  });
  afterAll(() => sample.close());

  it('is briefed as the page with which the office begins', async () => {
    const brief = await program.json('GET', '/api/v1/brief');
    expect(brief).toMatchObject({
      today: '2026-11-24',
      visits: { toCome: 3, thisWeek: [], missed: 0 },
      plan: { inForce: null, newest: null },
      danger: { total: 0 },
    });
    const regions = brief.regions as { region: string; fences: number; season: { kind: string } }[];
    expect(regions.reduce((sum, { fences }) => sum + fences, 0)).toBe(8);
    expect(regions.find(({ region }) => region === 'gulf')?.season).toMatchObject({ kind: 'runs', daysLeft: 7 });
    const page = await sample.text('/brief');
    for (const { region } of regions) expect(page.toLowerCase()).toContain(region);
  });

  it('says the hours that are left, week by week', async () => {
    const hours = await program.json('GET', '/api/v1/hours?weeks=9');
    expect(hours).toEqual(await hoursAhead(sample.register, { today: '2026-11-24', weeks: 9 }));
    const weeks = hours.weeks as { monday: string; cells: { proposed: number; left: number }[] }[];
    expect(weeks).toHaveLength(9);
    expect(weeks.find(({ monday }) => monday === '2027-01-11')?.cells[0]?.proposed).toBeGreaterThan(5);
    await program.json('GET', '/api/v1/hours?weeks=0', undefined, 400);
  });

  it('says what to order, and for which days', async () => {
    const all = await program.json('GET', '/api/v1/materials');
    expect(all).toMatchObject({ from: '2026-11-24', to: null, visits: 3 });
    expect((all.materials as { name: string }[]).length).toBeGreaterThan(0);
    const some = await program.json('GET', '/api/v1/materials?from=2027-01-12&to=2027-01-12');
    expect(some).toMatchObject({ visits: 1, days: { first: '2027-01-12', last: '2027-01-12' } });
    await program.json('GET', '/api/v1/materials?from=soon', undefined, 400);
  });

  it('gives a crew its day sheets', async () => {
    const sheets = await program.json('GET', '/api/v1/crews/north/sheets?from=2027-01-11&days=7');
    expect(sheets).toMatchObject({
      crewName: 'North crew',
      sheets: [{ day: '2027-01-11' }, { day: '2027-01-12' }],
      nextDay: '2027-01-19',
    });
    expect(await program.json('GET', '/api/v1/crews/north/sheets')).toMatchObject({
      sheets: [],
      nextDay: '2027-01-11',
    });
    await program.json('GET', '/api/v1/crews/none/sheets', undefined, 404);
  });

  it('gives the calendar of a crew and of a site, and says where it is as it was', async () => {
    const calendar = await program.ask('GET', '/api/v1/crews/north/calendar.ics');
    expect([calendar.status, calendar.headers.get('content-type')]).toEqual([200, 'text/calendar; charset=utf-8']);
    const text = await calendar.text();
    expect(text).toContain('BEGIN:VCALENDAR');
    expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(3);
    const etag = calendar.headers.get('etag') ?? '';
    const again = await program.ask('GET', '/api/v1/crews/north/calendar.ics', undefined, { 'if-none-match': etag });
    expect([again.status, await again.text()]).toEqual([304, '']);
    expect(await (await program.ask('GET', '/api/v1/sites/PELICAN/calendar.ics')).text()).toContain('BEGIN:VEVENT');
    await program.json('GET', '/api/v1/sites/NOPE/calendar.ics', undefined, 404);
  });

  it('is for tokens that may read the register', async () => {
    const other = await apiClient(sample, ['read-fences', 'change-visits', 'release-notices'], 'other');
    for (const path of ['brief', 'hours', 'materials', 'crews/north/sheets', 'crews/north/calendar.ics', 'quotes']) {
      expect((await other.ask('GET', `/api/v1/${path}`)).status, path).toBe(403);
    }
  });
});
