import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeOfficeNotices } from '../../../src/register/office-notices.ts';
import { upsertRecords } from '../../../src/register/record-store.ts';
import { countBetterButDangerous, countStandingChanges } from '../../../src/register/standing-changes.ts';
import { newestSweep } from '../../../src/register/sweep-store.ts';
import { causeClause, changesSentence, changeWords } from '../../../src/web/brief/change-sentences.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

const CREWS = [
  { name: 'crews.csv', text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\n' },
  { name: 'crew-members.csv', text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,\n' },
];

/** The text of a page without its tags. */
const words = (html: string): string =>
  html
    .replaceAll(/<svg.*?<\/svg>/gs, ' ')
    .replaceAll(/<[^>]+>/g, '')
    .replaceAll('&#39;', "'")
    .replaceAll(/\s+/g, ' ');

describe('the season brief', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp();
  });
  afterAll(() => sample.close());

  it('is where the office begins, and nobody else', async () => {
    expect((await sample.app.request('/')).headers.get('location')).toBe('/brief');
    const crew = await sample.signIn({ name: 'crew', role: 'crew' });
    expect((await sample.pages.request('/', { headers: { cookie: crew } })).headers.get('location')).toBe('/today');
    expect((await sample.pages.request('/brief', { headers: { cookie: crew } })).status).toBe(403);
  });

  it('says where the seasons and the fences stand, in sentences that lead on', async () => {
    const html = await sample.text('/brief');
    const text = words(html);
    expect(text).toContain('Tuesday, November 24, 2026');
    expect(text).toContain('gulf stands in its storm season until November 30');
    expect(text).toMatch(/The next season opens in 189 days, in gulf, on June 1, 2027\./);
    expect(text).toMatch(/Of 8 fences, \d+ (is|are) short of the design gust now/);
    expect(html).toContain('href="/fences?standing=any-short"');
    expect(text).toContain('It was the first sweep');
    expect(text).toContain('The register holds no crew');
    expect(html.match(/class="season-strip"/g)).toHaveLength(2);
  });

  it('says what the crews have, what waits, what was missed, and what nobody has spoken of', async () => {
    expect((await importFiles(sample.register, CREWS)).faults).toEqual([]);
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'A', firstDay: '2026-11-25', lastDay: '2026-11-25' }),
      madeUpVisit({ uid: 'B', firstDay: '2026-11-20', lastDay: '2026-11-20', state: 'confirmed' }),
      madeUpVisit({ uid: 'C', firstDay: '2026-11-18', lastDay: '2026-11-18', state: 'missed' }),
    ]);
    const html = await sample.text('/brief');
    const text = words(html);
    expect(text).toContain('1 visit this week: 0 confirmed, 1 proposed, 0 done, 0 missed.');
    expect(text).toContain('1 visit was promised for days that are past');
    expect(text).toContain('1 visit was missed in the last two weeks');
    expect(text).toMatch(
      /In the 6 weeks from November 23 the crews have \d+ hours\. Visits take 5\.8 of them, none on promised days/,
    );
    expect(text).toContain('No season plan has been made yet.');
    expect(html).toContain('href="/visits?state=overdue"');
    expect(html).toContain('href="/plan/hours"');
  });

  it('names dangerous fences first: what no sweep has seen yet, and what the office was told', async () => {
    await upsertRecords(
      sample.register.db,
      'inspections',
      [
        {
          ref: 'late',
          fenceRef: 'PR-01',
          day: '2026-11-24',
          inspector: 'Orla Finch',
          qualification: '',
          method: 'eye',
          instrument: '',
          notes: '',
        },
      ],
      '2026-11-25T08:00:00.000Z',
    );
    const reading = {
      inspectionRef: 'late',
      groundlineKind: null,
      groundlineMm: null,
      cavityMm: null,
      leanDegrees: null,
      collarCracked: null,
      railConnection: null,
      trimmerCutMm: null,
      closedOff: true,
      notes: '',
      sure: false,
    };
    await upsertRecords(
      sample.register.db,
      'readings',
      [
        { ...reading, post: 3 },
        { ...reading, post: 4 },
        { ...reading, post: 6, groundlineKind: 'broken', closedOff: false },
      ],
      '2026-11-25T08:00:00.000Z',
    );
    const html = await sample.text('/brief');
    const text = words(html);
    expect(text).toMatch(
      /recorded dangerous\. ?PR-01 at [^:]+: posts 3–4 closed off and post 6 broken, since the last sweep\./,
    );
    expect(html.indexOf('href="/fences/PR-01"')).toBeLessThan(html.indexOf('stands in its storm season'));
    await sample.register.db.deleteFrom('inspections').where('ref', '=', 'late').execute();
    expect(words(await sample.text('/brief'))).not.toContain('since the last sweep.');

    const sweep = await newestSweep(sample.register, 'finished');
    for (const fenceRef of ['PR-01', 'PR-02', 'PR-03', 'PR-04', 'PR-05', 'PR-06']) {
      await writeOfficeNotices(
        sample.register.db,
        { sweepId: sweep!.id, at: '2026-11-24T12:00:00.000Z' },
        {
          fenceRef,
          office: [
            { matter: 'dangerous', occasion: 'leaning 2, leaning 3; told 2026-11-24', facts: '{}', mayBeHeld: false },
          ],
        },
      );
    }
    const told = words(await sample.text('/brief'));
    expect(told).toMatch(/6 fences are recorded dangerous\./);
    expect(told).toMatch(/PR-01 at [^:]+: posts 2–3 leaning\./);
    expect(told).toContain('And 1 more.');
    expect(await sample.text('/brief')).toContain('href="/fences?standing=dangerous"');
    await sample.register.db.deleteFrom('office_notices').execute();
  });

  it('does not call better what is recorded dangerous', async () => {
    const { db } = sample.register;
    const sweep = await newestSweep(sample.register, 'finished');
    const change = {
      sweep_id: sweep!.id,
      at: '2026-11-24T12:00:00.000Z',
      standing_before: 'closing',
      standing_after: 'clear',
      ends_before: null,
      ends_after: null,
      snap_mps: 40,
      design_gust_mps: 38,
      causes: '["inspection"]',
    } as const;
    await db
      .insertInto('standing_changes')
      .values({ ...change, fence_ref: 'PR-01' })
      .execute();
    await db
      .insertInto('standing_changes')
      .values({ ...change, fence_ref: 'PR-02' })
      .execute();
    const office = [{ matter: 'dangerous', occasion: 'closed off 2', facts: '{}', mayBeHeld: false }] as const;
    await writeOfficeNotices(db, { sweepId: sweep!.id, at: change.at }, { fenceRef: 'PR-01', office });
    expect(await countBetterButDangerous(sample.register, sweep!.id)).toBe(1);
    expect(await countStandingChanges(sample.register, sweep!.id)).toEqual([
      { before: 'closing', after: 'clear', fences: 1 },
    ]);
    const text = words(await sample.text('/brief'));
    expect(text).toContain('PR-02 at');
    expect(text).not.toMatch(/PR-01 at [^:]+: closing to clear/);
    await db.deleteFrom('office_notices').execute();
    expect(await countBetterButDangerous(sample.register, sweep!.id)).toBe(0);
    await db.deleteFrom('standing_changes').execute();
  });

  it('says nothing of how fences stand while none is computed, nor that nothing was there to compare', async () => {
    const unswept = await sampleApp({ swept: false });
    try {
      const before = words(await unswept.text('/brief'));
      expect(before).toContain('8 fences are not computed yet, so nothing can be said of them.');
      expect(before).not.toContain('Of no fences');
      expect(before).toMatch(/\d+, not computed yet/);
      expect(before).not.toContain('0 short');
      await unswept.register.db
        .insertInto('sweeps')
        .values({
          as_of: '2026-11-24',
          model_version: 'made up',
          settings: '{}',
          state: 'finished',
          started_at: '2026-11-24T11:00:00.000Z',
          finished_at: '2026-11-24T11:00:01.000Z',
          checkpoint_ref: null,
          change_count: null,
        })
        .execute();
      const after = words(await unswept.text('/brief'));
      expect(after).toContain('Nothing was there to sweep; once a sweep has computed fences');
      expect(after).not.toContain('It was the first sweep');
    } finally {
      await unswept.close();
    }
  });

  it('has the words for an empty register', async () => {
    const empty = await sampleApp({ empty: true });
    try {
      const text = words(await empty.text('/brief'));
      expect(text).toContain('The register holds no fences yet');
      expect(text).toContain('Import files of the sites');
      expect(text).toContain('The register has not been swept yet');
    } finally {
      await empty.close();
    }
  });
});

describe('the sentences about what changed', () => {
  it('count worse, better and ends', () => {
    expect(changesSentence([])).toBe('No fence stands otherwise than the night before.');
    expect(changesSentence([], 1)).toBe(
      'Apart from what is recorded dangerous, no fence stands otherwise than the night before.',
    );
    expect(
      changesSentence([
        { before: 'clear', after: 'closing', fences: 1 },
        { before: 'short', after: 'clear', fences: 2 },
        { before: 'short', after: 'short', fences: 1 },
      ]),
    ).toBe('1 fence stands worse and 2 fences stand better than the night before. At 1 fence the ends alone changed.');
  });

  it('name what came in between without calling it the reason', () => {
    expect(causeClause({ causes: ['inspection', 'season'] })).toBe(
      'an inspection was entered and a new season has begun to count',
    );
    const change = { fenceRef: 'A', siteName: 'S', before: 'short', after: 'short', causes: ['works'] } as const;
    expect(changeWords({ ...change, endsBefore: 'short', endsAfter: 'clear' })).toBe('its ends short to clear');
    expect(changeWords({ ...change, before: 'clear', endsBefore: null, endsAfter: null })).toBe('clear to short');
  });
});
