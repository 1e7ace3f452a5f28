import { loadArm, type PostLoad, postLoads, solidHeight } from '../capacity/post-load.ts';
import {
  CODE_HEIGHT_FLOOR_M,
  elevationFactor,
  exposureCoefficient,
  GUST_EFFECT_FACTOR,
  pressurePerSpeedSquared,
} from '../capacity/velocity-pressure.ts';
import type { EndFacts, RunFacts, SiteFacts } from './fence-facts.ts';
import { generatePostPositions } from './post-positions.ts';
import type { FenceState, PostState } from './post-state.ts';

/** What the wind asks of one post, from one run. */
export interface Demand {
  /** Wind force at 1 m/s, real height [N/(m/s)^2]. */
  readonly forcePerV2: number;
  /** The same with the 15 ft floor, as codes have it [N/(m/s)^2]. */
  readonly codeForcePerV2: number;
  /** Height of the force above ground [m]. */
  readonly armM: number;
}

/** A post with what the wind asks of it. A corner post has a demand from each of its two runs. */
export interface LoadedPost {
  readonly post: PostState;
  readonly load: PostLoad;
  readonly demands: readonly Demand[];
  /** True for a post between the first and the last whose load is within 15 % of a full bay's by Case A. */
  readonly isLinePost: boolean;
}

/** The demand that asks most of a post's bending at the groundline: of a corner post, that of the worse run. */
export const governingDemand = (demands: readonly Demand[]): Demand =>
  demands.reduce((worst, demand) => (demand.forcePerV2 * demand.armM > worst.forcePerV2 * worst.armM ? demand : worst));

/** A load up to this multiple of a full bay's by Case A makes a line post [-]; model choice. */
const LINE_POST_RATIO = 1.15;
/** Return length that stands in where an end is not recorded, over the height [-]; judgement. */
const ASSUMED_RETURN_RATIO = 2;

/** Return length of an end as the wind sees it [m]: 0 for a free edge or a gate, unbounded for a tie to a building. */
function returnLength(end: EndFacts, heightM: number): number {
  switch (end.kind) {
    case 'return':
      return end.returnLengthM;
    case 'building':
      return Number.POSITIVE_INFINITY;
    case 'unknown':
      return ASSUMED_RETURN_RATIO * heightM;
    case 'gate':
    case 'free':
      return 0;
  }
}

const loadsOf = (run: RunFacts, postPositionsM: readonly number[]): readonly PostLoad[] =>
  postLoads({
    heightM: run.heightM,
    bottomGapM: run.bottomGapM,
    runLengthM: run.runLengthM,
    solidity: run.solidity,
    returnLengthsM: [returnLength(run.ends[0], run.heightM), returnLength(run.ends[1], run.heightM)],
    postPositionsM,
  });

function demandOf(site: SiteFacts, run: RunFacts, load: PostLoad): Demand {
  const force = (floorM: number): number =>
    pressurePerSpeedSquared({
      exposureCoefficient: exposureCoefficient(run.heightM, site.exposure, floorM),
      topographicFactor: site.topographicFactor,
      elevationFactor: elevationFactor(site.elevationM),
    }) *
    GUST_EFFECT_FACTOR *
    load.governingM *
    solidHeight(run);
  return { forcePerV2: force(0), codeForcePerV2: force(CODE_HEIGHT_FLOOR_M), armM: loadArm(run) };
}

/**
 * Every post of a fence with its wind demand, in the order of the positions. A corner post carries the worse of its two
 * runs, so it gets both demands.
 * Source: ASCE 7-16 29.3 (see `postLoads`, `pressurePerSpeedSquared`); the 15 % rule is a model choice.
 */
export function loadedPosts(site: SiteFacts, state: FenceState): readonly LoadedPost[] {
  const loads = loadsOf(
    state.run,
    state.posts.map((post) => post.positionM),
  );
  const fullBay = Math.max(0, ...loads.slice(1, -1).map((load) => load.caseAM));
  const isInner = (index: number): boolean => index > 0 && index < loads.length - 1;
  return state.posts.map((post, index) => {
    const load = loads[index]!;
    const demands = [demandOf(site, state.run, load)];
    if (post.sharedRun) {
      const { run, end } = post.sharedRun;
      const other = loadsOf(run, generatePostPositions(run.runLengthM, run.postSpacingM));
      demands.push(demandOf(site, run, end === 0 ? other[0]! : other.at(-1)!));
    }
    return { post, load, demands, isLinePost: isInner(index) && load.governingM <= LINE_POST_RATIO * fullBay };
  });
}
