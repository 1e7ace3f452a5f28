import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeOfficeNotices } from '../../../src/register/office-notices.ts';
import { listRecords, upsertRecords } from '../../../src/register/record-store.ts';
import { newestSweep } from '../../../src/register/sweep-store.ts';
import { summarySentence } from '../../../src/web/fences/list-sentences.ts';
import type { SampleApp } from '../sample-app.ts';
import { sampleApp } from '../sample-app.ts';

const refsIn = (html: string): readonly string[] =>
  [...html.matchAll(/<a href="\/fences\/([^"/]+)">/g)].map((found) => found[1] as string);

describe('the list of fences', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp();
  });
  afterAll(() => sample.close());

  it('shows every fence, the one with least left of its gust first, and says so', async () => {
    const html = await sample.text('/fences');
    expect(refsIn(html)).toHaveLength(8);
    const left = [...html.matchAll(/holds (\d+) % of its gust/g)].map((found) => Number(found[1]));
    expect(left).toHaveLength(8);
    expect(left).toEqual(left.toSorted((a, b) => a - b));
    expect(html).toContain(
      'All 8 fences, worst first: recorded dangerous, then by what is left of the design gust; where that is the same per cent,',
    );
    expect(html).toContain('what is at stake: a pool, a path or animals beside it, then length.');
  });

  it('begins with what is recorded dangerous, marks it and finds it alone', async () => {
    const { register } = sample;
    const sweep = await newestSweep(register, 'finished');
    const last = refsIn(await sample.text('/fences')).at(-1)!;
    await writeOfficeNotices(
      register.db,
      { sweepId: sweep!.id, at: '2026-11-24T12:00:00.000Z' },
      {
        fenceRef: last,
        office: [{ matter: 'dangerous', occasion: 'closed off 3', facts: '{}', mayBeHeld: false }],
      },
    );
    const html = await sample.text('/fences');
    expect(refsIn(html)[0]).toBe(last);
    expect(html.match(/<b class="dangerous">recorded dangerous<\/b>/g)).toHaveLength(1);
    const alone = await sample.text('/fences?standing=dangerous');
    expect(refsIn(alone)).toEqual([last]);
    expect(alone).toContain('1 of 8 fences: recorded dangerous; worst first');
    expect(alone).toContain('This one as CSV');
    expect(alone).toContain('href="/fences.csv?standing=dangerous"');
    expect(alone).toContain('<option value="dangerous" selected="">recorded dangerous (1)</option>');
    await register.db.deleteFrom('office_notices').execute();
    await sql`update fence_lines set worst = fresh.worst, tie = fresh.worst
      from worst_by_fence as fresh where fresh.ref = fence_lines.ref`.execute(register.db);
  });

  it('puts the worst standing first where that is the order, the weakest of a standing first', async () => {
    const html = await sample.text('/fences?sort=standing');
    const words = [...html.matchAll(/class="standing"><span class="standing-[^"]*">([^<]*)</g)].map(
      (found) => found[1],
    );
    const order = ['short from new', 'short', 'closing', 'clear'];
    expect(words.map((word) => order.indexOf(word as string))).toEqual(
      words.map((word) => order.indexOf(word as string)).toSorted((a, b) => a - b),
    );
    expect(refsIn(html)[0]).toBe('SK-01');
  });

  it('narrows by owner, ends, treatment, age and short season, and says what is shown', async () => {
    const all = refsIn(await sample.text('/fences')).toSorted();
    const shown = async (search: string): Promise<readonly string[]> => {
      const html = await sample.text(`/fences?${search}`);
      expect(html).toContain('<details class="more" open');
      return refsIn(html).toSorted();
    };
    const rosas = await shown('owner=QUINN');
    expect(rosas).toEqual(['PR-04', 'SK-02']);
    expect(await sample.text('/fences?owner=QUINN')).toContain('2 of 8 fences: of Rosa Quinn');
    const old = await shown('to=2012');
    const young = await shown('from=2013');
    expect([...new Set([...old, ...young])].toSorted()).toEqual(all);
    expect(old).toContain('SK-01');
    expect(await shown('from=2010&to=2010')).toContain('SK-01');
    expect(await sample.text('/fences?from=1990&to=2012')).toContain('installed 1990–2012');
    const soon = await shown('short-to=2026');
    const later = await shown('short-from=2027');
    expect(soon.some((ref) => later.includes(ref))).toBe(false);
    expect(await shown('treatment=does-not-rot')).toEqual([]);
  });

  it('hands out every row of the view as CSV, in its order, with names that no spreadsheet runs', async () => {
    const { db } = sample.register;
    await db.updateTable('owners').set({ name: '=HYPERLINK("x")' }).where('ref', '=', 'QUINN').execute();
    const page = await sample.text('/fences?sort=snap&dir=desc');
    expect(page).toContain('href="/fences.csv?sort=snap&amp;dir=desc"');
    const answer = await sample.app.request('/fences.csv?sort=snap&dir=desc');
    expect(answer.headers.get('content-type')).toContain('text/csv');
    expect(answer.headers.get('content-disposition')).toContain('fences.csv');
    const [header, ...lines] = (await answer.text()).trimEnd().split('\n');
    expect(header).toMatch(/^fence,site,site_name,owner,/);
    expect(lines.map((line) => line.split(',')[0])).toEqual(refsIn(page));
    expect(lines.join('\n')).toContain(`"'=HYPERLINK(""x"")"`);
    const some = await (await sample.app.request('/fences.csv?site=SKERRY')).text();
    expect(some.trimEnd().split('\n')).toHaveLength(3);
    await db.updateTable('owners').set({ name: 'Rosa Quinn' }).where('ref', '=', 'QUINN').execute();
  });

  it('shows a board the fences of its sites only, in the list and in the CSV', async () => {
    const cookie = await sample.signIn({ name: 'skerry', role: 'board', siteRefs: ['SKERRY'], language: 'es' });
    const html = await (await sample.pages.request('/fences', { headers: { cookie } })).text();
    expect(refsIn(html).toSorted()).toEqual(['SK-01', 'SK-02']);
    expect(html).toContain('<html lang="es">');
    expect(html).toContain('Las 2 cercas, la peor primero');
    const csv = await (await sample.pages.request('/fences.csv?site=PELICAN', { headers: { cookie } })).text();
    expect(csv.trimEnd().split('\n')).toHaveLength(1);
  });

  it('opens with what the register comes to, in a sentence', async () => {
    const html = await sample.text('/fences');
    expect(html).toMatch(
      /<p class="lead">\d of 8 fences are short of their design gust now[^<;]*; [^<]* within two seasons\.<\/p>/,
    );
  });

  it('counts as the season brief does, and shows those that it counts', async () => {
    const said = /<p class="lead">(\d) of 8 fences/.exec(await sample.text('/fences'))?.[1];
    const brief = await sample.text('/brief');
    const [, named] = /standing=any-short">(\w+) (?:is|are) short/.exec(brief) ?? [];
    const words = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];
    expect(words.indexOf(named ?? '') >= 0 ? String(words.indexOf(named ?? '')) : named).toBe(said);
    const shown = await sample.text('/fences?standing=any-short');
    expect(refsIn(shown)).toHaveLength(Number(said));
    expect(shown).toContain(`${said} of 8 fences: short, at the line or ends;`);
    expect(shown).toMatch(/<option value="any-short" selected[^>]*>short, at the line or ends \(\d\)/);
  });

  it('gives speeds in the units of each site', async () => {
    const html = await sample.text('/fences');
    const row = (ref: string): string =>
      html.slice(html.indexOf(`/fences/${ref}"`), html.indexOf('</tr>', html.indexOf(`/fences/${ref}"`)));
    expect(row('PR-01')).toContain('105 mph');
    expect(row('PR-01')).not.toContain('km/h');
    expect(row('SK-01')).toContain('173 km/h');
    expect(row('SK-01')).toContain('2008–2012');
  });

  it('sorts by a column and back, and says so in the heading', async () => {
    const up = await sample.text('/fences?sort=snap');
    const down = await sample.text('/fences?sort=snap&dir=desc');
    expect(refsIn(up)).toEqual(refsIn(down).toReversed());
    expect(up).toContain('aria-sort="ascending"><a href="/fences?sort=snap&amp;dir=desc">Snap speed</a>');
    expect(down).toContain('aria-sort="descending"><a href="/fences?sort=snap">Snap speed</a>');
  });

  it('narrows by site, by standing and by text, and keeps what was asked in the form', async () => {
    expect(refsIn(await sample.text('/fences?site=SKERRY')).toSorted()).toEqual(['SK-01', 'SK-02']);
    expect(refsIn(await sample.text('/fences?standing=short+from+new'))).toEqual(['SK-01']);
    const found = await sample.text('/fences?q=rosa');
    expect(refsIn(found).toSorted()).toEqual(['PR-04', 'SK-02']);
    expect(found).toContain('value="rosa"');
  });

  it('says the way out where nothing answers to the search, and writes the search back as text', async () => {
    const html = await sample.text(`/fences?q=${encodeURIComponent('"><script>alert(1)</script>')}`);
    expect(html).toContain('No fence answers to that.');
    expect(html).toContain('Show all 8 fences');
    expect(html).not.toContain('<script');
  });

  it('falls back to the plain list where the address makes no sense', async () => {
    const html = await sample.text('/fences?sort=colour&standing=purple&page=-4');
    expect(refsIn(html)).toHaveLength(8);
  });

  it('says how far a sweep is that is at work', async () => {
    const sweeping = await sampleApp({ swept: false, progress: { done: 3, failed: 0, lastRef: 'PR-03' } });
    try {
      const html = await sweeping.text('/fences');
      expect(html).toContain('A sweep is at work: 3 of 8 fences done.');
      expect(html).toContain('8 of 8 fences are not computed yet: a sweep is at work.');
      expect(html).toContain('not swept yet');
    } finally {
      await sweeping.close();
    }
  });

  it('gives no all-clear while no fence is computed, and says when the sweep is and in which zone', async () => {
    const fresh = await sampleApp({ swept: false });
    try {
      const html = await fresh.text('/fences');
      expect(html).toContain(
        '<p class="lead">8 of 8 fences are not computed yet: run stormpale sweep, or wait for the sweep at 04:30 UTC.</p>',
      );
      expect(html).toContain('(every night at 04:30 UTC)');
    } finally {
      await fresh.close();
    }
  });

  it('shows fifty fences a page and leads to the next', async () => {
    const many = await sampleApp({ swept: false });
    try {
      const [fence] = await listRecords(many.register.db, 'fences');
      if (!fence) throw new Error('the sample has no fences');
      const copies = Array.from({ length: 60 }, (_, index) => ({
        ...fence,
        ref: `Z-${String(index).padStart(2, '0')}`,
      }));
      await upsertRecords(many.register.db, 'fences', copies, '2026-11-24T12:00:00.000Z');
      const first = await many.text('/fences?sort=ref');
      expect(refsIn(first)).toHaveLength(50);
      expect(first).toContain('href="/fences?sort=ref&amp;page=2"');
      const second = await many.text('/fences?sort=ref&page=2');
      expect(refsIn(second)).toHaveLength(18);
      expect(refsIn(await many.text('/fences?sort=ref&page=9'))).toEqual(refsIn(second));
    } finally {
      await many.close();
    }
  });

  it('tells how to bring fences in where the register is empty', async () => {
    const empty = await sampleApp({ empty: true });
    try {
      const html = await empty.text('/fences');
      expect(html).toContain('The register holds no fences yet.');
      expect(html).toContain('stormpale import');
      expect(html).not.toContain('<table');
    } finally {
      await empty.close();
    }
  });
});

