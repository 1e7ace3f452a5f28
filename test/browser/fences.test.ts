import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runSweep } from '../../src/service/run-sweep.ts';
import { importFiles } from '../register/made-up-register.ts';
import { type SampleApp, sampleApp } from '../web/sample-app.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { lookAtPages, openWindow, type ServedPages, servePages, WINDOW_SIZES } from './served-pages.ts';

/** A fence with a broken post that was closed off, and one that leans. */
const SEEN = [
  {
    name: 'inspections.csv',
    text: 'ref,fence,day,inspector,method\nA,PR-03,2026-05-12,Nell Fox,awl-or-probe\n',
  },
  {
    name: 'readings.csv',
    text: 'inspection,post,depth_in,broken,closed_off,lean_degrees\nA,3,0.7,,,\nA,7,,yes,yes,\nA,9,,,,22\n',
  },
] as const;

const WHAT_IF = '/fences/PR-02/what-if?do=post-swap&at-post-swap=weak';

describe.runIf(browserIsThere())('the pages of fences in a browser', { timeout: 180_000 }, () => {
  let browser: Browser;
  let sample: SampleApp;
  let served: ServedPages;

  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    expect((await importFiles(sample.register, SEEN)).faults).toEqual([]);
    await runSweep(sample.register, { now: SAMPLE_NOW });
    [browser, served] = await Promise.all([startBrowser(), servePages(sample)]);
  }, 120_000);

  afterAll(async () => {
    served.close();
    await browser.close();
    await sample.close();
  });

  it('stand at both widths, in light and dark, without scripts', async () => {
    await lookAtPages(browser, served.base, sample.cookie, [
      { path: '/fences', heading: 'Fences' },
      { path: '/fences?site=PELICAN&from=2000&to=2020&sort=short', heading: 'Fences' },
      { path: '/fences/PR-03', heading: 'Fence PR-03' },
      { path: WHAT_IF, heading: 'What if something were done' },
      { path: '/fences/PR-02/what-if?do=rebuild&all=yes', heading: 'What if something were done' },
    ]);
  });

  it('stand in Spanish for a board that reads it', async () => {
    const cookie = await sample.signIn({ name: 'junta', role: 'board', siteRefs: ['PELICAN'], language: 'es' });
    await lookAtPages(browser, served.base, cookie, [
      { path: '/fences', heading: 'Cercas' },
      { path: '/fences/PR-02', heading: 'Cerca PR-02' },
    ]);
  });

  for (const viewport of WINDOW_SIZES) {
    it(`lead the office from the worst fences to the CSV of a view, ${viewport.width} px`, async () => {
      const page = await openWindow(browser, served.base, sample.cookie, { viewport });
      await page.goto(`${served.base}/fences`);
      const refs = page.locator('table.fences tbody th a');
      // recorded dangerous, then what holds least
      expect((await refs.allTextContents()).slice(0, 2)).toEqual(['PR-03', 'PR-05']);
      expect(await page.locator('table.fences tbody tr').first().textContent()).toContain('recorded dangerous');
      expect(await page.locator('.shown').textContent()).toContain('worst first');
      await page.getByLabel('Standing', { exact: true }).selectOption('short');
      await page.getByRole('button', { name: 'Show' }).click();
      await page.waitForURL(/standing=short/);
      const shown = await refs.allTextContents();
      expect(shown.length).toBeGreaterThan(1);
      await page.locator('details.more summary').click();
      await page.getByLabel('Installed from year').fill('2010');
      await page.getByLabel('to year').fill('2020');
      await page.getByRole('button', { name: 'Show' }).click();
      await page.waitForURL(/from=2010/);
      const fewer = await refs.allTextContents();
      expect(fewer.length).toBeLessThan(shown.length);
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name: /as CSV/ }).click(),
      ]);
      expect(download.suggestedFilename()).toBe('fences.csv');
      const chunks: Buffer[] = [];
      for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
      const lines = Buffer.concat(chunks).toString('utf8').trimEnd().split('\n').slice(1);
      expect(lines.map((line) => line.split(',')[0])).toEqual(fewer);
    });

    it(`lead a checking engineer from a fence to what-if and to its reasons, ${viewport.width} px`, async () => {
      const page = await openWindow(browser, served.base, sample.cookie, { viewport });
      await page.goto(`${served.base}/fences`);
      await page.getByRole('link', { name: 'PR-02', exact: true }).click();
      await page.waitForURL(/\/fences\/PR-02$/);
      expect(await page.locator('.lead').textContent()).toMatch(/once in \d+ years/);
      expect(await page.locator('svg.run-drawing:visible').count()).toBe(1);
      expect(await page.locator('svg.post-sections:visible').count()).toBe(1);
      await page.getByRole('link', { name: 'What could be done, and what it would change' }).click();
      await page.getByLabel('post swap', { exact: true }).check();
      await page.getByLabel('Posts for the post swap').selectOption('all');
      await page.getByRole('button', { name: 'Compare with doing nothing' }).click();
      await page.waitForURL(/do=post-swap/);
      const cell = async (row: string, column: number): Promise<string> =>
        (await page.locator(`table.side-by-side tr:has(th:text-is("${row}")) td`).nth(column).textContent()) ?? '';
      const speeds = [await cell('Snap speed', 0), await cell('Snap speed', 1)].map((text) =>
        Number.parseInt(text, 10),
      );
      expect(speeds[1]).toBeGreaterThan(speeds[0]!);
      expect(Number((await cell('Price', 1)).replace(/,| USD$/g, ''))).toBeGreaterThan(0);
      await page.getByRole('link', { name: 'Fence PR-02', exact: true }).click();
      await page.getByRole('link', { name: 'Every step with its equation and source' }).click();
      await page.waitForURL(/\/reasons$/);
      expect(await page.locator('table.reasons').count()).toBe(1);
    });
  }

  it('write the drawings large enough to read, nothing over anything, on a phone too', async () => {
    for (const viewport of WINDOW_SIZES) {
      const page = await openWindow(browser, served.base, sample.cookie, { viewport });
      for (const path of ['/fences/PR-03', WHAT_IF]) {
        await page.goto(`${served.base}${path}`);
        await page.evaluate('document.fonts.ready');
        const faults = await page.evaluate(`(() => {
          const shown = [...document.querySelectorAll('svg[role=img]')].filter((svg) => svg.clientWidth > 0);
          return shown.flatMap((svg) => {
            const boxes = [...svg.querySelectorAll('text')].map((text) => {
              const { left, right, top, bottom, height } = text.getBoundingClientRect();
              return { words: text.textContent, height, left, right, top: top + height * 0.22, bottom: bottom - height * 0.22 };
            });
            const over = boxes.flatMap((a, index) => boxes.slice(index + 1)
              .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
              .map((b) => a.words + ' / ' + b.words));
            return [...over, ...boxes.filter(({ height }) => height < 11).map(({ words }) => 'small: ' + words)];
          });
        })()`);
        expect(faults, `${path} ${viewport.width}`).toEqual([]);
      }
    }
  });
});
