import type { FenceForecast, FenceStanding, Mark } from '../forecast/fence-forecast.ts';
import { seasonOne } from '../forecast/fence-forecast.ts';
import { isWorse } from '../forecast/standing.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { MATTER_RULES, type Matter, type OfficeMatter } from './matter-rules.ts';

/** Marks from the mildest to the most severe. */
const MARKS_BY_SEVERITY: readonly Mark[] = ['two thirds', 'once in 50', 'once in 25', 'once in 10'];

/** How a fence stood when it was last judged, and what has been told about it. */
export interface ToldState {
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  /** Which build of the fence it was: `as built`, or the works that last renewed it. */
  readonly generation: string;
  readonly toldMarks: readonly Mark[];
  /** What was found at which posts and has been told: `broken 4`, `closed off 7`. */
  readonly toldFindings: readonly string[];
}

/** How a fence stands now: its forecast, and its standings after the margin an improvement has to pass. */
export interface JudgedFence {
  readonly forecast: FenceForecast;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly generation: string;
  /** The calendar day at its site. */
  readonly today: CalendarDay;
}

/** What of a judged fence decides whether a notice about it still holds. */
export type StandingNow = Pick<JudgedFence, 'forecast' | 'standing' | 'endsStanding'>;

/** A notice to give: at most one is ever given per fence, owner, matter and occasion. */
export interface NoticeDraft {
  readonly matter: Matter;
  readonly occasion: string;
}

/** A notice for the office's own list: at most one is ever given per fence, matter and occasion. */
export interface OfficeDraft {
  readonly matter: OfficeMatter;
  readonly occasion: string;
}

/** True for a standing that counts as short; never for ends that are not judged apart. */
export const isShort = (standing: FenceStanding | null): boolean => standing !== null && isWorse(standing, 'closing');
const crossedMarks = (forecast: FenceForecast): readonly Mark[] => {
  const crossed = new Set(forecast.marksCrossed.map((entry) => entry.mark));
  return MARKS_BY_SEVERITY.filter((mark) => crossed.has(mark));
};

/** What is found at which posts and makes the fence dangerous: `broken 4`, `leaning 5`, `closed off 7`. */
export const dangerousFindings = ({ found }: FenceForecast): readonly string[] => [
  ...found.closedOff.map((post) => `closed off ${post}`),
  ...found.broken.map((post) => `broken ${post}`),
  ...found.leaning.map((post) => `leaning ${post}`),
];

/** True where an owner may be told that nothing needs doing: it stands clear, its ends hold, and no post was found broken, leaning or closed off. */
const mayBeBetter = ({ standing, endsStanding, forecast }: StandingNow): boolean =>
  standing === 'clear' && !isShort(endsStanding) && dangerousFindings(forecast).length === 0;

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
export function stillHolds(matter: Matter, now: StandingNow): boolean {
  if (matter === 'works done') return true;
  if (matter === 'better') return mayBeBetter(now);
  if (matter === 'dangerous') return dangerousFindings(now.forecast).length > 0;
  if (matter === 'reminder') return now.standing === 'short';
  if (matter === 'ends short') return isShort(now.endsStanding);
  if (isStandingMatter(matter)) return now.standing === matter;
  return crossedMarks(now.forecast).some((mark) => mark === matter);
}

/** True for a matter that is a standing of the fence. */
export const isStandingMatter = (matter: Matter): boolean =>
  matter === 'closing' || matter === 'short' || matter === 'short from new';

/** What a notice of the matter is kept under, so that it is given once for it. */
function occasionOf(matter: Matter, after: JudgedFence, findings: readonly string[]): string {
  const { oncePer } = MATTER_RULES[matter];
  if (oncePer === 'build') return after.generation;
  if (oncePer === 'finding') return `${findings.join(', ')}; told ${after.today}`;
  return `${after.generation}, season ${seasonOne(after.forecast).label}`;
}

/**
 * The notices that a new forecast calls for, by the rules of `MATTER_RULES`. Findings that make a fence dangerous always come
 * first. On the first forecast of a fence: beside them one, for its standing where that is not clear, else for the most
 * severe thing there is to tell. Later: one for each standing that worsened, each mark newly crossed, and for a fence that
 * stands clear again; an unchanged fence calls for none.
 */
export function decideNotices(before: ToldState | null, after: JudgedFence): readonly NoticeDraft[] {
  const told = new Set(before?.toldFindings ?? []);
  const findings = dangerousFindings(after.forecast).filter((finding) => !told.has(finding));
  const first = before ? null : firstMatter(after);
  const matters: readonly Matter[] = before ? laterMatters(before, after) : first ? [first] : [];
  return [...(findings.length > 0 ? (['dangerous'] as const) : []), ...matters].map((matter) => ({
    matter,
    occasion: occasionOf(matter, after, findings),
  }));
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

/** What the office is to be told of a fence: findings that make it dangerous, and readings that disagree with what was expected. */
export function decideOfficeNotices(before: ToldState | null, after: JudgedFence): readonly OfficeDraft[] {
  const dangerous = decideNotices(before, after).filter(({ matter }) => matter === 'dangerous');
  const { evidence } = after.forecast;
  const days = evidence?.readPosts.map(({ day }) => day) ?? [];
  const last = days.reduce((latest, day) => (day > latest ? day : latest), '');
  return [
    ...dangerous.map(({ occasion }) => ({ matter: 'dangerous' as const, occasion })),
    ...(evidence?.disagrees ? [{ matter: 'readings disagree' as const, occasion: `readings to ${last}` }] : []),
  ];
}
