import type { CalendarDay } from '../../units/calendar-day.ts';

/** What a storm did to a post: leaned is more than 15 degrees, or refuses to stand plumb. */
export const STORM_RESULTS = ['stood', 'leaned', 'snapped'] as const;
export type StormResult = (typeof STORM_RESULTS)[number];

/** What was reported of some posts of a fence after one storm. What nobody reported is no evidence. */
export interface StormOutcome {
  readonly ref: string;
  /** Outcomes of one fence with the same storm share its wind. */
  readonly storm: string;
  readonly day: CalendarDay;
  /** Largest 3-second gust at 10 m in open terrain near the fence [m/s]. */
  readonly gustMps: number;
  /** Standard deviation of ln gust: how well the gust is known [-]. */
  readonly gustSpread: number;
  /** `all`: every post that no other outcome of the same storm names. */
  readonly posts: 'all' | readonly number[];
  readonly result: StormResult;
}

/** Numbers of the posts an outcome speaks of: those it names, or all that no other outcome of its storm names. */
export function postsOfOutcome(
  outcome: StormOutcome,
  all: readonly StormOutcome[],
  state: { readonly posts: readonly { readonly number: number }[] },
): readonly number[] {
  if (outcome.posts !== 'all') return outcome.posts;
  const named = new Set(all.flatMap(({ storm, posts }) => (storm === outcome.storm && posts !== 'all' ? posts : [])));
  return state.posts.map((post) => post.number).filter((number) => !named.has(number));
}
