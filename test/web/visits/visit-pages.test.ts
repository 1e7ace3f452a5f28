import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readVisit } from '../../../src/register/visit-store.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { tokenIn } from '../access/access-visitors.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

const FILES = [
  {
    name: 'crews.csv',
    text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\nsouth,South crew,,,40\n',
  },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm3,south,Bea Stone,40,en,\n',
  },
];

describe('the pages of visits', { timeout: 60_000 }, () => {
  let sample: SampleApp;
  const send = async (path: string, fields: Readonly<Record<string, string>>): Promise<Response> =>
    sample.pages.request(path, {
      method: 'POST',
      body: new URLSearchParams({ form_token: tokenIn(await sample.text('/account')), ...fields }),
      headers: { cookie: sample.cookie ?? '' },
    });
  const stateOf = async (uid: string) => (await readVisit(sample.register.db, uid))?.state;

  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    expect((await importFiles(sample.register, FILES)).faults).toEqual([]);
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'A' }),
      madeUpVisit({ uid: 'B', firstDay: '2026-11-23', lastDay: '2026-11-23', crewRef: 'south' }),
      madeUpVisit({ uid: 'C', firstDay: '2026-11-20', lastDay: '2026-11-20', state: 'confirmed' }),
      madeUpVisit({ uid: 'D', firstDay: '2027-01-13', lastDay: '2027-01-13' }),
    ]);
  });
  afterAll(() => sample.close());

  it('list visits by week, crew, state and site', async () => {
    const linksIn = async (path: string): Promise<readonly string[]> =>
      [...(await sample.text(path)).matchAll(/href="\/visits\/([A-Z])"/g)].map(([, uid]) => uid!);
    expect(await linksIn('/visits')).toEqual(['A', 'D']);
    expect(await linksIn('/visits?state=all')).toEqual(['C', 'B', 'A', 'D']);
    expect(await linksIn('/visits?state=overdue')).toEqual(['C']);
    expect(await linksIn('/visits?week=2026-11-25')).toEqual(['B']);
    expect(await linksIn('/visits?state=all&crew=south')).toEqual(['B']);
    expect(await linksIn('/visits?state=all&site=SKERRY')).toEqual([]);
    expect(await linksIn('/visits?state=nonsense&week=never&page=-3')).toEqual(['A', 'D']);
  });

  it('confirm only what was meant: a look changes nothing, doubts are asked about, faults are named', async () => {
    const looked = await send('/visits/A/confirm', { day: '2027-01-12', at: '', crew: 'north', step: 'look' });
    expect(await looked.text()).toContain('It would be confirmed for January 12, 2027');
    expect(await stateOf('A')).toBe('proposed');
    const bad = await send('/visits/A/confirm', { day: 'soon', at: '8', crew: 'north' });
    const words = await bad.text();
    expect([bad.status, words.includes('is no day'), words.includes('is no time')]).toEqual([400, true, true]);
    const weekend = await send('/visits/A/confirm', { day: '2027-01-16', at: '08:30', crew: 'north' });
    const asked = await weekend.text();
    expect(asked).toContain('does not go out on 2027-01-16');
    expect(asked).toContain('Take it all the same');
    expect(await stateOf('A')).toBe('proposed');
    const sure = await send('/visits/A/confirm', { day: '2027-01-16', at: '08:30', crew: 'north', sure: 'yes' });
    expect(sure.headers.get('location')).toBe('/visits/A?said=confirm');
    expect(await readVisit(sample.register.db, 'A')).toMatchObject({ state: 'confirmed', startsAt: '08:30' });
    expect(await sample.text('/visits/A?said=confirm')).toContain('Confirmed: no plan moves it');
  });

  it('miss and cancel with a reason, and not without one', async () => {
    expect((await send('/visits/C/miss', { because: ' ' })).status).toBe(400);
    expect(await stateOf('C')).toBe('confirmed');
    expect((await send('/visits/C/miss', { because: 'rain all day' })).status).toBe(303);
    expect(await sample.text('/visits/C')).toContain('by office: rain all day.');
    const ahead = await send('/visits/D/miss', { because: 'a guess' });
    expect(await ahead.text()).toContain('still to come');
    expect((await send('/visits/D/cancel', { because: 'the owner does it' })).status).toBe(303);
    expect(await stateOf('D')).toBe('cancelled');
    expect(await (await send('/visits/D/cancel', { because: 'again' })).text()).toContain('cancelled');
  });

  it('enter what was done, after a look that enters nothing', async () => {
    const fields = { day: '2026-11-24', done: 'PR-02', 'hours-PR-02': '5' };
    const looked = await (await send('/visits/B/done', { ...fields, step: 'look' })).text();
    expect(looked).toContain('Nothing was entered yet');
    expect(looked).toContain('post swap, posts 2, 5, as works B.001');
    expect(await stateOf('B')).toBe('proposed');
    const odd = await send('/visits/B/done', { ...fields, 'hours-PR-02': '900' });
    expect([odd.status, (await odd.text()).includes('Take it all the same')]).toEqual([400, true]);
    expect((await send('/visits/B/done', fields)).headers.get('location')).toBe('/visits/B?said=done');
    expect(await stateOf('B')).toBe('done');
    expect(await sample.text('/visits/B')).toContain('5 h used, works B.001');
  });

  it('print the day sheet, say what to order, and keep strangers out', async () => {
    const sheet = await sample.app.request('/sheets/south?day=2026-11-24');
    expect(sheet.headers.get('content-security-policy')).toContain('sandbox');
    expect(await sheet.text()).toContain('Pelican Reach');
    expect((await sample.app.request('/sheets/south?day=2026-12-24')).status).toBe(404);
    const materials = await sample.text('/materials');
    expect(materials).toMatch(/1 visit from January 16, 2027 to January 18, 2027, 1 of them confirmed/);
    expect(await sample.text('/materials?from=2026-13-01')).toContain('is no day');
  });

  it('make a calendar link, show it this once, and end it', async () => {
    const made = await send('/feeds', { subject: 'crew north' });
    const url = /<code>([^<]+)<\/code>/.exec(await made.text())?.[1] ?? '';
    const path = new URL(url).pathname;
    expect((await sample.pages.request(path)).status).toBe(200);
    const secret = path.split('/').at(-1)!;
    expect(await sample.text('/feeds')).not.toContain(secret);
    expect((await send('/feeds', { subject: 'crew nobody' })).status).toBe(400);
    expect((await send('/feeds/1/revoke', {})).status).toBe(303);
    expect((await sample.pages.request(path)).status).toBe(404);
    expect((await sample.text('/feeds')).replace(/<[^>]*>/g, '')).toContain('revoked 2026-11-24');
  });
});
