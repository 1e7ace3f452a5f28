import type { FenceFacts, ForecastSettings } from '../forecast/fence-facts.ts';
import type { FenceForecast } from '../forecast/fence-forecast.ts';
import type { LateNotice } from '../notify/pre-season-reminder.ts';
import type { StoredState } from '../register/forecast-store.ts';

/** The function that forecasts a fence: `forecastFence`, or another where a caller has its reasons. */
export type ForecastFunction = (facts: FenceFacts, seasonOneYear: number, settings: ForecastSettings) => FenceForecast;

/** What is needed to judge one fence. */
export interface FenceToJudge {
  readonly facts: FenceFacts;
  /** The calendar day at the site. */
  readonly today: string;
  readonly settings: ForecastSettings;
  readonly stored: StoredState | null;
  /** The stored forecast itself; needed where an owner is new to an unchanged fence. */
  readonly storedForecast: FenceForecast | null;
  /** Refs of the owners who are enrolled. */
  readonly owners: readonly string[];
  readonly introduced: ReadonlySet<string>;
  readonly forecast: ForecastFunction;
  /** How long before a season opens it is reminded of [d], and what its owners were told lately; left out: no reminders. */
  readonly reminding?: { readonly days: number; readonly told: readonly LateNotice[] };
}
