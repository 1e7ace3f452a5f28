import type { SeasonForecast } from './fence-forecast.ts';

/**
 * Label of the season in which something began that is so in season 1, `new` where it was so when built; else of the first
 * season ahead in which it will be so; null if not within the seasons given. What was so before and is no longer so (works
 * mended it) does not count.
 * @param seasons seasons since the present build, in order, season 1 among them
 * @param isSo whether it is so in a season
 * @param builtSo whether it was so when the present posts were sound
 */
export function presentOrNextStretch(
  seasons: readonly SeasonForecast[],
  isSo: (season: SeasonForecast) => boolean,
  builtSo: boolean,
): { readonly label: string; readonly present: boolean } | null {
  const now = seasons.findIndex(({ season }) => season === 1);
  if (isSo(seasons[now]!)) {
    let first = now;
    while (first > 0 && isSo(seasons[first - 1]!)) first -= 1;
    return { label: first === 0 && builtSo ? 'new' : seasons[first]!.label, present: true };
  }
  const ahead = seasons.slice(now + 1).find(isSo);
  return ahead ? { label: ahead.label, present: false } : null;
}
