import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { withdrawQuote } from '../../../src/register/offered-quote-store.ts';
import { listOwnerAnswers } from '../../../src/register/owner-answer-store.ts';
import { readOwnerPreferences } from '../../../src/register/owner-preference-store.ts';
import { readRecord } from '../../../src/register/record-store.ts';
import { readVisit, visitHistory } from '../../../src/register/visit-store.ts';
import { answeringSample, ownerPathOf } from './answering-sample.ts';
import { ownerBrowser } from './owner-browser.ts';

let sample: Awaited<ReturnType<typeof answeringSample>>;
beforeEach(async () => {
  sample = await answeringSample();
});
afterEach(() => sample.close());

const browserOf = async (ownerRef: string) => ownerBrowser(sample, await ownerPathOf(sample, ownerRef));
const answers = (kind?: Parameters<typeof listOwnerAnswers>[1]['kind']) =>
  listOwnerAnswers(sample.register.db, kind ? { kind } : {});

describe('"I have read this"', () => {
  it('is noted once with the forecast that was read, and says so when it is said again', async () => {
    const browser = await browserOf('QUINN');
    const first = await browser.send('/fences/PR-04', '/read', { fence: 'PR-04' });
    expect(first.location).toMatch(/\/fences\/PR-04\?said=noted#read$/);
    expect(first.text).toContain('Queda anotado que ha leído esto');
    expect(first.text).toContain('El 24 de noviembre de 2026 nos dijo que ha leído esto');
    const other = await browser.get('/fences/SK-02');
    expect(other.text).toContain('He leído esto</button>');
    // an old page may still hold the button
    const again = await browser.send('/call', '/read', { fence: 'PR-04' });
    expect(again.text).toContain('Ya estaba anotado');
    expect(await answers('read')).toHaveLength(1);
    expect(JSON.parse((await answers('read'))[0]!.detail)).toMatchObject({ standing: 'short' });
  });

  it('stands in the evidence file of the fence, and not in that of a day before', async () => {
    const browser = await browserOf('QUINN');
    await browser.send('/fences/PR-04', '/read', { fence: 'PR-04' });
    const today = await sample.text('/fences/PR-04/evidence');
    expect(today).toMatch(/2026-11-24: [^<]*, leyó cómo está/);
    expect(await sample.text('/fences/PR-04/evidence?on=2026-11-20')).not.toContain('leyó cómo está');
  });

  it('of all fences leaves those that were read as they are', async () => {
    const browser = await browserOf('QUINN');
    await browser.send('/fences/PR-04', '/read', { fence: 'PR-04' });
    expect((await browser.send('', '/read', {})).location).toContain('said=noted');
    expect((await answers('read')).map(({ subject }) => subject).sort()).toEqual(['PR-04', 'SK-02']);
    expect((await browser.send('/call', '/read', {})).location).toContain('said=already');
  });

  it('is asked again once the fence stands otherwise', async () => {
    const browser = await browserOf('QUINN');
    await browser.send('/fences/PR-04', '/read', { fence: 'PR-04' });
    await sample.register.db
      .updateTable('forecasts')
      .set({ input_hash: 'f'.repeat(64) })
      .where('fence_ref', '=', 'PR-04')
      .execute();
    expect((await browser.get('/fences/PR-04')).text).toContain('He leído esto</button>');
    expect((await browser.send('/fences/PR-04', '/read', { fence: 'PR-04' })).location).toContain('said=noted');
    expect(await answers('read')).toHaveLength(2);
  });

  it('of somebody else’s fence is not taken', async () => {
    const browser = await browserOf('QUINN');
    for (const fence of ['PR-01', 'NOPE']) {
      expect((await browser.send('/fences/PR-04', '/read', { fence })).status).toBe(404);
    }
    expect(await answers()).toEqual([]);
  });
});

describe('choosing a day', () => {
  it('offers the days of that week on which the crew goes out, and promises the one that is chosen', async () => {
    const browser = await browserOf('QUINN');
    const page = await browser.get('/visits');
    const days = [...page.text.matchAll(/type="radio" name="day" value="(2027-\d\d-\d\d)"/g)].map(([, day]) => day);
    expect(days).toEqual(['2027-01-11', '2027-01-12', '2027-01-14', '2027-01-15']);
    const chosen = await browser.send('/visits', '/visits/V-QUINN', { day: '2027-01-14' });
    expect(chosen.text).toContain('Gracias. El día queda prometido.');
    expect(chosen.text).toContain('La cuadrilla viene el jueves, 14 de enero de 2027');
    expect(await readVisit(sample.register.db, 'V-QUINN')).toMatchObject({
      state: 'confirmed',
      firstDay: '2027-01-14',
      sequence: 1,
    });
    expect((await visitHistory(sample.register.db, 'V-QUINN')).at(-1)).toMatchObject({ by: 'owner QUINN' });
    const again = await browser.send('/call', '/visits/V-QUINN', { day: '2027-01-14' });
    expect(again.text).toContain('Ese día ya estaba prometido.');
    expect(await answers('day chosen')).toHaveLength(1);
  });

  it('takes no day that is not offered, and no other once one is promised', async () => {
    const browser = await browserOf('QUINN');
    for (const day of ['2027-01-13', '2027-01-16', '2027-01-18', '2026-11-24', 'soon', '']) {
      expect((await browser.send('/visits', '/visits/V-QUINN', { day })).status, day).toBe(400);
    }
    expect(await readVisit(sample.register.db, 'V-QUINN')).toMatchObject({ state: 'proposed', sequence: 0 });
    await browser.send('/visits', '/visits/V-QUINN', { day: '2027-01-11' });
    expect((await browser.send('/call', '/visits/V-QUINN', { day: '2027-01-12' })).status).toBe(400);
    expect(await readVisit(sample.register.db, 'V-QUINN')).toMatchObject({ firstDay: '2027-01-11' });
  });

  it('gives one day to one of two who choose at once', async () => {
    const browsers = [await browserOf('QUINN'), await browserOf('QUINN')];
    const done = await Promise.all(
      ['2027-01-11', '2027-01-12'].map((day, index) => browsers[index]!.send('/visits', '/visits/V-QUINN', { day })),
    );
    expect(done.map(({ status }) => status).sort()).toEqual([200, 400]);
    expect(await answers('day chosen')).toHaveLength(1);
  });

  it('is not for a visit to others’ fences: somebody else’s is none, of a common one days are marked', async () => {
    const browser = await browserOf('QUINN');
    const { text } = await browser.get('/visits');
    expect(text).not.toContain('V-HOA');
    expect(text).not.toContain('PR-01');
    expect(text).toContain('va también a cercas de otros');
    expect((await browser.send('/visits', '/visits/V-HOA', { day: '2027-01-12' })).status).toBe(404);
    expect((await browser.send('/visits', '/visits/V-BOTH', { day: '2027-01-19' })).status).toBe(400);
    expect(await readVisit(sample.register.db, 'V-BOTH')).toMatchObject({ state: 'proposed' });
  });

  it('leaves out a day on which the crew is promised elsewhere', async () => {
    await (await browserOf('QUINN')).send('/visits', '/visits/V-QUINN', { day: '2027-01-14' });
    await sample.register.db.updateTable('visit_items').set({ person_hours: 12 }).where('uid', '=', 'V-HOA').execute();
    const { text } = await (await browserOf('HOA')).get('/visits');
    expect(text).not.toContain('value="2027-01-14"');
    expect(text).toContain('value="2027-01-15"');
  });
});

describe('a quote', () => {
  const hashIn = (text: string): string => /name="quote" value="([0-9a-f]{64})"/.exec(text)?.[1] ?? '';

  it('is shown with its number, amount and last day, and accepted once by name', async () => {
    const browser = await browserOf('HOA');
    const number = sample.quotes['PR-02'];
    const page = await browser.get(`/quotes/${number}`);
    expect(page.text).toContain(number);
    expect(page.text).toContain('559.00 USD');
    expect(page.text).toContain('December 24, 2026');
    const quote = hashIn(page.text);
    const nameless = await browser.send(`/quotes/${number}`, `/quotes/${number}`, { quote, name: ' \u2028 ' });
    expect(nameless.status).toBe(400);
    expect(nameless.text).toContain('Nothing was accepted');
    const accepted = await browser.send(`/quotes/${number}`, `/quotes/${number}`, { quote, name: 'Lou Marsh' });
    expect(accepted.text).toContain('Thank you. The quote is accepted.');
    expect(accepted.text).toContain(
      `Accepted by Lou Marsh on November 24, 2026. Mark of the accepted quote (SHA-256): ${quote}`,
    );
    const again = await browser.send('/call', `/quotes/${number}`, { quote, name: 'Somebody Else' });
    expect(again.text).toContain('was accepted already');
    const [answer, ...others] = await answers('quote accepted');
    expect(others).toEqual([]);
    expect(answer).toMatchObject({ subject: number, ownerRef: 'HOA', at: '2026-11-24T12:00:00.000Z' });
    expect(JSON.parse(answer!.detail)).toMatchObject({ sha256: quote, name: 'Lou Marsh', total: 55900 });
  });

  it('is not accepted unless it is the one that was shown, stands, and is theirs', async () => {
    const browser = await browserOf('QUINN');
    const number = sample.quotes['PR-04'];
    const quote = hashIn((await browser.get(`/quotes/${number}`)).text);
    const send = (to: string, hash: string) => browser.send('/call', `/quotes/${to}`, { quote: hash, name: 'Rosa' });
    expect((await send(number, 'a'.repeat(64))).status).toBe(400);
    expect((await send(sample.quotes['PR-02'], quote)).status).toBe(404);
    expect((await browser.get(`/quotes/${sample.quotes['PR-02']}`)).status).toBe(404);
    await withdrawQuote(sample.register.db, number, '2026-11-24T12:30:00.000Z');
    expect((await send(number, quote)).status).toBe(400);
    expect((await browser.get(`/quotes/${number}`)).text).toContain('La oficina lo retiró');
    expect(await answers()).toEqual([]);
  });

  it('stays in the register as it was offered', async () => {
    const change = sample.register.db.updateTable('offered_quotes').set({ content: '{}' });
    await expect(change.execute()).rejects.toThrow('offer another');
  });

  it('is told in Spanish with the words that were offered', async () => {
    const { text } = await (await browserOf('QUINN')).get(`/quotes/${sample.quotes['PR-04']}`);
    expect(text).toContain('cambio de postes, postes 2, 5');
    expect(text).toContain('post swap, posts 2, 5');
    expect(text).toContain('traslado y preparación');
    expect(text).toContain('Los cimientos nuevos necesitan 7 días antes de tener que aguantar una tormenta.');
    // what was offered is folded away under Spanish words
    expect(text.replace(/<details>[\s\S]*?<\/details>/g, '')).not.toContain('post swap');
    // the office's own words are nobody's to translate
    expect(text).toContain('<span lang="en">Call before you dig.</span>');
  });
});

describe('a call', () => {
  it('is wanted once until the office has called', async () => {
    const browser = await browserOf('HOA');
    const asked = await browser.send('/call', '/call', {
      phone: '555-0123',
      when: 'after five',
      about: 'gate\r\nBcc: x',
    });
    expect(asked.text).toContain('You are on the list of those to call');
    expect(asked.text).toContain('About: gate Bcc: x');
    const again = await browser.send('/preferences', '/call', { phone: '555-9999' });
    expect(again.text).toContain('You were on the list already');
    expect(await answers('call wanted')).toHaveLength(1);
    const page = await sample.text('/answers');
    expect(page).toContain('1 owner waits for a call');
    expect(page).toContain('number 555-0123; when: after five');
    const id = (await answers('call wanted'))[0]!.id;
    const form = await sample.app.request('/answers');
    const token = /name="form_token" value="([^"]+)"/.exec(await form.text())?.[1] ?? '';
    const called = await sample.pages.request(`/answers/${id}/called`, {
      method: 'POST',
      body: new URLSearchParams({ form_token: token }),
      headers: { cookie: sample.cookie ?? '' },
    });
    expect(called.status).toBe(303);
    expect((await sample.text('/answers')).replace(/<[^>]*>/g, '')).toContain(
      'called 2026-11-24 12:00 UTC by Nell Fox',
    );
    const anew = await browser.send('/call', '/call', {});
    expect(anew.location).toContain('said=noted');
    expect(await answers('call wanted')).toHaveLength(2);
  });

  it('with too long a text is asked again, with what was written', async () => {
    const browser = await browserOf('QUINN');
    const refused = await browser.send('/call', '/call', { phone: '1'.repeat(51), about: 'la puerta' });
    expect(refused.status).toBe(400);
    expect(refused.text).toContain('Escriba 50 caracteres como mucho.');
    expect(refused.text).toContain('value="la puerta"');
    expect(await answers()).toEqual([]);
  });
});

