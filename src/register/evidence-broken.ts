import { postsOfOutcome } from '../forecast/evidence/storm-outcome.ts';
import { stateBefore } from '../forecast/fence-state.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { States } from './evidence-agreement.ts';
import type { InspectionWithReadings } from './evidence-store.ts';
import { type StormOutcomeRecord, stormOutcomeFacts } from './storm-outcome-record.ts';
import type { WorksRecord } from './works-record.ts';

/** What was seen of one fence, and the states it went through by its works alone. */
export interface SeenOfFence {
  readonly inspections: readonly InspectionWithReadings[];
  readonly outcomes: readonly StormOutcomeRecord[];
  readonly works: readonly WorksRecord[];
  readonly states: States;
}

/** Where a post was reported broken. */
export interface BrokenSeen {
  readonly by: 'inspection' | 'storm';
  readonly ref: string;
  readonly day: CalendarDay;
  readonly post: number;
}

/**
 * A post that an outcome says stood, and that was reported broken: `before` the storm, so that it cannot have stood; or found
 * so `after` it with nothing seen of it in between, so that it may have broken in it.
 */
export interface StoodClash {
  readonly outcome: StormOutcomeRecord;
  readonly when: 'before' | 'after';
  readonly broken: BrokenSeen;
}

/** The piece of wood that stood as a post on the eve of a day: a swap makes it another. */
const pieceOn = ({ states }: SeenOfFence, day: CalendarDay, post: number): string | undefined =>
  stateBefore(states, day).posts.find(({ number }) => number === post)?.piece;

const postsOf = (seen: SeenOfFence, outcome: StormOutcomeRecord): readonly number[] =>
  postsOfOutcome(
    stormOutcomeFacts(outcome),
    seen.outcomes.map(stormOutcomeFacts),
    stateBefore(seen.states, outcome.day),
  );

function brokenPosts(seen: SeenOfFence): readonly BrokenSeen[] {
  const found = seen.inspections.flatMap(({ record: { ref, day }, readings }) =>
    readings
      .filter(({ groundlineKind }) => groundlineKind === 'broken')
      .map(({ post }): BrokenSeen => ({ by: 'inspection', ref, day, post })),
  );
  const snapped = seen.outcomes
    .filter(({ result }) => result === 'snapped')
    .flatMap((outcome) =>
      postsOf(seen, outcome).map((post): BrokenSeen => ({ by: 'storm', ref: outcome.ref, day: outcome.day, post })),
    );
  return [...found, ...snapped].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

/** True where a steel sleeve was put on the post from that day on and before the other. */
const sleevedBetween = ({ works }: SeenOfFence, post: number, from: CalendarDay, before: CalendarDay): boolean =>
  works.some(
    ({ kind, day, posts }) =>
      kind === 'steel-sleeve' && day >= from && day < before && (posts === 'all' || posts.includes(post)),
  );

/** True where a later storm, or a reading that found it whole, speaks of the post before it was found broken. */
function seenBetween(seen: SeenOfFence, outcome: StormOutcomeRecord, { post, day }: BrokenSeen): boolean {
  const stormed = seen.outcomes.some(
    (other) => other.day > outcome.day && other.day <= day && postsOf(seen, other).includes(post),
  );
  return (
    stormed ||
    seen.inspections.some(
      ({ record, readings }) =>
        record.day >= outcome.day &&
        record.day < day &&
        readings.some(
          (reading) => reading.post === post && reading.groundlineKind !== null && reading.groundlineKind !== 'broken',
        ),
    )
  );
}

function clashOf(
  seen: SeenOfFence,
  outcome: StormOutcomeRecord,
  post: number,
  broken: readonly BrokenSeen[],
): StoodClash | null {
  const piece = pieceOn(seen, outcome.day, post);
  const same = broken.filter((each) => each.post === post && pieceOn(seen, each.day, post) === piece);
  const before = same.findLast(({ day }) => day < outcome.day && !sleevedBetween(seen, post, day, outcome.day));
  if (before) return { outcome, when: 'before', broken: before };
  const after = same.find(({ by, day }) => by === 'inspection' && day >= outcome.day);
  return after && !seenBetween(seen, outcome, after) ? { outcome, when: 'after', broken: after } : null;
}

/** Every post of a fence that an outcome says stood against a report that it was broken, by outcome and post. */
export function stoodClashes(seen: SeenOfFence): readonly StoodClash[] {
  const broken = brokenPosts(seen);
  if (broken.length === 0) return [];
  return seen.outcomes
    .filter(({ result }) => result === 'stood')
    .flatMap((outcome) => postsOf(seen, outcome).map((post) => clashOf(seen, outcome, post, broken)))
    .filter((clash) => clash !== null);
}
