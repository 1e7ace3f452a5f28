import type { PostSection } from '../../capacity/post-section.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../../decay/treatment-class.ts';
import { type CalendarDay, dayNumber } from '../../units/calendar-day.ts';
import type { FenceFacts } from '../fence-facts.ts';
import { type fenceStates, stateBefore } from '../fence-state.ts';
import type { FenceState, PostState } from '../post-state.ts';
import { exposureYears } from '../rot-clock.ts';
import { type DepthSeen, depthSeen } from './depth-likelihood.ts';
import type { InspectionMethod } from './inspection.ts';
import { postsOfOutcome } from './storm-outcome.ts';

/** One groundline reading of a piece of wood. */
interface PieceReading {
  readonly inspectionRef: string;
  readonly day: CalendarDay;
  readonly method: InspectionMethod;
  readonly seen: DepthSeen;
  /** Exposure that counts for rot on that day [a], by the level of the install date where it is known as a range. */
  readonly exposureAt: (dateLevel: number) => number;
}

/** Everything that was read at the groundline of one piece of wood, in the order of the days. */
export interface PieceEvidence {
  readonly piece: string;
  readonly post: number;
  readonly treatmentClass: TreatmentClass;
  readonly section: PostSection;
  /** True where the install date is known as a range. */
  readonly dateIsRange: boolean;
  readonly readings: readonly PieceReading[];
}

const canRot = (post: PostState): boolean => TREATMENT_CLASSES[post.wood.treatmentClass].rots;

/** True where a storm of the same day snapped a post: then it is not rot that broke it. */
const snappedOn = ({ outcomes }: FenceFacts, day: CalendarDay, post: number, eve: FenceState): boolean =>
  outcomes.some(
    (outcome) =>
      outcome.day === day && outcome.result === 'snapped' && postsOfOutcome(outcome, outcomes, eve).includes(post),
  );

function exposureOn(post: PostState, day: CalendarDay): (dateLevel: number) => number {
  const earliest = dayNumber(post.installed.earliest);
  const latest = dayNumber(post.installed.latest);
  return (dateLevel) => exposureYears(post.clock, earliest + (latest - earliest) * dateLevel, dayNumber(day));
}

/**
 * The groundline readings of a fence by piece of wood; readings of what does not rot, and of posts already broken, say
 * nothing and are left out; so is "broken" where a sleeve carries the post or a storm of that day snapped it. Pieces come in the order of their posts' numbers.
 */
export function groundlineEvidence(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
): readonly PieceEvidence[] {
  const pieces = new Map<string, PieceEvidence & { readings: PieceReading[] }>();
  const inspections = [...facts.inspections].sort((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : a.ref < b.ref ? -1 : 1,
  );
  for (const { ref, day, method, readings } of inspections) {
    const eve = stateBefore(states, day);
    const posts = new Map(eve.posts.map((post) => [post.number, post]));
    for (const { post: number, groundline } of readings) {
      const post = posts.get(number);
      if (!groundline || !post || !canRot(post) || post.condition.broken) continue;
      if (groundline.kind === 'broken' && (post.sleeveNm !== null || snappedOn(facts, day, number, eve))) continue;
      const reading: PieceReading = {
        inspectionRef: ref,
        day,
        method,
        seen: depthSeen(groundline, post.wood.section, method),
        exposureAt: exposureOn(post, day),
      };
      const known = pieces.get(post.piece);
      if (known) known.readings.push(reading);
      else {
        pieces.set(post.piece, {
          piece: post.piece,
          post: number,
          treatmentClass: post.wood.treatmentClass,
          section: post.wood.section,
          dateIsRange: post.installed.earliest !== post.installed.latest,
          readings: [reading],
        });
      }
    }
  }
  return [...pieces.values()].sort((a, b) => a.post - b.post || (a.piece < b.piece ? -1 : 1));
}
