import type { SiteFacts } from './fence-facts.ts';
import type { FenceState, PostState } from './post-state.ts';

/** What a crossing is worked out from, once the inputs are fixed. */
export interface SensitivityCase {
  readonly site: SiteFacts;
  readonly state: FenceState;
  /** Gust that the fence is compared with [m/s]. */
  readonly gustMps: number;
}

/** The same case with every post changed. */
export const withPosts = (at: SensitivityCase, change: (post: PostState) => PostState): SensitivityCase => ({
  ...at,
  state: { ...at.state, posts: at.state.posts.map(change) },
});

/** The same case on a changed site. */
export const withSite = (at: SensitivityCase, change: Partial<SiteFacts>): SensitivityCase => ({
  ...at,
  site: { ...at.site, ...change },
});

/** The same case with a changed run. */
export const withRun = (at: SensitivityCase, change: Partial<FenceState['run']>): SensitivityCase => ({
  ...at,
  state: { ...at.state, run: { ...at.state.run, ...change } },
});
