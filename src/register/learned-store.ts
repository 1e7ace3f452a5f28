import { climateBand } from '../decay/climate-band.ts';
import type { LearnedFacts } from '../forecast/evidence/learned-facts.ts';
import { type SoilKind, soilKind } from '../forecast/evidence/register-footing.ts';
import type { RegisterPace } from '../forecast/evidence/register-pace.ts';
import type { RegisterBelief } from '../forecast/evidence/register-pool.ts';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import type { Register } from './database.ts';
import type { LearnedValuesTable } from './learned-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** A value to be accepted: of the pace of a treatment class in a climate band, or of the footings in a kind of soil. */
export type LearnedValue = Pick<RegisterBelief, 'logShift' | 'low' | 'high' | 'spread' | 'fences'> & {
  readonly key: string;
  /** Readings, or posts whose footing a storm tried. */
  readonly seen: number;
} & (
    | (Pick<RegisterPace, 'treatmentClass' | 'climateBand'> & { readonly kind: 'pace' })
    | { readonly kind: 'footing'; readonly soilKind: SoilKind; readonly leaned: number }
  );

/** A value that holds under an acceptance; `since` is the acceptance in which it came in. */
export type HeldValue = LearnedValue & { readonly since: number };

/** Who did something about what was learned, when (ISO 8601, UTC) and with what note. */
export interface LearnedAct {
  readonly at: string;
  readonly by: string;
  readonly note: string;
}

/** An acceptance with every value that holds under it, by key. */
export interface LearnedVersion extends LearnedAct {
  readonly number: number;
  readonly values: readonly HeldValue[];
}

/** One entry of the history: an acceptance, or one that took an acceptance back. */
export type LearnedEntry =
  | (LearnedVersion & { readonly act: 'accepted'; readonly inForce: boolean; readonly revertedBy: number | null })
  | (LearnedAct & { readonly act: 'reverted'; readonly number: number; readonly reverted: number });

const rowOf = (value: HeldValue, acceptance: number): LearnedValuesTable => ({
  acceptance,
  key: value.key,
  kind: value.kind,
  treatment_class: value.kind === 'pace' ? value.treatmentClass : null,
  climate_band: value.kind === 'pace' ? value.climateBand : null,
  soil_kind: value.kind === 'footing' ? value.soilKind : null,
  log_shift: value.logShift,
  low: value.low,
  high: value.high,
  spread: value.spread,
  fences: value.fences,
  seen: value.seen,
  leaned: value.kind === 'footing' ? value.leaned : null,
  since: value.since,
});

function heldValue(row: LearnedValuesTable): HeldValue {
  const { key, low, high, spread, fences, seen, since } = row;
  const common = { key, logShift: row.log_shift, low, high, spread, fences, seen, since };
  const { treatment_class: treatmentClass, climate_band: band, soil_kind: soil, leaned } = row;
  if (row.kind === 'pace' && treatmentClass !== null && band !== null) {
    return { kind: 'pace', treatmentClass, climateBand: band, ...common };
  }
  if (soil !== null && leaned !== null) return { kind: 'footing', soilKind: soil, leaned, ...common };
  throw new Error(`the register holds an accepted value ${key} that is incomplete: restore a backup`);
}

/** Everything that was accepted and taken back, oldest first; nothing of it is ever edited. */
export async function learnedHistory(db: RegisterDb): Promise<readonly LearnedEntry[]> {
  const acts = await db.selectFrom('learned_acts').selectAll().orderBy('number').execute();
  const rows = await db.selectFrom('learned_values').selectAll().orderBy('acceptance').orderBy('key').execute();
  const revertedBy = new Map(acts.flatMap((act) => (act.reverted === null ? [] : [[act.reverted, act.number]])));
  const inForce = acts.filter((act) => act.act === 'accepted' && !revertedBy.has(act.number)).at(-1)?.number;
  return acts.map(({ number, at, by, note, reverted }): LearnedEntry => {
    if (reverted !== null) return { act: 'reverted', number, at, by, note, reverted };
    const values = rows.filter((row) => row.acceptance === number).map(heldValue);
    return {
      act: 'accepted',
      number,
      at,
      by,
      note,
      values,
      inForce: number === inForce,
      revertedBy: revertedBy.get(number) ?? null,
    };
  });
}

/** The acceptance that was in force at a moment (ISO 8601, UTC): the last until then that had not been taken back by then. */
export async function learnedInForceAt(db: RegisterDb, at: string): Promise<LearnedVersion | null> {
  const known = (await learnedHistory(db)).filter((entry) => entry.at <= at);
  const reverted = new Set(known.flatMap((entry) => (entry.act === 'reverted' ? [entry.reverted] : [])));
  return (
    known.flatMap((entry) => (entry.act === 'accepted' && !reverted.has(entry.number) ? [entry] : [])).at(-1) ?? null
  );
}

/**
 * The acceptance in force: the last that was not taken back; null where there is none.
 * @param without the number of one that is passed over, as if it had been taken back
 */
