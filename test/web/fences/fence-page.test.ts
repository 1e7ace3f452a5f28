import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FenceForecast } from '../../../src/forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../../../src/forecast/fence-forecast.ts';
import type { SampleApp } from '../sample-app.ts';
import { sampleApp } from '../sample-app.ts';

describe("a fence's page", () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp();
  });
  afterAll(() => sample.close());

  const forecastOf = async (ref: string): Promise<FenceForecast> =>
    ((await (await sample.app.request(`/fences/${ref}.json`)).json()) as { forecast: FenceForecast }).forecast;

  it('says at once what gives way first, and the chance of this season in one line', async () => {
    const html = await sample.text('/fences/PR-02');
    expect(html).toContain('A new fence leans, an old fence snaps: rot takes strength from the posts');
    expect(html).toMatch(/>Leans first until 2037: a repair<[\s\S]*>Snaps first from 2037: a replacement</);
    expect(html).toMatch(
      /<p>Chance that wind snaps it in season 2026: \d+ %, more than 1 in 36, because it may be weaker than its middle value\.<\/p>/,
    );
  });

  it('says which gust breaks it, how often that comes, and what its site asks', async () => {
    const html = await sample.text('/fences/PR-02');
    const group = judgedGroup(seasonOne(await forecastOf('PR-02')));
    expect(html).toContain(
      `Breaks in a gust of ${Math.round(group.snapMps.p50 / 0.44704)} mph, one that comes about once in `,
    );
    expect(html).toMatch(/its site(&#39;|')s design gust is 105 mph\./);
  });

  it('holds its chart for wide, middling and narrow pages, and the same as a table', async () => {
    const html = await sample.text('/fences/PR-02');
    expect(html.match(/<svg[^>]*class="fence-years"/g)).toHaveLength(3);
    expect(html).toContain('aria-labelledby="wide-title wide-desc"');
    expect(html).toContain('aria-labelledby="middle-title middle-desc"');
    expect(html).toContain('aria-labelledby="narrow-title narrow-desc"');
    const forecast = await forecastOf('PR-02');
    const table = html.slice(
      html.indexOf('<table class="seasons">'),
      html.indexOf('</table>', html.indexOf('<table class="seasons">')),
    );
    expect(table.match(/<th scope="row">/g)).toHaveLength(forecast.seasons.length);
    expect(table.match(/class="season-one"/g)).toHaveLength(1);
  });

  it('shows what the register knows, with free text as text', async () => {
    const html = await sample.text('/fences/PR-02');
    expect(html).toContain('80 ft long, 6 ft high');
    expect(html).toContain('24 in deep, in concrete, 9 in across');
    expect(html).toContain('Runs behind the &lt;pool&gt; &amp; the shed.');
    expect(html).toContain('sample map, read at the site for these tests');
  });

  it('names what is not known and what stands in', async () => {
    const html = await sample.text('/fences/PR-06');
    expect(html).toContain('depth not recorded, footing not recorded');
    expect(html).toMatch(/The embedment: [^<]+ stands in\. It moves the lean speed by \d+ mph/);
  });

  it('judges a run without line posts by its ends and says so', async () => {
    const html = await sample.text('/fences/PR-06');
    expect(html).toContain('none are line posts');
    expect(html).toContain('>Snap speed, ends<');
  });

  it('shows the verdict of a checker and the notices sent', async () => {
    const html = await sample.text('/fences/PR-02');
    expect(html).toContain('As a checker would compute it');
    expect(html).toMatch(/2026-11-24<\/time> <span class="kind">Notice:<\/span> short, to Pelican Reach Association/);
  });

  it('carries the cautions', async () => {
    for (const path of ['/fences', '/fences/PR-02', '/fences/PR-02/reasons']) {
      const html = await sample.text(path);
      expect(html, path).toContain('not a structural certification');
      expect(html, path).toContain('Call before you dig');
      expect(html, path).toContain('licensed applicators');
    }
  });

  it('gives the forecast as JSON with its model version and input hash', async () => {
    const response = await sample.app.request('/fences/SK-01.json');
    expect(response.headers.get('content-type')).toContain('application/json');
    const body = (await response.json()) as {
      forecast: FenceForecast;
      inputHash: string;
      standing: string;
      cautions: readonly string[];
    };
    expect(body.cautions.join(' ')).toMatch(/not a structural certification.*Call before you dig/);
    expect(body.forecast.fenceRef).toBe('SK-01');
    expect(body.inputHash).toMatch(/^[0-9a-f]{64}$/);
    expect(body.standing).toBe('short from new');
  });

  it('shows every step of the reasons, for the season asked', async () => {
    const html = await sample.text('/fences/PR-02/reasons?season=2035');
    expect(html).toContain('<option value="2035" selected="">2035</option>');
    expect(html).toMatch(/Season 2035, line posts \(posts? [\d–, ]+\)/);
    expect(html).toContain('k_climate');
    expect(await sample.text('/fences/PR-02/reasons')).toMatch(/Season 2026, line posts/);
  });

  it('answers 404 with the seasons there are for one there is not', async () => {
    const answer = await sample.app.request('/fences/PR-02/reasons?season=abc');
    expect(answer.status).toBe(404);
    const html = await answer.text();
    expect(html).toContain('has no season &quot;abc&quot;');
    expect(html).toMatch(/There are new, \d{4}, .*2055\./);
  });

  it('gives one and the same age of the fence on its page and in its reasons', async () => {
    for (const ref of ['PR-01', 'PR-02', 'PR-03', 'SK-01']) {
      const one = seasonOne(await forecastOf(ref));
      const age = `fence age ${one.ageYears.toFixed(1)} years`;
      expect(await sample.text(`/fences/${ref}`), ref).toContain(`${age} in season ${one.label}`);
      expect(await sample.text(`/fences/${ref}/reasons`), ref).toContain(age);
    }
  });

  it('leads to the reasons of the ends and back, in the season shown', async () => {
    const line = await sample.text('/fences/PR-02/reasons?season=2035');
    expect(line).toContain('<a href="/fences/PR-02/reasons?season=2035&amp;of=ends">');
    const ends = await sample.text('/fences/PR-02/reasons?season=2035&of=ends');
    expect(ends).toMatch(/Season 2035, ends \(posts? [\d–, ]+\)/);
    expect(ends).toContain('<input type="hidden" name="of" value="ends"/>');
    expect(ends).toContain('<a href="/fences/PR-02/reasons?season=2035">');
    expect(await sample.text('/fences/PR-06/reasons')).not.toContain('of=ends');
  });

  it('says which season a verdict of a checker is about, and which day', async () => {
    const html = await sample.text('/fences/PR-02');
    const one = seasonOne(await forecastOf('PR-02'));
    expect(html).toContain(`in season ${one.label}<span class="small">on ${one.day}</span>`);
    expect(html).not.toContain('>today<');
  });

  it('says which standing is kept by the margin and why', async () => {
    const { db } = sample.register;
    const gustMps = (await forecastOf('PR-01')).designGust.gustMps;
    await db
      .updateTable('forecasts')
      .set({ standing: 'short', snap_mps: gustMps * 1.01, short_season: null })
      .where('fence_ref', '=', 'PR-01')
      .execute();
    const html = await sample.text('/fences/PR-01');
    expect(html).toMatch(
      /Short: its line posts hold \d+ mph, less than 3 % above the design gust of 105 mph; it stays counted short until they hold more\./,
    );
    expect(html).not.toContain('no longer hold the design gust');
    const row = /<td data-label="Short season"[^>]*>(.*?)<\/td>/.exec(
      (await sample.text('/fences?q=PR-01')).replaceAll('\n', ''),
    )?.[1];
    expect(row).toBe('not within 30<span class="small">less than 3 % above</span>');
  });

  it('answers 404 with the way out for a fence that is not there', async () => {
    for (const path of ['/fences/NOPE', '/fences/NOPE/reasons']) {
      const response = await sample.app.request(path);
      expect(response.status).toBe(404);
      expect(await response.text()).toContain('There is no fence with the ref &quot;NOPE&quot; here.');
    }
    const json = await sample.app.request('/fences/NOPE.json');
    expect(json.status).toBe(404);
    expect(await json.json()).toMatchObject({ error: 'no fence with the ref "NOPE"' });
  });

  it('says how to get numbers where the fence was never swept', async () => {
    const fresh = await sampleApp({ swept: false });
    try {
      const html = await fresh.text('/fences/PR-01');
      expect(html).toContain('has not been swept yet');
      expect(html).not.toContain('<svg xmlns');
    } finally {
      await fresh.close();
    }
  });
});
