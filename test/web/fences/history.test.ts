import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runSweep } from '../../../src/service/run-sweep.ts';
import { fenceHistory, type HistorySources } from '../../../src/web/fences/history.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

const NOTHING: HistorySources = {
  evidence: { inspections: [], outcomes: [] },
  works: [],
  standings: [],
  notices: [],
  visits: [],
};

describe('the history of a fence', () => {
  it('is one line of time, the newest first, what is booked before what was', () => {
    const entries = fenceHistory(
      {
        ...NOTHING,
        works: [{ ref: 'W', day: '2024-05-01', kind: 'drainage', posts: 'all' }],
        standings: [
          { at: '2026-01-02T04:30:00Z', posts: 'judged', before: null, after: 'clear', snapMps: 50, designGustMps: 45 },
          {
            at: '2026-09-02T04:30:00Z',
            posts: 'judged',
            before: 'clear',
            after: 'short',
            snapMps: 40,
            designGustMps: 45,
          },
        ],
        notices: [
          {
            matter: 'short',
            ownerName: 'Rosa Quinn',
            decidedAt: '2026-09-02T04:30:00Z',
            voidReason: null,
            held: false,
            message: { state: 'sent', sentAt: '2026-09-03T06:00:00Z' },
          },
        ],
        visits: [
          {
            firstDay: '2027-03-04',
            lastDay: '2027-03-04',
            state: 'confirmed',
            crewName: 'North crew',
            works: [{ kind: 'post-swap', posts: [3, 4], postCount: 2 } as never],
          },
        ],
      },
      { units: 'us', language: 'en', timeZone: 'UTC' },
    );
    expect(entries.map(({ day, kind }) => `${day} ${kind}`)).toEqual([
      '2027-03-04 Visit',
      '2026-09-02 Notice',
      '2026-09-02 Standing',
      '2026-01-02 Standing',
      '2024-05-01 Works',
    ]);
    expect(entries[0]?.more).toBe('booked, North crew');
    expect(entries[1]).toMatchObject({ what: 'short, to Rosa Quinn', more: 'sent 2026-09-03' });
    expect(entries[2]).toMatchObject({
      what: 'clear, then short',
      more: 'it held 89 mph; its design gust was 101 mph',
    });
  });

  describe('on its page', () => {
    let sample: SampleApp;
    beforeAll(async () => {
      sample = await sampleApp();
      const report = await importFiles(sample.register, [
        {
          name: 'inspections.csv',
          text: 'ref,fence,day,inspector,method\nA,PR-03,2026-05-12,Nell Fox,awl-or-probe\n',
        },
        { name: 'readings.csv', text: 'inspection,post,depth_in,broken\nA,3,1.2,\nA,7,,yes\n' },
      ]);
      expect(report.faults).toEqual([]);
      await runSweep(sample.register, { now: () => SAMPLE_NOW().plus({ days: 1 }) });
    });
    afterAll(() => sample.close());

    it('tells the office of notices, and a crew and a board of everything else', async () => {
      const office = await sample.text('/fences/PR-03');
      expect(office).toContain('<span class="kind">Notice:</span>');
      expect(office).toContain('<span class="kind">Inspection:</span> 2 posts read');
      for (const role of ['crew', 'board'] as const) {
        const cookie = await sample.signIn({ name: role, role, siteRefs: role === 'board' ? ['PELICAN'] : [] });
        const html = await (await sample.pages.request('/fences/PR-03', { headers: { cookie } })).text();
        expect(html, role).toContain('<span class="kind">Inspection:</span>');
        expect(html, role).not.toContain('<span class="kind">Notice:</span>');
        expect(html.includes('id="money"'), role).toBe(role === 'board');
      }
    });

    it('shows what replacing costs and what waiting does', async () => {
      const html = await sample.text('/fences/PR-02');
      expect(html).toMatch(/Replacing it costs least in the long run in 20\d\d\./);
      expect(html).toContain('<dt>Rebuilding it in good time</dt><dd>5,020 USD</dd>');
      expect(html).toMatch(/<dt>Waiting a year longer costs<\/dt><dd>[\d,]+ USD<\/dd>/);
    });

    it('draws the run with what was found, and a deciding post cut through', async () => {
      const html = await sample.text('/fences/PR-03');
      expect(html.match(/class="run-drawing"/g)).toHaveLength(3);
      expect(html.match(/class="post-sections"/g)).toHaveLength(3);
      expect(html).toMatch(/11 posts on 80 ft\. 7 broken/);
      const rows = html.slice(html.indexOf('The same as a table, post by post'), html.indexOf('id="section"'));
      expect(rows.match(/<th scope="row">/g)).toHaveLength(11);
      expect(rows).toContain('broken');
    });
  });
});
