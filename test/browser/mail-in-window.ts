import { simpleParser } from 'mailparser';
import type { Browser, Page } from 'playwright-core';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

/** How a mail is looked at. */
export interface MailLook {
  readonly widthPx: number;
  readonly scheme: 'light' | 'dark';
  readonly images: 'on' | 'off';
}

/** Every way in which mails are looked at. */
export const MAIL_LOOKS: readonly MailLook[] = [390, 1280].flatMap((widthPx) =>
  (['light', 'dark'] as const).flatMap((scheme) =>
    (['on', 'off'] as const).map((images) => ({ widthPx, scheme, images })),
  ),
);

/** A mail as it is sent. */
export interface MailToLookAt {
  readonly name: string;
  readonly subject: string;
  readonly bytes: number;
  /** The HTML part, its pictures pointed to by their content ids. */
  readonly html: string;
  readonly pictures: readonly { readonly cid: string; readonly png: Buffer }[];
}

/** A post that was found broken, at a fence of the owner who gets single mails. */
const FOUND = [
  { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nI,PR-04,2026-11-20,Nell Fox,awl-or-probe\n' },
  { name: 'readings.csv', text: 'inspection,post,broken\nI,3,yes\n' },
] as const;

async function mailsOf(languages: Readonly<Record<'HOA' | 'QUINN', 'en' | 'es'>>, found: boolean) {
  const { register, remove } = await sampleRegister({ swept: false });
  try {
    for (const ref of ['HOA', 'QUINN'] as const) {
      const owner = await readRecord(register.db, 'owners', ref);
      if (!owner) throw new Error(`the sample lacks owner ${ref}`);
      await upsertRecords(register.db, 'owners', [{ ...owner, language: languages[ref] }], '2026-11-24T12:00:00.000Z');
    }
    if (found) {
      const today = { acceptValid: false, dryRun: false, today: '2026-11-24', now: '2026-11-24T12:00:00.000Z' };
      const report = await importCsv(register, FOUND, today);
      if (report.faults.length > 0) throw new Error(JSON.stringify(report.faults));
    }
    await runSweep(register, { now: SAMPLE_NOW });
    const office = { name: 'Sample Fence Office', phone: '555-0100', email: 'office@example.org', postalAddress: null };
    const sender = { office, from: 'notices@example.org', gap: null, mailReachesOwners: true, timeZone: 'UTC' };
    await composeNotices(register, {
      now: SAMPLE_NOW,
      sender: { ...sender, publicUrl: 'https://fences.example.org' },
    });
    const entries = (await listOutbox(register, { limit: 20 })).filter(({ channel }) => channel === 'mail');
    return await Promise.all(
      entries.map(async ({ id, ownerRef, subject }) => {
        const raw = Buffer.from((await loadOutboxBytes(register, id))!.raw);
        const mail = await simpleParser(raw, { skipImageLinks: true });
        return {
          ownerRef,
          subject,
          bytes: raw.byteLength,
          html: mail.html || '',
          pictures: mail.attachments.flatMap(({ cid, content }) => (cid ? [{ cid, png: content }] : [])),
        };
      }),
    );
  } finally {
    await remove();
  }
}

/** Mails of every kind: one fence, a dangerous one, and a digest, in both languages. */
export async function mailsToLookAt(): Promise<readonly MailToLookAt[]> {
  const first = await mailsOf({ HOA: 'en', QUINN: 'es' }, false);
  const second = await mailsOf({ HOA: 'es', QUINN: 'en' }, true);
  const named = (mails: typeof first, ownerRef: string, about: RegExp, name: string): MailToLookAt => {
    const mail = mails.find((each) => each.ownerRef === ownerRef && about.test(each.subject));
    if (!mail) throw new Error(`no mail ${name} among ${mails.map(({ subject }) => subject).join('; ')}`);
    return { ...mail, name };
  };
  return [
    named(first, 'QUINN', /PR-04/, 'fence-es'),
    named(first, 'HOA', /./, 'digest-en'),
    named(second, 'QUINN', /PR-04/, 'danger-en'),
    named(second, 'HOA', /./, 'digest-es'),
  ];
}

/** Opens a mail as a mail program would: its HTML part alone, with its pictures or without them. The caller closes the window. */
export async function openMail(browser: Browser, mail: MailToLookAt, look: MailLook): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: look.widthPx, height: 900 },
    colorScheme: look.scheme,
  });
  const page = await context.newPage();
  const html = mail.html.replaceAll('src="cid:', 'src="https://mail.example.org/');
  await page.route('**/*', (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/mail') return route.fulfill({ contentType: 'text/html; charset=utf-8', body: html });
    const picture = mail.pictures.find(({ cid }) => pathname === `/${cid}`);
    return picture && look.images === 'on'
      ? route.fulfill({ contentType: 'image/png', body: picture.png })
      : route.abort();
  });
  await page.goto('https://mail.example.org/mail', { waitUntil: 'load' });
  return page;
}
