import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { startBrowser } from './browser.ts';
import { PICTURES } from './picture-list.ts';

type StorageState = Awaited<ReturnType<Awaited<ReturnType<Browser['newContext']>>['storageState']>>;

/**
 * Takes the pictures of the pages for the docs from a running service: `npm run pictures`.
 */
const base = process.argv[2] ?? 'http://127.0.0.1:8480';
const folder = join(import.meta.dirname, '..', '..', 'docs', 'pictures');
mkdirSync(folder, { recursive: true });

const browser = await startBrowser();
try {
  /** Who came in by the demo's entrance, by the button that they pressed: what the browser keeps of it, and where it led. */
  const entered = new Map<string, { readonly storageState: StorageState; readonly url: string }>();
  const enter = async (as: string): Promise<{ readonly storageState: StorageState; readonly url: string }> => {
    const known = entered.get(as);
    if (known) return known;
    const context = await browser.newContext();
    const door = await context.newPage();
    await door.goto(`${base}/sign-in`);
    await door.getByRole('button', { name: as, exact: true }).click();
    await door.waitForLoadState('load');
    const came = { storageState: await context.storageState(), url: door.url() };
    await context.close();
    entered.set(as, came);
    return came;
  };
  const take = async (
    name: string,
    url: string,
    size: { readonly width: number; readonly height: number },
    storageState: StorageState,
    whole = false,
  ): Promise<void> => {
    const context = await browser.newContext({ viewport: size, colorScheme: 'light', storageState });
    const page = await context.newPage();
    await page.goto(url, { waitUntil: 'networkidle' });
    await page.screenshot({ path: join(folder, `${name}.png`), fullPage: whole });
    await context.close();
    console.log(`docs/pictures/${name}.png`);
  };
  const prepare = async (): Promise<void> => {
    const context = await browser.newContext({ storageState: (await enter('The office')).storageState });
    const page = await context.newPage();
    await page.goto(`${base}/plan`);
    const make = page.getByRole('button', { name: 'Make a plan' });
    const plan = page.getByRole('link', { name: 'plan 1', exact: true });
    if ((await plan.count()) === 0) {
      await make.click();
      await plan.click({ timeout: 300_000 });
      await page.getByRole('link', { name: 'Accept this plan' }).click();
      await page.getByRole('button', { name: 'Accept plan 1' }).click();
      await page.getByRole('heading', { level: 1, name: 'Visits' }).waitFor();
    }
    await context.close();
  };
  // pages of a season that has begun to be planned
  await prepare();
  for (const { name, path, as, whole, width, height } of PICTURES) {
    const { storageState, url } = await enter(as);
    // an owner's pages lie under the link that the entrance led to
    const from = as.startsWith('An owner') ? new URL(url).origin + new URL(url).pathname : base;
    await take(name, from + path, { width, height }, storageState, whole);
  }
  const { storageState } = await enter('The office');
  const finder = await browser.newPage({ storageState });
  const hrefOn = async (path: string, start: string): Promise<string> => {
    await finder.goto(`${base}${path}`);
    return (await finder.locator(`a[href^="${start}"]`).first().getAttribute('href')) ?? path;
  };
  const one = { width: 1280, height: 1000 };
  await take('visit', base + (await hrefOn('/visits', '/visits/')), one, storageState);
  await take('plan-give', base + (await hrefOn('/plan/hours', '/plan/give')), one, storageState);
  await take('outbox-message', base + (await hrefOn('/outbox', '/outbox/')), one, storageState);
  const crew = await enter('A crew');
  const crewFinder = await browser.newPage({ storageState: crew.storageState });
  await crewFinder.goto(`${base}/today`);
  const phone = { width: 390, height: 900 };
  const visit = await crewFinder.locator('a[href^="/today/visits/"]').first().getAttribute('href');
  if (visit !== null) {
    await take('today-visit-phone', base + visit, phone, crew.storageState);
    await crewFinder.goto(base + visit);
    const fence = await crewFinder.locator('a[href*="/fences/"][href^="/today/"]').first().getAttribute('href');
    if (fence !== null) await take('today-fence-phone', base + fence, phone, crew.storageState);
  }
  await crewFinder.close();
  await finder.close();
  const page = await browser.newPage({ storageState });
  await page.goto(`${base}/mail`);
  const mails: { href: string; subject: string }[] = [];
  for (const link of await page.locator('a[href^="/mail/"]').all()) {
    mails.push({ href: (await link.getAttribute('href')) ?? '', subject: (await link.textContent()) ?? '' });
  }
  const find = (wanted: RegExp): string => mails.find(({ subject }) => wanted.test(subject))?.href ?? '/mail';
  await take('mail', `${base}${find(/^Fence /)}/html`, { width: 680, height: 1250 }, storageState);
  await take('digest', `${base}${find(/of your fences/)}/html`, { width: 760, height: 1100 }, storageState);
} finally {
  await browser.close();
}
