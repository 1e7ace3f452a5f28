import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newOwnerLink } from '../../src/service/owner-links.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { importFiles } from '../register/made-up-register.ts';
import type { SampleApp } from '../web/sample-app.ts';
import { sampleApp } from '../web/sample-app.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { axeFindings } from './axe-findings.ts';
import { browserIsThere, startBrowser } from './browser.ts';

const SIZES = [
  { width: 1280, height: 900 },
  { width: 390, height: 844 },
] as const;
const SCHEMES = ['light', 'dark'] as const;

/** A fence at which something was read, found and reported. */
const SEEN = [
  {
    name: 'inspections.csv',
    text: 'ref,fence,day,inspector,method\nA,PR-03,2026-05-12,Nell Fox,awl-or-probe\n',
  },
  {
    name: 'readings.csv',
    text: 'inspection,post,depth_in,broken,closed_off\nA,3,0.7,,\nA,4,0.8,,\nA,7,,yes,yes\n',
  },
  {
    name: 'outcomes.csv',
    text: 'ref,storm,fence,day,gust_mph,posts,result,reported_by\nO,March gale,PR-03,2026-03-14,50,all,stood,Nell Fox\n',
  },
] as const;

interface ChartReading {
  readonly charts: number;
  /** Height of the smallest text [px]. */
  readonly smallest: number;
  /** Height of the largest text [px]. */
  readonly largest: number;
  /** Pairs of texts that cover each other. */
  readonly over: readonly string[];
}

/** Reads the visible charts; a text counts from its capitals to its baseline, not by its line's height. */
const READ_CHART = `(() => {
  const shown = [...document.querySelectorAll('svg.fence-years')].filter((svg) => svg.clientWidth > 0);
  const boxes = shown.flatMap((svg) => [...svg.querySelectorAll('text')]).map((text) => {
    const { left, right, top, bottom, height } = text.getBoundingClientRect();
    return { words: text.textContent, height, left, right, top: top + height * 0.22, bottom: bottom - height * 0.22 };
  });
  const over = boxes.flatMap((a, index) => boxes.slice(index + 1)
    .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
    .map((b) => a.words + ' / ' + b.words));
  return { charts: shown.length, smallest: Math.min(...boxes.map(({ height }) => height)),
    largest: Math.max(...boxes.map(({ height }) => height)), over };
})()`;

