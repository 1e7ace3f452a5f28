import { heldText, isNextToNothing } from '../drawing/held-text.ts';
import { displaySpeed, speedText } from '../drawing/speed-text.ts';
import type { FenceStanding, FoundPosts, SeasonForecast, UnknownInput } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { closingDay } from '../forecast/season-calendar.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { dayNumber, yearOf } from '../units/calendar-day.ts';
import { mpsFromMph } from '../units/speed.ts';
import type { Renewal } from './generation.ts';
import type { Matter } from './matter-rules.ts';
import { MATTERS } from './matter-rules.ts';
import { dangerousFindings, isShort } from './matters.ts';
import type { MessageLanguage, NoticedFence } from './message-facts.ts';
import type { WorksGain } from './works-gain.ts';
import type { WorksOffer } from './works-offer.ts';

/** What was found, each post under the worst of it: a broken one is not told to lean as well, nor to be closed off. */
export function worstOnly({ broken, leaning, closedOff }: FenceNews['found']): FenceNews['found'] {
  const known = new Set([...broken, ...leaning]);
  return {
    broken,
    leaning: leaning.filter((post) => !broken.includes(post)),
    closedOff: closedOff.filter((post) => !known.has(post)),
  };
}

/** By when something should be done: before a season opens, or (the season is running) as soon as possible. */
type ActBy =
  | {
      readonly kind: 'before';
      readonly season: string;
      readonly day: CalendarDay;
      /** Last day on which new posts are in time; null where that is not known, or past. */
      readonly latest: CalendarDay | null;
    }
  | { readonly kind: 'running'; readonly season: string; readonly next: CalendarDay | null };

/** What works gained, with its speeds as texts. */
interface GainNews extends Pick<WorksGain, 'works' | 'season' | 'laterSeason'> {
  readonly without: GainTexts | null;
  readonly with: GainTexts;
}
interface GainTexts {
  readonly snap: string;
  readonly lean: string;
  readonly laterSnap: string | null;
}

/** What a message says about one fence, with its speeds as texts in the site's units. */
export interface FenceNews {
  readonly ref: string;
  readonly site: string;
  readonly place: string;
  /** Most weighty first. */
  readonly matters: readonly Matter[];
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly judged: 'line' | 'ends';
  readonly season: string;
  readonly holds: string;
  readonly holdsFrom: string;
  readonly holdsTo: string;
  readonly shouldHold: string;
  /** Return period of the design gust [a]; null for a local rule. */
  readonly shouldHoldYears: number | null;
  /** Return period of the gust it still holds [a]; null without a hazard curve. */
  readonly onceInYears: number | null;
  readonly endsHold: string | null;
  readonly shortSeason: string | null;
  /** True where it is short in season 1 already. */
  readonly shortNow: boolean;
  /**
   * True where it is counted short although it holds the design gust again: an improvement counts from 3 % above it on. So
   * too for its ends.
   */
  readonly keptShort: boolean;
  readonly endsKeptShort: boolean;
  /** Probability that it is short in season 1 and in its short season [-]; null where not computed. */
  readonly pShortNow: number | null;
  readonly pShortThen: number | null;
  readonly pSnap: number | null;
  readonly strengthLeft: number;
  /** True where the posts have lost so much that not rot alone can be left unsaid. */
  readonly strengthFell: boolean;
  /** What it held when the wood was sound. */
  readonly heldNew: string | null;
  /** What it holds, without its unit. */
  readonly holdsFigure: string;
  /** True where the speed it holds is next to nothing. */
  readonly rottedThrough: boolean;
  /** True where season 1 has opened. */
  readonly running: boolean;
  /** True where more than a third of season 1 is over. */
  readonly wellUnderWay: boolean;
  /** The gust at which it leans, where that comes before its posts snap. */
  readonly leansFirstAt: string | null;
  readonly renewal: Renewal | null;
  /** Posts found broken, leaning or closed off and not mended since. */
  readonly found: Pick<FoundPosts, 'broken' | 'leaning' | 'closedOff'>;
  readonly isDangerous: boolean;
  /** The season that a reminder is about. */
  readonly reminded: { readonly season: string; readonly day: CalendarDay } | null;
  readonly gain: GainNews | null;
  /**
   * How far apart its posts might have stood, of what they do, to hold the design gust as built [-]; null where it was not short
   * from new. Wind on a post grows with its bay, so bay times gust squared stays the same.
   */
  readonly bayShare: number | null;
  /** Some seasons ahead, with nothing done. */
  readonly later: { readonly season: string; readonly holds: string; readonly onceInYears: number | null } | null;
  readonly lean: { readonly at: string; readonly from: string; readonly to: string } | null;
  readonly unknowns: readonly UnknownInput['input'][];
  readonly actBy: ActBy;
  readonly offer: WorksOffer | null;
  /** Snap speed over design gust, season 1 [-]: what the worst fences are picked by. */
  readonly share: number;
}

/** Seasons ahead of season 1 at which a message says what comes of doing nothing. */
const LATER_SEASONS = 5;
/** How many of the unknown inputs a message names. */
const UNKNOWNS_NAMED = 3;

function actBy(fence: NoticedFence, one: SeasonForecast, short: SeasonForecast | undefined): ActBy {
  const { seasons } = fence.forecast;
  const target = fence.standing === 'closing' && short ? short : one;
  if (target.day > fence.today) {
    const latest = fence.offer?.nextOpening === target.day ? fence.offer.latestDay : null;
    return { kind: 'before', season: target.label, day: target.day, latest };
  }
  const next = seasons.find((season) => season.season === (target.season ?? 1) + 1);
  return { kind: 'running', season: target.label, next: next?.day ?? null };
}

