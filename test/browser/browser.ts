import { existsSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { chromium } from 'playwright-core';

/** Where Debian installs the browser of these tests. */
const CHROMIUM = '/usr/bin/chromium';

/** True where the browser suite can run; says why not where it cannot. */
export function browserIsThere(): boolean {
  if (existsSync(CHROMIUM)) return true;
  process.stdout.write('NOT RUN: browser suite: chromium is not installed (apt-get install chromium)\n');
  return false;
}

/** Starts the browser without anything that talks to the outside. */
export const startBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: CHROMIUM,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
