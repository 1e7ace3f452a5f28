import type { Band } from '../../forecast/band.ts';
import type { InspectionMethod, PostReading } from '../../forecast/evidence/inspection.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { fenceStates, stateBefore, stateOn } from '../../forecast/fence-state.ts';
import { foundRemarks } from '../../forecast/found-posts.ts';
import type { PostCondition } from '../../forecast/post-state.ts';
import type { PostWood } from '../../forecast/post-wood.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import type { CatalogueKind } from '../catalogue-entry.ts';
import { believedWidths } from './believed-width.ts';
import type { VisitWorks } from './visit.ts';

/** What an inspection last found at a post that still stands. */
interface LastReading {
  readonly day: CalendarDay;
  readonly method: InspectionMethod;
  readonly reading: PostReading;
}

/** One post of a fence to go past. */
export interface CheckedPost {
  readonly number: number;
  /** From end A, the named end [m]. */
  readonly positionM: number;
  readonly wood: PostWood;
  readonly condition: PostCondition;
  readonly sleeved: boolean;
  readonly lastReading: LastReading | null;
  /** Sound width believed to be left [mm]; null where a caliper has nothing to tell. */
  readonly believedWidthMm: Band | null;
  /** What is done at it, in the order in which it is done. */
  readonly todo: readonly CatalogueKind[];
  /** True where a new post is set midway to the next one. */
  readonly newPostAfter: boolean;
}

/** A fence post by post, as it is known on a day. */
export interface CheckList {
  /** In the order in which one meets them from end A. */
  readonly posts: readonly CheckedPost[];
  /** What was found and not mended, in plain words, the most pressing first. */
  readonly findings: readonly string[];
}

/** Kinds done to the fence as a whole, not at its posts. */
const AT_NO_POST: ReadonlySet<CatalogueKind> = new Set(['drainage', 'added-posts']);

type States = ReturnType<typeof fenceStates>;

/** The last reading of each piece of wood until a day, by the piece: what was read of a post since replaced says nothing of its successor. */
function lastReadings(facts: FenceFacts, states: States, day: CalendarDay): ReadonlyMap<string, LastReading> {
  const last = new Map<string, LastReading>();
  const inOrder = facts.inspections
    .filter((inspection) => inspection.day <= day)
    .toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.ref < b.ref ? -1 : 1));
  for (const { day: readOn, method, readings } of inOrder) {
    const pieces = new Map(stateBefore(states, readOn).posts.map(({ number, piece }) => [number, piece]));
    for (const reading of readings) {
      const piece = pieces.get(reading.post);
      if (piece !== undefined) last.set(piece, { day: readOn, method, reading });
    }
  }
  return last;
}

/**
 * What to look at and what to do at each post of a fence on a day. Of added posts the bays are taken as their works name
 * them: by the lower number of the two posts that a bay lies between.
 */
export function checkList(facts: FenceFacts, works: readonly VisitWorks[], day: CalendarDay): CheckList {
  const states = fenceStates(facts);
  const state = stateOn(states, day);
  const readings = lastReadings(facts, states, day);
  const widths = believedWidths(facts, day);
  const added = new Set(works.flatMap(({ kind, posts }) => (kind === 'added-posts' ? posts : [])));
  return {
    posts: state.posts.map((post, index): CheckedPost => {
      const next = state.posts[index + 1];
      return {
        number: post.number,
        positionM: post.positionM,
        wood: post.wood,
        condition: post.condition,
        sleeved: post.sleeveNm !== null,
        lastReading: readings.get(post.piece) ?? null,
        believedWidthMm: widths.get(post.number) ?? null,
        todo: works
          .filter(({ kind, posts }) => !AT_NO_POST.has(kind) && posts.includes(post.number))
          .map(({ kind }) => kind),
        newPostAfter: next !== undefined && added.has(Math.min(post.number, next.number)),
      };
    }),
    findings: foundRemarks(state),
  };
}
