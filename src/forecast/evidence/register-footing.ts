import { FOOTING_SPREAD, SOIL_CLASSES, type SoilClass } from '../../capacity/soil-class.ts';
import { interpolate } from '../../units/interpolation.ts';
import { BELIEF_DIMENSIONS, type BeliefDimension, type BeliefPoints } from '../belief-points.ts';
import type { FenceFacts } from '../fence-facts.ts';
import { type fenceStates, stateBefore } from '../fence-state.ts';
import { fenceBelief } from './fence-belief.ts';
import { type FenceLikelihood, poolFences, poolOffsets, type RegisterBelief } from './register-pool.ts';
import { stormLogLikelihood } from './storm-likelihood.ts';
import { postsOfOutcome } from './storm-outcome.ts';

/** Posts reported leaned or standing, and how many of them leaned, from which a footing may be accepted; judgement. */
export const LEAST_TRIED = 20;
export const LEAST_LEANED = 5;

/** Soils by what holds a footing in them; what is learned of one says nothing of the other. */
export const SOIL_KINDS = ['sand', 'clay'] as const;
export type SoilKind = (typeof SOIL_KINDS)[number];

/** Offsets of ln footing resistance at which storms are weighed [-]; beyond the ends the end value holds. */
const OFFSETS: readonly number[] = Array.from({ length: 25 }, (_, i) => (i - 12) / 8);
/** Every eighth belief point and its mirror image: 32 of 128, still their own mirror image. */
const POINT_STRIDE = 8;

/** What the storms of one fence say of its footings, over the published resistance. */
export interface FenceFootingEvidence extends FenceLikelihood {
  readonly soilKind: SoilKind;
  /** Posts reported leaned or standing after a storm that could try their footing, storm by storm. */
  readonly tried: number;
  readonly leaned: number;
}

/** What a register has shown of the footings in one kind of soil, as ln over the published resistance. */
export interface RegisterFooting extends RegisterBelief {
  readonly kind: 'footing';
  /** As `footing/sand`. */
  readonly key: string;
  readonly soilKind: SoilKind;
  readonly tried: number;
  readonly leaned: number;
  /** True from 20 posts tried on, 5 of them leaned: the office may accept it. */
  readonly enough: boolean;
}

/** The kind of a soil class. */
export const soilKind = (soilClass: SoilClass): SoilKind => SOIL_CLASSES[soilClass].strength.kind;

/** Footings in a kind of soil, as people name them: `footing/sand`. */
export const footingKey = (kind: SoilKind): string => `footing/${kind}`;

/** Some of the points, once for each offset of the footing, the offset in place of their own footing. */
function pointsAtOffsets(points: BeliefPoints, indices: readonly number[]): BeliefPoints {
  const count = OFFSETS.length * indices.length;
  const source = (i: number): number => indices[i % indices.length]!;
  const repeat = (values: Readonly<Record<BeliefDimension, Float64Array>>): Record<BeliefDimension, Float64Array> => {
    const repeated = {} as Record<BeliefDimension, Float64Array>;
    for (const dimension of BELIEF_DIMENSIONS) {
      repeated[dimension] = Float64Array.from({ length: count }, (_, i) => values[dimension][source(i)]!);
    }
    return repeated;
  };
  const footing = Float64Array.from(
    { length: count },
    (_, i) => OFFSETS[Math.floor(i / indices.length)]! / FOOTING_SPREAD,
  );
  return {
    ...points,
    count,
    levels: repeat(points.levels),
    scores: { ...repeat(points.scores), footing },
    weights: null,
  };
}

/**
 * ln likelihood of what storms were reported to have done to a fence, at offsets of ln footing resistance from -1.5 to 1.5
 * [-]: pace (after the readings), strength, permanent load and unknown dimensions averaged over belief points.
 * Source: Bayes' rule; see `stormLogLikelihood`.
 */
export function footingLogLikelihoods(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
): { readonly offsets: readonly number[]; readonly logLikelihoods: readonly number[] } {
  const published = { ...facts, learned: null };
  const { points } = fenceBelief({ ...published, outcomes: [] }, states);
  const indices = Array.from({ length: points.count }, (_, i) => i).filter(
    (i) => i % POINT_STRIDE === 0 || (points.count - 1 - i) % POINT_STRIDE === 0,
  );
  const weights = indices.map((i) => points.weights?.[i] ?? 1);
  const total = weights.reduce((a, b) => a + b);
  const logs = stormLogLikelihood(published, states, pointsAtOffsets(points, indices));
  const logLikelihoods = OFFSETS.map((_, offset) => {
    const each = logs.subarray(offset * indices.length, (offset + 1) * indices.length);
    const highest = each.reduce((a, b) => Math.max(a, b));
    const sum = weights.reduce((all, weight, i) => all + weight * Math.exp(each[i]! - highest), 0);
    return highest + Math.log(sum / total);
  });
  return { offsets: OFFSETS, logLikelihoods };
}

/** Posts whose footing a storm could try and of which was reported whether it held. */
function triedPosts(
  { outcomes }: FenceFacts,
  states: ReturnType<typeof fenceStates>,
): Pick<FenceFootingEvidence, 'tried' | 'leaned'> {
  let [tried, leaned] = [0, 0];
  for (const outcome of outcomes) {
    if (outcome.result === 'snapped') continue;
    const state = stateBefore(states, outcome.day);
    const numbers = new Set(postsOfOutcome(outcome, outcomes, state));
    const count = state.posts.filter(
      ({ number, condition }) => numbers.has(number) && !condition.broken && !condition.leaning,
    ).length;
    tried += count;
    if (outcome.result === 'leaned') leaned += count;
  }
  return { tried, leaned };
}

/**
 * What the storm outcomes of a fence say of its footings: ln likelihood over ln(resistance / published); null where no
 * footing was tried. Some 0.1 s a fence where all posts stood, 0.3 s where some leaned.
 * Source: see `footingLogLikelihoods`.
 */
export function fenceFootingEvidence(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
): FenceFootingEvidence | null {
  const { tried, leaned } = triedPosts(facts, states);
  if (tried === 0) return null;
  const { offsets, logLikelihoods } = footingLogLikelihoods(facts, states);
  return {
    ref: facts.ref,
    soilKind: soilKind(facts.site.soilClass),
    tried,
    leaned,
    logLikelihoods: poolOffsets(FOOTING_SPREAD).map((offset) => interpolate(offset, offsets, logLikelihoods)),
  };
}

/** The footings in one kind of soil, from the fences of the register; with none, the published ones. */
export function registerFooting(kind: SoilKind, fences: readonly FenceFootingEvidence[]): RegisterFooting {
  const own = fences.filter((fence) => fence.soilKind === kind);
  const tried = own.reduce((sum, fence) => sum + fence.tried, 0);
  const leaned = own.reduce((sum, fence) => sum + fence.leaned, 0);
  return {
    kind: 'footing',
    key: footingKey(kind),
    soilKind: kind,
    tried,
    leaned,
    enough: tried >= LEAST_TRIED && leaned >= LEAST_LEANED,
    ...poolFences(own, FOOTING_SPREAD),
  };
}
