import { dayNumber } from '../../units/calendar-day.ts';
import type { FenceState, PostCondition, PostState } from '../post-state.ts';
import type { InspectionFacts, PostReading } from './inspection.ts';
import { postsOfOutcome, type StormOutcome } from './storm-outcome.ts';

/** Lean from which a post counts as leaning [deg]. Source: property maintenance rule of a Texas city (read). */
const LEANING_FROM_DEGREES = 15;
/** Lean up to which a post counts as upright again [deg]; judgement. */
const UPRIGHT_TO_DEGREES = 3;

/** A state with some posts changed; the same state where none is. */
function withPosts(state: FenceState, change: (post: PostState) => PostState): FenceState {
  const posts = state.posts.map(change);
  return posts.every((post, index) => post === state.posts[index]) ? state : { ...state, posts };
}

/** A post found upright is no longer leaning; one between upright and 15 degrees is as it was. */
function leaningAfter(before: boolean, degrees: number | null): boolean {
  if (degrees === null) return before;
  if (degrees > LEANING_FROM_DEGREES) return true;
  return degrees > UPRIGHT_TO_DEGREES && before;
}

function found(post: PostState, reading: PostReading, day: number): PostState {
  const before = post.condition;
  const condition: PostCondition = {
    broken: before.broken || reading.groundline?.kind === 'broken',
    leaning: leaningAfter(before.leaning, reading.leanDegrees),
    closedOff: before.closedOff || reading.closedOff,
    collarCracked: reading.collarCracked ?? before.collarCracked,
    railConnection: reading.railConnection ?? before.railConnection,
    cavityDiameterMm: reading.cavityMm ?? before.cavityDiameterMm,
  };
  const cut = reading.trimmerCutMm;
  const changed = (Object.keys(condition) as (keyof PostCondition)[]).some((key) => condition[key] !== before[key]);
  if (!changed && cut === null) return post;
  return { ...post, condition, cuts: cut === null ? post.cuts : { ...post.cuts, measured: { depthMm: cut, day } } };
}

/** The state after an inspection: what it found of each post holds from its day on. Throws RangeError for a post that is not there. */
export function afterInspection(state: FenceState, inspection: InspectionFacts): FenceState {
  const readings = new Map(inspection.readings.map((reading) => [reading.post, reading]));
  refuseStray(state, [...readings.keys()], `inspection ${inspection.ref}`);
  const day = dayNumber(inspection.day);
  return withPosts(state, (post) => {
    const reading = readings.get(post.number);
    return reading ? found(post, reading, day) : post;
  });
}

/** The state after a storm: posts that snapped are broken, posts that leaned lean. Throws RangeError for a post that is not there. */
export function afterOutcome(state: FenceState, outcome: StormOutcome, all: readonly StormOutcome[]): FenceState {
  if (outcome.posts !== 'all') refuseStray(state, outcome.posts, `outcome ${outcome.ref}`);
  if (outcome.result === 'stood') return state;
  const numbers = new Set(postsOfOutcome(outcome, all, state));
  return withPosts(state, (post) => {
    if (!numbers.has(post.number)) return post;
    const change = outcome.result === 'snapped' ? { broken: true } : { leaning: true };
    return { ...post, condition: { ...post.condition, ...change } };
  });
}

function refuseStray(state: FenceState, numbers: readonly number[], what: string): void {
  const known = new Set(state.posts.map((post) => post.number));
  const stray = numbers.filter((number) => !known.has(number));
  if (stray.length > 0) {
    throw new RangeError(`${what}: post ${stray.join(', ')} named, but the fence had no such post on that day`);
  }
}
