import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { visitsOfLinks } from '../../../src/register/link-visit-store.ts';
import { listOwnerAnswers } from '../../../src/register/owner-answer-store.ts';
import { readOwnerPreferences } from '../../../src/register/owner-preference-store.ts';
import { listVisits } from '../../../src/register/visit-store.ts';
import { OWNER_SCOPES, type OwnerScope, ownerLinkShown } from '../../../src/service/owner-links.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { answeringSample, ownerPathOf } from './answering-sample.ts';
import { ownerBrowser } from './owner-browser.ts';

let sample: Awaited<ReturnType<typeof answeringSample>>;
beforeAll(async () => {
  sample = await answeringSample();
});
afterAll(() => sample.close());

/** Every page behind a link and what the link must be good for. */
const PAGES: readonly (readonly [path: string, scope: OwnerScope])[] = [
  ['', 'see'],
  ['/fences/PR-04', 'see'],
  ['/money', 'see'],
  ['/documents', 'see'],
  ['/visits', 'book'],
  ['/quotes', 'accept'],
  ['/quotes/{quote}', 'accept'],
  ['/call', 'call'],
  ['/preferences', 'preferences'],
  ['/danger', 'preferences'],
  ['/unsubscribe', 'preferences'],
];

/** Every form behind a link: where it is sent, what with, and what the link must be good for. */
const FORMS: readonly (readonly [path: string, fields: Readonly<Record<string, string>>, scope: OwnerScope])[] = [
  ['/read', {}, 'acknowledge'],
  ['/visits/V-QUINN', { day: '2027-01-12' }, 'book'],
  ['/quotes/{quote}', { name: 'Rosa Quinn', quote: '{hash}' }, 'accept'],
  ['/call', {}, 'call'],
  ['/preferences', { language: 'en' }, 'preferences'],
  ['/danger', { danger: 'off', sure: 'yes' }, 'preferences'],
  ['/unsubscribe', { 'List-Unsubscribe': 'One-Click' }, 'preferences'],
];

const named = (path: string): string => path.replace('{quote}', sample.quotes['PR-04']);

/** All that an owner's answers can change. */
async function changeable(): Promise<string> {
  const { db } = sample.register;
  return JSON.stringify([
    await listOwnerAnswers(db, {}),
    await readOwnerPreferences(db, 'QUINN'),
    await listVisits(db, {}),
    await db.selectFrom('owners').selectAll().execute(),
    await db.selectFrom('offered_quotes').selectAll().execute(),
    await db.selectFrom('outbox').select(['id', 'state']).execute(),
    await db.selectFrom('owner_links').selectAll().where('id', '=', 1).execute(),
  ]);
}

describe('what a link is good for', () => {
  it.each(OWNER_SCOPES)('%s opens its own pages and no other', async (scope) => {
    const home = await ownerPathOf(sample, 'QUINN', [scope]);
    for (const [path, needed] of PAGES) {
      const response = await sample.pages.request(`${home}${named(path)}`);
      expect(response.status, `${path} by a link for ${scope}`).toBe(needed === scope ? 200 : 403);
      if (needed !== scope) expect(await response.text()).toContain('Este enlace no sirve para eso');
    }
  });

  it('is asked of every form too, and a form that is refused changes nothing', async () => {
    const before = await changeable();
    for (const [path, fields, needed] of FORMS) {
      const others = OWNER_SCOPES.filter((scope) => scope !== needed);
      const browser = ownerBrowser(sample, await ownerPathOf(sample, 'QUINN', others));
      const page = needed === 'call' ? '/preferences' : '/call';
      expect((await browser.send(page, named(path), fields)).status, path).toBe(403);
    }
    expect(await changeable()).toBe(before);
  });

  it('ends with the link: over or revoked, no page opens and no form is taken', async () => {
    const before = await changeable();
    const token = (await ownerPathOf(sample, 'QUINN')).slice('/owner/'.length);
    const later = () => SAMPLE_NOW().plus({ days: 31 });
    expect(await ownerLinkShown(sample.register.db, token, SAMPLE_NOW)).not.toBeNull();
    expect(await ownerLinkShown(sample.register.db, token, later)).toBeNull();
    const id = Number.parseInt(token.split('.')[0] ?? '', 36);
    const revoked = sample.register.db.updateTable('owner_links').set({ revoked_at: '2026-11-24T13:00:00.000Z' });
    await revoked.where('id', '=', id).execute();
    for (const [path] of PAGES) {
      expect((await sample.pages.request(`/owner/${token}${named(path)}`)).status, path).toBe(404);
    }
    for (const [path, fields] of FORMS) {
      const body = new URLSearchParams(fields);
      const response = await sample.pages.request(`/owner/${token}${named(path)}`, { method: 'POST', body });
      expect(response.status, path).toBe(404);
    }
    expect(await changeable()).toBe(before);
  });
});

describe('a page that is opened', () => {
  it('changes nothing, by GET or HEAD, however often a mail scanner comes; visits are counted apart from forms', async () => {
    const home = await ownerPathOf(sample, 'QUINN');
    const before = await changeable();
    for (const [path] of PAGES) {
      for (const method of ['GET', 'HEAD', 'HEAD']) {
        expect((await sample.pages.request(`${home}${named(path)}`, { method })).status, path).toBe(200);
      }
    }
    // addresses of forms hold nothing to open
    for (const path of ['/read', '/visits/V-QUINN']) {
      expect((await sample.pages.request(`${home}${path}`)).status).toBe(404);
    }
    expect(await changeable()).toBe(before);
    await ownerBrowser(sample, home).send('/preferences', '/preferences', {
      language: 'es',
      matter: ['standing', 'reminders', 'marks', 'works', 'visits', 'plan'],
    });
    expect(await changeable()).toBe(before);
    const id = Number.parseInt(home.slice('/owner/'.length).split('.')[0] ?? '', 36);
    const visits = await visitsOfLinks(sample.register.db, [id]);
    const of = (page: string, way: string) => visits.find((visit) => visit.page === page && visit.way === way);
    expect(of('fences', 'get')).toMatchObject({ visits: 1, firstAt: '2026-11-24T12:00:00.000Z' });
    expect(of('fences', 'head')).toMatchObject({ visits: 2 });
    expect(of('preferences', 'post')).toMatchObject({ visits: 1 });
    expect(of('fences', 'post')).toBeUndefined();
  });

  it('takes no form that another site sends, nor one without the token of this browser', async () => {
    const home = await ownerPathOf(sample, 'QUINN');
    const before = await changeable();
    for (const [path, fields] of FORMS.filter(([each]) => each !== '/unsubscribe')) {
      const body = new URLSearchParams(fields);
      const response = await sample.pages.request(`${home}${named(path)}`, { method: 'POST', body });
      expect(response.status, path).toBe(403);
    }
    expect(await changeable()).toBe(before);
  });
});
