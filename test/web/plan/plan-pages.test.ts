import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listRecords } from '../../../src/register/record-store.ts';
import { listVisits, readVisit } from '../../../src/register/visit-store.ts';
import { makeSeasonPlan } from '../../../src/service/make-season-plan.ts';
import { storeSeasonPlan } from '../../../src/service/store-season-plan.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { tokenIn } from '../access/access-visitors.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

const CREWS = [
  { name: 'crews.csv', text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\n' },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm2,north,Tom Reed,40,en,\n',
  },
];

describe('the pages of the season plan', { timeout: 120_000 }, () => {
  let sample: SampleApp;
  /** Sends a form of the office as its browser does. */
  const send = async (path: string, fields: Readonly<Record<string, string>>): Promise<Response> => {
    const token = tokenIn(await sample.text('/account'));
    return sample.pages.request(path, {
      method: 'POST',
      body: new URLSearchParams({ form_token: token, ...fields }),
      headers: { cookie: sample.cookie ?? '' },
    });
  };
  const db = () => sample.register.db;

  beforeAll(async () => {
    sample = await sampleApp();
  });
  afterAll(() => sample.close());

  it('say that there is nobody to plan for', async () => {
    const html = await sample.text('/plan');
    expect(html).toContain('The register holds no crew');
    expect(html).not.toContain('Make a plan</button>');
    await send('/plan', {});
    await sample.parts.planner.settled();
    expect(await sample.text('/plan')).toContain('could not be made: the register holds no crew');
  });

  it('ask again by themselves while a plan is made, and only then', async () => {
    expect((await importFiles(sample.register, CREWS)).faults).toEqual([]);
    const asksAgain = async (): Promise<string | null> => (await sample.app.request('/plan')).headers.get('refresh');
    expect(await asksAgain()).toBeNull();
    expect((await send('/plan', {})).status).toBe(303);
    expect(await asksAgain()).toBe('3; url=/plan');
    expect(await sample.text('/plan')).toContain('A plan is being made');
    await sample.parts.planner.settled();
    expect(await asksAgain()).toBeNull();
    expect(await sample.text('/plan')).toContain('href="/plan/1"');
  });

  it('show what a plan does, costs and leaves out, and how good it is', async () => {
    const html = await sample.text('/plan/1');
    expect(html).toMatch(/visits? to \d+ fences? take/);
    expect(html).toContain('Fences expected to snap');
    expect(html).toMatch(/no other plan is worth more|no plan is worth more than/);
    expect(html).toContain('What it leaves out');
    // every fence is named: it has a place, or stands among what is left out
    const left = html.slice(html.indexOf('id="left-out"'), html.indexOf('id="bound"'));
    const fences = [...left.matchAll(/href="\/fences\/([^"#]+)"/g)].map(([, ref]) => ref);
    const placed = [...html.slice(0, html.indexOf('id="left-out"')).matchAll(/href="\/fences\/([^"#]+)"/g)];
    const all = (await listRecords(db(), 'fences')).map(({ ref }) => ref);
    expect([...new Set([...fences, ...placed.map(([, ref]) => ref)])].sort()).toEqual(all);
    expect(html).toContain('two people for one hour are two');
    expect(html).toContain('only fences with dangerous posts are drawn to the front');
    expect(html).toContain('worth its price: it need not be');
    expect(html).not.toContain('(pays)');
    expect((await sample.app.request('/plan/7')).status).toBe(404);
  });

  it('say before a plan is accepted what it would change, and change nothing till then', async () => {
    const html = await sample.text('/plan/1/accept');
    expect(html).toMatch(/visits? (is|are) new/);
    expect(await listVisits(db(), {})).toEqual([]);
    const accepted = await send('/plan/1/accept', { because: 'the board agreed' });
    expect([accepted.status, accepted.headers.get('location')]).toEqual([303, '/visits']);
    expect((await listVisits(db(), {})).length).toBeGreaterThan(0);
    expect(await sample.text('/plan/1')).toContain('in force, accepted November 24 by office: the board agreed');
    const again = await send('/plan/1/accept', {});
    expect(again.status).toBe(400);
    expect(await again.text()).toContain('was accepted before');
  });

  it('give a fence the week that was chosen from those with their costs', async () => {
    const visit = (await listVisits(db(), { states: ['proposed'] }))[0]!;
    const { fenceRef } = visit.items[0]!;
    const page = await sample.text(`/plan/give?visit=${visit.uid}&fence=${fenceRef}`);
    expect(page).toContain('it is here now');
    const [, query] = [...page.matchAll(/href="\/plan\/give\?([^"]+week=[^"]+)"/g)].at(-1)!;
    const asked = new URLSearchParams(query!.replaceAll('&amp;', '&'));
    const preview = await sample.text(`/plan/give?${asked.toString()}`);
    expect(preview).toContain('No plan moves it from then on');
    const given = await send('/plan/give', Object.fromEntries(asked));
    expect(given.status).toBe(303);
    const uid = /\/visits\/([^?]+)/.exec(given.headers.get('location') ?? '')![1]!;
    expect(await readVisit(db(), uid)).toMatchObject({ planId: null, state: 'proposed' });
    expect(await sample.text(`/visits/${uid}`)).toContain('It is proposed by you');
    const hours = await sample.text('/plan/hours');
    expect(hours).toContain('proposed by you');
    expect(hours).toMatch(/h of \d+/);
    expect((await send('/plan/leave', { visit: uid })).status).toBe(303);
    expect(await readVisit(db(), uid)).toMatchObject({ planId: 1 });
    const refused = await send('/plan/give', { ...Object.fromEntries(asked), week: '2020-01-06' });
    expect([refused.status, (await refused.text()).includes('Nothing was changed')]).toEqual([400, true]);
  });

  it('refuse a plan whose first week has begun', async () => {
    const early = { now: () => SAMPLE_NOW().minus({ weeks: 3 }), weeks: 8, onProgress: () => undefined };
    const made = await makeSeasonPlan(sample.register, early);
    const { number } = await storeSeasonPlan(sample.register, made, { now: early.now, store: true });
    expect(await sample.text(`/plan/${number}`)).toContain('cannot be accepted any more');
    expect((await sample.app.request(`/plan/${number}/accept`)).status).toBe(302);
    const sent = await send(`/plan/${number}/accept`, {});
    expect([sent.status, (await sent.text()).includes('Nothing was changed')]).toEqual([400, true]);
  });
});
