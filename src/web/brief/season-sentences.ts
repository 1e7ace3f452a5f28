import { countWords, dayWords } from '../../drawing/day-words.ts';
import { monthName } from '../../drawing/month-name.ts';
import type { StripSeason } from '../../drawing/season-strip.ts';
import type { RegionBrief } from '../../service/season-brief.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';

/** What a region is called: its sites' label, else its season. */
export const regionName = ({ region, seasonName }: RegionBrief): string =>
  region !== '' ? region : (seasonName ?? 'Sites without a region');

const monthDay = (text: string): string => `${monthName(Number(text.slice(0, 2)), 'en')} ${Number(text.slice(3))}`;

/** Where the storm season of a region stands: `opens in 189 days, on June 1, 2027`. */
export function seasonClause({ season }: RegionBrief, today: CalendarDay): string {
  switch (season.kind) {
    case 'all year':
      return 'has no storm season: the whole year counts';
    case 'ahead':
      return season.daysToOpening === 0
        ? 'opens today'
        : `opens in ${countWords(season.daysToOpening, 'day')}, on ${dayWords(season.nextOpening, today)}`;
    case 'runs':
      return season.daysLeft === 1
        ? `ends today; the next opens on ${dayWords(season.nextOpening, today)}`
        : `runs for ${countWords(season.daysLeft, 'more day', 'more days')}, until ${dayWords(season.closesOn, today)}; the next opens on ${dayWords(season.nextOpening, today)}`;
  }
}

/** The window of a region in words: `June 1 to November 30`. */
export const windowWords = ({ opens, closes, season }: RegionBrief): string =>
  season.kind === 'all year' ? 'the whole year' : `${monthDay(opens)} to ${monthDay(closes)}`;

/** The seasons of a region that a strip of the year ahead can show. */
export function stripSeasons({ opens, closes }: RegionBrief, today: CalendarDay): readonly StripSeason[] {
  const year = Number(today.slice(0, 4));
  return [year - 1, year, year + 1].map((opening) => ({
    opensOn: `${opening}-${opens}`,
    closesOn: `${closes < opens ? opening + 1 : opening}-${closes}`,
  }));
}

/** The sentence that begins the brief: what season runs, and which opens next. */
export function openingSentence(regions: readonly RegionBrief[], today: CalendarDay): string {
  if (regions.length === 0) return 'The register holds no fences yet.';
  const running = regions.filter(({ season }) => season.kind === 'runs');
  const next = regions.find(({ season }) => season.kind !== 'all year' && season.daysToOpening > 0);
  const runs = running.map(
    (region) =>
      `${regionName(region)} stands in its storm season until ${region.season.kind === 'runs' ? dayWords(region.season.closesOn, today) : ''}`,
  );
  const ahead =
    next && next.season.kind !== 'all year'
      ? `The next season opens in ${countWords(next.season.daysToOpening, 'day')}, in ${regionName(next)}, on ${dayWords(next.season.nextOpening, today)}.`
      : '';
  return [...(runs.length > 0 ? [`${runs.join('; ')}.`] : []), ahead].filter((text) => text !== '').join(' ');
}
