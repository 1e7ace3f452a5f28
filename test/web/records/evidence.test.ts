import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadFenceEvidence } from '../../../src/register/evidence-store.ts';
import { listWithdrawals } from '../../../src/register/evidence-withdrawal.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { officeForms, wordsOf } from './office-forms.ts';

const LOOKED = { day: '2026-11-20', inspector: 'Nell Fox', method: 'awl-or-probe' };

describe('what was seen, entered by the office', () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  beforeEach(async () => {
    sample = await sampleApp({ swept: false });
    office = officeForms(sample);
  });
  afterEach(() => sample.close());

  const seen = async (ref: string) => (await loadFenceEvidence(sample.register.db, [ref])).get(ref);
  const page = '/fences/PR-02/inspect';

  it('stores an inspection with the posts that were looked at, and no others', async () => {
    const words = wordsOf(
      await office.sendAndFollow(page, page, {
        ...LOOKED,
        p3_found: 'depth',
        p3_number: '0.4',
        p4_found: 'broken',
        p4_closed: 'yes',
        p4_notes: '<i>leans on the gate</i>',
      }),
    );
    expect(words).toContain('Stored.');
    expect(words).toContain('Post 3: 0.40 in of rot on each face');
    const evidence = await seen('PR-02');
    expect(evidence?.inspections).toHaveLength(1);
    expect(evidence?.inspections[0]?.record.ref).toBe('PR-02/2026-11-20/awl-or-probe');
    expect(
      evidence?.inspections[0]?.readings.map(({ post, groundlineMm, closedOff }) => [post, groundlineMm, closedOff]),
    ).toEqual([
      [3, 10.16, false],
      [4, null, true],
    ]);
  });

  it('says post by post what cannot be taken, keeps what was written, and stores nothing', async () => {
    const response = await office.send(page, page, {
      ...LOOKED,
      day: '2027-01-01',
      p3_found: 'depth',
      p3_number: '40',
      p5_number: '1',
    });
    expect(response.status).toBe(400);
    expect(wordsOf(await response.text())).toContain('Post 5 : a number without what it measures');
    const second = await office.send(page, page, { ...LOOKED, day: '2027-01-01', p3_found: 'depth', p3_number: '40' });
    const html = await second.text();
    expect(html).toMatch(/id="day-fault">in the future/);
    expect(wordsOf(html)).toContain('Post 3 , depth in: outside the allowed');
    expect(html).toContain('name="p3_number"');
    expect(html).toContain('value="40"');
    expect(await seen('PR-02')).toBeUndefined();
  });

  it('does not put a second look in the place of the first', async () => {
    await office.sendAndFollow(page, page, { ...LOOKED, p3_found: 'depth', p3_number: '0.4' });
    const response = await office.send(page, page, { ...LOOKED, p3_found: 'depth', p3_number: '0.6' });
    expect(response.status).toBe(400);
    expect(wordsOf(await response.text())).toContain('give this one a ref of its own');
    expect((await seen('PR-02'))?.inspections[0]?.readings).toHaveLength(1);
    await office.sendAndFollow(page, page, { ...LOOKED, ref: 'SECOND', p3_found: 'depth', p3_number: '0.6' });
    expect((await seen('PR-02'))?.inspections).toHaveLength(2);
  });

  it('takes an inspection back with its reason, and keeps what it said', async () => {
    await office.sendAndFollow(page, page, { ...LOOKED, p3_found: 'depth', p3_number: '0.4' });
    const fields = { kind: 'inspections', ref: 'PR-02/2026-11-20/awl-or-probe' };
    const place = '/fences/PR-02/entries';
    expect((await office.send(place, '/fences/PR-02/withdraw', { ...fields, because: ' ' })).status).toBe(400);
    const words = wordsOf(
      await office.sendAndFollow(place, '/fences/PR-02/withdraw', { ...fields, because: 'the wrong <fence>' }),
    );
    expect(words).toContain('Taken back.');
    expect(words).toContain('by office: the wrong <fence>');
    expect(await seen('PR-02')).toBeUndefined();
    const [kept] = await listWithdrawals(sample.register.db, 'PR-02', 'inspection');
    expect(kept).toMatchObject({ by: 'office', because: 'the wrong <fence>' });
    expect(kept?.record.readings).toHaveLength(1);
  });

  it('does not take back what belongs to another fence', async () => {
    await office.sendAndFollow(page, page, { ...LOOKED, p3_found: 'depth', p3_number: '0.4' });
    const fields = { kind: 'inspections', ref: 'PR-02/2026-11-20/awl-or-probe', because: 'x' };
    expect((await office.send('/fences/PR-02/entries', '/fences/PR-03/withdraw', fields)).status).toBe(400);
    expect((await seen('PR-02'))?.inspections).toHaveLength(1);
  });

  const storm = { storm: 'Autumn gale', day: '2026-11-15', gust: '70', reported_by: 'Nell Fox' };
  const storms = '/storms?site=PELICAN';

  it('reports a storm for many fences of a site at once', async () => {
    const words = wordsOf(
      await office.sendAndFollow(storms, storms, {
        ...storm,
        'stood PR-01': 'yes',
        'stood PR-02': 'yes',
        'leaned PR-02': '3, 4',
        'snapped PR-03': '5',
      }),
    );
    expect(words).toContain('Stored: 4 outcomes.');
    expect((await seen('PR-02'))?.outcomes.map(({ ref, posts, result }) => [ref, posts, result])).toEqual([
      ['PR-02/2026-11-15/Autumn-gale/leaned', [3, 4], 'leaned'],
      ['PR-02/2026-11-15/Autumn-gale/stood', 'all', 'stood'],
    ]);
    expect(await seen('PR-04')).toBeUndefined();
  });

  it('stores nothing of a report with one fault, and says of which fence', async () => {
    const response = await office.send(storms, storms, { ...storm, 'stood PR-01': 'yes', 'leaned PR-02': '77' });
    expect(response.status).toBe(400);
    const html = await response.text();
    expect(wordsOf(html)).toMatch(/Fence PR-02, posts: .*77/);
    expect(html).toContain('value="77"');
    expect(await seen('PR-01')).toBeUndefined();
    expect((await office.send(storms, storms, storm)).status).toBe(400);
  });

  it('asks before it stores that posts stood which a later reading found broken', async () => {
    await office.sendAndFollow(page, page, { ...LOOKED, p4_found: 'broken' });
    const report = { ...storm, 'stood PR-02': 'yes' };
    const response = await office.send(storms, storms, report);
    expect(response.status).toBe(400);
    const html = await response.text();
    expect(wordsOf(html)).toContain('Some of it contradicts what the register knows.');
    expect((await seen('PR-02'))?.outcomes).toEqual([]);
    await office.sendAndFollow(storms, storms, { ...report, confirmed: 'yes' });
    expect((await seen('PR-02'))?.outcomes).toHaveLength(1);
  });
});
