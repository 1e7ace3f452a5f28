import type { CalendarDay } from '../units/calendar-day.ts';
import type { Band } from './band.ts';
import type { EvidenceSummary } from './evidence/evidence-summary.ts';

/** Judgement of line posts or ends against the design gust, worst last. */
export type FenceStanding = 'clear' | 'closing' | 'short' | 'short from new';

/** Two thirds of built strength, or the gust it still holds comes once in 50, 25 or 10 years. */
export type Mark = 'two thirds' | 'once in 50' | 'once in 25' | 'once in 10';

/** What breaks a post: bending or shear at the groundline, or the rail connection where an inspection reported it. */
export type SnapState = 'bending' | 'shear' | 'rail connection';

/** Snap and lean speed of one group of posts (line posts, or ends) at one date. Speeds [m/s]. */
export interface GroupSpeeds {
  readonly snapMps: Band;
  readonly leanMps: Band;
  readonly snapState: SnapState;
  readonly leanState: 'footing' | 'collar';
  /** Numbers of the posts that decide this group's snap speed. */
  readonly decidingPosts: readonly number[];
  /** Speed by allowable stress at p50 depth, on the basis the design wind was entered in [m/s]. */
  readonly codeSnapMps: number;
  readonly codeLeanMps: number;
  /** Return period of the gust that equals the p50 snap speed [a]; null without a hazard curve. */
  readonly onceInYears: number | null;
}

/** State and risk at the opening of one season (or at installation, `season` null and age 0). */
export interface SeasonForecast {
  /** Label: the year in which the season opens, `2027` or `2027/28`; `new` for the state at installation. */
  readonly label: string;
  /** 1 = running or next to open; 0, -1, … the past; null = at installation. */
  readonly season: number | null;
  readonly day: CalendarDay;
  readonly ageYears: number;
  /** Groundline rot depth per face of the median line post [mm]. */
  readonly depthMm: Band;
  /** Bending strength left over bending strength as built, median post [-]. */
  readonly strengthLeft: Band;
  /** Line posts; null where the run is too short to have any. */
  readonly line: GroupSpeeds | null;
  /** End-zone posts; null where there are none. */
  readonly ends: GroupSpeeds | null;
  /** The four risk numbers are given for seasons 1 to 30 only. */
  readonly pShort: number | null;
  readonly expectedPostsShort: number | null;
  readonly pAnyShort: number | null;
  /** Probability that the fence snaps within this season if it still stands at its opening; null without a curve. */
  readonly pSnap: number | null;
}

/** The verdict a plan checker would compute, at installation or today. */
export interface CodeVerdict {
  readonly when: 'new' | 'today';
  readonly enteredGustMps: number;
  readonly snapMps: number;
  readonly leanMps: number;
  readonly postMeets: boolean;
  readonly footingMeets: boolean;
  /** Does the post, and does the footing, carry the 16 psf minimum (a flag, never part of a speed)? */
  readonly postMeetsMinimumPressure: boolean;
  readonly footingMeetsMinimumPressure: boolean;
}

/** An input the register does not know, what stands in for it, and how far it moves the answer. */
export interface UnknownInput {
  readonly input: 'install date' | 'embedment' | 'footing' | 'treatment class' | 'species' | 'end kind';
  readonly standsIn: string;
  /** The speed it moves most. */
  readonly moves: 'snap' | 'lean';
  /** Change of that speed in season 1 as the unknown runs from its 10th to its 90th percentile [m/s]. */
  readonly swingMps: number;
}

/** The wind a site is judged against. */
export interface DesignGust {
  readonly gustMps: number;
  /** Return period it was read at [a]; null for a local fence rule or an entered point without a curve. */
  readonly returnPeriodYears: number | null;
  /** In plain words: how the design gust follows from what was entered. */
  readonly explanation: string;
}

/** A site's yearly maximum gust: a Gumbel curve, or the reason there is none. */
export type HazardCurve =
  | { readonly kind: 'gumbel'; readonly locationMps: number; readonly scaleMps: number; readonly explanation: string }
  | { readonly kind: 'none'; readonly reason: string };

/** Posts at which something was found that works have not mended to this day, by their numbers. */
export interface FoundPosts {
  readonly broken: readonly number[];
  readonly leaning: readonly number[];
  readonly closedOff: readonly number[];
  readonly crackedCollars: readonly number[];
  readonly hollow: readonly number[];
}

/** The forecast of one fence: pure function of `FenceFacts`, season 1 and the settings; deterministic to the byte. */
export interface FenceForecast {
  readonly modelVersion: string;
  readonly fenceRef: string;
  readonly designGust: DesignGust;
  readonly hazard: HazardCurve;
  /** `new` first, then each season opening since installation, then seasons 1 to 30. */
  readonly seasons: readonly SeasonForecast[];
  readonly postCount: number;
  /** Which posts are line posts and which are ends, today. */
  readonly linePosts: readonly number[];
  readonly endPosts: readonly number[];
  /** Standing of the line posts before any margin (of the end posts where there are no line posts). */
  readonly standing: FenceStanding;
  /** Standing of the ends; null where they are what the fence is judged by, or where there are none. */
  readonly endsStanding: FenceStanding | null;
  /** The same judged against 1.03 times the design gust: what an improvement has to reach. */
  readonly standingWithMargin: FenceStanding;
  readonly endsStandingWithMargin: FenceStanding | null;
  /** Label of the first season from season 1 on in which it is short; null if not within 30. */
  readonly shortSeason: string | null;
  readonly endsShortSeason: string | null;
  /** Season in which the present, or else the next, short stretch of the judged posts begins: `new` where it was built short; null if not within 30. */
  readonly shortFrom: string | null;
  /** Season in which the present, or else the next, stretch begins in which it snaps before it leans; `since new`; null if not within 30. */
  readonly turnover: string | null;
  /** Marks crossed by season 1, each with the label of the season in which it was first crossed. */
  readonly marksCrossed: readonly { readonly mark: Mark; readonly season: string }[];
  /** Marks that will be crossed within 30 seasons, not yet crossed. */
  readonly marksAhead: readonly { readonly mark: Mark; readonly season: string }[];
  readonly codeVerdicts: readonly CodeVerdict[];
  readonly unknowns: readonly UnknownInput[];
  /** What was seen of the fence, and what it changed; null where nothing was. */
  readonly evidence: EvidenceSummary | null;
  /** What was found at posts and not mended since, by their numbers. */
  readonly found: FoundPosts;
  /** Plain-word remarks: no line posts, a hurricane site without a second pair, assumed ends, … */
  readonly remarks: readonly string[];
}

/** The entry of season 1. Throws where the forecast holds none (never for one made by `forecastFence`). */
export function seasonOne(forecast: FenceForecast): SeasonForecast {
  const found = forecast.seasons.find((season) => season.season === 1);
  if (!found) throw new Error(`forecast of ${forecast.fenceRef} has no season 1`);
  return found;
}

/** The posts a fence is judged by: its line posts, or its ends where the run is too short for line posts. Throws where there are no posts. */
export function judgedGroup({ line, ends }: Pick<SeasonForecast, 'line' | 'ends'>): GroupSpeeds {
  const group = line ?? ends;
  if (!group) throw new Error('a state without posts has no speeds');
  return group;
}
