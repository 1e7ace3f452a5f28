import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listDayWishes } from '../../../src/register/day-wish-store.ts';
import { readVisit, visitHistory } from '../../../src/register/visit-store.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { tokenIn } from '../access/access-visitors.ts';
import { answeringSample, ownerPathOf } from './answering-sample.ts';
import { ownerBrowser } from './owner-browser.ts';

let sample: Awaited<ReturnType<typeof answeringSample>>;
beforeEach(async () => {
  sample = await answeringSample();
});
afterEach(() => sample.close());

const browserOf = async (ownerRef: string) => ownerBrowser(sample, await ownerPathOf(sample, ownerRef));
const mark = async (ownerRef: string, days: readonly string[], more: Readonly<Record<string, string>> = {}) =>
  (await browserOf(ownerRef)).send('/visits', '/visits/V-BOTH', { rule: 'mark', day: days, ...more });
const wishes = () => listDayWishes(sample.register.db, ['V-BOTH']);
const [TUE, WED, THU] = ['2027-01-19', '2027-01-20', '2027-01-21'];

describe('the days of a visit to the fences of several owners', () => {
  it('are marked by each owner, in their language, and promise nothing', async () => {
    const page = await (await browserOf('QUINN')).get('/visits');
    expect(page.text).toContain('cada dueño tiene una voz');
    expect(page.text).toMatch(/type="checkbox" name="day" value="2027-01-19"/);
    const done = await mark('QUINN', [WED, THU]);
    expect(done.text).toContain('Todavía no hay nada prometido');
    expect(done.text).toContain(
      'Usted dijo que le convienen: miércoles, 20 de enero de 2027; jueves, 21 de enero de 2027.',
    );
    expect(await readVisit(sample.register.db, 'V-BOTH')).toMatchObject({
      state: 'proposed',
      firstDay: TUE,
      sequence: 0,
    });
    const english = await mark('HOA', [TUE, WED]);
    expect(english.text).toContain('Thank you. The office sees which days suit you.');
  });

  it('are counted for the office, who does not suit is named, and one button confirms the best', async () => {
    await mark('QUINN', [WED]);
    await mark('HOA', [TUE, WED]);
    const page = await sample.text('/visits/V-BOTH');
    expect(page).toContain('Which day suits its owners');
    expect(page).toMatch(/Tuesday, January 19, 2027[\s\S]{0,300}1 of 2[\s\S]{0,200}Rosa Quinn/);
    expect(page).toContain('Confirm Wednesday, January 20, 2027');
    expect(page).toContain('Nobody said that it does not suit.');
    const brief = await sample.text('/brief');
    expect(brief).toContain('1 visit waits for you to confirm the day that suits most owners');
    expect(brief).toContain('2 of 2 owners have answered; to begin on January 20, 2027 suits 2 of them');
    const sent = await sample.pages.request('/visits/V-BOTH/confirm', {
      method: 'POST',
      body: new URLSearchParams({
        form_token: tokenIn(await sample.text('/account')),
        day: WED,
        because: 'suits 2 of 2 owners',
      }),
      headers: { cookie: sample.cookie ?? '' },
    });
    expect(sent.status).toBe(303);
    expect(await readVisit(sample.register.db, 'V-BOTH')).toMatchObject({ state: 'confirmed', firstDay: WED });
    expect((await visitHistory(sample.register.db, 'V-BOTH')).at(-1)).toMatchObject({ because: 'suits 2 of 2 owners' });
    expect(await sample.text('/visits/V-BOTH')).not.toContain('Which day suits its owners');
    expect((await mark('QUINN', [TUE])).status).toBe(400);
    expect(await sample.text('/brief')).not.toContain('waits for you to confirm the day');
  });

  it('may be marked otherwise, or none at all; the newest counts and the older ones stay', async () => {
    await mark('QUINN', [WED]);
    await mark('QUINN', [WED]);
    const none = await mark('QUINN', [], { none: 'yes' });
    expect(none.text).toContain('ninguno de estos días le conviene');
    expect((await wishes()).map(({ ownerRef, suits }) => [ownerRef, suits])).toEqual([['QUINN', []]]);
    const rows = await sample.register.db.selectFrom('day_wishes').select('suits').execute();
    expect(rows.map(({ suits }) => suits)).toEqual([JSON.stringify([WED]), '[]']);
    await expect(sample.register.db.deleteFrom('day_wishes').execute()).rejects.toThrow(/never deleted/);
    const page = await sample.text('/visits/V-BOTH');
    expect(page).toContain('nothing yet from Pelican Reach Association');
    expect(page).not.toContain('<button type="submit">Confirm Tuesday');
    expect(await sample.text('/brief')).toContain(
      '1 of 2 owners has answered: none of the days suits Rosa Quinn; one has not answered yet.',
    );
    const answers = await sample.text('/answers');
    expect(answers).toContain('Days of shared visits were marked 1 time.');
    expect(answers).toContain('said that none of the days offered suits, for visit V-BOTH at PELICAN');
    await mark('HOA', [], { none: 'yes' });
    expect(await sample.text('/brief')).toMatch(
      /2 of 2 owners have answered: none of the days suits [^.]*Rosa Quinn[^.]*, so give it another week\./,
    );
  });

  it('take no day that is not offered, nothing unticked, and nobody else’s visit', async () => {
    for (const day of ['2027-01-13', '2027-01-23', 'soon']) expect((await mark('QUINN', [day])).status, day).toBe(400);
    const nothing = await mark('QUINN', []);
    expect([nothing.status, nothing.text.includes('No se marcó ningún día')]).toEqual([400, true]);
    const browser = await browserOf('QUINN');
    expect((await browser.send('/visits', '/visits/V-HOA', { rule: 'mark', day: ['2027-01-12'] })).status).toBe(404);
    // of a visit to nobody else the day is chosen, not marked
    expect((await browser.send('/visits', '/visits/V-QUINN', { rule: 'mark', day: ['2027-01-12'] })).status).toBe(400);
    expect(await wishes()).toEqual([]);
  });

  it('count no longer once the visit is proposed for another week', async () => {
    await mark('QUINN', [WED]);
    await sample.register.db
      .updateTable('visits')
      .set({ first_day: '2027-01-26', last_day: '2027-01-26' })
      .where('uid', '=', 'V-BOTH')
      .execute();
    expect(await sample.text('/visits/V-BOTH')).toContain('Nobody has marked a day yet.');
    expect((await (await browserOf('QUINN')).get('/visits')).text).not.toContain('Usted dijo');
  });
});

