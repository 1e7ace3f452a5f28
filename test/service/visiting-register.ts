import { importCsv } from '../../src/register/csv/import-csv.ts';
import { remarkText } from '../../src/register/csv/import-report.ts';
import type { Register } from '../../src/register/database.ts';
import { storeVisit } from '../../src/register/visit-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { sampleRegister } from '../web/sample-register.ts';

const CREW_FILES = [
  {
    name: 'crews.csv',
    text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,"North crew; wells, posts",,,40\nsouth,South crew,,,40\n',
  },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm2,north,Tomas Reed,40,es en,\nm3,south,Bea Stone,40,en,\n',
  },
  {
    name: 'inspections.csv',
    text: 'ref,fence,day,inspector,method\nI-1,PR-02,2026-05-04,Orla Finch,caliper\n',
  },
  {
    name: 'readings.csv',
    text: 'inspection,post,residual_width_in,broken,lean_degrees\nI-1,2,2.4,,2\nI-1,5,,yes,\nI-1,6,3.1,,0\n',
  },
];

/** A visit of one fence on one day; say what differs. */
export const madeUpVisit = (visit: Partial<Visit> & Pick<Visit, 'uid'>): Visit => ({
  siteRef: 'PELICAN',
  crewRef: 'north',
  firstDay: '2027-01-11',
  lastDay: '2027-01-11',
  startsAt: null,
  state: 'proposed',
  sequence: 0,
  travelPersonHours: 1.2,
  items: [
    {
      fenceRef: 'PR-02',
      optionKey: 'post-swap at 2 5',
      works: [{ kind: 'post-swap', posts: [2, 5], postCount: 2 }],
      personHours: 4.6,
      price: 520,
      mustRank: 1,
    },
  ],
  planId: null,
  note: '',
  changedAt: '2026-11-24T12:00:00.000Z',
  ...visit,
});

/** Stores visits as they are, whatever was there of the same uid. */
export async function storeVisits({ db }: Register, visits: readonly Visit[]): Promise<void> {
  await db.transaction().execute(async (tx) => {
    for (const visit of visits) await storeVisit(tx, visit, { by: 'a test', because: '' });
  });
}

/** The sample register with two crews, and readings at one of its fences. Remove it when done. */
export async function visitingRegister(): Promise<Awaited<ReturnType<typeof sampleRegister>>> {
  const sample = await sampleRegister({ swept: false });
  const report = await importCsv(sample.register, CREW_FILES, {
    acceptValid: false,
    dryRun: false,
    today: '2026-11-24',
    now: '2026-11-24T12:00:00.000Z',
  });
  if (report.faults.length > 0) throw new Error(report.faults.map(remarkText).join('\n'));
  return sample;
}
