import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { onceInYearsText } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { speedText } from './speed-text.ts';

/** The one sentence a fence's page opens with: which gust breaks it, how often that comes, and what its site asks. */
export function breakingSentence(forecast: FenceForecast, units: DisplayUnits): string {
  const group = judgedGroup(seasonOne(forecast));
  const gust = speedText(group.snapMps.p50, units);
  const design = speedText(forecast.designGust.gustMps, units);
  const once = group.onceInYears;
  if (once === null) return `Breaks in a gust of ${gust}; its site's design gust is ${design}.`;
  const how =
    once > 1000
      ? 'that is rarer than once in 1,000 years'
      : once < 1.5
        ? 'that comes about every year'
        : `that comes about ${onceInYearsText(once)}`;
  return `Breaks in a gust of ${gust}, one ${how}; its site's design gust is ${design}.`;
}

/** Where the fence stands against its design gust, in a sentence; `standing` after the margin where the caller knows it. */
export function standingSentence(forecast: FenceForecast, standing: FenceStanding = forecast.standing): string {
  const posts = seasonOne(forecast).line ? 'line posts' : 'posts';
  const { shortSeason } = forecast;
  switch (standing) {
    case 'clear':
      return shortSeason === null
        ? `Clear: its ${posts} hold the design gust in every season forecast.`
        : `Clear: its ${posts} hold the design gust until season ${shortSeason}, when it goes short.`;
    case 'closing':
      return `Closing: its ${posts} go short of the design gust in season ${shortSeason ?? 'soon'}.`;
    case 'short':
      return `Short: its ${posts} no longer hold the design gust.`;
    case 'short from new':
      return `Short from new: its ${posts} did not hold the design gust even when the wood was sound.`;
  }
}

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

/** The ends' own standing in a sentence; null where there are no ends or they are clear. */
export function endsSentence(
  forecast: FenceForecast,
  endsStanding: FenceStanding | null = forecast.endsStanding,
): string | null {
  const { endsShortSeason } = forecast;
  if (!seasonOne(forecast).line || endsStanding === null) return null;
  switch (endsStanding) {
    case 'clear':
      return null;
    case 'closing':
      return `Ends closing: the posts next to its ends go short in season ${endsShortSeason ?? 'soon'}; losing them is a repair, not a fence.`;
    case 'short':
      return 'Ends short: the posts next to its ends no longer hold the design gust; losing them is a repair, not a fence.';
    case 'short from new':
      return 'Ends short from new: the posts next to its ends never held the design gust; losing them is a repair, not a fence.';
  }
}
