import { DateTime } from 'luxon';
import { cautionsIn } from '../../../src/drawing/cautions.ts';
import { listRecords, upsertRecords } from '../../../src/register/record-store.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import type { Clock } from '../../../src/service/clock.ts';
import { isoUtc } from '../../../src/service/clock.ts';
import { fenceQuote } from '../../../src/service/fence-quote.ts';
import { importDemo } from '../../../src/service/import-demo.ts';
import { newOwnerLink, OWNER_SCOPES } from '../../../src/service/owner-links.ts';
import { offerToOwners } from '../../../src/service/owner-quotes.ts';
import { runSweep } from '../../../src/service/run-sweep.ts';
import { WORKS_KINDS } from '../../../src/web/fences/what-if-choice.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

/** The moment at which the demo is looked at, a little after its newest record. */
export const DEMO_NOW: Clock = () => DateTime.fromISO('2026-11-26T12:00:00Z', { zone: 'utc' });
const TODAY = '2026-11-26';

const item = (fenceRef: string, works: Visit['items'][number]['works']): Visit['items'][number] => ({
  fenceRef,
  optionKey: works.map(({ kind }) => kind).join('+'),
  works,
  personHours: 3,
  price: 400,
  mustRank: 1,
});

/** Visits of one crew in every state, with every kind of works, today, past and to come. */
function visitsAt(siteRef: string, fenceRefs: readonly string[]): readonly Visit[] {
  const every = (['inspect', ...WORKS_KINDS] as const).map((kind, index) =>
    item(fenceRefs[index % fenceRefs.length]!, [{ kind, posts: [1, 2, 3], postCount: 3 }]),
  );
  const merged = [...new Set(every.map(({ fenceRef }) => fenceRef))].map((fenceRef) =>
    item(
      fenceRef,
      every.filter((each) => each.fenceRef === fenceRef).flatMap(({ works }) => works),
    ),
  );
  const some = [item(fenceRefs[0]!, [{ kind: 'post-swap', posts: [2], postCount: 1 }])];
  const at = { siteRef, crewRef: 'gulf' };
  const on = (day: string) => ({ firstDay: day, lastDay: day });
  return [
    madeUpVisit({ ...at, ...on(TODAY), uid: 'V-TODAY', startsAt: '08:30', state: 'confirmed', items: merged }),
    madeUpVisit({ ...at, firstDay: TODAY, lastDay: '2026-11-30', uid: 'V-LONG', items: some }),
    madeUpVisit({ ...at, ...on('2026-11-18'), uid: 'V-LEFT', items: some }),
    madeUpVisit({ ...at, ...on('2026-12-02'), uid: 'V-AHEAD', items: some }),
    madeUpVisit({ ...at, ...on('2026-11-10'), uid: 'V-DONE', state: 'done', items: some }),
    madeUpVisit({ ...at, ...on('2026-11-11'), uid: 'V-MISSED', state: 'missed', items: some }),
    madeUpVisit({ ...at, ...on('2026-11-12'), uid: 'V-OFF', state: 'cancelled', items: some }),
  ];
}

/** Who walks through the pages. */
export interface SpanishReader {
  readonly who: 'board' | 'crew' | 'owner link';
  readonly cookie: string | null;
  /** Where they begin. */
  readonly paths: readonly string[];
}

/** The demo, swept, with a board, a crew and owners who read Spanish, with visits and quotes. Close it when done. */
export async function demoInSpanish(): Promise<
  SampleApp & { readonly readers: readonly SpanishReader[]; readonly fenceRefs: readonly string[] }
> {
  const sample = await sampleApp({ empty: true, now: DEMO_NOW });
  const { register, config } = sample;
  const { db } = register;
  await importDemo(register, { now: DEMO_NOW, onProgress: () => undefined });
  const owners = (await listRecords(db, 'owners')).map((owner) => ({ ...owner, language: 'es' }) as const);
  await upsertRecords(db, 'owners', owners, isoUtc(DEMO_NOW()));
  await runSweep(register, { now: DEMO_NOW });
  const fences = await listRecords(db, 'fences');
  const sites = await listRecords(db, 'sites');
  const refsAt = (siteRef: string): readonly string[] =>
    fences.filter((fence) => fence.siteRef === siteRef).map(({ ref }) => ref);
  const cloverline = refsAt('cloverline');
  await storeVisits(register, visitsAt('cloverline', cloverline.slice(0, 8)));
  const works = [
    { kind: 'post-swap', posts: [1, 2] },
    { kind: 'footing-reset', posts: 'all' },
  ] as const;
  for (const owner of owners) {
    const fenceRef = fences.find((fence) => fence.ownerRef === owner.ref)!.ref;
    const terms = { taxPercent: 7.5, validDays: 30, currency: 'USD', cautions: cautionsIn('en').all, now: DEMO_NOW };
    const result = await fenceQuote(register, { fenceRef, works, ...terms });
    if (result.kind === 'quoted') await offerToOwners(register, { quote: result.quote, parts: result.parts }, DEMO_NOW);
  }
  const language = 'es' as const;
  const links = await Promise.all(
    owners.map(({ ref }) =>
      newOwnerLink(
        db,
        { ownerRef: ref, scopes: OWNER_SCOPES, days: 30 },
        { publicUrl: config.publicUrl, now: DEMO_NOW },
      ),
    ),
  );
  const readers: readonly SpanishReader[] = [
    {
      who: 'board',
      cookie: await sample.signIn({ name: 'vecinos', role: 'board', language, siteRefs: sites.map(({ ref }) => ref) }),
      // an association's plan is sent round by its address
      paths: ['/board', '/fences', '/documents', '/account', '/owners/cloverline/plan'],
    },
    {
      who: 'crew',
      cookie: await sample.signIn({ name: 'cuadrilla', role: 'crew', language, crewRef: 'gulf' }),
      paths: ['/today', '/fences', '/documents', '/account'],
    },
    ...links.map(({ url }) => ({ who: 'owner link' as const, cookie: null, paths: [new URL(url).pathname] })),
  ];
  return { ...sample, readers, fenceRefs: fences.map(({ ref }) => ref) };
}
