import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { startBrowser } from './browser.ts';
import { MAIL_LOOKS, mailsToLookAt, openMail } from './mail-in-window.ts';

/** Takes pictures of the mails as mail programs show them: `npm run mail-pictures`, or into another folder. */
const folder = process.argv[2] ?? join(import.meta.dirname, '..', '..', 'docs', 'pictures', 'mails');
mkdirSync(folder, { recursive: true });

const browser = await startBrowser();
try {
  for (const mail of await mailsToLookAt()) {
    for (const look of MAIL_LOOKS) {
      const page = await openMail(browser, mail, look);
      const name = `${mail.name}-${look.widthPx}-${look.scheme}${look.images === 'off' ? '-no-pictures' : ''}.png`;
      await page.screenshot({ path: join(folder, name), fullPage: true });
      await page.context().close();
      console.log(name);
    }
  }
} finally {
  await browser.close();
}
