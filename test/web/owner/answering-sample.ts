import type { Visit } from '../../../src/season/visit/visit.ts';
import { fenceQuote } from '../../../src/service/fence-quote.ts';
import { newOwnerLink, OWNER_SCOPES, type OwnerScope } from '../../../src/service/owner-links.ts';
import { offerToOwners } from '../../../src/service/owner-quotes.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

const CREW_FILES = [
  { name: 'crews.csv', text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\n' },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm2,north,Tomas Reed,40,es en,\n',
  },
  // on Wednesday nobody of the crew goes out
  { name: 'days-off.csv', text: 'ref,crew,member,first_day,last_day\nfair,north,,2027-01-13,2027-01-13\n' },
] as const;

const itemAt = (fenceRef: string): Visit['items'][number] => ({
  fenceRef,
  optionKey: 'post-swap at 2 5',
  works: [{ kind: 'post-swap', posts: [2, 5], postCount: 2 }],
  personHours: 4.6,
  price: 520,
  mustRank: 1,
});

/** Visits in the week of January 11, 2027: of Quinn's fence, of the association's, and one that goes to both. */
const VISITS: readonly Visit[] = [
  madeUpVisit({ uid: 'V-QUINN', items: [itemAt('PR-04')] }),
  madeUpVisit({ uid: 'V-HOA', firstDay: '2027-01-12', lastDay: '2027-01-12', items: [itemAt('PR-02')] }),
  madeUpVisit({
    uid: 'V-BOTH',
    firstDay: '2027-01-19',
    lastDay: '2027-01-19',
    items: [itemAt('PR-01'), itemAt('PR-04')],
  }),
];

/** The sample pages with a crew, visits that are proposed, and a quote offered for each of two fences. Close it when done. */
export async function answeringSample(
  options: Parameters<typeof sampleApp>[0] = {},
): Promise<SampleApp & { readonly quotes: Readonly<Record<'PR-02' | 'PR-04', string>> }> {
  const sample = await sampleApp(options);
  const { register } = sample;
  const report = await importFiles(register, CREW_FILES);
  if (report.faults.length > 0) throw new Error(JSON.stringify(report.faults));
  await storeVisits(register, VISITS);
  const offer = async (fenceRef: string): Promise<string> => {
    const result = await fenceQuote(register, {
      fenceRef,
      works: [{ kind: 'post-swap', posts: [2, 5] }],
      taxPercent: 7.5,
      validDays: 30,
      currency: 'USD',
      cautions: ['Call before you dig.'],
      now: SAMPLE_NOW,
    });
    if (result.kind !== 'quoted') throw new Error(JSON.stringify(result));
    await offerToOwners(register, { quote: result.quote, parts: result.parts }, SAMPLE_NOW);
    return result.quote.number;
  };
  return { ...sample, quotes: { 'PR-02': await offer('PR-02'), 'PR-04': await offer('PR-04') } };
}

/** Path of an owner's pages by a new link. */
export async function ownerPathOf(
  { register, config }: Pick<SampleApp, 'register' | 'config'>,
  ownerRef: string,
  scopes: readonly OwnerScope[] = OWNER_SCOPES,
): Promise<string> {
  const options = { publicUrl: config.publicUrl, now: SAMPLE_NOW };
  return new URL((await newOwnerLink(register.db, { ownerRef, scopes, days: 30 }, options)).url).pathname;
}
