import type { InspectionFacts, PostReading } from '../../src/forecast/evidence/inspection.ts';
import type { StormOutcome } from '../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts, PostOverride } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import type { FenceState, PostState } from '../../src/forecast/post-state.ts';
import type { Works } from '../../src/forecast/works.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

/** Another wood than that of the example fence: 4.5 in square. */
export const STRONG_WOOD = { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 114, depthMm: 114 } } as const;
/** Another still: of grade No.1. */
export const NO_1_WOOD = { ...PINE_4X4, grade: 'no-1' } as const;

/** The example fence with other facts. */
export const withFacts = (facts: Partial<FenceFacts>): FenceFacts => ({ ...EXAMPLE_FENCE, ...facts });
/** Its last state. */
export const lastState = (facts: Partial<FenceFacts>): FenceState => fenceStates(withFacts(facts)).at(-1)!.state;
/** One of its posts. */
export const postOf = (state: FenceState, number: number): PostState =>
  state.posts.find((post) => post.number === number)!;
/** What is recorded of one post. */
export const override = (number: number, values: Partial<PostOverride>): PostOverride => ({
  number,
  positionM: null,
  installed: null,
  wood: null,
  sharedRun: null,
  ...values,
});
/** What was found at one post; nothing looked at but what is given. */
export const reading = (post: number, values: Partial<PostReading>): PostReading => ({
  post,
  groundline: null,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
  ...values,
});
/** An inspection by the awl. */
export const inspection = (day: string, ...readings: readonly PostReading[]): InspectionFacts => ({
  ref: `I ${day}`,
  day,
  method: 'awl-or-probe',
  readings,
});
/** What a gale did in March 2022: it snapped post 5. */
export const outcome = (values: Partial<StormOutcome>): StormOutcome => ({
  ref: 'O',
  storm: 'gale',
  day: '2022-03-05',
  gustMps: 30,
  gustSpread: 0.1,
  posts: [5],
  result: 'snapped',
  ...values,
});
/** Something done to post 5 in March 2022. */
export const works = (kind: Works['kind'], values: Record<string, unknown> = {}): Works =>
  ({ ref: 'W', day: '2022-03-05', posts: [5], kind, ...values }) as unknown as Works;
