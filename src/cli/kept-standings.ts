import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { standingAfter } from '../forecast/standing.ts';
import type { FenceInRegister } from './fence-in-register.ts';

/** The standings as the register keeps them: its own where nothing changed since the sweep, else what the next sweep makes of them. */
export function keptStandings(
  { lastSweep }: Pick<FenceInRegister, 'lastSweep'>,
  forecast: FenceForecast,
): { readonly standing: FenceStanding; readonly endsStanding: FenceStanding | null } {
  const { standing, standingWithMargin, endsStanding, endsStandingWithMargin } = forecast;
  return {
    standing: standingAfter(lastSweep?.standing ?? null, standing, standingWithMargin),
    endsStanding:
      endsStanding && endsStandingWithMargin
        ? standingAfter(lastSweep?.endsStanding ?? null, endsStanding, endsStandingWithMargin)
        : null,
  };
}