export async function learnedInForce(db: RegisterDb, without = 0): Promise<LearnedVersion | null> {
  const act = await db
    .selectFrom('learned_acts')
    .select(['number', 'at', 'by', 'note'])
    .where('act', '=', 'accepted')
    .where('number', '<>', without)
    .where('number', 'not in', (eb) =>
      eb
        .selectFrom('learned_acts')
        .select('reverted')
        .where('reverted', 'is not', null)
        .$castTo<{ reverted: number }>(),
    )
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (!act) return null;
  const rows = await db
    .selectFrom('learned_values')
    .selectAll()
    .where('acceptance', '=', act.number)
    .orderBy('key')
    .execute();
  return { ...act, values: rows.map(heldValue) };
}

/** True where two values of one quantity say the same and rest on as much. */
export const sameValue = (a: LearnedValue, b: LearnedValue): boolean =>
  a.logShift === b.logShift &&
  a.low === b.low &&
  a.high === b.high &&
  a.spread === b.spread &&
  a.fences === b.fences &&
  a.seen === b.seen;

async function nextNumber(db: RegisterDb): Promise<number> {
  const newest = await db
    .selectFrom('learned_acts')
    .select((eb) => eb.fn.max('number').as('number'))
    .executeTakeFirst();
  return (newest?.number ?? 0) + 1;
}

/** The values under a new acceptance: those in force, replaced by the new ones; a value that stays the same keeps its `since`. */
function valuesUnder(
  before: LearnedVersion | null,
  values: readonly LearnedValue[],
  number: number,
): readonly HeldValue[] {
  const held = new Map((before?.values ?? []).map((value) => [value.key, value]));
  for (const value of values) {
    const known = held.get(value.key);
    if (!known || !sameValue(known, value)) held.set(value.key, { ...value, since: number });
  }
  return [...held.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** A new version and the one that it takes the place of. */
export interface NewVersion {
  readonly before: LearnedVersion | null;
  readonly version: LearnedVersion;
}

/** The version that accepting values would make, without storing it; null where all of them hold already. */
export async function plannedVersion(
  db: RegisterDb,
  { at, by, note }: LearnedAct,
  values: readonly LearnedValue[],
): Promise<NewVersion | null> {
  const before = await learnedInForce(db);
  const number = await nextNumber(db);
  const held = valuesUnder(before, values, number);
  return held.every(({ since }) => since !== number)
    ? null
    : { before, version: { number, at, by, note, values: held } };
}

/**
 * Accepts values as a new version, in one transaction: they hold from now on beside those of the version in force that
 * they do not replace. Returns null, and stores nothing, where all of them hold already.
 */
export async function acceptLearned(
  register: Register,
  act: LearnedAct,
  values: readonly LearnedValue[],
): Promise<NewVersion | null> {
  return register.db.transaction().execute(async (tx) => {
    const planned = await plannedVersion(tx, act, values);
    if (!planned) return null;
    const { number, at, by, note, values: held } = planned.version;
    await tx.insertInto('learned_acts').values({ number, act: 'accepted', reverted: null, at, by, note }).execute();
    await tx
      .insertInto('learned_values')
      .values(held.map((value) => rowOf(value, number)))
      .execute();
    return planned;
  });
}

/**
 * Takes the acceptance in force back, in one transaction: the one before it holds again, or nothing. That is recorded as
 * an act of its own. Returns null, and stores nothing, where nothing was in force.
 */
export async function revertLearned(
  register: Register,
  { at, by, note }: LearnedAct,
): Promise<{ readonly reverted: LearnedVersion; readonly inForce: LearnedVersion | null } | null> {
  return register.db.transaction().execute(async (tx) => {
    const reverted = await learnedInForce(tx);
    if (!reverted) return null;
    const act = { number: await nextNumber(tx), act: 'reverted', reverted: reverted.number, at, by, note } as const;
    await tx.insertInto('learned_acts').values(act).execute();
    return { reverted, inForce: await learnedInForce(tx) };
  });
}

/** The treatment classes of wood that stands in a fence, or did. */
const classesOf = ({ wood, posts, works }: Pick<FenceFacts, 'wood' | 'posts' | 'works'>): ReadonlySet<string> =>
  new Set(
    [wood, ...posts.map((post) => post.wood), ...works.map((each) => ('wood' in each ? each.wood : null))].flatMap(
      (each) => (each ? [each.treatmentClass] : []),
    ),
  );

/**
 * What a version says of one fence: the paces of its treatment classes in its climate band, and the footings in its soil;
 * null where that is nothing. Its number is that of the acceptance in which the newest of these values came in, so that
 * accepting something that does not concern a fence leaves its facts as they are.
 */
export function learnedFactsFor(
  version: LearnedVersion | null,
  facts: Pick<FenceFacts, 'site' | 'wood' | 'posts' | 'works'>,
): LearnedFacts | null {
  if (!version) return null;
  const classes = classesOf(facts);
  const band = climateBand(facts.site.climate);
  const soil = soilKind(facts.site.soilClass);
  const own = version.values.filter((value) =>
    value.kind === 'pace' ? value.climateBand === band && classes.has(value.treatmentClass) : value.soilKind === soil,
  );
  if (own.length === 0) return null;
  const footing = own.find(({ kind }) => kind === 'footing');
  return {
    version: Math.max(...own.map(({ since }) => since)),
    paces: own.flatMap((value) =>
      value.kind === 'pace'
        ? [{ treatmentClass: value.treatmentClass, logShift: value.logShift, spread: value.spread }]
        : [],
    ),
    footing: footing ? { logShift: footing.logShift, spread: footing.spread } : null,
  };
}
