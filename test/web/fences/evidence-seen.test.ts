import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { importFiles } from '../../register/made-up-register.ts';
import type { SampleApp } from '../sample-app.ts';
import { sampleApp } from '../sample-app.ts';

const INSPECTIONS = `ref,fence,day,inspector,qualification,method,instrument,notes
A,PR-02,2025-05-12,Nell Fox,crew lead,awl-or-probe,marked awl,after <rain>
B,PR-02,2026-05-12,Tom Reed,,caliper,,
C,SK-02,2026-05-12,Tom Reed,,awl-or-probe,,
`;
const READINGS = `inspection,post,depth_mm,residual_width_in,broken,closed_off,lean_degrees,notes
A,10,6.35,,,,4,
A,3,12.7,,,,,wet & soft
B,7,,,yes,yes,,
B,5,,2.75,,,,
C,2,1.5,,,,,
`;
const OUTCOMES = `ref,storm,fence,day,gust_mph,gust_spread_percent,posts,result,gust_source,reported_by,notes
O-1,March gale,PR-02,2026-03-14,71,,5,snapped,airfield,Rosa Quinn,gone at once
O-2,March gale,PR-02,2026-03-14,71,,all,stood,airfield,Rosa Quinn,
O-3,Squall,SK-02,2026-04-14,60,15,all,stood,,Mason Yards,
`;

describe('inspections and storms on the page of a fence', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    const report = await importFiles(sample.register, [
      { name: 'inspections.csv', text: INSPECTIONS },
      { name: 'readings.csv', text: READINGS },
      { name: 'outcomes.csv', text: OUTCOMES },
    ]);
    expect(report.faults).toEqual([]);
  });
  afterAll(() => sample.close());

  const section = async (ref: string): Promise<string> => {
    const html = await sample.text(`/fences/${ref}`);
    return html.slice(html.indexOf('<h2>Inspections and storms</h2>'), html.indexOf('</main>'));
  };

  it('lists inspections newest first, with who, how and what was found post by post', async () => {
    const html = await section('PR-02');
    expect(html.indexOf('Tom Reed')).toBeLessThan(html.indexOf('Nell Fox'));
    expect(html).toContain('Nell Fox, crew lead');
    expect(html).toContain('awl or probe, marked awl');
    expect(html).toContain('after &lt;rain&gt;');
    expect(html).toContain('post 3: 0.50 in of rot on each face (wet &amp; soft)');
    expect(html.indexOf('post 3:')).toBeLessThan(html.indexOf('post 10: 0.25 in of rot on each face, 4° out of plumb'));
    expect(html).toContain('post 5: 2.75 in of sound width left');
    expect(html).toContain('post 7: broken at the groundline, dangerous, closed off');
  });

  it('lists what storms did, with the gust, how well it is known and who said so', async () => {
    const html = await section('PR-02');
    expect(html).toContain('March gale, gust 71 mph ± 10 %');
    expect(html).toContain('post 5 snapped');
    expect(html).toContain('all other posts stood');
    expect(html).toContain('reported by Rosa Quinn; gone at once');
  });

  it('speaks the units of the site, and says where nothing was recorded', async () => {
    const metric = await section('SK-02');
    expect(metric).toContain('post 2: 1.5 mm of rot on each face');
    expect(metric).toContain('Squall, gust 97 km/h ± 15 %');
    expect(metric).toContain('all posts stood');
    expect(await section('PR-01')).toContain('<p>None recorded.</p>');
  });

  it('gives the same records as JSON', async () => {
    const body = (await (await sample.app.request('/fences/PR-02.json')).json()) as {
      inspections: readonly { ref: string; readings: readonly object[] }[];
      outcomes: readonly object[];
    };
    expect(body.inspections.map(({ ref, readings }) => `${ref} ${readings.length}`)).toEqual(['A 2', 'B 2']);
    expect(body.inspections[0]).toMatchObject({ inspector: 'Nell Fox', readings: [{ post: 3 }, { post: 10 }] });
    expect(body.outcomes).toMatchObject([{ posts: [5], reportedBy: 'Rosa Quinn' }, { posts: 'all' }]);
  });
});