describe('what to be written about', () => {
  const preferences = (owner: string) => readOwnerPreferences(sample.register.db, owner);

  it('is what is ticked, in the language chosen, and the pages follow', async () => {
    const browser = await browserOf('HOA');
    const done = await browser.send('/preferences', '/preferences', {
      language: 'es',
      matter: ['standing', 'visits'],
      pause: '2027-03-31',
    });
    expect(done.text).toContain('<html lang="es">');
    expect(done.text).toContain('Guardado.');
    expect(await preferences('HOA')).toEqual({
      muted: ['reminders', 'marks', 'works', 'plan'],
      pausedUntil: '2027-03-31',
    });
    expect((await readRecord(sample.register.db, 'owners', 'HOA'))?.language).toBe('es');
    const again = await browser.send('/preferences', '/preferences', {
      language: 'es',
      matter: ['standing', 'visits'],
      pause: '2027-03-31',
    });
    expect(again.text).toContain('Ya estaba así');
    expect(await answers('preferences')).toHaveLength(1);
    expect(await sample.text('/answers')).toContain(
      'no longer wants: reminders before a storm season while a fence is short; marks on the way down; works done; the yearly plan of repair and replacement; nothing but danger until 2027-03-31; language: Spanish',
    );
  });

  it.each(['2026-11-23', '2027-12-01', 'soon'])('takes no pause until %s', async (pause) => {
    const browser = await browserOf('HOA');
    const done = await browser.send('/preferences', '/preferences', { language: 'en', pause });
    expect(done.status).toBe(400);
    expect(done.text).toContain('Nothing was changed');
    expect(await preferences('HOA')).toBeNull();
  });

  it('keeps danger on whatever is ticked, until its own page has asked again', async () => {
    const browser = await browserOf('HOA');
    await browser.send('/preferences', '/preferences', { language: 'en', matter: 'plan' });
    expect((await preferences('HOA'))?.muted).not.toContain('danger');
    const page = await browser.get('/danger');
    expect(page.text).toContain('posts of your fence were found broken, leaning or closed off');
    expect((await browser.send('/danger', '/danger', { danger: 'off' })).status).toBe(400);
    expect((await preferences('HOA'))?.muted).not.toContain('danger');
    const off = await browser.send('/danger', '/danger', { danger: 'off', sure: 'yes' });
    expect(off.text).toContain('News of danger is off.');
    expect((await preferences('HOA'))?.muted).toContain('danger');
    expect(await sample.text('/answers')).toContain('NEWS OF DANGER TURNED OFF');
    // saving the ordinary page leaves it as it is
    await browser.send('/preferences', '/preferences', { language: 'en', matter: ['plan', 'works'] });
    expect((await preferences('HOA'))?.muted).toContain('danger');
    await browser.send('/preferences', '/danger', { danger: 'on' });
    expect((await preferences('HOA'))?.muted).not.toContain('danger');
  });
});

