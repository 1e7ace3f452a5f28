import type { FootingKind } from '../capacity/footing.ts';
import type { SoilClass } from '../capacity/soil-class.ts';
import type { Exposure } from '../capacity/velocity-pressure.ts';
import type { ClimateFacts } from '../decay/climate-factor.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { InspectionFacts } from './evidence/inspection.ts';
import type { LearnedFacts } from './evidence/learned-facts.ts';
import type { StormOutcome } from './evidence/storm-outcome.ts';
import type { PostWood } from './post-wood.ts';
import type { SeasonWindow } from './season-calendar.ts';
import type { WindEntry } from './wind-entry.ts';
import type { Works } from './works.ts';

/** What stands at one end of a run. A corner is a `return` with its length; a gate is a free edge. */
export type EndFacts =
  | { readonly kind: 'return'; readonly returnLengthM: number }
  | { readonly kind: 'building' }
  | { readonly kind: 'gate' }
  | { readonly kind: 'free' }
  /** Not recorded: taken as a return at least twice the height, and said so. */
  | { readonly kind: 'unknown' };

/** An install date, known to the day (`earliest` = `latest`) or only as a range. */
export interface InstallDate {
  readonly earliest: CalendarDay;
  readonly latest: CalendarDay;
}

/** The geometry of a run: what the wind sees. Lengths in metres [m], solidity as a fraction [-]. */
export interface RunFacts {
  readonly heightM: number;
  readonly runLengthM: number;
  readonly bottomGapM: number;
  readonly postSpacingM: number;
  /** Solid area over gross area, 0 < solidity <= 1 [-]. */
  readonly solidity: number;
  readonly ends: readonly [EndFacts, EndFacts];
}

/** Footing of the posts. Null means not recorded: a prior stands in and is named. */
export interface GroundFacts {
  readonly embedmentM: number | null;
  readonly footing: FootingKind | null;
  readonly footingDiameterM: number | null;
}

/** What the register says about one post where it differs from the fence. */
export interface PostOverride {
  readonly number: number;
  readonly positionM: number | null;
  readonly installed: InstallDate | null;
  readonly wood: PostWood | null;
  /** The run that this corner post also carries (the other fence's geometry, and which of its ends meets here). */
  readonly sharedRun: { readonly fenceRef: string; readonly run: RunFacts; readonly end: 0 | 1 } | null;
}

/** Everything about a site that a forecast depends on. */
export interface SiteFacts {
  readonly exposure: Exposure;
  readonly elevationM: number;
  readonly topographicFactor: number;
  readonly soilClass: SoilClass;
  readonly soilSaturated: boolean;
  readonly lateralBearingDoubled: boolean;
  readonly climate: ClimateFacts;
  readonly wind: WindEntry;
  readonly seasonWindow: SeasonWindow;
}

/** Everything about one fence that its forecast depends on: the input of `forecastFence`, SI units throughout. */
export interface FenceFacts {
  readonly ref: string;
  readonly site: SiteFacts;
  readonly run: RunFacts;
  readonly wood: PostWood;
  readonly installed: InstallDate;
  readonly ground: GroundFacts;
  readonly trimmer: {
    /** True: guards fitted; false: trimmed without guards; null: not recorded. */
    readonly guards: boolean | null;
    /** Depth cut into one face each year where the line is trimmed without guards [mm/a]; 0 unless the office sets it. */
    readonly yearlyCutMm: number;
  };
  readonly posts: readonly PostOverride[];
  /** Works done, in any order; they act from their day on. */
  readonly works: readonly Works[];
  /** Inspections made, in any order. */
  readonly inspections: readonly InspectionFacts[];
  /** What storms were reported to have done, in any order. */
  readonly outcomes: readonly StormOutcome[];
  /** What the register has learned and the office accepted; null where nothing was. */
  readonly learned: LearnedFacts | null;
}

/** Register-wide settings that every forecast depends on. */
export interface ForecastSettings {
  /** Return period at which map speeds are read off a site's curve for the standing [a], default 300. */
  readonly standingReturnPeriodYears: number;
  /** Seasons ahead in which a coming shortness is called `closing`, default 2. */
  readonly lookAheadSeasons: number;
}
