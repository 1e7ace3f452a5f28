import type { FenceForecast, FenceStanding, Mark } from '../forecast/fence-forecast.ts';
import { seasonOne } from '../forecast/fence-forecast.ts';
import { isWorse } from '../forecast/standing.ts';

/** What a notice is about: a standing that was reached, a mark that was crossed, or a fence that stands clear again. */
export const MATTERS = [
  'short from new',
  'short',
  'closing',
  'ends short',
  'once in 10',
  'once in 25',
  'once in 50',
  'two thirds',
  'better',
] as const;
export type Matter = (typeof MATTERS)[number];

/** Marks from the mildest to the most severe. */
const MARKS_BY_SEVERITY: readonly Mark[] = ['two thirds', 'once in 50', 'once in 25', 'once in 10'];

/** How a fence stood when it was last judged, and what has been told about it. */
export interface ToldState {
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  /** Which build of the fence it was: `as built`, or the works that last renewed it. */
  readonly generation: string;
  readonly toldMarks: readonly Mark[];
}

/** How a fence stands now: its forecast, and its standings after the margin an improvement has to pass. */
export interface JudgedFence {
  readonly forecast: FenceForecast;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly generation: string;
}

/** A notice to give: at most one is ever given per fence, owner, matter and occasion. */
export interface NoticeDraft {
  readonly matter: Matter;
  readonly occasion: string;
}

/** True for a standing that counts as short; never for ends that are not judged apart. */
export const isShort = (standing: FenceStanding | null): boolean => standing !== null && isWorse(standing, 'closing');
const crossedMarks = (forecast: FenceForecast): readonly Mark[] => {
  const crossed = new Set(forecast.marksCrossed.map((entry) => entry.mark));
  return MARKS_BY_SEVERITY.filter((mark) => crossed.has(mark));
};

/** True where an owner may be told that nothing needs doing: it stands clear, its ends hold, and no post was found broken, leaning or closed off. */
const mayBeBetter = ({ standing, endsStanding, forecast: { found } }: Omit<JudgedFence, 'generation'>): boolean =>
  standing === 'clear' &&
  !isShort(endsStanding) &&
  found.broken.length + found.leaning.length + found.closedOff.length === 0;

function firstMatter(after: JudgedFence): Matter | null {
  if (after.standing !== 'clear') return after.standing;
  if (isShort(after.endsStanding)) return 'ends short';
  return crossedMarks(after.forecast).at(-1) ?? null;
}

function laterMatters(before: ToldState, after: JudgedFence): readonly Matter[] {
  const matters: Matter[] = [];
  if (after.standing !== 'clear' && isWorse(after.standing, before.standing)) matters.push(after.standing);
  if (mayBeBetter(after) && before.standing !== 'clear') matters.push('better');
  if (isShort(after.endsStanding) && !isShort(before.endsStanding)) matters.push('ends short');
  const told = new Set(before.toldMarks);
  return [...matters, ...crossedMarks(after.forecast).filter((mark) => !told.has(mark))];
}

/** True where what a notice is about is so by the forecast as it is now; otherwise it must not be told any more. */
export function stillHolds(matter: Matter, now: Omit<JudgedFence, 'generation'>): boolean {
  if (matter === 'better') return mayBeBetter(now);
  if (matter === 'ends short') return isShort(now.endsStanding);
  if (isStandingMatter(matter)) return now.standing === matter;
  return crossedMarks(now.forecast).some((mark) => mark === matter);
}

/** True for a matter that is a standing of the fence. */
export const isStandingMatter = (matter: Matter): boolean =>
  matter === 'closing' || matter === 'short' || matter === 'short from new';

const isMark = (matter: Matter): boolean => (MARKS_BY_SEVERITY as readonly Matter[]).includes(matter);

/**
 * The notices that a new forecast calls for. On the first forecast of a fence: one, for its standing where that is not
 * clear, else for the most severe thing there is to tell. Later: one for each standing that worsened, each mark newly
 * crossed, and for a fence that stands clear again; an unchanged fence calls for none.
 * A mark is told once per build of the fence, a standing at most once per season.
 */
export function decideNotices(before: ToldState | null, after: JudgedFence): readonly NoticeDraft[] {
  const season = seasonOne(after.forecast).label;
  const draft = (matter: Matter): NoticeDraft => ({
    matter,
    occasion: isMark(matter) ? after.generation : `${after.generation}, season ${season}`,
  });
  if (before) return laterMatters(before, after).map(draft);
  const matter = firstMatter(after);
  return matter ? [draft(matter)] : [];
}

/**
 * The marks that count as told after a forecast: those crossed now and those told before about the same build. A renewed
 * fence keeps only what is still crossed, so that a mark it recovers from can be told again.
 */
export function toldMarksAfter(before: ToldState | null, after: JudgedFence): readonly Mark[] {
  const kept = before && before.generation === after.generation ? before.toldMarks : [];
  const told = new Set([...kept, ...crossedMarks(after.forecast)]);
  return MARKS_BY_SEVERITY.filter((mark) => told.has(mark));
}
