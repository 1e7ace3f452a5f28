import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings } from './axe-findings.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { MAIL_LOOKS, type MailToLookAt, mailsToLookAt, openMail } from './mail-in-window.ts';

const LARGEST_MAIL_BYTES = 100_000;
/** Rules about whole pages: a mail is a part of its program's. */
const OF_PAGES = /^(landmark-one-main|page-has-heading-one|region):/;
/** WCAG 2.1, 1.4.3. */
const LEAST_CONTRAST = 4.5;

/** Of every picture: its text, how large it is shown, and the contrast of its text on its ground. */
const READ_PICTURES = `[...document.images].map((image) => {
  const channels = (colour) => colour.match(/[\\d.]+/g).slice(0, 3).map(Number);
  const luminance = (colour) => channels(colour).map((each) => each / 255)
    .map((each) => each <= 0.04045 ? each / 12.92 : ((each + 0.055) / 1.055) ** 2.4)
    .reduce((sum, each, index) => sum + each * [0.2126, 0.7152, 0.0722][index], 0);
  const style = getComputedStyle(image);
  const [lighter, darker] = [luminance(style.color), luminance(style.backgroundColor)].sort((a, b) => b - a);
  const { width, height } = image.getBoundingClientRect();
  return { alt: image.alt, shown: image.naturalWidth > 0, width, height, contrast: (lighter + 0.05) / (darker + 0.05) };
})`;

interface PictureSeen {
  readonly alt: string;
  readonly shown: boolean;
  readonly width: number;
  readonly height: number;
  readonly contrast: number;
}

describe.runIf(browserIsThere())('the mails in a browser', { timeout: 150_000 }, () => {
  let browser: Browser;
  let mails: readonly MailToLookAt[];
  beforeAll(async () => {
    mails = await mailsToLookAt();
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it('are under 100 KB and hold their pictures', () => {
    expect(mails.map(({ name }) => name)).toEqual(['fence-es', 'digest-en', 'danger-en', 'digest-es']);
    for (const { name, bytes, pictures } of mails) {
      expect(bytes, name).toBeLessThan(LARGEST_MAIL_BYTES);
      expect(pictures.length, name).toBeGreaterThan(0);
    }
  });

  it.each(MAIL_LOOKS)('read at $widthPx px, $scheme, pictures $images', async (look) => {
    for (const mail of mails) {
      const page = await openMail(browser, mail, look);
      const findings = (await axeFindings(page)).filter((each) => !OF_PAGES.test(each));
      expect(findings, mail.name).toEqual([]);
      const wide = await page.evaluate<number>('document.documentElement.scrollWidth');
      expect(wide, `${mail.name} scrolls sideways`).toBeLessThanOrEqual(look.widthPx);
      const seen = await page.evaluate<readonly PictureSeen[]>(READ_PICTURES);
      expect(seen.length, mail.name).toBe(mail.pictures.length);
      for (const { alt, shown, width, height, contrast } of seen) {
        expect(shown, mail.name).toBe(look.images === 'on');
        expect(alt.length, mail.name).toBeGreaterThan(40);
        // without the picture its words stand there: several lines of them, in colours that can be read
        expect(width, mail.name).toBeGreaterThan(300);
        expect(height, mail.name).toBeGreaterThan(look.images === 'on' ? 150 : 40);
        expect(contrast, `${mail.name}: words in place of a picture`).toBeGreaterThanOrEqual(LEAST_CONTRAST);
      }
      await page.context().close();
    }
  });
});
