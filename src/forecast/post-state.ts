import type { GroundFacts, InstallDate, PostOverride, RunFacts } from './fence-facts.ts';
import type { PostWood } from './post-wood.ts';
import type { RotClock } from './rot-clock.ts';

/** Trimmer cuts of one post into one face: what an inspection measured, the depth a year, and the day guards ended them. */
interface TrimmerCuts {
  /** Last measured cut [mm] and its day; null where none was measured: then the yearly cut counts from installation. */
  readonly measured: { readonly depthMm: number; readonly day: number } | null;
  readonly yearlyCutMm: number;
  readonly untilDay: number | null;
}

/** What inspections and storms have found at one post, until works mend it. */
export interface PostCondition {
  /** Broken at the groundline, by rot or by a storm: it holds nothing. */
  readonly broken: boolean;
  /** More than 15 degrees out of plumb, or refused to stand plumb after a storm. */
  readonly leaning: boolean;
  readonly closedOff: boolean;
  readonly collarCracked: boolean;
  /** Strength left in the worst rail connection over a sound one [-]; null where nobody reported one. */
  readonly railConnection: number | null;
  readonly cavityDiameterMm: number;
}

/** A post at which nothing was found. */
export const SOUND_CONDITION: PostCondition = {
  broken: false,
  leaning: false,
  closedOff: false,
  collarCracked: false,
  railConnection: null,
  cavityDiameterMm: 0,
};

/** One post as it stands on a day, works until then done. */
export interface PostState {
  readonly number: number;
  /** Which piece of wood it is: another one after a swap or a rebuild. What was read of the old one says nothing of the new one's scatter. */
  readonly piece: string;
  readonly positionM: number;
  /** Bays that hang on it: one at either end of the run. */
  readonly bays: 1 | 2;
  readonly wood: PostWood;
  readonly installed: InstallDate;
  readonly condition: PostCondition;
  readonly clock: RotClock;
  readonly cuts: TrimmerCuts;
  /** Moment of a steel sleeve around the groundline [N m]; null without one. */
  readonly sleeveNm: number | null;
  readonly ground: GroundFacts;
  readonly sharedRun: PostOverride['sharedRun'];
}

/** A post as it was set: nothing found at it. */
export const soundPost = (post: PostState): PostState => ({ ...post, condition: SOUND_CONDITION });

/** A fence as it stands on a day. */
export interface FenceState {
  readonly run: RunFacts;
  /** In the order of their positions. */
  readonly posts: readonly PostState[];
  readonly soilSaturated: boolean;
  /** Installation of the present build: the last rebuild, or the fence's own. */
  readonly built: InstallDate;
}