describe('the sentence on top of the list', () => {
  const of = (short: number, closing: number, clear: number, shortAtEndsAlone = 0, unswept = 0): string =>
    summarySentence(
      {
        anywhere: { short, shortAtEndsAlone, closing },
        total: short + closing + clear + unswept,
        unswept,
      },
      { lookAheadSeasons: 2, nightly: '04:30 America/Chicago', sweeping: false },
    );

  it('leads with what is not computed yet and then speaks of the computed only', () => {
    expect(of(0, 0, 120, 0, 30)).toBe(
      '30 of 150 fences are not computed yet: run stormpale sweep, or wait for the sweep at 04:30 America/Chicago. None of 120 computed fences are short of their design gust now; none goes short within two seasons.',
    );
    expect(of(1, 0, 0, 0, 1)).toBe(
      '1 of 2 fences is not computed yet: run stormpale sweep, or wait for the sweep at 04:30 America/Chicago. The computed fence is short of its design gust now.',
    );
  });

  it('counts the short, says how many are so at their ends only, and counts those that go short soon', () => {
    expect(of(3, 5, 53)).toBe('3 of 61 fences are short of their design gust now; 5 more go short within two seasons.');
    expect(of(1, 1, 8)).toBe('1 of 10 fences is short of its design gust now; 1 more goes short within two seasons.');
    expect(of(120, 5, 53, 18)).toBe(
      '120 of 178 fences are short of their design gust now, 18 of them at their ends only; 5 more go short within two seasons.',
    );
    expect(of(1, 0, 8, 1)).toBe(
      '1 of 9 fences is short of its design gust now, at its ends only; no other goes short within two seasons.',
    );
    expect(of(0, 0, 1)).toBe('The fence is not short of its design gust now; it does not go short within two seasons.');
    expect(of(0, 2, 8)).toBe('None of 10 fences are short of their design gust now; 2 go short within two seasons.');
  });
});
