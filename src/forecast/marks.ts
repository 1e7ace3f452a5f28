import type { GroupSpeeds, HazardCurve, Mark, SeasonForecast } from './fence-forecast.ts';

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
 * @param built the present build when new
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
  const now = seasons.findIndex(({ season }) => season === 1);
  for (const mark of marks) {
    if (isCrossed(mark, seasons[now]!)) {
      let first = now;
      while (first > 0 && isCrossed(mark, seasons[first - 1]!)) first -= 1;
      const sinceNew = first === 0 && isCrossed(mark, built);
      marksCrossed.push({ mark, season: sinceNew ? 'new' : seasons[first]!.label });
    } else {
      const ahead = seasons.slice(now + 1).find((season) => isCrossed(mark, season));
      if (ahead) marksAhead.push({ mark, season: ahead.label });
    }
  }
  return { marksCrossed, marksAhead };
}