describe.runIf(browserIsThere())('the pages in a browser', { timeout: 150_000 }, () => {
  let browser: Browser;
  let sample: SampleApp;
  let server: ReturnType<typeof serve>;
  let base: string;
  let mailPath: string;
  let ownerPath: string;

  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    const report = await importFiles(sample.register, SEEN);
    expect(report.faults).toEqual([]);
    await runSweep(sample.register, { now: SAMPLE_NOW });
    await sample.sendMail();
    const wanted = { ownerRef: 'QUINN', scopes: ['see'], days: 1 } as const;
    const options = { publicUrl: sample.config.publicUrl, now: SAMPLE_NOW };
    ownerPath = new URL((await newOwnerLink(sample.register.db, wanted, options)).url).pathname;
    mailPath = /href="(\/mail\/[^"]+)"/.exec(await sample.text('/mail'))?.[1] ?? '';
    base = await new Promise((resolve) => {
      server = serve({ fetch: sample.pages.fetch, hostname: '127.0.0.1', port: 0 }, (address: AddressInfo) =>
        resolve(`http://127.0.0.1:${address.port}`),
      );
    });
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser.close();
    server.close();
    await sample.close();
  });

  /** Opens one page in a window of that size and lets the look have it; `byScript` lifts the policy that forbids scripts. */
  async function inWindow(
    size: { readonly width: number; readonly height: number },
    look: (page: Page) => Promise<void>,
    options: { readonly scheme?: (typeof SCHEMES)[number]; readonly byScript?: boolean } = {},
  ): Promise<void> {
    const context = await browser.newContext({
      viewport: size,
      colorScheme: options.scheme ?? 'light',
      bypassCSP: options.byScript === true,
    });
    try {
      const [name = '', value = ''] = (sample.cookie ?? '').split('=');
      await context.addCookies([{ name, value, url: base }]);
      await look(await context.newPage());
    } finally {
      await context.close();
    }
  }

  const go = async (page: Page, path: string): Promise<void> => {
    await page.goto(`${base}${path}`, { waitUntil: 'load' });
    await page.evaluate('document.fonts.ready');
  };

  const paths = (): readonly string[] => [
    '/fences',
    '/fences/PR-02',
    '/fences/PR-02/reasons',
    '/fences/PR-02/reasons?of=ends',
    '/fences/PR-03',
    '/fences/PR-03/reasons',
    '/outbox',
    '/mail',
    mailPath,
    '/nowhere',
    '/account',
    '/accounts',
    '/accounts/1',
    ownerPath,
    `${ownerPath}/fences/PR-04`,
  ];

  for (const size of SIZES) {
    // what the dark changes is the same at every width
    for (const scheme of size === SIZES[0] ? SCHEMES : (['light'] as const)) {
      it(`have no fault that axe finds: ${size.width} px, ${scheme}`, async () => {
        const look = async (page: Page): Promise<void> => {
          for (const path of paths()) {
            await go(page, path);
            expect(await axeFindings(page), path).toEqual([]);
          }
        };
        await inWindow(size, look, { scheme, byScript: true });
      });
    }

    it(`never scroll sideways, and nothing in them fails to load: ${size.width} px`, async () => {
      await inWindow(size, async (page) => {
        const troubles: string[] = [];
        page.on('console', (message) => {
          if (message.type() === 'error') troubles.push(message.text());
        });
        page.on('requestfailed', (request) => troubles.push(`${request.url()}: ${request.failure()?.errorText}`));
        for (const path of paths()) {
          await go(page, path);
          // to leave a page before its last file is there counts as a failed request
          await page.waitForLoadState('networkidle');
          expect(await page.evaluate('document.documentElement.scrollWidth'), path).toBeLessThanOrEqual(size.width);
        }
        expect(troubles.filter((trouble) => !trouble.includes('404'))).toEqual([]);
      });
    });

    it(`show one chart, legible, no text over another as the browser sets it: ${size.width} px`, async () => {
      await inWindow(size, async (page) => {
        for (const ref of ['PR-01', 'PR-02', 'PR-04', 'PR-06', 'SK-01']) {
          await go(page, `/fences/${ref}`);
          const { charts, smallest, over } = await page.evaluate<ChartReading>(READ_CHART);
          expect(charts, ref).toBe(1);
          expect(smallest, ref).toBeGreaterThanOrEqual(10);
          expect(over, ref).toEqual([]);
        }
      });
    });
  }

  it.each([320, 560, 720, 930])('show one chart whose letters keep their size: %i px', async (width) => {
    await inWindow({ width, height: 900 }, async (page) => {
      await go(page, '/fences/PR-03');
      const { charts, smallest, largest, over } = await page.evaluate<ChartReading>(READ_CHART);
      expect(charts).toBe(1);
      expect(smallest).toBeGreaterThanOrEqual(10);
      expect(largest).toBeLessThanOrEqual(34);
      expect(over).toEqual([]);
    });
  });

  it('stack on a phone, with nothing beyond the edge and few lines for each fence', async () => {
    await inWindow(SIZES[1], async (page) => {
      for (const path of ['/fences/PR-02/reasons', '/fences/PR-03/reasons', '/outbox']) {
        await go(page, path);
        const beyond = await page.evaluate<number>(
          "Math.max(...[...document.querySelectorAll('.stacked tbody td, .stacked tbody th')].map((cell) => cell.getBoundingClientRect().right))",
        );
        expect(beyond, path).toBeLessThanOrEqual(SIZES[1].width);
      }
      await go(page, '/fences');
      const tallest = await page.evaluate<number>(
        "Math.max(...[...document.querySelectorAll('.fences tbody tr')].map((row) => row.getBoundingClientRect().height))",
      );
      // a line more where a fence is recorded dangerous
      expect(tallest).toBeLessThanOrEqual(200);
    });
  });

  it('print one chart, in ink on white also where the screen is dark', async () => {
    await inWindow(
      { width: 720, height: 1000 },
      async (page) => {
        await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
        await go(page, '/fences/PR-03');
        const { charts, smallest } = await page.evaluate<ChartReading>(READ_CHART);
        expect(charts).toBe(1);
        expect(smallest).toBeGreaterThanOrEqual(10);
        expect(await page.evaluate('getComputedStyle(document.body).color')).toBe('rgb(0, 0, 0)');
        expect(await page.evaluate("getComputedStyle(document.querySelector('.fy-paper')).fill")).toBe(
          'rgb(255, 255, 255)',
        );
        expect(await page.evaluate("getComputedStyle(document.querySelector('.fy-snap-line')).stroke")).toBe(
          'rgb(38, 71, 106)',
        );
      },
      { scheme: 'dark' },
    );
  });

  it('are walked by keyboard: the skip link first, then visibly on', async () => {
    await inWindow(SIZES[0], async (page) => {
      await go(page, '/fences');
      await page.keyboard.press('Tab');
      expect(await page.evaluate('document.activeElement.textContent.trim()')).toBe('Skip to the content');
      await page.keyboard.press('Enter');
      expect(await page.evaluate('document.activeElement.id')).toBe('content');
      await page.keyboard.press('Tab');
      expect(await page.evaluate('getComputedStyle(document.activeElement).outlineStyle')).toBe('solid');
    });
  });

  it('find a fence by form, open it, and show its seasons as a table', async () => {
    await inWindow(SIZES[1], async (page) => {
      await go(page, '/fences');
      await page.getByLabel('Fence, site or owner').fill('PR-03');
      await page.getByRole('button', { name: 'Show' }).click();
      await page.getByRole('link', { name: 'PR-03' }).click();
      await page.getByRole('heading', { level: 1, name: 'Fence PR-03' }).waitFor();
      await page.getByText('The same as a table, season by season').click();
      expect(await page.getByRole('rowheader', { name: '2040', exact: true }).isVisible()).toBe(true);
    });
  });

  it('show a mail in a frame that can run nothing', async () => {
    await inWindow(SIZES[0], async (page) => {
      await go(page, mailPath);
      const frame = page.frames().find((each) => each.url().endsWith('/html'));
      expect(await frame?.locator('body').textContent()).toMatch(/\w{3,}/);
      expect(await page.locator('iframe.message').getAttribute('sandbox')).toBe('');
    });
  });
});
