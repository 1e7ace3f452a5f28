import { simpleParser } from 'mailparser';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { listOwnerAnswers } from '../../src/register/owner-answer-store.ts';
import { answeringSample, ownerPathOf } from '../web/owner/answering-sample.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { lookAtPages, openWindow, servePages, WINDOW_SIZES } from './served-pages.ts';

type Sample = Awaited<ReturnType<typeof answeringSample>>;

/** What an owner of the sample reads and does on one day. */
interface OwnersDay {
  readonly owner: 'HOA' | 'QUINN';
  readonly mail: RegExp;
  readonly fence: 'PR-02' | 'PR-04';
  readonly visit: string;
  readonly see: RegExp;
  readonly words: {
    readonly read: string;
    readonly wasRead: RegExp;
    readonly visits: string;
    readonly day: string;
    readonly choose: string;
    readonly promised: RegExp;
    readonly quotes: string;
    readonly name: string;
    readonly accept: string;
    readonly accepted: RegExp;
    readonly call: string;
    readonly waits: RegExp;
    readonly stop: string;
    readonly stopped: RegExp;
    readonly danger: string;
    readonly heading: string;
  };
}

const DAYS: readonly OwnersDay[] = [
  {
    owner: 'HOA',
    mail: /of your fences/,
    fence: 'PR-02',
    visit: 'V-HOA',
    see: /Of 5 fences, 3 do not hold the gust that they should/,
    words: {
      read: 'I have read this',
      wasRead: /You told us on November 24, 2026/,
      visits: 'Visits',
      day: 'Thursday, January 14, 2027',
      choose: 'Choose this day',
      promised: /The crew comes on Thursday, January 14, 2027/,
      quotes: 'Quotes',
      name: 'Your name',
      accept: 'Accept the quote',
      accepted: /Accepted by Lou Marsh on November 24, 2026/,
      call: 'Ask for a call',
      waits: /You asked for a call on November 24, 2026/,
      stop: 'Stop these mails',
      stopped: /These mails are stopped/,
      danger: 'How to turn that off too',
      heading: 'Turn off news of danger?',
    },
  },
  {
    owner: 'QUINN',
    mail: /PR-04/,
    fence: 'PR-04',
    visit: 'V-QUINN',
    see: /Se rompe con una ráfaga de unas 56 mph/,
    words: {
      read: 'He leído esto',
      wasRead: /El 24 de noviembre de 2026 nos dijo/,
      visits: 'Visitas',
      day: 'jueves, 14 de enero de 2027',
      choose: 'Elegir este día',
      promised: /La cuadrilla viene el jueves, 14 de enero de 2027/,
      quotes: 'Presupuestos',
      name: 'Su nombre',
      accept: 'Aceptar el presupuesto',
      accepted: /Aceptado por Lou Marsh el 24 de noviembre de 2026/,
      call: 'Pedir una llamada',
      waits: /Usted pidió una llamada el 24 de noviembre de 2026/,
      stop: 'Dejar de recibirlos',
      stopped: /Estos correos ya no se envían/,
      danger: 'Cómo apagarlos también',
      heading: '¿Apagar los avisos de peligro?',
    },
  },
];

/** The first link of the mail that was caught. */
async function linkInMail({ register }: Sample, { owner, mail }: OwnersDay): Promise<string> {
  const entries = await listOutbox(register, { limit: 20 });
  const entry = entries.find(({ ownerRef, subject }) => ownerRef === owner && mail.test(subject));
  if (!entry) throw new Error(`no mail to ${owner} among ${entries.map(({ subject }) => subject).join('; ')}`);
  expect(entry.state).toBe('sent');
  const { text } = await simpleParser(Buffer.from((await loadOutboxBytes(register, entry.id))!.raw));
  return /^http:\S+$/m.exec(text ?? '')?.[0] ?? '';
}

