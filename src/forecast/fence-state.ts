import { type CalendarDay, DAYS_PER_YEAR, dayNumber } from '../units/calendar-day.ts';
import { afterInspection, afterOutcome } from './evidence/post-findings.ts';
import type { FenceFacts, InstallDate } from './fence-facts.ts';
import { generatePostPositions } from './post-positions.ts';
import { type FenceState, type PostCondition, type PostState, SOUND_CONDITION } from './post-state.ts';
import { RUNNING_CLOCK } from './rot-clock.ts';
import type { Works } from './works.ts';

const onDay = (day: CalendarDay): InstallDate => ({ earliest: day, latest: day });

/** An install date known as a range ends where the fence was first seen standing: by an inspection or in a storm. */
function seenBy({ inspections, outcomes }: FenceFacts, { earliest, latest }: InstallDate): InstallDate {
  const firstSeen = [...inspections, ...outcomes].reduce((first, { day }) => (day < first ? day : first), latest);
  return { earliest, latest: firstSeen > earliest ? firstSeen : earliest };
}

function firstState(facts: FenceFacts): FenceState {
  const cuts: PostState['cuts'] = {
    measured: null,
    yearlyCutMm: facts.trimmer.guards === true ? 0 : facts.trimmer.yearlyCutMm,
    untilDay: null,
  };
  const overrides = new Map(facts.posts.map((post) => [post.number, post]));
  const generated = generatePostPositions(facts.run.runLengthM, facts.run.postSpacingM);
  const posts = generated.map((positionM, index): Omit<PostState, 'bays'> => {
    const override = overrides.get(index + 1);
    overrides.delete(index + 1);
    return {
      number: index + 1,
      piece: `${index + 1}`,
      condition: SOUND_CONDITION,
      positionM: override?.positionM ?? positionM,
      wood: override?.wood ?? facts.wood,
      installed: override?.installed ?? seenBy(facts, facts.installed),
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

const byPosition = (posts: readonly Omit<PostState, 'bays'>[]): readonly PostState[] =>
  [...posts]
    .sort((a, b) => a.positionM - b.positionM || a.number - b.number)
    .map((post, index): PostState => ({ ...post, bays: index === 0 || index === posts.length - 1 ? 1 : 2 }));

/** The post that stands nearest to a position: what is set there anew inherits its footing and cuts. */
const nearestPost = (posts: readonly PostState[], positionM: number): PostState =>
  posts.reduce((nearest, post) =>
    Math.abs(post.positionM - positionM) < Math.abs(nearest.positionM - positionM) ? post : nearest,
  );

/** A new post set on a day, in the ground of the post that stands or stood nearest. */
const newPost = (
  posts: readonly PostState[],
  post: Pick<PostState, 'number' | 'positionM' | 'wood' | 'sharedRun'>,
  works: Works,
): Omit<PostState, 'bays'> => {
  const { ground, cuts } = nearestPost(posts, post.positionM);
  return {
    ...post,
    piece: newPiece(post.number, works),
    ground,
    cuts: { ...cuts, measured: null },
    condition: SOUND_CONDITION,
    installed: onDay(works.day),
    clock: RUNNING_CLOCK,
    sleeveNm: null,
  };
};

const newPiece = (number: number, works: Works): string => `${number} by ${works.ref}`;

function rebuilt(state: FenceState, works: Extract<Works, { kind: 'rebuild' }>): FenceState {
  const run = works.postSpacingM === null ? state.run : { ...state.run, postSpacingM: works.postSpacingM };
  const shared = new Map(state.posts.map((post) => [post.positionM, post.sharedRun]));
  const posts = generatePostPositions(run.runLengthM, run.postSpacingM).map((positionM, index) => {
    const sharedRun = shared.get(positionM) ?? null;
    return newPost(state.posts, { number: index + 1, positionM, wood: works.wood, sharedRun }, works);
  });
  return { run, posts: byPosition(posts), soilSaturated: state.soilSaturated, built: onDay(works.day) };
}

/** A post closed off is opened again where works leave it neither broken nor leaning. */
const mended = (condition: PostCondition): PostCondition => ({
  ...condition,
  closedOff: condition.closedOff && (condition.broken || condition.leaning),
});

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
        condition: mended({ ...post.condition, leaning: false, collarCracked: false }),
      };
    case 'post-swap':
      return {
        ...post,
        piece: newPiece(post.number, works),
        wood: works.wood,
        installed: onDay(works.day),
        // The collar stays in the ground until a footing reset.
        condition: { ...SOUND_CONDITION, collarCracked: post.condition.collarCracked },
        cuts: { ...post.cuts, measured: null },
        clock: RUNNING_CLOCK,
        sleeveNm: null,
      };
    case 'steel-sleeve':
      return {
        ...post,
        sleeveNm: works.momentCapacityNm,
        condition: mended({ ...post.condition, broken: false }),
      };
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
    return newPost(state.posts, { number, positionM, wood: works.wood, sharedRun: null }, works);
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

/** Something that changes the state of a fence on a day. */
interface Event {
  readonly day: CalendarDay;
  /** On one day a storm comes first, then what an inspection finds, then what is done about it. */
  readonly order: 0 | 1 | 2;
  readonly ref: string;
  readonly after: (state: FenceState) => FenceState;
}

const eventsOf = ({ works, inspections, outcomes }: FenceFacts): readonly Event[] => {
  const events: Event[] = [
    ...outcomes.map(
      (outcome): Event => ({ ...outcome, order: 0, after: (state) => afterOutcome(state, outcome, outcomes) }),
    ),
    ...inspections.map(
      (inspection): Event => ({ ...inspection, order: 1, after: (state) => afterInspection(state, inspection) }),
    ),
    ...works.map(
      (each): Event => ({ day: each.day, ref: each.ref, order: 2, after: (state) => afterWorks(state, each) }),
    ),
  ];
  return events.sort(
    (a, b) =>
      (a.day < b.day ? -1 : a.day > b.day ? 1 : a.order - b.order) || (a.ref < b.ref ? -1 : a.ref > b.ref ? 1 : 0),
  );
};

/**
 * The states a fence has gone through: as installed, and after each day on which works were done or something was found
 * that changed it. A state holds from its day on; nothing acts back. Throws RangeError where a recorded post does not exist.
 */
export function fenceStates(
  facts: FenceFacts,
): readonly { readonly fromDay: CalendarDay | null; readonly state: FenceState }[] {
  const states: { fromDay: CalendarDay | null; state: FenceState }[] = [{ fromDay: null, state: firstState(facts) }];
  for (const { day, after } of eventsOf(facts)) {
    const latest = states.at(-1)!;
    const state = after(latest.state);
    if (state === latest.state) continue;
    if (latest.fromDay === day) latest.state = state;
    else states.push({ fromDay: day, state });
  }
  return states;
}

/** The state that holds on a day, from `fenceStates`. */
export function stateOn(states: ReturnType<typeof fenceStates>, day: CalendarDay): FenceState {
  let found = states[0]!.state;
  for (const { fromDay, state } of states) if (fromDay !== null && fromDay <= day) found = state;
  return found;
}

/** The state on the eve of a day: what a storm or an inspection of that day met. */
export function stateBefore(states: ReturnType<typeof fenceStates>, day: CalendarDay): FenceState {
  let found = states[0]!.state;
  for (const { fromDay, state } of states) if (fromDay !== null && fromDay < day) found = state;
  return found;
}
