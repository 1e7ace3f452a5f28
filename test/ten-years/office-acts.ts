import type { DateTime } from 'luxon';
import type { Register } from '../../src/register/database.ts';
import { releaseHeldNotices } from '../../src/register/held-notices.ts';
import { holdMatter } from '../../src/register/holding.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { isoUtc } from '../../src/service/clock.ts';

/** What the office does on one of the simulated days, counted from the first. */
interface OfficeAct {
  readonly day: number;
  readonly act: (register: Register, now: DateTime) => Promise<unknown>;
}

/** A fence at which a post breaks, and is then swapped; and one that is rebuilt. */
const BROKEN = 'PF-03';
const REBUILT = 'AS-04';

const release = (register: Register, now: DateTime) =>
  releaseHeldNotices(register, {}, { at: isoUtc(now), covering: null });

const NEW_WOOD = {
  yearsEffective: null,
  embedmentM: null,
  footing: null,
  footingDiameterM: null,
  sectionKind: 'rectangular',
  sectionWidthMm: 88.9,
  sectionDepthMm: 88.9,
  species: 'southern-pine',
  grade: 'no-2',
  incised: false,
  treatmentClass: 'ground-contact',
  momentCapacityNm: null,
  positionsM: null,
  postSpacingM: null,
} as const;

async function findBroken({ db }: Register, now: DateTime): Promise<void> {
  const [at, day] = [isoUtc(now), now.toISODate() ?? ''];
  const by = { inspector: 'Ten Years', qualification: '', method: 'eye', instrument: '', notes: '' } as const;
  await upsertRecords(db, 'inspections', [{ ref: 'TY-1', fenceRef: BROKEN, day, ...by }], at);
  const nothing = { cavityMm: null, leanDegrees: null, collarCracked: null, railConnection: null, trimmerCutMm: null };
  const seen = { groundlineKind: 'broken', groundlineMm: null, closedOff: true, sure: false, notes: '' } as const;
  await upsertRecords(db, 'readings', [{ inspectionRef: 'TY-1', post: 4, ...nothing, ...seen }], at);
}

const works =
  (ref: string, fenceRef: string, kind: 'post-swap' | 'rebuild', posts: 'all' | number[]) =>
  ({ db }: Register, now: DateTime): Promise<unknown> =>
    upsertRecords(db, 'works', [{ ...NEW_WOOD, ref, fenceRef, kind, posts, day: now.toISODate() ?? '' }], isoUtc(now));

/**
 * What the office does in the simulated years: it releases what the first sweep found, holds reminders for a year and releases them once, enters a
 * broken post, has it swapped, and rebuilds a fence.
 */
export const OFFICE_ACTS: readonly OfficeAct[] = [
  { day: 3, act: release },
  { day: 200, act: findBroken },
  { day: 230, act: works('TY-W1', BROKEN, 'post-swap', [4]) },
  { day: 300, act: (register, now) => holdMatter(register, 'reminder', true, isoUtc(now)) },
  { day: 440, act: release },
  { day: 500, act: works('TY-W2', REBUILT, 'rebuild', 'all') },
  { day: 700, act: (register, now) => holdMatter(register, 'reminder', false, isoUtc(now)) },
  { day: 701, act: release },
];

/** How often in the simulated years something was found, and works were done, at a fence. */
export const ENTERED: Readonly<
  Record<string, { readonly findings: number; readonly works: number; readonly renewals: number }>
> = {
  [BROKEN]: { findings: 1, works: 1, renewals: 1 },
  [REBUILT]: { findings: 0, works: 1, renewals: 1 },
};
