import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readVisit } from '../../src/register/visit-store.ts';
import { crewSample } from '../web/crew/crew-sample.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { lookAtPages, openWindow, type ServedPages, servePages, WINDOW_SIZES } from './served-pages.ts';

const PHONE = { viewport: WINDOW_SIZES[1], hasTouch: true, isMobile: true, timezoneId: 'America/Chicago' } as const;
const VISIT = '/today/visits/today-1';
const FENCE = `${VISIT}/fences/PR-02`;

/** Waits until the script of a page has done what it does first. */
const ready = (page: Page) => page.locator('html[data-ready]').waitFor();

describe.runIf(browserIsThere())('the crew with a phone', { timeout: 150_000 }, () => {
  let browser: Browser;
  let sample: Awaited<ReturnType<typeof crewSample>>;
  let served: ServedPages;
  /** End of an address of which one answer is lost after the service has done its work; null for none. */
  let loseAnswerOf: string | null = null;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    sample = await crewSample();
    loseAnswerOf = null;
    const pages = {
      ...sample.pages,
      fetch: async (request: Request) => {
        const answer = await sample.pages.fetch(request);
        if (loseAnswerOf === null || !request.url.endsWith(loseAnswerOf)) return answer;
        loseAnswerOf = null;
        return new Response('the way back is down', { status: 502 });
      },
    };
    served = await servePages({ ...sample, pages });
  });
  afterEach(async () => {
    served.close();
    await sample.close();
  });

  const openPhone = async (cookie: string, more: Parameters<typeof openWindow>[3] = {}): Promise<Page> => {
    const page = await openWindow(browser, served.base, cookie, { ...PHONE, ...more });
    page.setDefaultTimeout(12_000);
    await page.context().clock.setFixedTime(SAMPLE_NOW().toJSDate());
    return page;
  };
  /** Chooses how a fence is looked at. */
  const choose = (page: Page, method: string) => page.locator('.method-choice').getByLabel(method).tap();
  const open = async (page: Page, path: string): Promise<void> => {
    await page.goto(`${served.base}${path}`);
    await ready(page);
  };
  const readings = async () =>
    sample.register.db
      .selectFrom('readings')
      .select(['inspection_ref', 'post', 'groundline_kind', 'groundline_mm', 'closed_off', 'lean_degrees'])
      .where('inspection_ref', 'like', 'today-1/%')
      .orderBy('inspection_ref')
      .orderBy('post')
      .execute();
  const receipts = async (): Promise<number> =>
    (await sample.register.db.selectFrom('entry_receipts').select('id').execute()).length;
  const post = (page: Page, number: number) => page.locator(`#post-${number}`);
  const enterWidth = async (page: Page, number: number, inches: string): Promise<void> => {
    await post(page, number).locator('.post-entry > summary').tap();
    await post(page, number).getByLabel('Sound width left, right across').fill(inches);
    await post(page, number)
      .getByRole('button', { name: `Save post ${number}` })
      .tap();
  };

  it('works a whole day while the signal comes and goes, and everything arrives once', async () => {
    const page = await openPhone(sample.crewCookie);
    const context = page.context();
    await open(page, '/');
    expect(new URL(page.url()).pathname).toBe('/today');
    await page.getByText('2 visits today.').waitFor();
    await page.locator('html[data-kept]').waitFor();

    // with a signal
    await page.getByRole('link', { name: /Fence PR-02/ }).tap();
    await ready(page);
    await choose(page, 'Caliper, sound shell');
    await enterWidth(page, 2, '2 3/8');
    await post(page, 2).getByText('2.38 in of sound width left', { exact: true }).waitFor();
    expect(await readings()).toMatchObject([{ post: 2, groundline_kind: 'residual-width', groundline_mm: 60.325 }]);

    // the signal goes
    await context.setOffline(true);
    await post(page, 5).getByRole('button', { name: 'Dangerous: closed off' }).tap();
    await enterWidth(page, 6, '3.0');
    await page.getByText('2 entries wait on this phone to be sent. No signal.').waitFor();
    await page.reload();
    await ready(page);
    await page.getByText('2 entries wait on this phone to be sent.').waitFor();
    await post(page, 6).locator('.kept-entries').getByText('Sound width left, right across 3.0 in').waitFor();
    // another fence of the day opens too, and can be entered
    await page.goto(`${served.base}${VISIT}`);
    await ready(page);
    await page.getByRole('link', { name: /Fence PR-01/ }).tap();
    await ready(page);
    await choose(page, 'Awl or probe');
    await post(page, 3).locator('.post-entry > summary').tap();
    // deeper than the post is: refused at once, though nobody can be asked
    await post(page, 3).getByRole('textbox', { name: 'Sound to a depth of' }).fill('12 1/2');
    await post(page, 3).getByRole('button', { name: 'Save post 3' }).tap();
    expect(await page.evaluate("document.querySelector('input[data-most]:invalid').validationMessage")).toContain(
      'More than this post can have: at most 1.75 in',
    );
    await page.getByText('2 entries wait on this phone to be sent.').waitFor();
    await post(page, 3).getByRole('textbox', { name: 'Sound to a depth of' }).fill('1');
    await post(page, 3).getByRole('button', { name: 'Save post 3' }).tap();
    await page.getByText('3 entries wait on this phone to be sent.').waitFor();
    // and the visit can be finished
    await page.goto(`${served.base}${VISIT}`);
    await ready(page);
    await page.getByLabel('Hours used, all people together').fill('6.5');
    await page.getByLabel('Remarks for the office').fill('Gate latch is loose.');
    await page.getByRole('button', { name: 'The visit is done' }).tap();
    await page.getByText('4 entries wait on this phone to be sent.').waitFor();
    expect(await readings()).toHaveLength(1);
    expect((await readVisit(sample.register.db, 'today-1'))?.state).toBe('confirmed');

    // it comes back, and the answer of the first try is lost
    loseAnswerOf = '/closed-off';
    await context.setOffline(false);
    await expect.poll(() => loseAnswerOf, { timeout: 30_000 }).toBeNull();
    await page.getByText('4 entries wait on this phone to be sent.').waitFor();
    await page.reload();
    await page.getByText('This visit is done.').waitFor({ timeout: 30_000 });
    await page.locator('#phone-state').waitFor({ state: 'hidden' });
    expect(await readings()).toEqual([
      expect.objectContaining({ inspection_ref: 'today-1/PR-01', post: 3, groundline_kind: 'sound-to' }),
      expect.objectContaining({ inspection_ref: 'today-1/PR-02', post: 2, groundline_mm: 60.325 }),
      expect.objectContaining({ inspection_ref: 'today-1/PR-02', post: 5, closed_off: 1 }),
      expect.objectContaining({ inspection_ref: 'today-1/PR-02', post: 6, groundline_mm: 76.2 }),
    ]);
    expect(await receipts()).toBe(5);
    const visit = await readVisit(sample.register.db, 'today-1');
    expect(visit).toMatchObject({ state: 'done', firstDay: '2026-11-24' });
    const hours = await sample.register.db.selectFrom('visit_hours').select('person_hours').execute();
    expect(hours.reduce((sum, each) => sum + each.person_hours, 0)).toBeCloseTo(6.5, 6);

    // the office sees it
    const office = await openWindow(browser, served.base, sample.cookie, { viewport: WINDOW_SIZES[0] });
    await office.goto(`${served.base}/fences/PR-02`);
    const text = await office.getByRole('main').textContent();
    expect(text).toContain('Orla Finch');
    expect(text).toContain('2.38 in of sound width left');
    expect(text).toContain('post 5: dangerous, closed off');
    expect(text).toContain('post swap, posts 2, 5');
    await office.goto(`${served.base}${VISIT}`);
    await office.getByText('This visit is done.').waitFor();
  });

  it('keeps what is refused with the reason, and sends it once it is mended or confirmed', async () => {
    const page = await openPhone(sample.crewCookie);
    await open(page, FENCE);
    await choose(page, 'Caliper, sound shell');
    await enterWidth(page, 2, '9');
    const kept = post(page, 2).locator('.kept-entries li');
    await kept.getByText('wider than the post as installed').waitFor();
    await page.getByText('1 entry was not taken: see why below.').waitFor();
    await page.reload();
    await ready(page);
    await kept.getByText('Not taken').waitFor();
    // what is entered in its place takes it away
    await enterWidth(page, 2, '0.4');
    await kept.getByText('That leaves less than a quarter of the post').waitFor();
    expect(await kept.count()).toBe(1);
    await kept.getByRole('button', { name: 'It is so: send it' }).tap();
    await post(page, 2).getByText('0.40 in of sound width left', { exact: true }).waitFor();
    expect(await kept.count()).toBe(0);
    // one that is not wanted goes after a second tap
    await enterWidth(page, 6, '9');
    const other = post(page, 6).locator('.kept-entries li');
    await other.getByRole('button', { name: 'Throw it away' }).tap();
    await other.getByRole('button', { name: 'Really throw away' }).tap();
    await page.locator('#phone-state').waitFor({ state: 'hidden' });
    expect(await readings()).toHaveLength(1);
  });

  it('keeps entries through the end of a session, sends them after signing in, and never as somebody else', async () => {
    const page = await openPhone(sample.crewCookie);
    await open(page, FENCE);
    await page.context().clearCookies();
    await post(page, 6).getByRole('button', { name: 'Dangerous: closed off' }).tap();
    await page.getByText('You are signed out. What you entered stays on this phone').waitFor();
    const cookieOf = (text: string) => ({ name: 'stormpale', value: text.split('=')[1] ?? '', url: served.base });
    await page.context().addCookies([cookieOf(sample.spanishCookie)]);
    await open(page, '/today');
    await page.getByText('Anotado con otra sesión').waitFor();
    expect(await readings()).toEqual([]);
    await page.context().addCookies([cookieOf(sample.crewCookie)]);
    await open(page, '/today');
    await expect.poll(async () => (await readings()).length, { timeout: 10_000 }).toBe(1);
    await page.locator('#phone-state').waitFor({ state: 'hidden' });
  });

  it("lets go of the day's pages as soon as somebody signs out, on whatever page, and keeps what waits", async () => {
    const page = await openPhone(sample.crewCookie);
    await open(page, '/today');
    await page.locator('html[data-kept]').waitFor();
    await page.reload();
    await ready(page);
    const keptPages = () => page.evaluate("caches.open('stormpale-pages').then((c) => c.keys()).then((k) => k.length)");
    expect(await keptPages()).toBeGreaterThanOrEqual(5);
    await page.goto(`${served.base}/fences`);
    await page.getByRole('button', { name: 'Sign out' }).tap();
    await page.getByText('You are signed out.').waitFor();
    expect(await keptPages()).toBe(0);
    await page.context().setOffline(true);
    await page.goto(`${served.base}/today`).catch(() => null);
    expect(await page.locator('body').textContent()).toContain('This page is not kept on this phone.');
  });

  it('takes the lean from the phone by a tap, and a photo made small', async () => {
    const page = await openPhone(sample.crewCookie);
    await open(page, FENCE);
    await post(page, 6).locator('.post-entry > summary').tap();
    const level = post(page, 6).locator('[data-take-level]');
    await level.tap();
    await page.evaluate(
      "window.dispatchEvent(new DeviceOrientationEvent('deviceorientation', { beta: 84, gamma: 3 }))",
    );
    await post(page, 6).getByText('Hold the long edge to the post, then tap: 6°').waitFor();
    await level.tap();
    expect(await post(page, 6).getByLabel('Lean, degrees').inputValue()).toBe('6');
    await post(page, 6).getByRole('button', { name: 'Save post 6' }).tap();
    await post(page, 6).getByText('6° out of plumb', { exact: true }).waitFor();
    const large = Buffer.from(
      await page.evaluate<string>(`new Promise((done) => {
        const canvas = document.createElement('canvas');
        canvas.width = 4000; canvas.height = 3000;
        canvas.getContext('2d').fillRect(500, 500, 900, 900);
        done(canvas.toDataURL('image/png').split(',')[1]);
      })`),
      'base64',
    );
    await post(page, 6).locator('.post-entry > summary').tap();
    await post(page, 6)
      .getByLabel('Take a photo')
      .setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: large });
    await page.locator('section.photos img').waitFor();
    const [photo] = await sample.register.db.selectFrom('visit_photos').selectAll().execute();
    expect(photo).toMatchObject({ post: 6, media_type: 'image/jpeg', taken_at: '2026-11-24T12:00:00.000Z' });
    const size = await page.evaluate(`(async () => {
      const picture = document.querySelector('section.photos img');
      picture.loading = 'eager';
      await picture.decode();
      return [picture.naturalWidth, picture.naturalHeight];
    })()`);
    expect(size).toEqual([1600, 1200]);
  });

  it('works with a signal and without a script, as plain forms', async () => {
    const page = await openPhone(sample.crewCookie, { javaScriptEnabled: false });
    await page.goto(`${served.base}${VISIT}`);
    await page.getByRole('link', { name: /Fence PR-01/ }).tap();
    await page.locator('.method-choice').getByLabel('Caliper, sound shell').tap();
    await page.getByRole('button', { name: 'Look this way' }).tap();
    await post(page, 1).locator('.post-entry > summary').tap();
    await post(page, 1).getByRole('textbox', { name: 'Sound width left' }).fill('3');
    await post(page, 1).getByRole('button', { name: 'Save post 1' }).tap();
    await post(page, 1).getByText('Saved.').waitFor();
    await post(page, 2).getByRole('button', { name: 'Dangerous: closed off' }).tap();
    await post(page, 2).getByRole('button', { name: 'Undo' }).tap();
    await post(page, 2).getByRole('button', { name: 'Dangerous: closed off' }).waitFor();
    await page.goto(`${served.base}${VISIT}`);
    await page.locator('fieldset', { hasText: 'Done at fence PR-02' }).getByLabel('inspection').uncheck();
    await page.getByRole('button', { name: 'The visit is done' }).tap();
    await page.getByText('This visit is done.').waitFor();
    expect(await readings()).toHaveLength(1);
  });

  it('gives a gloved thumb room', async () => {
    const page = await openPhone(sample.crewCookie);
    for (const path of ['/today', VISIT, `${FENCE}?method=awl-or-probe`]) {
      await open(page, path);
      for (const summary of await page.locator('#post-2 summary').all()) await summary.tap();
      const small =
        await page.evaluate(`[...document.querySelectorAll('.crew a, .crew button, .crew input, .crew select, .crew summary, .crew label.big-tick, .crew label.big-choice')]
        .filter((each) => each.checkVisibility() && !each.closest('.big-tick, .big-choice, .hint, .photo-list') && each.type !== 'hidden')
        .map((each) => [each.textContent.trim() || each.name, each.getBoundingClientRect().height])
        .filter(([, height]) => height > 0 && height < 47.5)`);
      expect(small, path).toEqual([]);
    }
  });

  it('shows the crew nothing that axe finds, at both widths and in both lights', async () => {
    const wanted = [
      { path: '/today', heading: 'Today' },
      { path: VISIT, heading: 'Pelican Reach' },
      { path: `${FENCE}?method=caliper`, heading: 'Fence PR-02' },
    ];
    await lookAtPages(browser, served.base, sample.crewCookie, wanted);
  });

  it('shows the office, and whoever reads Spanish, nothing that axe finds either', async () => {
    await lookAtPages(browser, served.base, sample.cookie, [{ path: '/today', heading: 'Today' }]);
    await lookAtPages(browser, served.base, sample.spanishCookie, [
      { path: '/today', heading: 'Hoy' },
      { path: '/today/visits/today-2', heading: 'Skerry Yards' },
      { path: `${FENCE}?method=caliper`, heading: 'Cerca PR-02' },
    ]);
  });
});
