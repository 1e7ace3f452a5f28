import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type SampleApp, sampleApp } from '../web/sample-app.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { lookAtPages, openWindow, type ServedPages, servePages, WINDOW_SIZES } from './served-pages.ts';

describe.runIf(browserIsThere())('a board in the browser', { timeout: 180_000 }, () => {
  let browser: Browser;
  let sample: SampleApp;
  let served: ServedPages;
  let spanish: string;
  beforeAll(async () => {
    sample = await sampleApp();
    served = await servePages(sample);
    browser = await startBrowser();
    spanish = await sample.signIn({ name: 'junta-anda', role: 'board', siteRefs: ['PELICAN'], language: 'es' });
  });
  afterAll(async () => {
    await browser.close();
    served.close();
    await sample.close();
  });

  for (const viewport of WINDOW_SIZES) {
    it(`has its whole day: how the fences stand, the money, what to print, one fence and back, at ${viewport.width} px`, async () => {
      const board = await sample.signIn({
        name: `board-walks-${viewport.width}`,
        role: 'board',
        siteRefs: ['PELICAN'],
      });
      const page = await openWindow(browser, served.base, board, { viewport });
      await page.goto(served.base);
      expect(page.url()).toBe(`${served.base}/board`);
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Our fences');
      await page.getByText('that pays for what is expected').waitFor();
      // one chart is shown, the one that there is room for
      expect(await page.locator('.report-drawing svg:visible').count()).toBe(1);
      await page.getByText('Money per year as a table').click();
      await page.getByRole('columnheader', { name: 'Replacing' }).waitFor();
      await page.getByLabel('Years to plan').selectOption('30');
      await page.getByRole('button', { name: 'Show' }).click();
      await page.waitForURL(/years=30/);
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name: /^Money per year of Pelican Reach/ }).click(),
      ]);
      expect(download.suggestedFilename()).toBe('plan-PELICAN-years.csv');
      await page.getByRole('link', { name: 'Replacement plan of Pelican Reach, Page' }).click();
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Replacement plan 2027 to 2056');
      await page.getByRole('link', { name: 'All documents' }).click();
      await page.getByLabel('Fence, site or owner').fill('pr-03');
      await page.getByRole('button', { name: 'Find documents' }).click();
      await page.getByRole('link', { name: /^PR-03.*All its documents$/ }).click();
      await page.getByRole('link', { name: 'Evidence file, Page' }).click();
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(
        'Fence PR-03: what it holds, and the care it had',
      );
      await page.getByRole('link', { name: 'Our fences' }).click();
      await page.getByRole('link', { name: 'Every fence, one by one' }).click();
      expect(page.url()).toBe(`${served.base}/fences`);
      await page.getByRole('button', { name: 'Sign out' }).click();
      await page.waitForURL(/sign-in/);
    });
  }

  it('finds nothing wrong with its pages and reports, in either language', async () => {
    const board = await sample.signIn({ name: 'board-looks-again', role: 'board', siteRefs: ['PELICAN'] });
    await lookAtPages(browser, served.base, board, [
      { path: '/board', heading: 'Our fences' },
      { path: '/documents?fence=PR-03', heading: 'Documents' },
      { path: '/fences/PR-03/report', heading: 'Fence PR-03' },
      { path: '/fences/PR-06/evidence?on=2025-06-30', heading: 'Fence PR-06' },
      { path: '/sites/PELICAN/plan', heading: 'Replacement plan 2027 to 2046' },
    ]);
    await lookAtPages(browser, served.base, spanish, [
      { path: '/board', heading: 'Nuestras cercas' },
      { path: '/fences/PR-03/report', heading: 'Cerca PR-03' },
    ]);
  });

  it('finds nothing wrong with the pages of quotes', async () => {
    await lookAtPages(browser, served.base, sample.cookie, [
      { path: '/documents?fence=PR-02', heading: 'Documents' },
      { path: '/fences/PR-02/quote', heading: 'Quote for fence PR-02' },
      { path: '/fences/PR-02/quote?works=post-swap&posts=2', heading: 'Quote Q-20261124-' },
    ]);
  });
});
