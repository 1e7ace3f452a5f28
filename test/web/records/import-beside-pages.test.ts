import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readRecord } from '../../../src/register/record-store.ts';
import { keepForImport } from '../../../src/service/import-files.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { hiddenIn, officeForms, wordsOf } from './office-forms.ts';

const ROWS = 20_000;
const owners = (name: string): string =>
  ['ref,name,kind,channel,email']
    .concat(Array.from({ length: ROWS }, (_, index) => `O-${index},${name} ${index},person,mail,o${index}@example.org`))
    .join('\n');

describe('a large import beside other pages', { timeout: 240_000 }, () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  afterEach(() => sample.close());

  const bring = async (text: string): Promise<string> => {
    const files = [{ name: 'owners.csv', text }];
    return `/import/${await keepForImport(sample.register, files, { clock: SAMPLE_NOW, by: 'office' })}`;
  };

  describe('waited for', () => {
    beforeEach(async () => {
      sample = await sampleApp({ swept: false, catcher: false });
      office = officeForms(sample);
    });

    it('lets a page that was asked for after it be answered before it', async () => {
      const place = await bring(owners('Owner'));
      const answered: string[] = [];
      const noted = async (what: string, answer: Promise<Response>): Promise<Response> => {
        const response = await answer;
        answered.push(what);
        return response;
      };
      const preview = noted('preview', office.get(place));
      for (const path of ['/healthz', '/fences', '/owners']) {
        expect((await noted(path, office.get(path))).status).toBe(200);
      }
      const html = await (await preview).text();
      expect(wordsOf(html)).toContain(`Of ${ROWS} rows, ${ROWS} are new`);
      const shown = hiddenIn(html, 'shown');
      const imported = noted('import', office.send('/records', place, { act: 'import', shown }));
      // a form of somebody else is stored meanwhile, too
      const other = await office.send('/notices', '/notices/matters', { held: 'short season ahead' });
      expect(other.status).toBe(303);
      expect((await imported).status).toBe(303);
      expect(answered).toEqual(['/healthz', '/fences', '/owners', 'preview', 'import']);
      expect(await readRecord(sample.register.db, 'owners', `O-${ROWS - 1}`)).not.toBeNull();
    });
  });

  describe('not waited for', () => {
    beforeEach(async () => {
      sample = await sampleApp({ swept: false, catcher: false, patienceMs: 0 });
      office = officeForms(sample);
    });

    /** Asks for a page again, as a browser does by itself, until it no longer asks to. */
    const asksUntilReady = async (path: string): Promise<string> => {
      for (;;) {
        const response = await office.get(path);
        if (response.headers.get('refresh') === null) {
          const place = response.headers.get('location');
          return place === null ? response.text() : office.text(place);
        }
        expect(response.status).toBe(202);
        expect(wordsOf(await response.text())).toContain('This page asks again by itself');
        await new Promise((resolve) => setImmediate(resolve));
      }
    };

    it('says how far it is, then shows the preview, then what was imported', async () => {
      const place = await bring(owners('Owner'));
      expect(wordsOf(await office.text(place))).toContain('Looking what this import would change');
      const html = await asksUntilReady(place);
      expect(wordsOf(html)).toContain(`${ROWS} are new`);
      expect(wordsOf(html)).toContain(`${ROWS} owners O-0, O-1`);
      expect(wordsOf(html)).toContain(`and ${ROWS - 60} more`);
      const begun = await office.send('/records', place, { act: 'import', shown: hiddenIn(html, 'shown') });
      expect(begun.headers.get('location')).toBe(place);
      expect(wordsOf(await asksUntilReady(place))).toContain(`owners.csv: ${ROWS} owners made.`);
    });

    it('says how far the learning is, and takes back the word of an act that was refused', async () => {
      expect(wordsOf(await office.text('/learned'))).toContain('Looking what was learned');
      expect(wordsOf(await asksUntilReady('/learned'))).toContain('Nothing has been learned yet');
      const begun = await office.send('/records', '/learned', { act: 'accept', only: 'footing/sand' });
      expect(begun.headers.get('location')).toBe('/learned');
      expect(wordsOf(await asksUntilReady('/learned'))).toContain('Nothing was accepted');
    });
  });
});
