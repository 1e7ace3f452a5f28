import { DateTime } from 'luxon';
import { isMatter, isOfVisit, MATTER_RULES, type OncePer } from '../../src/notify/matter-rules.ts';
import type { NoticeRecord } from './notice-record.ts';
import { ENTERED } from './office-acts.ts';
import type { SeenChange } from './simulate-years.ts';
import type { SeenVisitChange } from './visit-acts.ts';

/** Works entered at fences in the simulated years. */
export type EnteredWorks = ReadonlyMap<string, { readonly works: number; readonly renewals: number }>;

const NOTHING = { works: 0, renewals: 0 };
const hoursBetween = (from: string, to: string): number =>
  DateTime.fromISO(to).diff(DateTime.fromISO(from)).as('hours');
const isTold = ({ voidReason }: NoticeRecord): boolean => voidReason === null;

/** How often in a span its rule lets a matter be told of one fence: from what was entered and how many seasons there were. */
export function mostAllowed(matter: string, fenceRef: string, seasons: number, entered: EnteredWorks): number {
  const { findings } = ENTERED[fenceRef] ?? { findings: 0 };
  const { works, renewals } = entered.get(fenceRef) ?? NOTHING;
  // what a visit causes is held against its own changes
  if (isOfVisit(matter)) return Number.POSITIVE_INFINITY;
  if (!isMatter(matter)) return 0;
  const most = new Map<OncePer, number>([
    ['build', 1 + renewals],
    ['build and season', seasons * (1 + renewals)],
    ['season', seasons],
    // what the import brought is one, told with the first sweep
    ['finding', 1 + findings],
    ['works', works],
  ]);
  return most.get(MATTER_RULES[matter].oncePer) ?? 0;
}

/** Notices to one owner about one fence and matter. */
interface Told {
  readonly ownerRef: string;
  readonly fenceRef: string;
  readonly matter: string;
  readonly notices: readonly NoticeRecord[];
}

function toldByKey(records: readonly NoticeRecord[]): readonly Told[] {
  const groups = new Map<string, NoticeRecord[]>();
  for (const record of records.filter(isTold)) {
    const key = JSON.stringify([record.ownerRef, record.fenceRef, record.matter]);
    groups.set(key, [...(groups.get(key) ?? []), record]);
  }
  return [...groups.entries()].map(([key, notices]) => {
    const [ownerRef = '', fenceRef = '', matter = ''] = JSON.parse(key) as readonly string[];
    return { ownerRef, fenceRef, matter, notices };
  });
}

/** Where an owner was told more often than the rule of the matter allows: over all years, or within one season. */
export function beyondRules(records: readonly NoticeRecord[], years: number, entered: EnteredWorks): readonly string[] {
  return toldByKey(records).flatMap(({ ownerRef, fenceRef, matter, notices }) => {
    const what = `${ownerRef}, ${fenceRef}, ${matter}`;
    // the years touch one season more than they are long
    const most = mostAllowed(matter, fenceRef, years + 1, entered);
    const faults = notices.length > most ? [`${what}: ${notices.length} times, ${most} allowed`] : [];
    const perSeason = new Map<string, number>();
    for (const { season } of notices) perSeason.set(season, (perSeason.get(season) ?? 0) + 1);
    const mostInOne = mostAllowed(matter, fenceRef, 1, entered);
    return [
      ...faults,
      ...[...perSeason]
        .filter(([, count]) => count > mostInOne)
        .map(([season, count]) => `${what}: ${count} times in season ${season}, ${mostInOne} allowed`),
    ];
  });
}

/** Changes that no notice of the same sweep tells each owner of the fence. */
export function untold(
  seen: readonly SeenChange[],
  records: readonly NoticeRecord[],
  ownersOf: (fenceRef: string) => readonly string[],
): readonly string[] {
  const decided = new Set(
    records.map(({ sweepId, fenceRef, ownerRef, matter }) => JSON.stringify([sweepId, fenceRef, ownerRef, matter])),
  );
  const before = (change: SeenChange, ownerRef: string): boolean =>
    records.some(
      (record) =>
        isTold(record) &&
        record.fenceRef === change.fenceRef &&
        record.ownerRef === ownerRef &&
        record.matter === change.matter &&
        (record.sweepId ?? 0) < change.sweepId,
    );
  return seen.flatMap((change) =>
    ownersOf(change.fenceRef)
      .filter((ownerRef) => !decided.has(JSON.stringify([change.sweepId, change.fenceRef, ownerRef, change.matter])))
      // a standing that flapped within its season was told already
      .filter((ownerRef) => !before(change, ownerRef))
      .map((ownerRef) => `${change.fenceRef}, ${change.matter}, sweep ${change.sweepId}: ${ownerRef} was not told`),
  );
}

/** Notices that were neither sent (a letter: written) within a day, nor held by a rule and sent within a day of their release. */
export function late(records: readonly NoticeRecord[], end: string): readonly string[] {
  return records.filter(isTold).flatMap((record) => {
    const { held, releasedAt, createdAt, channel, sentAt, writtenAt } = record;
    if (held !== null && releasedAt === null) return [];
    const from = releasedAt ?? createdAt;
    const done = channel === 'letter' ? writtenAt : sentAt;
    if (done !== null && hoursBetween(from, done) <= 24) return [];
    // decided on the last night
    if (done === null && hoursBetween(from, end) <= 24) return [];
    return [`${record.fenceRef}, ${record.matter} of ${createdAt}: ${done === null ? 'never sent' : `sent ${done}`}`];
  });
}

/**
 * Where a change of a visit is not in the queue from its own transaction on for an enrolled owner of its fences, and where one was queued twice.
 * An owner who knew nothing of a visit that is confirmed at once after being proposed hears of the confirmed day alone.
 */
export function visitFaults(changes: readonly SeenVisitChange[], records: readonly NoticeRecord[]): readonly string[] {
  const queued = new Set(records.map(({ visitUid, createdAt }) => `${visitUid} ${createdAt}`));
  const untoldChanges = changes
    .filter(({ uid, at }) => !queued.has(`${uid} ${at}`))
    .map(({ uid, state, sequence, at }) => `visit ${uid}, ${state}, change ${sequence} of ${at}: nobody was told`);
  const told = new Map<string, number>();
  for (const { visitUid, ownerRef, fenceRef, matter, occasion } of records.filter(isTold)) {
    if (visitUid === null) continue;
    const key = `${ownerRef}, ${fenceRef}, ${matter}, ${occasion}`;
    told.set(key, (told.get(key) ?? 0) + 1);
  }
  return [...untoldChanges, ...[...told].filter(([, times]) => times > 1).map(([key]) => `${key}: told twice`)];
}