/** Strength left under which rot is told of where a fence was short from new [-]. */
const FELL_BELOW = 0.95;
/** An unknown input is named where it moves a speed by more than 1 mph [m/s]. */
const LEAST_SWING_MPS = mpsFromMph(1);
/** Share of a season that is over from which its chance is told as that of a whole one [-]. */
const WELL_UNDER_WAY = 1 / 3;

/** Share of season 1 that is over [-], 0 before it opens. */
function seasonGone(fence: NoticedFence, one: SeasonForecast): number {
  const opens = dayNumber(one.day);
  const window = { opens: one.day.slice(5), closes: fence.seasonCloses, share: 1 };
  const closes = dayNumber(closingDay(window, yearOf(one.day))) + 1;
  return Math.min(1, Math.max(0, (dayNumber(fence.today) - opens) / (closes - opens)));
}

function gainNews({ gain, units }: NoticedFence, language: MessageLanguage): GainNews | null {
  if (!gain) return null;
  const texts = (speeds: WorksGain['with']): GainTexts => ({
    snap: heldText(speeds.snapMps, units, language),
    lean: speedText(speeds.leanMps, units),
    laterSnap: speeds.laterSnapMps === null ? null : heldText(speeds.laterSnapMps, units, language),
  });
  const { works, season, laterSeason } = gain;
  return { works, season, laterSeason, without: gain.without && texts(gain.without), with: texts(gain.with) };
}

function remindedOf({ remindedSeason, forecast }: NoticedFence): FenceNews['reminded'] {
  const season = forecast.seasons.find(({ label }) => label === remindedSeason);
  return season ? { season: season.label, day: season.day } : null;
}

/** Gathers what a message says about one fence. */
export function fenceNews(fence: NoticedFence, language: MessageLanguage): FenceNews {
  const { forecast, units } = fence;
  const one = seasonOne(forecast);
  const group = judgedGroup(one);
  const short = forecast.seasons.find((season) => (season.season ?? 0) >= 1 && season.label === forecast.shortSeason);
  const later = forecast.seasons.find((season) => season.season === 1 + LATER_SEASONS);
  const speed = (mps: number): string => speedText(mps, units);
  const designGustMps = forecast.designGust.gustMps;
  const held = (mps: number): string => heldText(mps, units, language);
  const built = forecast.seasons.find((season) => season.season === null);
  const snapMps = group.snapMps.p50;
  const ends = one.line && one.ends;
  return {
    ref: forecast.fenceRef,
    site: fence.siteName,
    place: fence.place,
    matters: MATTERS.filter((matter) => fence.matters.includes(matter)),
    standing: fence.standing,
    endsStanding: fence.endsStanding,
    judged: one.line ? 'line' : 'ends',
    season: one.label,
    holds: held(snapMps),
    holdsFrom: speed(group.snapMps.p10),
    holdsTo: speed(group.snapMps.p90),
    shouldHold: speed(designGustMps),
    shouldHoldYears: forecast.designGust.returnPeriodYears,
    onceInYears: group.onceInYears,
    endsHold: ends ? held(ends.snapMps.p50) : null,
    shortSeason: forecast.shortSeason,
    shortNow: short?.season === 1,
    keptShort: isShort(fence.standing) && group.snapMps.p50 >= designGustMps,
    endsKeptShort: isShort(fence.endsStanding) && ends !== null && ends.snapMps.p50 >= designGustMps,
    pShortNow: one.pShort,
    pShortThen: short?.pShort ?? null,
    pSnap: one.pSnap,
    strengthLeft: one.strengthLeft.p50,
    strengthFell: one.strengthLeft.p50 < FELL_BELOW,
    heldNew: built ? held(judgedGroup(built).snapMps.p50) : null,
    holdsFigure: String(Math.round(displaySpeed(snapMps, units))),
    rottedThrough: isNextToNothing(snapMps, units),
    running: one.day <= fence.today,
    wellUnderWay: seasonGone(fence, one) > WELL_UNDER_WAY,
    leansFirstAt: group.leanMps.p50 < snapMps ? speed(group.leanMps.p50) : null,
    renewal: fence.renewal,
    found: forecast.found,
    isDangerous: dangerousFindings(forecast).length > 0,
    reminded: remindedOf(fence),
    gain: gainNews(fence, language),
    bayShare:
      built && fence.standing === 'short from new'
        ? Math.min(1, judgedGroup(built).snapMps.p50 / designGustMps) ** 2
        : null,
    later:
      (later && {
        season: later.label,
        holds: held(judgedGroup(later).snapMps.p50),
        onceInYears: judgedGroup(later).onceInYears,
      }) ||
      null,
    lean: fence.first
      ? { at: speed(group.leanMps.p50), from: speed(group.leanMps.p10), to: speed(group.leanMps.p90) }
      : null,
    unknowns: forecast.unknowns
      .filter((unknown) => unknown.swingMps > LEAST_SWING_MPS)
      .sort((a, b) => b.swingMps - a.swingMps)
      .slice(0, UNKNOWNS_NAMED)
      .map((unknown) => unknown.input),
    actBy: actBy(fence, one, short),
    offer: fence.offer,
    share: group.snapMps.p50 / designGustMps,
  };
}
