import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { isWorse } from '../forecast/standing.ts';
import { isNextToNothing, NOTHING_LEFT } from './held-text.ts';
import { onceInWords } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { speedText } from './speed-text.ts';

/** The one sentence a fence's page opens with: which gust breaks it, how often that comes, and what its site asks. */
export function breakingSentence(forecast: FenceForecast, units: DisplayUnits): string {
  const group = judgedGroup(seasonOne(forecast));
  const gust = speedText(group.snapMps.p50, units);
  const design = speedText(forecast.designGust.gustMps, units);
  const once = group.onceInYears;
  if (isNextToNothing(group.snapMps.p50, units)) return `${NOTHING_LEFT.en}. Its site's design gust is ${design}.`;
  if (once === null) return `Breaks in a gust of ${gust}; its site's design gust is ${design}.`;
  return `Breaks in a gust of ${gust}, one that comes ${onceInWords(once, 'en')}; its site's design gust is ${design}.`;
}

/** One group of posts with the standing that is kept and the one that the bare comparison gives. */
interface Judged {
  readonly posts: string;
  readonly kept: FenceStanding;
  readonly bare: FenceStanding;
  readonly holds: string;
  readonly gust: string;
}

/**
 * Why a standing is kept that the bare comparison no longer gives: an improvement counts only from 3 % above the design gust on.
 * Null where both are the same.
 */
function heldBack({ posts, kept, bare, holds, gust }: Judged): string | null {
  if (!isWorse(kept, bare)) return null;
  if (kept === 'closing') {
    return `its ${posts} hold the design gust of ${gust}, but soon by less than 3 %; it stays counted closing until they hold more.`;
  }
  if (bare === 'short') {
    return `its ${posts} no longer hold the design gust, and as built they held less than 3 % above it; so it stays counted ${kept}.`;
  }
  return `its ${posts} hold ${holds}, less than 3 % above the design gust of ${gust}; it stays counted ${kept} until they hold more.`;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/**
 * Where the fence stands against its design gust, in a sentence.
 * @param standing the standing that is kept after the margin an improvement has to pass; the forecast's own unless given
 */
export function standingSentence(
  forecast: FenceForecast,
  units: DisplayUnits,
  standing: FenceStanding = forecast.standing,
): string {
  const one = seasonOne(forecast);
  const posts = one.line ? 'line posts' : 'posts';
  const { shortSeason } = forecast;
  const held = heldBack({
    posts,
    kept: standing,
    bare: forecast.standing,
    holds: speedText(judgedGroup(one).snapMps.p50, units),
    gust: speedText(forecast.designGust.gustMps, units),
  });
  if (held !== null) return `${capital(standing)}: ${held}`;
  switch (standing) {
    case 'clear':
      return shortSeason === null
        ? `Clear: its ${posts} hold the design gust in every season forecast.`
        : `Clear: its ${posts} hold the design gust until season ${shortSeason}, when it goes short.`;
    case 'closing':
      return `Closing: its ${posts} go short of the design gust ${inSeason(shortSeason)}.`;
    case 'short':
      return `Short: its ${posts} no longer hold the design gust.`;
    case 'short from new':
      return `Short from new: its ${posts} did not hold the design gust even when the wood was sound.`;
  }
}

const inSeason = (season: string | null): string => (season === null ? 'within 30 seasons' : `in season ${season}`);

/** Which gives way first, ground or wood, and when that turns; told as an estimate of the weaker kind. */
export function turnoverSentence(forecast: FenceForecast, units: DisplayUnits): string {
  const group = judgedGroup(seasonOne(forecast));
  const lean = speedText(group.leanMps.p50, units);
  const { turnover } = forecast;
  const one = seasonOne(forecast).label;
  if (turnover === 'since new')
    return `Its posts have been weaker than its footings since new: it snaps before it leans.`;
  if (turnover === null) return `It leans before it snaps, at about ${lean}, in every season forecast.`;
  const past = forecast.seasons.some((season) => season.label === turnover && (season.season ?? 0) < 1);
  if (past) return `Since season ${turnover} it snaps before it leans.`;
  return turnover === one
    ? `From this season on it snaps before it leans.`
    : `It leans at about ${lean} before it snaps; from season ${turnover} it snaps first.`;
}

/**
 * The ends' own standing in a sentence; null where there are no ends or they are clear.
 * @param endsStanding the standing that is kept after the margin an improvement has to pass; the forecast's own unless given
 */
export function endsSentence(
  forecast: FenceForecast,
  units: DisplayUnits,
  endsStanding: FenceStanding | null = forecast.endsStanding,
): string | null {
  const { endsShortSeason, endsStanding: bare } = forecast;
  const { line, ends } = seasonOne(forecast);
  if (!line || !ends || endsStanding === null || bare === null) return null;
  const held = heldBack({
    posts: 'end posts',
    kept: endsStanding,
    bare,
    holds: speedText(ends.snapMps.p50, units),
    gust: speedText(forecast.designGust.gustMps, units),
  });
  if (held !== null) return `Ends ${endsStanding}: ${held}`;
  switch (endsStanding) {
    case 'clear':
      return null;
    case 'closing':
      return `Ends closing: the posts next to its ends go short ${inSeason(endsShortSeason)}; losing them means a repair, not a new fence.`;
    case 'short':
      return 'Ends short: the posts next to its ends no longer hold the design gust; losing them means a repair, not a new fence.';
    case 'short from new':
      return 'Ends short from new: the posts next to its ends never held the design gust; losing them means a repair, not a new fence.';
  }
}