describe('a visit of several days', () => {
  beforeEach(async () => {
    const both = (await readVisit(sample.register.db, 'V-BOTH'))!;
    // two people have some 14 hours a day: 34 hours take three days of them
    const items = both.items.map((item) => ({ ...item, personHours: 17 }));
    const full = madeUpVisit({ uid: 'V-FULL', firstDay: '2027-01-25', lastDay: '2027-01-29', travelPersonHours: 0 });
    await storeVisits(sample.register, [
      { ...both, items, travelPersonHours: 0 },
      { ...full, items: full.items.map((item) => ({ ...item, fenceRef: 'PR-02', personHours: 79 })) },
    ]);
  });

  it('is offered to begin only where the crew has the hours on all of its days, with the last of them', async () => {
    const { text } = await (await browserOf('HOA')).get('/visits');
    expect(text).toContain('Mark the days to begin on that suit you');
    expect(text).toContain('Tuesday, January 19, 2027, to Thursday, January 21, 2027');
    expect(text).not.toContain('value="2027-01-21"');
    expect(text).not.toContain('value="2027-01-22"');
    await mark('HOA', [WED]);
    expect(await sample.text('/visits/V-BOTH')).toContain(
      'Confirm Wednesday, January 20, 2027, to Friday, January 22, 2027',
    );
  });

  it('is asked about before it overfills the week after', async () => {
    const confirm = async (more: Readonly<Record<string, string>>) =>
      sample.pages.request('/visits/V-BOTH/confirm', {
        method: 'POST',
        body: new URLSearchParams({ form_token: tokenIn(await sample.text('/account')), day: '2027-01-22', ...more }),
        headers: { cookie: sample.cookie ?? '' },
      });
    const sent = await confirm({});
    expect(sent.status).toBe(400);
    expect(await sent.text()).toMatch(/the week of 2027-01-25 would have [\d.]+ h too many/);
    expect(await readVisit(sample.register.db, 'V-BOTH')).toMatchObject({ state: 'proposed', firstDay: TUE });
    expect((await confirm({ sure: 'yes' })).status).toBe(303);
    const hours = await sample.text('/plan/hours');
    expect(hours).toMatch(/V-BOTH[^(]*\(from the week before, to January 26, 2027\)/);
    expect(hours).toContain('what takes them: 2 visits');
    expect(await sample.text('/brief')).toContain('a week with more work than hours counts as none left');
  });
});

describe('a day that the only owner chose', () => {
  it('stands on the season brief, with who chose it and what to do next', async () => {
    await (await browserOf('QUINN')).send('/visits', '/visits/V-QUINN', { day: '2027-01-14' });
    const brief = await sample.text('/brief');
    expect(brief).toContain('1 day is promised because the owner chose it');
    expect(brief).toMatch(
      /Rosa Quinn chose January 14, 2027 for the [\s\S]{0,120}V-QUINN[\s\S]{0,120}PR-04[\s\S]{0,60}proposed for January 11, 2027/,
    );
    expect(brief).toContain('You need not do anything; open a visit to give it an hour');
  });
});
