import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { listHeldNotices } from '../../src/register/held-notices.ts';
import { listRecords } from '../../src/register/record-store.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { keepForImport } from '../../src/service/import-files.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { importFiles } from '../register/made-up-register.ts';
import { type SampleApp, sampleApp } from '../web/sample-app.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { browserIsThere, startBrowser } from './browser.ts';
import { lookAtPages, openWindow, type ServedPages, servePages, WINDOW_SIZES } from './served-pages.ts';

/** A fence at which something was read, found and reported, and what plans need. */
const SEEN = [
  { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nA,PR-03,2026-05-12,Nell Fox,awl-or-probe\n' },
  { name: 'readings.csv', text: 'inspection,post,depth_in,broken,closed_off\nA,3,0.7,,\nA,7,,yes,yes\n' },
  {
    name: 'outcomes.csv',
    text: 'ref,storm,fence,day,gust_mph,posts,result,reported_by\nO,March gale,PR-03,2026-03-14,50,all,stood,Nell Fox\n',
  },
  { name: 'crews.csv', text: 'ref,name,weather_reserve,speed_mph\nC1,North crew,0.1,40\n' },
  { name: 'crew-members.csv', text: 'ref,crew,name,hours_per_week\nM1,C1,Bea Lund,38\n' },
  { name: 'days-off.csv', text: 'ref,crew,member,first_day,last_day\nD1,C1,M1,2027-03-01,2027-03-05\n' },
  { name: 'storm-seasons.csv', text: 'ref,name,opens,closes,share,source\nGULF,Gulf,06-01,11-30,0.8,sample\n' },
  { name: 'catalogue.csv', text: 'kind,person_hours_per_post,price_per_post,source\nliner,0.5,61,our books\n' },
  { name: 'materials.csv', text: 'kind,name,unit,unit_cost,quantity_per_post\nliner,Sleeve,piece,12,1\n' },
] as const;

const COLUMNS =
  'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,section,species,grade,treatment_class,installed';

/** Rows of new fences, three of which cannot be taken: a height in feet, an unknown site, a treatment nobody knows. */
function twoHundredFences(mended: boolean): string {
  const rows = Array.from({ length: 200 }, (_, index) => {
    const number = index + 1;
    const height = number === 7 && !mended ? '6 ft' : '72';
    const site = number === 90 && !mended ? 'NOWHERE' : 'PELICAN';
    const treatment = number === 151 && !mended ? 'painted' : 'ground-contact';
    return `NF-${number},${site},HOA,solid-board,${height},80,8,street end,4x4,southern-pine,no-2,${treatment},2015`;
  });
  return [COLUMNS, ...rows, ''].join('\n');
}

const upload = (text: string) => ({ name: 'fences.csv', mimeType: 'text/csv', buffer: Buffer.from(text, 'utf8') });

/** A register that was swept for the first time, its notices held. */
async function heldSample(): Promise<SampleApp> {
  const sample = await sampleApp({ swept: false });
  expect((await importFiles(sample.register, SEEN)).faults).toEqual([]);
  await writeSettings(sample.register.db, { holdFirstSweep: 'yes' }, '2026-11-24T12:00:00.000Z');
  await runSweep(sample.register, { now: SAMPLE_NOW });
  return sample;
}

describe.runIf(browserIsThere())('the records of the office in a browser', { timeout: 240_000 }, () => {
  let browser: Browser;
  let sample: SampleApp;
  let served: ServedPages;
  let previewPath: string;

  beforeAll(async () => {
    sample = await heldSample();
    const text = 'ref,name,kind,channel,email\nQUINN,Rosa Vale,person,mail,rosa@example.net\nX-1,,person,mail,\n';
    const files = [{ name: 'owners.csv', text }];
    previewPath = `/import/${await keepForImport(sample.register, files, { clock: SAMPLE_NOW, by: 'office' })}`;
    served = await servePages(sample);
    browser = await startBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    served.close();
    await sample.close();
  });

  it('are sound for everybody: axe, width, light and dark, without scripts', async () => {
    await lookAtPages(browser, served.base, sample.cookie, [
      { path: '/records', heading: 'Records' },
      { path: '/import', heading: 'Import' },
      { path: previewPath, heading: 'What this import would change' },
      { path: '/owners', heading: 'Owners' },
      { path: '/owners/QUINN', heading: 'Rosa Quinn' },
      { path: '/records/owners/QUINN/edit', heading: 'Change owner QUINN' },
      { path: '/sites', heading: 'Sites' },
      { path: '/sites/PELICAN', heading: 'Pelican Reach' },
      { path: '/records/sites/PELICAN/edit', heading: 'Change site PELICAN' },
      { path: '/records/fences/new?site=PELICAN', heading: 'New fence' },
      { path: '/records/fences/PR-01', heading: 'Fence PR-01' },
      { path: '/records/works/new?fence=PR-01', heading: 'New works done' },
      { path: '/catalogue', heading: 'Works catalogue' },
      { path: '/seasons', heading: 'Storm seasons' },
      { path: '/climate-zones', heading: 'Climate zones' },
      { path: '/crews', heading: 'Crews' },
      { path: '/settings', heading: 'Settings' },
      { path: '/learned', heading: 'Learned' },
      { path: '/storms?site=PELICAN', heading: 'Report a storm' },
      { path: '/fences/PR-03/inspect', heading: 'Inspection of fence PR-03' },
      { path: '/fences/PR-03/entries', heading: 'Seen and done at fence PR-03' },
      { path: '/notices', heading: 'Notices' },
      { path: '/notices/preview?owner=HOA', heading: 'What Pelican Reach Association would get' },
      { path: '/notices/release?newest=999999', heading: 'Release' },
      { path: '/documents?q=pelican', heading: 'Documents' },
      { path: '/outbox', heading: 'Outbox' },
    ]);
  });

  /** The office's sentence as the first message on a page shows it. */
  const sentenceInMessage = (page: Page) =>
    page.frameLocator('iframe.message').first().getByText('We come by before the season.').first();

  /** Brings a file and waits for its preview. */
  async function bring(page: Page, base: string, text: string): Promise<void> {
    await page.goto(`${base}/import`);
    await page.getByLabel('CSV files').setInputFiles(upload(text));
    await page.getByRole('button', { name: 'Show what would change' }).click();
    await page.getByRole('heading', { name: 'What this import would change' }).waitFor();
  }

  it.each(WINDOW_SIZES)(
    'import 200 fences with 3 bad rows, mended, and release notices: an office day, $width px',
    async (size) => {
      const office = await heldSample();
      onTestFinished(() => office.close());
      const { base, close } = await servePages(office);
      onTestFinished(close);
      const { register } = office;
      const heldOf = async (owner: string) => listHeldNotices(register, { ownerRef: owner });
      const page = await openWindow(browser, base, office.cookie, { viewport: size });
      const before = (await listRecords(register.db, 'fences')).length;
      await bring(page, base, twoHundredFences(false));
      const words = await page.locator('main').textContent();
      expect(words).toContain('197 are new');
      expect(words).toContain('3 cannot be taken');
      for (const where of ['fences.csv, line 8', 'fences.csv, line 91', 'fences.csv, line 152']) {
        expect(words).toContain(where);
      }
      expect(await listRecords(register.db, 'fences')).toHaveLength(before);
      await bring(page, base, twoHundredFences(true));
      await page.getByText('200 are new').waitFor();
      await page.getByRole('button', { name: 'Import 200 rows' }).click();
      await page.getByRole('heading', { name: 'Imported' }).waitFor();
      expect(await page.locator('main').textContent()).toContain('200 fences made');
      expect(await listRecords(register.db, 'fences')).toHaveLength(before + 200);

      await page.getByRole('link', { name: 'Notices', exact: true }).click();
      expect((await heldOf('HOA')).length).toBeGreaterThan(1);
      await page.getByRole('link', { name: 'see the message to Pelican Reach Association' }).click();
      await page.getByLabel('A sentence of your own').fill('We come by before the season.');
      await page.getByRole('button', { name: 'Show it with this sentence' }).click();
      await page.waitForURL(/sentence=We/);
      await sentenceInMessage(page).waitFor();
      await page.getByRole('button', { name: /^Release these/ }).click();
      await page.getByText(/^Released \d+ notices to 1 owner/).waitFor();
      expect(await heldOf('HOA')).toEqual([]);
      await office.sendMail();

      await page.getByRole('link', { name: 'Outbox', exact: true }).click();
      await page.getByRole('rowheader').getByRole('link').first().click();
      await page.getByRole('heading', { name: 'What became of it' }).waitFor();
      await sentenceInMessage(page).waitFor();

      await page.getByRole('link', { name: 'Notices', exact: true }).first().click();
      await page.getByRole('button', { name: /^Release all \d+ of this list/ }).click();
      await page.getByRole('heading', { name: /^Release \d+ notices? to \d+ owners?\?$/ }).waitFor();
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(size.width);
      expect((await listHeldNotices(register)).length).toBeGreaterThan(0);
      await page.getByRole('button', { name: /^Release \d+ notices?$/ }).click();
      await page.getByText(/^Released \d+ notices? to \d+ owners?/).waitFor();
      expect(await listHeldNotices(register)).toEqual([]);
    },
  );

  it('an inspection is entered on a phone', async () => {
    const page = await openWindow(browser, served.base, sample.cookie, {
      viewport: WINDOW_SIZES[1],
      javaScriptEnabled: false,
    });
    await page.goto(`${served.base}/fences/PR-05/inspect`);
    await page.getByLabel('Day').fill('2026-11-20');
    await page.getByLabel('Who looked').fill('Nell Fox');
    await page.getByLabel('Post 2: at the groundline').selectOption('depth');
    await page.getByLabel('Post 2: number read at the groundline').fill('0.5');
    await page.getByRole('button', { name: 'Store the inspection' }).click();
    await page.getByText('Post 2: 0.50 in of rot on each face').waitFor();
  });
});
