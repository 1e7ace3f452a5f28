import { setImmediate } from 'node:timers/promises';
import { CLIMATE_BANDS } from '../decay/climate-band.ts';
import { TREATMENT_CLASS_KEYS } from '../decay/treatment-class.ts';
import { rounded } from '../forecast/band.ts';
import {
  type FenceFootingEvidence,
  fenceFootingEvidence,
  footingKey,
  type RegisterFooting,
  registerFooting,
  SOIL_KINDS,
} from '../forecast/evidence/register-footing.ts';
import {
  type FencePaceEvidence,
  fencePaceEvidence,
  paceKey,
  type RegisterPace,
  registerPace,
} from '../forecast/evidence/register-pace.ts';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { fenceStates } from '../forecast/fence-state.ts';
import type { Register } from '../register/database.ts';
import { listFenceRefs, loadFenceFacts } from '../register/fence-facts-store.ts';
import { countFences } from '../register/fence-list.ts';
import {
  acceptLearned,
  type HeldValue,
  type LearnedAct,
  type LearnedValue,
  type LearnedVersion,
  learnedFactsFor,
  learnedInForce,
  type NewVersion,
  plannedVersion,
  revertLearned,
  sameValue,
} from '../register/learned-store.ts';
import { canonicalJson } from './canonical-json.ts';

/** Fences of one chunk. */
const CHUNK_SIZE = 200;
/** Decimals kept of what is learned: far below what its interval allows. */
const DIGITS = 4;

/** What the register shows of one quantity now, what of it is in force, and what the office can do about it. */
export type LearnedCell = (RegisterPace | RegisterFooting) & {
  readonly held: HeldValue | null;
  /** `in force`: exactly as the register shows it now. */
  readonly state: 'in force' | 'can be accepted' | 'too few';
};

/** A fence whose evidence cannot be read, and why. */
interface UnreadFence {
  readonly ref: string;
  readonly message: string;
}

/** What the register has learned so far, by quantity: paces in the order of classes and bands, then footings. */
export interface RegisterLearning {
  readonly cells: readonly LearnedCell[];
  readonly inForce: LearnedVersion | null;
  readonly unread: readonly UnreadFence[];
}

/** Told after each fence: how many of how many were walked. */
export type LearningProgress = (done: number, total: number) => void;

/** Walks the register in chunks, in the order of the refs. */
async function eachFence(register: Register, visit: (facts: FenceFacts) => Promise<void>): Promise<void> {
  let after: string | null = null;
  for (;;) {
    const refs: readonly string[] = (await listFenceRefs(register, after, CHUNK_SIZE)).map(({ ref }) => ref);
    const facts = await loadFenceFacts(register, refs);
    for (const ref of refs) {
      const known = facts.get(ref);
      if (known) await visit(known);
    }
    const last = refs.at(-1);
    if (last === undefined) return;
    after = last;
  }
}

function cellOf(shown: RegisterPace | RegisterFooting, held: HeldValue | null): LearnedCell {
  const cell = {
    ...shown,
    logShift: rounded(shown.logShift, DIGITS),
    low: rounded(shown.low, DIGITS),
    high: rounded(shown.high, DIGITS),
    spread: rounded(shown.spread, DIGITS),
  };
  const same = held !== null && sameValue(held, learnedValue(cell));
  return { ...cell, held, state: same ? 'in force' : cell.enough ? 'can be accepted' : 'too few' };
}

/**
 * What the register has learned of rot paces and footings, set against the published values; computed anew from every
 * reading and storm outcome. What is in force does not enter, so that accepting does not feed on itself.
 */
export async function learnFromRegister(
  register: Register,
  onProgress: LearningProgress = () => undefined,
): Promise<RegisterLearning> {
  const paces: FencePaceEvidence[] = [];
  const footings: FenceFootingEvidence[] = [];
  const unread: UnreadFence[] = [];
  const total = await countFences(register);
  let done = 0;
  await eachFence(register, async (facts) => {
    try {
      if (facts.inspections.length > 0 || facts.outcomes.length > 0) {
        const states = fenceStates(facts);
        const ofPace = fencePaceEvidence(facts, states);
        const ofFooting = fenceFootingEvidence(facts, states);
        paces.push(...ofPace);
        if (ofFooting) footings.push(ofFooting);
      }
    } catch (error) {
      unread.push({ ref: facts.ref, message: error instanceof Error ? error.message : String(error) });
    }
    done += 1;
    onProgress(done, total);
    await setImmediate();
  });
  const inForce = await learnedInForce(register.db);
  const held = new Map(inForce?.values.map((value) => [value.key, value]));
  const cells: LearnedCell[] = [];
  const add = (key: string, seen: boolean, cell: () => RegisterPace | RegisterFooting): void => {
    if (seen || held.has(key)) cells.push(cellOf(cell(), held.get(key) ?? null));
  };
  for (const treatmentClass of TREATMENT_CLASS_KEYS) {
    for (const band of CLIMATE_BANDS) {
      const seen = paces.some((pace) => pace.treatmentClass === treatmentClass && pace.climateBand === band);
      add(paceKey(treatmentClass, band), seen, () => registerPace(treatmentClass, band, paces));
    }
  }
  for (const soil of SOIL_KINDS) {
    const seen = footings.some(({ soilKind }) => soilKind === soil);
    add(footingKey(soil), seen, () => registerFooting(soil, footings));
  }
  return { cells, inForce, unread };
}

