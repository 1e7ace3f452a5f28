import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beliefRows } from '../../../src/drawing/evidence-table.ts';
import type { FenceForecast } from '../../../src/forecast/fence-forecast.ts';
import { runSweep } from '../../../src/service/run-sweep.ts';
import { importFiles } from '../../register/made-up-register.ts';
import type { SampleApp } from '../sample-app.ts';
import { sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

const INSPECTIONS = `ref,fence,day,inspector,method
A,PR-03,2026-05-12,Nell Fox,awl-or-probe
B,PR-04,2026-09-12,Nell Fox,eye
`;
const READINGS = `inspection,post,depth_in,sound_to_in,broken,closed_off,lean_degrees
A,3,0.7,,,,
A,4,0.8,,,,
A,5,,0.3,,,
A,7,,,yes,,
B,6,,,,yes,20
`;
const OUTCOMES = `ref,storm,fence,day,gust_mph,posts,result,reported_by
O-1,March gale,PR-03,2026-03-14,50,all,stood,Nell Fox
`;

describe('what inspections and storms changed, on the pages', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    const report = await importFiles(sample.register, [
      { name: 'inspections.csv', text: INSPECTIONS },
      { name: 'readings.csv', text: READINGS },
      { name: 'outcomes.csv', text: OUTCOMES },
    ]);
    expect(report.faults).toEqual([]);
    await runSweep(sample.register, { now: SAMPLE_NOW });
  });
  afterAll(() => sample.close());

  const forecastOf = async (ref: string): Promise<FenceForecast> =>
    ((await (await sample.app.request(`/fences/${ref}.json`)).json()) as { forecast: FenceForecast }).forecast;
  const section = async (path: string, from: string, to: string): Promise<string> => {
    const html = await sample.text(path);
    expect(html).toContain(from);
    expect(html).toContain(to);
    return html.slice(html.indexOf(from), html.indexOf(to));
  };
  const onFence = (ref: string) => section(`/fences/${ref}`, '<h2>Inspections and storms</h2>', '</main>');
  const seenOf = (ref: string) => section(`/fences/${ref}/reasons`, '<h2 id="seen">', '<h2 id="weighs">');

  it('says how many readings and storms count, what they changed, and about rails and infill', async () => {
    const html = await onFence('PR-03');
    expect(html).toContain('4 readings at 4 posts and 1 storm count.');
    expect(html).toMatch(/its rot \d+ % faster than published/);
    expect(html).toContain('<a href="/fences/PR-03/reasons#seen">');
    expect(html).toMatch(/ails and infill/);
  });

  it('says of a fence at which nothing was seen only what is expected of rails and infill', async () => {
    const html = await onFence('PR-05');
    expect(html).toContain('<p>None recorded.</p>');
    expect(html).not.toContain('findings');
    expect(html).not.toContain(' count.');
    expect(html).toMatch(
      /Rails and infill (are due for a look|need no look before season 20\d\d): .* 0\.\d\d in of each exposed face/,
    );
  });

  it('puts a post closed off first and strongest, though it was found after the season opened', async () => {
    const html = await sample.text('/fences/PR-04');
    expect((await forecastOf('PR-04')).found.closedOff).toEqual([6]);
    expect(html.indexOf('class="findings"')).toBeLessThan(html.indexOf('class="lead"'));
    const findings = html.slice(html.indexOf('<ul class="findings"')).split('</ul>')[0]!;
    expect(findings.match(/<li.*?<\/li>/g)).toEqual([
      '<li class="pressing">Post 6 is recorded dangerous and closed off: keep people away.</li>',
      '<li>Post 6 is recorded leaning: stay away in wind.</li>',
    ]);
  });

  it('says before the money that a post is dangerous, and not where none is', async () => {
    const html = await sample.text('/fences/PR-04');
    const money = html.slice(html.indexOf('<h2 id="money">'));
    expect(money).toMatch(
      /^<h2 id="money">What it costs<\/h2><p><b>A post is recorded dangerous: mend it or close it off/,
    );
    expect(await sample.text('/fences/PR-02')).not.toContain('the advice below knows nothing of it');
  });

  it('tells what was found once, and not among what is not known', async () => {
    const html = await sample.text('/fences/PR-03');
    const [remark = ''] = (await forecastOf('PR-03')).remarks.filter((each) => each.includes('recorded broken'));
    expect(remark).toContain('Post 7');
    expect(html.split(remark)).toHaveLength(2);
    expect(html.indexOf(remark)).toBeLessThan(html.indexOf('<h2>'));
  });

  it('shows what was believed before and after as the forecast has it', async () => {
    const html = await seenOf('PR-03');
    const { evidence } = await forecastOf('PR-03');
    if (!evidence) throw new Error('the sample has no evidence');
    for (const { unknown, unit, before, afterReadings, afterStorms, movedBy } of beliefRows(evidence, 'us')) {
      const row = html.slice(html.indexOf(`<th scope="row">${unknown}</th>`));
      const cells = [...row.matchAll(/<td data-label="([^"]+)"[^>]*>(.*?)<\/td>/g)].slice(0, 4);
      const shown = ({ p10, p50, p90 }: typeof before): string =>
        `${unit === '×' ? `× ${p50}` : `${p50} ${unit}`}<span class="small">${p10}–${p90}</span>`;
      expect(cells.map(([, label, cell]) => [label, cell])).toEqual([
        ['Before', shown(before)],
        ['After readings', shown(afterReadings)],
        ['After storms', shown(afterStorms)],
        ['Moved by', movedBy],
      ]);
    }
    expect(html).toMatch(/at most 0\.30 in/);
  });

  it('says where nothing was seen that published priors stand', async () => {
    const html = await seenOf('PR-01');
    expect(html).toContain('Nothing was read or reported that moves a belief: published priors stand.');
    expect(html).not.toContain('<table');
  });

  it('shows what weighs most as bars with their words, and the same as a table', async () => {
    const html = await section('/fences/PR-06/reasons', '<h2 id="weighs">', '</main>');
    expect(html).toMatch(/<p>Rot pace weighs most of all on when this fence goes short: it moves it by \d+ years/);
    expect(html).toMatch(/Of 2 inputs that could be recorded and are not, one weighs most\. The \w+: about /);
    expect(html).toMatch(/<tbody><tr><th scope="row">Rot pace<\/th><td data-label="Known">not known; an inspection /);
    expect(html.indexOf('<th scope="row">Fibre strength')).toBeLessThan(
      html.indexOf('<th scope="row">Treatment class'),
    );
    expect(html.match(/<svg[^>]*class="sensitivity-bars"/g)).toHaveLength(3);
    expect(html).toContain('aria-labelledby="weighs-narrow-title weighs-narrow-desc"');
    const bars = html.slice(html.indexOf('<svg'), html.indexOf('</svg>'));
    const table = html.slice(html.indexOf('<table'), html.indexOf('</table>'));
    const rows = [...table.matchAll(/<th scope="row">([^<]+)<\/th>/g)].map(([, input]) => input);
    expect(rows.length).toBeGreaterThan(8);
    for (const input of rows) expect(bars).toContain(`>${input}</text>`);
  });
});
