import { type CalendarDay, DAYS_PER_YEAR, dayNumber } from '../units/calendar-day.ts';
import type { FenceFacts, GroundFacts, InstallDate, PostOverride, RunFacts } from './fence-facts.ts';
import { generatePostPositions } from './post-positions.ts';
import type { PostWood } from './post-wood.ts';
import { type RotClock, RUNNING_CLOCK } from './rot-clock.ts';
import type { Works } from './works.ts';

/** Yearly trimmer cuts of one post: depth a year into one face, and the day guards ended them. */
interface TrimmerCuts {
  readonly yearlyCutMm: number;
  readonly untilDay: number | null;
}

/** One post as it stands on a day, works until then done. */
export interface PostState {
  readonly number: number;
  readonly positionM: number;
  readonly wood: PostWood;
  readonly installed: InstallDate;
  readonly clock: RotClock;
  readonly cuts: TrimmerCuts;
  /** Moment of a steel sleeve around the groundline [N m]; null without one. */
  readonly sleeveNm: number | null;
  readonly ground: GroundFacts;
  readonly sharedRun: PostOverride['sharedRun'];
}

/** A fence as it stands on a day. */
export interface FenceState {
  readonly run: RunFacts;
  /** In the order of their positions. */
  readonly posts: readonly PostState[];
  readonly soilSaturated: boolean;
  /** Installation of the present build: the last rebuild, or the fence's own. */
  readonly built: InstallDate;
}

const onDay = (day: CalendarDay): InstallDate => ({ earliest: day, latest: day });

function firstState(facts: FenceFacts): FenceState {
  const cuts: TrimmerCuts = {
    yearlyCutMm: facts.trimmer.guards === true ? 0 : facts.trimmer.yearlyCutMm,
    untilDay: null,
  };
  const overrides = new Map(facts.posts.map((post) => [post.number, post]));
  const generated = generatePostPositions(facts.run.runLengthM, facts.run.postSpacingM);
  const posts = generated.map((positionM, index): PostState => {
    const override = overrides.get(index + 1);
    overrides.delete(index + 1);
    return {
      number: index + 1,
      positionM: override?.positionM ?? positionM,
      wood: override?.wood ?? facts.wood,
      installed: override?.installed ?? facts.installed,
      clock: RUNNING_CLOCK,
      cuts,
      sleeveNm: null,
      ground: facts.ground,
      sharedRun: override?.sharedRun ?? null,
    };
  });
  const stray = [...overrides.keys()];
  if (stray.length > 0) {
    throw new RangeError(
      `fence ${facts.ref}: post ${stray.join(', ')} recorded, but the run has posts 1 to ${posts.length}`,
    );
  }
  return { run: facts.run, posts: byPosition(posts), soilSaturated: facts.site.soilSaturated, built: facts.installed };
}

const byPosition = (posts: readonly PostState[]): readonly PostState[] =>
  [...posts].sort((a, b) => a.positionM - b.positionM || a.number - b.number);

/** The post that stands nearest to a position: what is set there anew inherits its footing and cuts. */
const nearestPost = (posts: readonly PostState[], positionM: number): PostState =>
  posts.reduce((nearest, post) =>
    Math.abs(post.positionM - positionM) < Math.abs(nearest.positionM - positionM) ? post : nearest,
  );

/** A new post set on a day, in the ground of the post that stands or stood nearest. */
const newPost = (
  posts: readonly PostState[],
  post: Pick<PostState, 'number' | 'positionM' | 'wood' | 'sharedRun'>,
  day: CalendarDay,
): PostState => {
  const { ground, cuts } = nearestPost(posts, post.positionM);
  return { ...post, ground, cuts, installed: onDay(day), clock: RUNNING_CLOCK, sleeveNm: null };
};