describe.runIf(browserIsThere())("an owner's pages in a browser", { timeout: 180_000 }, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  async function served(): Promise<{ readonly sample: Sample; readonly base: string }> {
    const sample = await answeringSample();
    await sample.sendMail();
    const pages = await servePages(sample);
    onTestFinished(async () => {
      pages.close();
      await sample.close();
    });
    return { sample, base: pages.base };
  }

  /** A whole day of answers from the link in a mail, without a script and without an account. */
  async function liveThrough(page: Page, day: OwnersDay, start: string, quote: string): Promise<void> {
    const { words } = day;
    const main = page.getByRole('main');
    const fits = async (): Promise<void> => {
      const width = page.viewportSize()?.width ?? 0;
      const wide = await page
        .locator('html')
        .evaluate((html) => (html as unknown as { scrollWidth: number }).scrollWidth);
      expect(wide, page.url()).toBeLessThanOrEqual(width);
    };
    const says = async (text: RegExp): Promise<void> => {
      expect(await main.textContent(), page.url()).toMatch(text);
      await fits();
    };
    const follow = (name: string): Promise<void> => page.getByRole('link', { name, exact: true }).first().click();
    const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();

    await page.goto(start);
    await says(day.see);
    await press(words.read);
    await says(words.wasRead);

    await follow(words.visits);
    await page.locator(`form[action$="${day.visit}"]`).getByLabel(words.day, { exact: true }).check();
    await page.locator(`form[action$="${day.visit}"]`).getByRole('button', { name: words.choose }).click();
    await says(words.promised);

    await follow(words.quotes);
    await fits();
    await follow(quote);
    await says(/559\.00 USD/);
    await page.getByLabel(words.name, { exact: true }).fill('Lou Marsh');
    await press(words.accept);
    await says(words.accepted);

    await follow(words.call);
    await press(words.call);
    await says(words.waits);

    await page.goto(`${start.replace(/\/fences\/.*$/, '')}/unsubscribe`);
    await press(words.stop);
    await says(words.stopped);
    await follow(words.danger);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(words.heading);
    await fits();
  }

  it.each(WINDOW_SIZES)(
    'take a whole day from a mail at $width px, in both languages, without scripts',
    async (size) => {
      const { sample, base } = await served();
      for (const day of DAYS) {
        const page = await openWindow(browser, base, null, { viewport: size, javaScriptEnabled: false });
        const start = (await linkInMail(sample, day)).replace(/^http:\/\/[^/]+/, base);
        expect(start).toMatch(/\/owner\/\w/);
        await liveThrough(page, day, start, sample.quotes[day.fence]);
        const answers = await listOwnerAnswers(sample.register.db, { ownerRef: day.owner });
        expect([...new Set(answers.map(({ kind }) => kind))].sort()).toEqual([
          'call wanted',
          'day chosen',
          'quote accepted',
          'read',
          'unsubscribed',
        ]);
      }
      const office = await openWindow(browser, base, sample.cookie, { viewport: size, javaScriptEnabled: false });
      await office.goto(`${base}/answers`);
      const told = (await office.getByRole('main').textContent()) ?? '';
      expect(told).toContain('2 owners wait for a call. 2 quotes were accepted, 2 days chosen.');
      expect(told).toContain('chose 2027-01-14 for visit V-QUINN at PELICAN, proposed for 2027-01-11');
      expect(told).toContain('stopped all mails but news of danger');
      expect(told).toMatch(/Links opened.*of your fences have news/);
      await office.getByRole('button', { name: 'Called Rosa Quinn' }).click();
      expect(await office.getByRole('main').textContent()).toContain('1 owner waits for a call');
    },
  );

  it('are calm, readable and whole at both widths, in light and dark, for owners and the office', async () => {
    const { sample, base } = await served();
    const [quinn, hoa] = [await ownerPathOf(sample, 'QUINN'), await ownerPathOf(sample, 'HOA')];
    await lookAtPages(browser, base, null, [
      { path: quinn, heading: 'Sus cercas' },
      { path: `${quinn}/fences/PR-04`, heading: 'Cerca PR-04' },
      { path: `${quinn}/visits`, heading: 'Visitas' },
      { path: `${quinn}/quotes/${sample.quotes['PR-04']}`, heading: 'Presupuesto Q-' },
      { path: `${quinn}/danger`, heading: '¿Apagar los avisos de peligro?' },
      { path: hoa, heading: 'Your fences' },
      { path: `${hoa}/money`, heading: 'Plan and money' },
      { path: `${hoa}/documents`, heading: 'Documents' },
      { path: `${hoa}/quotes`, heading: 'Quotes' },
      { path: `${hoa}/call`, heading: 'Ask for a call' },
      { path: `${hoa}/preferences`, heading: 'What we write to you about' },
      { path: `${hoa}/unsubscribe`, heading: 'Stop these mails' },
    ]);
    await lookAtPages(browser, base, sample.cookie, [{ path: '/answers', heading: 'Answers' }]);
  });
});
