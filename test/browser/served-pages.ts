import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect, onTestFinished } from 'vitest';
import type { SampleApp } from '../web/sample-app.ts';
import { axeFindings } from './axe-findings.ts';

/** The two windows in which every page is looked at. */
export const WINDOW_SIZES = [
  { width: 1280, height: 900 },
  { width: 390, height: 844 },
] as const;

/** The pages of a sample at an address that a browser can open. */
export interface ServedPages {
  readonly base: string;
  close(): void;
}

/** Serves the pages of a sample on a free port of this machine. */
export const servePages = (sample: SampleApp): Promise<ServedPages> =>
  new Promise((resolve) => {
    const server = serve({ fetch: sample.pages.fetch, hostname: '127.0.0.1', port: 0 }, (address: AddressInfo) =>
      resolve({ base: `http://127.0.0.1:${address.port}`, close: () => void server.close() }),
    );
  });

/** A window signed in with a cookie as `SampleApp.signIn` gives it; null for one that is not signed in. Closed when the test ends. */
export async function openWindow(
  browser: Browser,
  base: string,
  cookie: string | null,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext(options);
  onTestFinished(() => context.close());
  const [name = '', value = ''] = cookie?.split('=') ?? [];
  if (cookie !== null) await context.addCookies([{ name, value, url: base }]);
  return context.newPage();
}

/**
 * Looks at pages as everybody's would be: at both widths, and in the dark at the wide one, axe finds nothing, nothing scrolls sideways, nothing
 * fails to load or complains; and without scripts each still says what its heading says.
 * @param wanted path and the text of its main heading, or a part of it
 */
export async function lookAtPages(
  browser: Browser,
  base: string,
  cookie: string | null,
  wanted: readonly { readonly path: string; readonly heading: string }[],
): Promise<void> {
  for (const [size, schemes] of [
    [WINDOW_SIZES[0], ['light', 'dark']],
    [WINDOW_SIZES[1], ['light']],
  ] as const) {
    for (const colorScheme of schemes) {
      const page = await openWindow(browser, base, cookie, { viewport: size, colorScheme, bypassCSP: true });
      for (const { path } of wanted) {
        await page.goto(`${base}${path}`, { waitUntil: 'load' });
        await page.evaluate('document.fonts.ready');
        expect(await axeFindings(page), `${path}, ${size.width} px, ${colorScheme}`).toEqual([]);
        expect(
          await page.evaluate('document.documentElement.scrollWidth'),
          `${path} scrolls sideways`,
        ).toBeLessThanOrEqual(size.width);
      }
      await page.context().close();
    }
  }
  const plain = await openWindow(browser, base, cookie, { javaScriptEnabled: false, viewport: WINDOW_SIZES[1] });
  const troubles: string[] = [];
  plain.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  plain.on('requestfailed', (request) => troubles.push(`${request.url()}: ${request.failure()?.errorText}`));
  for (const { path, heading } of wanted) {
    await plain.goto(`${base}${path}`, { waitUntil: 'networkidle' });
    expect(await plain.getByRole('heading', { level: 1 }).textContent(), path).toContain(heading);
  }
  expect(troubles).toEqual([]);
}
