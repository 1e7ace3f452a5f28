import { setImmediate } from 'node:timers/promises';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import type { Register } from '../register/database.ts';
import { listFenceRefs, loadFenceFacts } from '../register/fence-facts-store.ts';
import { countFences } from '../register/fence-list.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { listRecords } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import type { SiteRecord } from '../register/site-record.ts';
import { fenceCandidates } from '../season/candidates.ts';
import { membersOn, personHoursInWeek } from '../season/crew-hours.ts';
import { fenceOutlook } from '../season/fence-outlook.ts';
import { serviceLeft } from '../season/money/longest-service.ts';
import type { PlanCrew } from '../season/plan/plan-problem.ts';
import { seasonToPlan } from '../season/planned-season.ts';
import type { PlannedFence } from '../season/season-problem.ts';
import { type Place, roundTripHours, TRAVEL_COST_PER_PERSON_HOUR } from '../season/travel.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import type { WorksCatalogue } from '../season/works-catalogue.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { forecastSettingsOf } from './run-sweep.ts';
import type { CrewInRegister } from './season-register.ts';
import { USUAL_TERMS } from './usual-terms.ts';

/** Fences of one chunk. */
const CHUNK_SIZE = 100;
/** Days from a Monday to the Sunday after it. */
const REST_OF_WEEK = 6;

/** The first Monday on or after a day. */
export const mondayFrom = (day: CalendarDay): CalendarDay => mondayOf(addDays(day, REST_OF_WEEK));

/** Where a site is; null where that is not recorded. */
export const placeOf = ({ latitude, longitude }: Pick<SiteRecord, 'latitude' | 'longitude'>): Place | null =>
  latitude === null || longitude === null ? null : { latitude, longitude };

/** The crews as the plan sees them: hours by week, skills, and the way to every site. */
export const planCrews = (
  crews: readonly CrewInRegister[],
  sites: readonly SiteRecord[],
  weeks: readonly CalendarDay[],
): readonly PlanCrew[] =>
  crews.map(({ ref, base, speedMps, times }) => {
    const present = times.members.filter((member) => weeks.some((week) => membersOn(times, week).includes(member)));
    const people = Math.max(1, present.length);
    return {
      ref,
      personHoursByWeek: weeks.map((week) => personHoursInWeek(times, week)),
      skills: [...new Set(present.flatMap(({ skills }) => skills))].sort(),
      languages: [...new Set(present.flatMap(({ languages }) => languages))].sort(),
      travel: sites.map((site) => {
        const personHours = people * roundTripHours(base, placeOf(site), speedMps);
        return { siteRef: site.ref, personHours, cost: personHours * TRAVEL_COST_PER_PERSON_HOUR };
      }),
    };
  });

/** A fence that could not be looked at, and why. */
export interface UnseenFence {
  readonly ref: string;
  readonly message: string;
}

/** What of the visits that stand already a plan has to keep, by fence. */
export type KeptVisits = ReadonlyMap<string, Pick<PlannedFence, 'promised' | 'previous'>>;

/** Every fence as the season plan sees it. */
export interface SeasonFences {
  readonly fences: readonly PlannedFence[];
  readonly sites: readonly SiteRecord[];
  readonly unseen: readonly UnseenFence[];
}

function plannedFence(
  facts: FenceFacts,
  site: SiteRecord,
  parts: {
    readonly consequence: PlannedFence['consequence'];
    readonly today: CalendarDay;
    readonly catalogue: WorksCatalogue;
    readonly settings: ReturnType<typeof forecastSettingsOf>;
    readonly kept: KeptVisits;
  },
): PlannedFence {
  const { today, catalogue, consequence, settings, kept } = parts;
  const { year, season, nextOpening } = seasonToPlan(facts.site.seasonWindow, today);
  const latest = [...facts.works, ...facts.inspections, ...facts.outcomes].reduce(
    (last, { day }) => (day > last ? day : last),
    today,
  );
  const outlook = fenceOutlook(facts, settings, latest, year);
  const { frozenFrom, frozenTo } = site;
  const calendar = {
    today,
    opensOn: nextOpening,
    frozen: frozenFrom === null || frozenTo === null ? null : { opens: frozenFrom, closes: frozenTo },
  };
  const { found } = outlook.risks;
  const seasonDay = outlook.risks.seasons[0]!.day;
  const { longestServiceYears } = USUAL_TERMS;
  const { ageAt, seasonsLeft } = serviceLeft(facts, latest, { seasonDay, longestServiceYears });
  return {
    candidates: fenceCandidates({ outlook, catalogue, consequence, calendar }),
    siteRef: site.ref,
    region: site.region,
    consequence,
    calendar,
    season,
    dangerPosts: [...new Set([...found.broken, ...found.leaning, ...found.closedOff])].sort((a, b) => a - b),
    wornOutYears: seasonsLeft === 0 ? ageAt(seasonDay) : null,
    promised: kept.get(facts.ref)?.promised ?? null,
    previous: kept.get(facts.ref)?.previous ?? null,
  };
}

/**
 * Looks at every fence of the register for the season plan, in chunks and in the order of the refs. A fence that cannot be
 * looked at is left out with the reason.
 */
export async function seasonFences(
  register: Register,
  parts: {
    readonly now: Clock;
    readonly catalogue: WorksCatalogue;
    readonly kept: KeptVisits;
    /** Fences that are visited before the plan begins; they are passed over. */
    readonly leaveOut?: ReadonlySet<string>;
    /** Looks at these alone; at every fence where not given. */
    readonly only?: readonly string[];
    readonly onProgress: (done: number, total: number) => void;
  },
): Promise<SeasonFences> {
  const settings = forecastSettingsOf(await readSettings(register.db));
  const sites = await listRecords(register.db, 'sites');
  const siteOf = new Map(sites.map((site) => [site.ref, site]));
  const total = parts.only?.length ?? (await countFences(register));
  const fences: PlannedFence[] = [];
  const unseen: UnseenFence[] = [];
  let done = 0;
  let after: string | null = null;
  for (;;) {
    const refs: readonly string[] = parts.only
      ? parts.only.slice(done, done + CHUNK_SIZE)
      : (await listFenceRefs(register, after, CHUNK_SIZE)).map(({ ref }) => ref);
    const last = refs.at(-1);
    if (last === undefined) return { fences, sites, unseen };
    const facts = await loadFenceFacts(register, refs);
    const parties = await loadFenceParties(register, refs);
    for (const ref of refs) {
      const known = facts.get(ref);
      const party = parties.get(ref);
      const site = party && siteOf.get(party.site.ref);
      if (known && party && site && !parts.leaveOut?.has(ref)) {
        const today = dayInZone(parts.now(), site.timeZone);
        try {
          fences.push(plannedFence(known, site, { ...parts, settings, today, consequence: party.consequence }));
        } catch (error) {
          unseen.push({ ref, message: error instanceof Error ? error.message : String(error) });
        }
      }
      done += 1;
      parts.onProgress(done, total);
      await setImmediate();
    }
    after = last;
  }
}
