import type { GroupSpeeds, HazardCurve, Mark, SeasonForecast } from './fence-forecast.ts';
import { presentOrNextStretch } from './stretch.ts';

type Judged = Pick<SeasonForecast, 'line' | 'ends' | 'strengthLeft'>;

const RETURN_MARKS: readonly { readonly mark: Mark; readonly years: number }[] = [
  { mark: 'once in 50', years: 50 },
  { mark: 'once in 25', years: 25 },
  { mark: 'once in 10', years: 10 },
];

/** Share of the strength as built at which the first mark lies [-]. Source: two-thirds rule for wood poles, NESC 261 (memory). */
const TWO_THIRDS = 2 / 3;

const groupOf = (state: Judged): GroupSpeeds | null => state.line ?? state.ends;

function isCrossed(mark: Mark, state: Judged): boolean {
  if (mark === 'two thirds') return state.strengthLeft.p50 <= TWO_THIRDS;
  const once = groupOf(state)?.onceInYears ?? null;
  const { years } = RETURN_MARKS.find((entry) => entry.mark === mark)!;
  return once !== null && once <= years;
}

/** Marks crossed by season 1 with the season in which the present stretch began, and marks still ahead. */
export interface Marks {
  readonly marksCrossed: readonly { readonly mark: Mark; readonly season: string }[];
  readonly marksAhead: readonly { readonly mark: Mark; readonly season: string }[];
}

/**
 * Where a fence stands against its marks: two thirds of built strength, and holding only the gust that comes once in 50,
 * 25 or 10 years (these only with a hazard curve).
 * @param built the present posts when sound
 * @param seasons season states since then, in order
 * Source: marks are a model choice; two thirds after the rule for wood poles (memory).
 */
export function findMarks(built: Judged, seasons: readonly SeasonForecast[], hazard: HazardCurve): Marks {
  const marks: readonly Mark[] = [
    'two thirds',
    ...(hazard.kind === 'gumbel' ? RETURN_MARKS.map(({ mark }) => mark) : []),
  ];
  const marksCrossed: { mark: Mark; season: string }[] = [];
  const marksAhead: { mark: Mark; season: string }[] = [];
  for (const mark of marks) {
    const stretch = presentOrNextStretch(seasons, (season) => isCrossed(mark, season), isCrossed(mark, built));
    if (stretch) (stretch.present ? marksCrossed : marksAhead).push({ mark, season: stretch.label });
  }
  return { marksCrossed, marksAhead };
}
