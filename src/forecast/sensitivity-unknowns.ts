import { BELIEF_DIMENSIONS, type BeliefDimension } from './belief-points.ts';
import type { InstallDate } from './fence-facts.ts';
import type { SensitivityCase } from './sensitivity-case.ts';
import { FOOTING_PRIOR } from './unknown-priors.ts';

/**
 * What can make an unknown better known: readings of rot depth at an inspection, digging at a post at an inspection, papers
 * of the build; or no visit at all, only what storms did to the fence.
 */
export type NarrowedBy = 'rot readings' | 'digging' | 'papers' | 'storms only';

/** An unknown of a fence, the words for its ends, and what can narrow it. */
export interface SensitivityUnknown {
  readonly dimension: BeliefDimension;
  readonly input: string;
  readonly low: string;
  readonly high: string;
  readonly narrowedBy: NarrowedBy;
}

const UNKNOWNS: Readonly<Record<BeliefDimension, Omit<SensitivityUnknown, 'dimension'>>> = {
  pace: { input: 'rot pace', low: 'slow, 1 in 10', high: 'fast, 1 in 10', narrowedBy: 'rot readings' },
  'fibre strength': {
    input: 'fibre strength',
    low: 'weak, 1 in 10',
    high: 'strong, 1 in 10',
    narrowedBy: 'storms only',
  },
  footing: { input: 'footing strength', low: 'weak, 1 in 10', high: 'strong, 1 in 10', narrowedBy: 'storms only' },
  'permanent load': {
    input: 'shelter and shape',
    low: 'light load, 1 in 10',
    high: 'heavy load, 1 in 10',
    narrowedBy: 'storms only',
  },
  'install date': { input: 'install date', low: 'early, 1 in 10', high: 'late, 1 in 10', narrowedBy: 'papers' },
  embedment: { input: 'embedment', low: 'shallow, 1 in 10', high: 'deep, 1 in 10', narrowedBy: 'digging' },
  'footing diameter': {
    input: 'footing diameter',
    low: 'narrow, 1 in 10',
    high: 'wide, 1 in 10',
    narrowedBy: 'digging',
  },
};

/** True where an install date is known as a range of days. */
export const isDateRange = (date: InstallDate): boolean => date.earliest !== date.latest;

/**
 * The unknowns that a fence has: always those that no record can give, such as its rot pace; the footing's measures and the
 * install date only where they are not recorded.
 */
export function sensitivityUnknowns({ state }: SensitivityCase): readonly SensitivityUnknown[] {
  const { posts, built } = state;
  const asked: Partial<Record<BeliefDimension, boolean>> = {
    'install date': isDateRange(built) || posts.some((post) => isDateRange(post.installed)),
    embedment: posts.some((post) => post.ground.embedmentM === null),
    'footing diameter': posts.some(
      ({ ground }) => (ground.footing ?? FOOTING_PRIOR.footing) === 'concrete' && ground.footingDiameterM === null,
    ),
  };
  return BELIEF_DIMENSIONS.filter((dimension) => asked[dimension] ?? true).map((dimension) => ({
    dimension,
    ...UNKNOWNS[dimension],
  }));
}
