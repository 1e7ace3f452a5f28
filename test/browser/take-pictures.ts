import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { startBrowser } from './browser.ts';

/**
 * Takes the pictures of the pages for the docs from a running service: `npm run pictures`.
 */
const base = process.argv[2] ?? 'http://127.0.0.1:8480';
const folder = join(import.meta.dirname, '..', '..', 'docs', 'pictures');
mkdirSync(folder, { recursive: true });

const shots = [
  { name: 'fences', path: '/', width: 1280, height: 900 },
  { name: 'fence', path: '/fences/CT-11', width: 1280, height: 1130 },
  { name: 'fence-phone', path: '/fences/CT-11', width: 390, height: 900 },
  { name: 'reasons', path: '/fences/CT-11/reasons', width: 1280, height: 1000 },
  { name: 'outbox', path: '/outbox', width: 1280, height: 640 },
] as const;

const browser = await startBrowser();
try {
  // the demo's office, by the one click that everybody begins with
  const entrance = await browser.newContext();
  const door = await entrance.newPage();
  await door.goto(`${base}/sign-in`);
  await door.getByRole('button', { name: 'The office' }).click();
  const storageState = await entrance.storageState();
  const take = async (name: string, url: string, size: { width: number; height: number }): Promise<void> => {
    const context = await browser.newContext({ viewport: size, colorScheme: 'light', storageState });
    const page = await context.newPage();
    await page.goto(url, { waitUntil: 'networkidle' });
    await page.screenshot({ path: join(folder, `${name}.png`) });
    await context.close();
    console.log(`docs/pictures/${name}.png`);
  };
  for (const { name, path, ...size } of shots) await take(name, base + path, size);
  const page = await browser.newPage({ storageState });
  await page.goto(`${base}/mail`);
  const mails: { href: string; subject: string }[] = [];
  for (const link of await page.locator('a[href^="/mail/"]').all()) {
    mails.push({ href: (await link.getAttribute('href')) ?? '', subject: (await link.textContent()) ?? '' });
  }
  const find = (wanted: RegExp): string => mails.find(({ subject }) => wanted.test(subject))?.href ?? '/mail';
  await take('mail', `${base}${find(/^Fence /)}/html`, { width: 680, height: 1250 });
  await take('digest', `${base}${find(/of your fences/)}/html`, { width: 760, height: 1100 });
} finally {
  await browser.close();
}
