import { importCsv } from '../../../src/register/csv/import-csv.ts';
import { remarkText } from '../../../src/register/csv/import-report.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

const FILES = [
  {
    name: 'crews.csv',
    text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\nsouth,South crew,,,40\n',
  },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm2,south,Bea Stone,40,en,\n',
  },
  { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nI-1,PR-02,2026-05-04,Orla Finch,caliper\n' },
  {
    name: 'readings.csv',
    text: 'inspection,post,residual_width_in,broken,lean_degrees\nI-1,2,2.4,,2\nI-1,5,,yes,\nI-1,6,3.1,,0\n',
  },
];

/** The day at the sample's sites. */
export const TODAY = '2026-11-24';

const item = (fenceRef: string, works: Visit['items'][number]['works']): Visit['items'][number] => ({
  fenceRef,
  optionKey: works.map(({ kind }) => kind).join('+'),
  works,
  personHours: 3,
  price: 400,
  mustRank: 1,
});

/** Visits of two crews: two today, one that nobody finished, one to come; one of them at a metric site. */
const VISITS: readonly Visit[] = [
  madeUpVisit({
    uid: 'today-1',
    firstDay: TODAY,
    lastDay: TODAY,
    startsAt: '08:30',
    state: 'confirmed',
    note: 'Ring at the gate house.',
    items: [
      item('PR-01', [{ kind: 'inspect', posts: [1, 2, 3], postCount: 3 }]),
      item('PR-02', [
        { kind: 'inspect', posts: [2, 6], postCount: 2 },
        { kind: 'post-swap', posts: [2, 5], postCount: 2 },
      ]),
    ],
  }),
  madeUpVisit({
    uid: 'today-2',
    siteRef: 'SKERRY',
    firstDay: TODAY,
    lastDay: TODAY,
    items: [item('SK-01', [{ kind: 'inspect', posts: [1, 2], postCount: 2 }])],
  }),
  madeUpVisit({ uid: 'past-1', firstDay: '2026-11-18', lastDay: '2026-11-18' }),
  madeUpVisit({
    uid: 'ahead-1',
    firstDay: '2026-11-26',
    lastDay: '2026-11-26',
    items: [item('PR-03', [{ kind: 'groundline-treatment', posts: [1, 2, 3], postCount: 3 }])],
  }),
  madeUpVisit({
    uid: 'south-1',
    crewRef: 'south',
    firstDay: TODAY,
    lastDay: TODAY,
    items: [item('PR-04', [{ kind: 'inspect', posts: [1], postCount: 1 }])],
  }),
];

/** The sample with two crews and their visits, signed in as one of each kind. Close it when done. */
export async function crewSample(): Promise<
  SampleApp & { readonly crewCookie: string; readonly southCookie: string; readonly spanishCookie: string }
> {
  const sample = await sampleApp({ swept: false });
  const { db } = sample.register;
  const report = await importCsv(sample.register, FILES, {
    acceptValid: false,
    dryRun: false,
    today: TODAY,
    now: '2026-11-24T12:00:00.000Z',
  });
  if (report.faults.length > 0) throw new Error(report.faults.map(remarkText).join('\n'));
  await db.updateTable('sites').set({ latitude: 29.41, longitude: -94.98 }).where('ref', '=', 'PELICAN').execute();
  await db
    .updateTable('fences')
    .set({ access_note: 'Through the side gate; the code is 4471.' })
    .where('ref', '=', 'PR-02')
    .execute();
  await storeVisits(sample.register, VISITS);
  const crew = { role: 'crew', crewRef: 'north' } as const;
  return {
    ...sample,
    crewCookie: await sample.signIn({ ...crew, name: 'orla', displayName: 'Orla Finch' }),
    southCookie: await sample.signIn({ role: 'crew', crewRef: 'south', name: 'bea', displayName: 'Bea Stone' }),
    spanishCookie: await sample.signIn({ ...crew, name: 'tomas', displayName: 'Tomas Reed', language: 'es' }),
  };
}
