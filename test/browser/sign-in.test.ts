import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { importDemo } from '../../src/service/import-demo.ts';
import { type SampleApp, sampleApp } from '../web/sample-app.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { axeFindings } from './axe-findings.ts';
import { browserIsThere, startBrowser } from './browser.ts';

const SIZES = [
  { width: 1280, height: 900 },
  { width: 390, height: 844 },
] as const;

describe.runIf(browserIsThere())('signing in with a browser', { timeout: 150_000 }, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  async function served(demo: boolean): Promise<{ readonly sample: SampleApp; readonly base: string }> {
    const sample = await sampleApp({ swept: false, empty: true, accounts: false });
    if (demo) await importDemo(sample.register, { now: SAMPLE_NOW, onProgress: () => undefined });
    const { server, base } = await new Promise<{ server: ReturnType<typeof serve>; base: string }>((resolve) => {
      const started = serve({ fetch: sample.pages.fetch, hostname: '127.0.0.1', port: 0 }, (address: AddressInfo) =>
        resolve({ server: started, base: `http://127.0.0.1:${address.port}` }),
      );
    });
    onTestFinished(async () => {
      server.close();
      await sample.close();
    });
    return { sample, base };
  }

  async function window(options: Parameters<Browser['newContext']>[0] = {}): Promise<{
    readonly context: BrowserContext;
    readonly page: Page;
  }> {
    const context = await browser.newContext(options);
    onTestFinished(() => context.close());
    return { context, page: await context.newPage() };
  }

  it('makes the first account by keyboard alone, without a script, and signs out and in again', async () => {
    const { base } = await served(false);
    const { page } = await window({ javaScriptEnabled: false });
    await page.goto(base);
    await page.getByRole('heading', { name: 'Make the first account' }).waitFor();
    await page.getByLabel('Your name').focus();
    await page.keyboard.type('Ann Tern');
    await page.keyboard.press('Tab');
    await page.keyboard.type('ann');
    await page.keyboard.press('Tab');
    await page.keyboard.type('gate latch and hinge');
    await page.keyboard.press('Enter');
    await page.getByText('The register holds no fences yet.').waitFor();
    await page.getByRole('link', { name: 'Ann Tern' }).click();
    await page.getByText('You sign in as ann.').waitFor();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByText('You are signed out.').waitFor();
    await page.goto(`${base}/outbox`);
    await page.getByLabel('Name').fill('ann');
    await page.getByLabel('Password').fill('gate latch and hinges');
    await page.getByRole('button', { name: 'Sign in' }).click();
    expect(await page.getByRole('alert').textContent()).toContain('do not go together');
    await page.getByLabel('Password').fill('gate latch and hinge');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Outbox' }).waitFor();
  });

  it('opens the demo by one click, where one wanted to go', async () => {
    const { base } = await served(true);
    const { context, page } = await window({ javaScriptEnabled: false });
    await page.goto(`${base}/fences/CT-11`);
    await page.getByRole('button', { name: 'The office' }).click();
    await page.getByRole('heading', { level: 1, name: 'Fence CT-11' }).waitFor();
    const [cookie, ...others] = await context.cookies();
    expect(others).toEqual([]);
    expect(cookie).toMatchObject({ name: 'stormpale', httpOnly: true, sameSite: 'Lax', secure: false });
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('button', { name: 'An owner (Spanish)' }).click();
    await page.getByRole('heading', { level: 1, name: 'Sus cercas' }).waitFor();
  });

  it('refuses a form that another site sends, though the browser has a session', async () => {
    const { base } = await served(true);
    const { context, page } = await window();
    await page.goto(base);
    await page.getByRole('button', { name: 'The office' }).click();
    await page.getByRole('heading', { level: 1, name: 'Season brief' }).waitFor();
    await context.route('http://elsewhere.example/', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: `<form method="post" action="${base}/sign-out"><button>Win a fence</button></form>`,
      }),
    );
    await page.goto('http://elsewhere.example/');
    await page.getByRole('button', { name: 'Win a fence' }).click();
    await page.waitForURL(`${base}/**`);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toBe('You are signed out.');
    await page.goto(base);
    await page.getByRole('heading', { level: 1, name: 'Season brief' }).waitFor();
  });

  it.each(SIZES)(
    'shows pages without a fault that axe finds and without scrolling sideways: $width px',
    async (viewport) => {
      const { base } = await served(false);
      const demo = await served(true);
      const { page } = await window({ viewport, bypassCSP: true });
      const look = async (url: string): Promise<void> => {
        await page.goto(url);
        expect(await axeFindings(page), url).toEqual([]);
        expect(await page.evaluate('document.documentElement.scrollWidth'), url).toBeLessThanOrEqual(viewport.width);
      };
      await look(`${base}/setup`);
      await page.getByLabel('Your name').fill('Ann Tern');
      await page.getByLabel('Name to sign in with').fill('a b');
      await page.getByLabel('Password').fill('short');
      await page.getByRole('button').click();
      await page.getByRole('alert').waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await page.getByLabel('Name to sign in with').fill('ann');
      await page.getByLabel('Password').fill('gate latch and hinge');
      await page.getByRole('button').click();
      await page.getByRole('button', { name: 'Sign out' }).click();
      for (const path of ['/sign-in', '/sign-in?lang=es', '/sign-in?out']) await look(`${base}${path}`);
      for (const path of ['/sign-in', '/sign-in?lang=es']) await look(`${demo.base}${path}`);
    },
  );
});
