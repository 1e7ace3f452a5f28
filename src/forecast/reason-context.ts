import type { BeliefPoints } from './belief-points.ts';
import type { FenceFacts } from './fence-facts.ts';
import type { FenceForecast, SeasonForecast } from './fence-forecast.ts';
import type { PostClass } from './post-classes.ts';
import type { StateModel } from './state-model.ts';

/** What the steps of a chain are written from: one post of the fence in one season, every unknown at its median. */
export interface ReasonContext {
  readonly facts: FenceFacts;
  readonly forecast: FenceForecast;
  readonly season: SeasonForecast;
  /** All points of the belief, over which the bands are taken. */
  readonly belief: BeliefPoints;
  readonly model: StateModel;
  readonly postClass: PostClass;
  /** True at installation, when wood is sound. */
  readonly sound: boolean;
}
