import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { learnedInForce } from '../../../src/register/learned-store.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { LEARNING_FILES } from './learning-files.ts';
import { hiddenIn, officeForms, wordsOf } from './office-forms.ts';

describe('what was learned, on the pages', { timeout: 240_000 }, () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false, catcher: false });
    office = officeForms(sample);
  });
  afterAll(() => sample.close());

  it('says so where nothing was', async () => {
    expect(wordsOf(await office.text('/learned'))).toContain('Nothing has been learned yet');
    expect((await office.get('/learned/preview?revert=yes')).status).toBe(409);
  });

  it('is shown, looked ahead at, accepted with a name and a note, and taken back', async () => {
    expect((await importFiles(sample.register, LEARNING_FILES)).faults).toEqual([]);
    const html = await office.text('/learned');
    expect(wordsOf(html)).toContain('can be accepted');
    const key = /name="only" value="(ground-contact\/\d)"/.exec(html)?.[1] ?? '';
    const place = `/learned/preview?only=${encodeURIComponent(key)}`;
    expect(wordsOf(await office.text(place))).toMatch(/The next sweep would forecast \d+ fences anew/);
    expect(await learnedInForce(sample.register.db)).toBeNull();
    const told = wordsOf(
      await office.sendAndFollow('/records', '/learned', { act: 'accept', only: key, note: '<b>spring</b>' }),
    );
    expect(told).toContain('Version 1 is in force: accepted by office');
    expect(told).toContain('accepted version 1 (in force): <b>spring</b>');
    const back = '/learned/preview?revert=yes';
    const reverts = hiddenIn(await office.text(back), 'reverts');
    expect((await office.send('/records', '/learned', { act: 'revert', reverts: '9' })).status).toBe(409);
    expect(await learnedInForce(sample.register.db)).not.toBeNull();
    expect(wordsOf(await office.sendAndFollow('/records', '/learned', { act: 'revert', reverts }))).toContain(
      'took version 1 back',
    );
    expect(await learnedInForce(sample.register.db)).toBeNull();
  });
});
