import { DateTime } from 'luxon';
import type { ReportedFence } from '../../drawing/report/reported-fence.ts';
import { factsUntil } from '../../forecast/facts-until.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { forecastFence } from '../../forecast/forecast-fence.ts';
import { MODEL_VERSION } from '../../forecast/model-version.ts';
import { seasonOneYear } from '../../forecast/season-calendar.ts';
import { standingAfter } from '../../forecast/standing.ts';
import { nearestName } from '../../register/csv/nearest-name.ts';
import { entryMoments } from '../../register/entry-moments.ts';
import { loadFenceEvidence } from '../../register/evidence-store.ts';
import { loadFenceFacts } from '../../register/fence-facts-store.ts';
import { type FenceParties, loadFenceParties } from '../../register/fence-parties-store.ts';
import { loadStoredStates, type StoredState } from '../../register/forecast-store.ts';
import { learnedFactsFor, learnedInForceAt } from '../../register/learned-store.ts';
import { readingFacts } from '../../register/reading-record.ts';
import { everyRef } from '../../register/record-names.ts';
import { readSettings } from '../../register/settings-store.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { canonicalJson, sha256 } from '../canonical-json.ts';
import { dayInZone, isoUtc } from '../clock.ts';
import { forecastSettingsOf } from '../run-sweep.ts';
import type { ReportParts } from './report-result.ts';

/** A fence as it is believed on a day, with what a report beside says of it. */
export interface LoadedFence {
  readonly kind: 'fence';
  readonly fence: ReportedFence;
  readonly parties: FenceParties;
  /** The day it is at the site. */
  readonly today: CalendarDay;
  /** The day until which records count. */
  readonly on: CalendarDay;
  /** The end of that day, ISO 8601 in UTC. */
  readonly until: string;
}

export type LoadFenceResult =
  | LoadedFence
  | { readonly kind: 'not found'; readonly what: string; readonly nearest: string | null }
  | { readonly kind: 'refused'; readonly reason: string };

/** Why a fence has no belief on a day; null where it has one. */
function dayRefused(facts: FenceFacts, on: CalendarDay, today: CalendarDay): string | null {
  if (on > today) return `${on} has not come yet: today is ${today} at the site`;
  const { earliest } = facts.installed;
  return on < earliest
    ? `fence ${facts.ref} was not built before ${earliest}, so nothing was believed of it on ${on}`
    : null;
}

/** The standing that is kept, where the last sweep knows it; as the bare comparison gives it on a day that is past. */
function standings(
  forecast: FenceForecast,
  stored: StoredState | null,
): Pick<ReportedFence, 'standing' | 'endsStanding'> {
  const { endsStanding, endsStandingWithMargin: margin } = forecast;
  return {
    standing: standingAfter(stored?.standing ?? null, forecast.standing, forecast.standingWithMargin),
    endsStanding:
      endsStanding && margin ? standingAfter(stored?.endsStanding ?? null, endsStanding, margin) : endsStanding,
  };
}

async function seenBy({ register }: ReportParts, ref: string, on: CalendarDay, timeZone: string) {
  const moments = await entryMoments(register.db, ref);
  const evidence = (await loadFenceEvidence(register.db, [ref])).get(ref) ?? { inspections: [], outcomes: [] };
  const enteredOn = (of: keyof typeof moments, key: string): CalendarDay | null => {
    const at = moments[of].get(key);
    return at === undefined ? null : dayInZone(DateTime.fromISO(at), timeZone);
  };
  return {
    enteredOn,
    inspections: evidence.inspections
      .filter(({ record }) => record.day <= on)
      .map(({ record: { day, inspector, qualification, method, instrument, ref: key }, readings }) => ({
        day,
        inspector,
        qualification,
        method,
        instrument,
        readings: readings.map(readingFacts),
        enteredOn: enteredOn('inspections', key),
      })),
    storms: evidence.outcomes
      .filter(({ day }) => day <= on)
      .map(({ storm, day, gustMps, gustSpread, posts, result, gustSource, reportedBy, ref: key }) => ({
        storm,
        day,
        gustMps,
        gustSpread,
        posts,
        result,
        gustSource,
        reportedBy,
        enteredOn: enteredOn('storm_outcomes', key),
      })),
  };
}

/**
 * A fence as it is believed on a day, today unless given: what had been observed and done by then, what had been learned and
 * accepted by then, judged by the model, the settings and the records of fence and site as they are now.
 */
export async function loadReportedFence(
  parts: ReportParts,
  ref: string,
  day: CalendarDay | null,
): Promise<LoadFenceResult> {
  const { register, now } = parts;
  const known = (await loadFenceFacts(register, [ref])).get(ref);
  const parties = (await loadFenceParties(register, [ref])).get(ref);
  if (!known || !parties) {
    const refs = await everyRef(register.db, 'fences');
    return { kind: 'not found', what: `fence ${JSON.stringify(ref)}`, nearest: nearestName(ref, refs) };
  }
  const { timeZone } = parties.site;
  const today = dayInZone(now(), timeZone);
  const on = day ?? today;
  const reason = dayRefused(known, on, today);
  if (reason !== null) return { kind: 'refused', reason };
  const until = isoUtc(DateTime.fromISO(on, { zone: timeZone }).endOf('day'));
  const observed = factsUntil(known, on);
  const facts = { ...observed, learned: learnedFactsFor(await learnedInForceAt(register.db, until), observed) };
  const settings = forecastSettingsOf(await readSettings(register.db));
  const year = seasonOneYear(facts.site.seasonWindow, on);
  const forecast = forecastFence(facts, year, settings);
  const inputHash = sha256(canonicalJson({ facts, modelVersion: MODEL_VERSION, seasonOneYear: year, settings }));
  const stored = on === today ? ((await loadStoredStates(register, [ref])).get(ref) ?? null) : null;
  const { enteredOn, ...seen } = await seenBy(parts, ref, on, timeZone);
  return {
    kind: 'fence',
    parties,
    today,
    on,
    until,
    fence: {
      ref,
      site: { name: parties.site.name, place: parties.site.place, windSource: parties.site.windSource },
      owners: parties.owners.map(({ name }) => name),
      style: parties.style,
      namedEnd: parties.namedEnd,
      consequence: parties.consequence,
      units: parties.site.units,
      facts,
      forecast,
      ...standings(forecast, stored),
      ...seen,
      works: facts.works.map(({ kind, day: done, posts, ref: key }) => ({
        kind,
        day: done,
        posts,
        enteredOn: enteredOn('works', key),
      })),
      inputHash,
    },
  };
}
