import type { Register } from '../register/database.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { forecastOf, loadStoredForecasts } from '../register/forecast-store.ts';
import type { CurrentFence } from './sift-notices.ts';

/** How those of some fences stand that have a stored forecast, and whom they concern. */
export async function forecastFences(
  register: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, CurrentFence>> {
  const stored = await loadStoredForecasts(register, refs);
  const parties = await loadFenceParties(register, refs);
  const fences = refs.flatMap((ref): readonly (readonly [string, CurrentFence])[] => {
    const forecast = stored.get(ref);
    const place = parties.get(ref);
    if (!forecast || !place) return [];
    const { standing, endsStanding, generation } = forecast;
    return [[ref, { forecast: forecastOf(forecast), standing, endsStanding, generation, place }]];
  });
  return new Map(fences);
}

/** How fences stand by their stored forecasts, and whom they concern. Throws where one has notices but no forecast. */
export async function currentFences(
  register: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, CurrentFence>> {
  const fences = await forecastFences(register, refs);
  const missing = refs.find((ref) => !fences.has(ref));
  if (missing !== undefined)
    throw new Error(`fence ${missing} has notices but no stored forecast; sweep the register again`);
  return fences;
}
