import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readVisit } from '../../src/register/visit-store.ts';
import { importFiles } from '../register/made-up-register.ts';
import { type SampleApp, sampleApp } from '../web/sample-app.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { lookAtPages, openWindow, type ServedPages, servePages, WINDOW_SIZES } from './served-pages.ts';

const CREWS = [
  {
    name: 'crews.csv',
    text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\nsouth,South crew,,,40\n',
  },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm2,north,Tom Reed,40,en,\nm3,south,Bea Stone,40,en,\n',
  },
];

/** Opens the visit whose page says that it is proposed, and returns its uid. */
async function openProposed(page: Page, base: string): Promise<string> {
  await page.goto(`${base}/visits?state=proposed`);
  await page.locator('tbody th a').first().click();
  await page.getByText('What becomes of it').waitFor();
  return decodeURIComponent(new URL(page.url()).pathname.split('/').at(-1) ?? '');
}

describe.runIf(browserIsThere())('an office’s day in a browser', { timeout: 240_000 }, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  async function withOffice(work: (sample: SampleApp, served: ServedPages) => Promise<void>): Promise<void> {
    const sample = await sampleApp();
    const served = await servePages(sample);
    try {
      expect((await importFiles(sample.register, CREWS)).faults).toEqual([]);
      await work(sample, served);
    } finally {
      served.close();
      await sample.close();
    }
  }

  it.each(WINDOW_SIZES)(
    'goes from the brief to a plan, gives a fence another week, confirms a visit and enters it: $width px',
    async (viewport) => {
      await withOffice(async (sample, { base }) => {
        const page = await openWindow(browser, base, sample.cookie, { viewport, javaScriptEnabled: false });
        await page.goto(base);
        await page.getByRole('heading', { level: 1, name: 'Season brief' }).waitFor();
        await page.getByRole('link', { name: 'Make one' }).click();
        await page.getByRole('button', { name: 'Make a plan' }).click();
        await page.getByText('A plan is being made').waitFor();
        // the page asks again by itself until the plan is there
        await page.getByRole('link', { name: 'plan 1', exact: true }).click({ timeout: 120_000 });
        await page.getByRole('heading', { level: 1, name: 'Season plan 1' }).waitFor();
        await page.getByRole('link', { name: 'Accept this plan' }).click();
        await page.getByRole('button', { name: 'Accept plan 1' }).click();
        await page.getByRole('heading', { level: 1, name: 'Visits' }).waitFor();

        await page.goto(`${base}/plan/hours`);
        const ledger = page.locator('.scroll', { has: page.locator('table.ledger') });
        const over = (frame: unknown): number => {
          const { scrollWidth, clientWidth } = frame as { readonly scrollWidth: number; readonly clientWidth: number };
          return scrollWidth - clientWidth;
        };
        expect(await ledger.evaluate(over)).toBe(0);
        await page.locator('details summary').first().click();
        await page
          .getByRole('link', { name: /give \S+ another week/ })
          .first()
          .click();
        await page.getByText('it is here now').waitFor();
        await page
          .getByRole('link', { name: /^(Costs|Saves) / })
          .last()
          .click();
        await page.getByRole('button', { name: 'Give it this week' }).click();
        await page.getByText('Given. No plan moves it from now on').waitFor();
        const given = decodeURIComponent(new URL(page.url()).pathname.split('/').at(-1) ?? '');
        expect(await readVisit(sample.register.db, given)).toMatchObject({ state: 'proposed', planId: null });

        const uid = await openProposed(page, base);
        await page.getByText('Confirm it, on this day or another').click();
        await page.getByLabel('Hour at which the crew comes').fill('08:30');
        await page.getByRole('button', { name: 'Confirm the visit' }).click();
        const sure = page.getByLabel('Take it all the same');
        await page
          .getByText(/Confirmed: no plan moves it|Nothing was changed/)
          .first()
          .waitFor();
        if (await sure.isVisible()) {
          await sure.check();
          await page.getByRole('button', { name: 'Confirm the visit' }).click();
        }
        await page.getByText('Confirmed: no plan moves it').waitFor();
        expect(await readVisit(sample.register.db, uid)).toMatchObject({ state: 'confirmed', startsAt: '08:30' });

        await page.getByText('It was done', { exact: true }).click();
        await page.getByRole('button', { name: 'Only look what would be entered' }).click();
        await page.getByText('Nothing was entered yet').waitFor();
        await page.getByRole('button', { name: 'Enter what was done' }).click();
        await page.getByText('Entered. The next sweep takes it in.').waitFor();
        expect(await readVisit(sample.register.db, uid)).toMatchObject({ state: 'done' });
      });
    },
  );

  it('has pages without a fault that axe finds, that fit the screen and need no script', async () => {
    await withOffice(async (sample, { base }) => {
      sample.parts.planner.begin({ by: '', weeks: 8 });
      await sample.parts.planner.settled();
      const page = await openWindow(browser, base, sample.cookie);
      await page.goto(`${base}/plan/1/accept`);
      await page.getByRole('button', { name: 'Accept plan 1' }).click();
      const uid = await openProposed(page, base);
      const visit = await readVisit(sample.register.db, uid);
      const give = `/plan/give?visit=${encodeURIComponent(uid)}&fence=${visit?.items[0]?.fenceRef}`;
      await lookAtPages(browser, base, sample.cookie, [
        { path: '/brief', heading: 'Season brief' },
        { path: '/plan', heading: 'Season plan' },
        { path: '/plan/1', heading: 'Season plan 1' },
        { path: '/plan/hours', heading: 'Hours left' },
        { path: give, heading: 'Give fence' },
        { path: '/visits', heading: 'Visits' },
        { path: `/visits/${encodeURIComponent(uid)}`, heading: 'Visit to' },
        { path: '/materials', heading: 'Materials' },
        { path: '/feeds', heading: 'Calendar links' },
      ]);
    });
  });
});
