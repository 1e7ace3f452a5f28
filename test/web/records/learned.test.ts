import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../../src/decay/decay-rate.ts';
import { learnedInForce } from '../../../src/register/learned-store.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { hiddenIn, officeForms, wordsOf } from './office-forms.ts';

const CLIMATE = { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 } as const;
const FENCES = Array.from({ length: 10 }, (_, index) => `RF-${index + 1}`);

/** Ten fences of the sample's gulf site, built in 2010, that all rot twice as fast as published. */
const FILES = [
  {
    name: 'climate-zones.csv',
    text: 'ref,name,rain_mm,mean_temperature_c,dry_months,source\nGULF,Gulf coast,1600,19.5,0,invented\n',
  },
  {
    name: 'fences.csv',
    text: [
      'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,section,species,grade,treatment_class,installed',
      ...FENCES.map(
        (ref) => `${ref},PELICAN,HOA,solid-board,72,80,8,lane,4x4,southern-pine,no-2,ground-contact,2010-05-12`,
      ),
    ].join('\n'),
  },
  {
    name: 'inspections.csv',
    text: [
      'ref,fence,day,inspector,method',
      ...FENCES.map((ref) => `I-${ref},${ref},2026-05-12,Nell Fox,awl-or-probe`),
    ].join('\n'),
  },
  {
    name: 'readings.csv',
    text: [
      'inspection,post,depth_mm,sure',
      ...FENCES.flatMap((ref, index) =>
        [-0.4, 0, 0.4].map((scatter, post) => {
          const rate = 2 * medianDecayRate('ground-contact', CLIMATE) * Math.exp(scatter + 0.2 * Math.sin(index * 2.4));
          return `I-${ref},${post + 3},${Math.min(44, decayDepth(16, rate)).toFixed(2)},yes`;
        }),
      ),
    ].join('\n'),
  },
];

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
    expect((await importFiles(sample.register, FILES)).faults).toEqual([]);
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