function rebuilt(state: FenceState, works: Extract<Works, { kind: 'rebuild' }>): FenceState {
  const run = works.postSpacingM === null ? state.run : { ...state.run, postSpacingM: works.postSpacingM };
  const shared = new Map(state.posts.map((post) => [post.positionM, post.sharedRun]));
  const posts = generatePostPositions(run.runLengthM, run.postSpacingM).map((positionM, index) => {
    const sharedRun = shared.get(positionM) ?? null;
    return newPost(state.posts, { number: index + 1, positionM, wood: works.wood, sharedRun }, works.day);
  });
  return { run, posts, soilSaturated: state.soilSaturated, built: onDay(works.day) };
}

function changedPost(post: PostState, works: Works, day: number): PostState {
  switch (works.kind) {
    case 'groundline-treatment': {
      const stop = { fromDay: day, toDay: day + works.yearsEffective * DAYS_PER_YEAR };
      return { ...post, clock: { ...post.clock, stops: [...post.clock.stops, stop] } };
    }
    case 'liner':
      return { ...post, clock: { ...post.clock, linerFromDay: post.clock.linerFromDay ?? day } };
    case 'trimmer-guard':
      return { ...post, cuts: { ...post.cuts, untilDay: post.cuts.untilDay ?? day } };
    case 'footing-reset':
      return {
        ...post,
        ground: { embedmentM: works.embedmentM, footing: works.footing, footingDiameterM: works.footingDiameterM },
      };
    case 'post-swap':
      return { ...post, wood: works.wood, installed: onDay(works.day), clock: RUNNING_CLOCK, sleeveNm: null };
    case 'steel-sleeve':
      return { ...post, sleeveNm: works.momentCapacityNm };
    case 'drainage':
    case 'added-posts':
    case 'rebuild':
      return post;
  }
}

function withAddedPosts(state: FenceState, works: Extract<Works, { kind: 'added-posts' }>): FenceState {
  const highest = Math.max(...state.posts.map((post) => post.number));
  const added = works.positionsM.map((positionM, index) => {
    const number = highest + 1 + index;
    return newPost(state.posts, { number, positionM, wood: works.wood, sharedRun: null }, works.day);
  });
  return { ...state, posts: byPosition([...state.posts, ...added]) };
}

function afterWorks(state: FenceState, works: Works): FenceState {
  if (works.kind === 'rebuild') return rebuilt(state, works);
  if (works.kind === 'added-posts') return withAddedPosts(state, works);
  const touched = works.posts === 'all' ? null : new Set(works.posts);
  const day = dayNumber(works.day);
  const posts = state.posts.map((post) =>
    touched && !touched.has(post.number) ? post : changedPost(post, works, day),
  );
  return { ...state, posts, soilSaturated: works.kind === 'drainage' ? false : state.soilSaturated };
}

/** Works in the order in which they act: by day, then by ref. */
const inOrder = (works: readonly Works[]): readonly Works[] =>
  [...works].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.ref < b.ref ? -1 : a.ref > b.ref ? 1 : 0));

/**
 * The states a fence has gone through: as installed, and after each day on which works were done. A state holds from its
 * day on; works never act back. Throws RangeError where a recorded post does not exist.
 */
export function fenceStates(
  facts: FenceFacts,
): readonly { readonly fromDay: CalendarDay | null; readonly state: FenceState }[] {
  const states: { fromDay: CalendarDay | null; state: FenceState }[] = [{ fromDay: null, state: firstState(facts) }];
  for (const works of inOrder(facts.works)) {
    const latest = states.at(-1)!;
    const state = afterWorks(latest.state, works);
    if (latest.fromDay === works.day) latest.state = state;
    else states.push({ fromDay: works.day, state });
  }
  return states;
}

/** The state that holds on a day, from `fenceStates`. */
export function stateOn(states: ReturnType<typeof fenceStates>, day: CalendarDay): FenceState {
  let found = states[0]!.state;
  for (const { fromDay, state } of states) if (fromDay !== null && fromDay <= day) found = state;
  return found;
}