describe('stopping the list by one click', () => {
  const post = async (body: URLSearchParams | FormData, headers: Readonly<Record<string, string>> = {}) =>
    sample.pages.request(`${await ownerPathOf(sample, 'HOA', ['preferences'])}/unsubscribe`, {
      method: 'POST',
      body,
      headers,
    });
  const muted = async () => (await readOwnerPreferences(sample.register.db, 'HOA'))?.muted ?? [];

  it('needs no cookie and no token, takes both kinds of forms, and leads nowhere else', async () => {
    const multipart = new FormData();
    multipart.set('List-Unsubscribe', 'One-Click');
    for (const body of [new URLSearchParams({ 'List-Unsubscribe': 'One-Click' }), multipart]) {
      const response = await post(body, { 'sec-fetch-site': 'cross-site' });
      expect(response.status).toBe(200);
      const text = await response.text();
      expect(text).toContain('These mails are stopped.');
      expect(text).toContain('Still sent: news of danger');
      expect(text).toContain('How to turn that off too');
    }
    expect(await muted()).toEqual(['standing', 'reminders', 'marks', 'works', 'visits', 'plan']);
    expect(await answers('unsubscribed')).toHaveLength(1);
  });

  it.each([
    ['nothing', {}],
    ['another value', { 'List-Unsubscribe': 'one-click' }],
    ['something more', { 'List-Unsubscribe': 'One-Click', danger: 'off' }],
  ])('is not done by a form that says %s', async (_what, fields) => {
    expect((await post(new URLSearchParams(fields as Record<string, string>))).status).toBe(403);
    expect(await muted()).toEqual([]);
  });

  it('is one button for people', async () => {
    const home = await ownerPathOf(sample, 'HOA', ['preferences']);
    const { text } = await ownerBrowser(sample, home).get('/unsubscribe');
    expect(text).toContain('name="List-Unsubscribe" value="One-Click"');
    expect(await muted()).toEqual([]);
  });
});