function learnedValue(cell: RegisterPace | RegisterFooting): LearnedValue {
  const { key, logShift, low, high, spread, fences } = cell;
  const common = { key, logShift, low, high, spread, fences };
  if (cell.kind === 'pace') {
    const { kind, treatmentClass, climateBand, readings } = cell;
    return { kind, treatmentClass, climateBand, seen: readings, ...common };
  }
  const { kind, soilKind, tried, leaned } = cell;
  return { kind, soilKind, seen: tried, leaned, ...common };
}

/** Refs of the fences of which two versions say different things: those whose forecasts the next sweep makes anew. */
async function fencesBetween(
  register: Register,
  before: LearnedVersion | null,
  after: LearnedVersion | null,
): Promise<readonly string[]> {
  const refs: string[] = [];
  await eachFence(register, async (facts) => {
    const [was, is] = [before, after].map((version) => canonicalJson(learnedFactsFor(version, facts)));
    if (was !== is) refs.push(facts.ref);
  });
  return refs;
}

/** What came of accepting; where it is refused, nothing was stored. */
export type Acceptance =
  | {
      readonly kind: 'accepted';
      readonly version: LearnedVersion;
      /** Fences whose forecasts the next sweep makes anew. */
      readonly fences: readonly string[];
    }
  | RefusedAcceptance;

/** Why nothing can be accepted. */
export type RefusedAcceptance =
  /** Named, but nothing was seen of it. */
  | { readonly kind: 'not seen'; readonly keys: readonly string[] }
  /** Named, or all there is, but too little was seen. */
  | { readonly kind: 'too few'; readonly cells: readonly LearnedCell[] }
  /** All of it is in force already. */
  | { readonly kind: 'in force already'; readonly cells: readonly LearnedCell[] };

/**
 * Recomputes what the register has learned and accepts it as a new version: the quantities named, or all of which enough
 * was seen.
 * @param only keys of the quantities, as `ground-contact/4` and `footing/sand`; null for all
 */
export async function acceptLearning(
  register: Register,
  act: LearnedAct,
  only: readonly string[] | null,
  onProgress?: LearningProgress,
): Promise<{ readonly learning: RegisterLearning; readonly acceptance: Acceptance }> {
  const learning = await learnFromRegister(register, onProgress);
  const wanted = wantedCells(only, learning.cells);
  if (!Array.isArray(wanted)) return { learning, acceptance: wanted };
  const accepted = await acceptLearned(register, act, wanted.map(learnedValue));
  if (!accepted) return { learning, acceptance: { kind: 'in force already', cells: wanted } };
  const fences = await fencesBetween(register, accepted.before, accepted.version);
  return { learning, acceptance: { kind: 'accepted', version: accepted.version, fences } };
}

/** What `acceptLearning` would accept, without storing it: the new version and the one before, or why there is none. */
export async function planLearning(
  register: Register,
  act: LearnedAct,
  only: readonly string[] | null,
  onProgress?: LearningProgress,
): Promise<{
  readonly learning: RegisterLearning;
  readonly plan: ({ readonly kind: 'planned' } & NewVersion) | RefusedAcceptance;
}> {
  const learning = await learnFromRegister(register, onProgress);
  const wanted = wantedCells(only, learning.cells);
  if (!Array.isArray(wanted)) return { learning, plan: wanted };
  const planned = await plannedVersion(register.db, act, wanted.map(learnedValue));
  return { learning, plan: planned ? { kind: 'planned', ...planned } : { kind: 'in force already', cells: wanted } };
}

/** The quantities that are to be accepted, or why they cannot be. */
function wantedCells(only: readonly string[] | null, cells: readonly LearnedCell[]): LearnedCell[] | RefusedAcceptance {
  const unknown = (only ?? []).filter((key) => !cells.some((cell) => cell.key === key));
  if (unknown.length > 0) return { kind: 'not seen', keys: unknown };
  const wanted = only === null ? cells.filter(({ enough }) => enough) : cells.filter(({ key }) => only.includes(key));
  if (wanted.length === 0) return { kind: 'too few', cells };
  const tooFew = wanted.filter(({ enough }) => !enough);
  return tooFew.length > 0 ? { kind: 'too few', cells: tooFew } : wanted;
}

/** What came of taking back. */
export interface Reversion {
  readonly reverted: LearnedVersion;
  readonly inForce: LearnedVersion | null;
  /** Fences whose forecasts the next sweep makes anew. */
  readonly fences: readonly string[];
}

/** Takes the acceptance in force back; null where there is none. */
export async function revertLearning(register: Register, act: LearnedAct): Promise<Reversion | null> {
  const done = await revertLearned(register, act);
  if (!done) return null;
  return { ...done, fences: await fencesBetween(register, done.reverted, done.inForce) };
}
