import {
  ABOVE_GROUND_PROVENANCE,
  aboveGroundLaw,
  aboveGroundRate,
  aboveGroundZone,
} from '../decay/above-ground-depth.ts';
import { depthByLaw, START_DEPTH_MM } from '../decay/decay-depth.ts';
import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import { type CalendarDay, DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../units/calendar-day.ts';
import type { Provenance } from '../units/provenance.ts';
import { rounded } from './band.ts';
import type { FenceFacts, InstallDate } from './fence-facts.ts';
import type { PostWood } from './post-wood.ts';
import { seasonLabel, seasonOneYear } from './season-calendar.ts';

/** Where the flag comes from: the law, and what is taken for its inputs. */
const RAIL_WOOD_PROVENANCE: Provenance = {
  source:
    'rails and infill are taken as of the wood and the age of the posts, unpainted, by the median law above ground',
  tag: 'judgement',
};

/** What is to be expected of rails and infill on a day; a plain flag, never part of a speed. */
export interface AboveGroundFlag {
  /** Expected rot depth in each exposed face [mm]; null where no published law covers the wood. */
  readonly expectedDepthMm: number | null;
  /** True from the season in which 5 mm is reached, the end of the slow start; null where no law says. */
  readonly look: boolean | null;
  /** Label of that season; null where no law says. */
  readonly lookFrom: string | null;
  /** A whole sentence. */
  readonly reason: string;
  readonly provenance: Provenance;
}

/** Wood and age of the present build: of the last rebuild by the day, else of the fence. */
function presentBuild(
  facts: FenceFacts,
  day: CalendarDay,
): { readonly wood: PostWood; readonly installed: InstallDate } {
  const rebuilds = facts.works
    .filter((works) => works.kind === 'rebuild')
    .filter((works) => works.day <= day)
    .sort((a, b) => (a.day < b.day ? -1 : 1));
  const last = rebuilds.at(-1);
  return last ? { wood: last.wood, installed: { earliest: last.day, latest: last.day } } : facts;
}

const noLaw = (reason: string): AboveGroundFlag => ({
  expectedDepthMm: null,
  look: null,
  lookFrom: null,
  reason,
  provenance: RAIL_WOOD_PROVENANCE,
});

/**
 * Whether rails and infill are due to be looked at: expected depth of rot above ground on a day, and the season in which the
 * slow start ends [mm]. Rails and infill are taken as of the posts' wood and age, an install date known as a range at its
 * middle; treatments and swaps of posts do not touch them, a rebuild does.
 * @param day the day asked about; its season is the one running on it, else the next to open
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 4 (memory); whose wood, and the zone, judgement.
 */
export function aboveGroundFlag(facts: FenceFacts, day: CalendarDay): AboveGroundFlag {
  const { wood, installed } = presentBuild(facts, day);
  const { name, rots } = TREATMENT_CLASSES[wood.treatmentClass];
  if (!rots) {
    return noLaw(
      'The posts do not rot, and the wood of rails and infill is not recorded: look at them at every visit.',
    );
  }
  const rate = aboveGroundRate(wood.treatmentClass, facts.site.climate);
  if (rate === null) {
    return noLaw(`No published law gives the rot above ground of ${name}: look at rails and infill at every visit.`);
  }
  const law = aboveGroundLaw(rate);
  const installedDay = (dayNumber(installed.earliest) + dayNumber(installed.latest)) / 2;
  const expectedDepthMm = rounded(depthByLaw(law, (dayNumber(day) - installedDay) / DAYS_PER_YEAR), 2);
  const { seasonWindow } = facts.site;
  const reaches = Math.ceil(installedDay + law.startEndsYears * DAYS_PER_YEAR);
  const { zone } = aboveGroundZone(facts.site.climate);
  const what = `Rails and infill, if of the posts' wood (${name}), are expected to be ${expectedDepthMm.toFixed(1)} mm soft on ${day}`;
  // Heartwood in a dry place outlasts the calendar.
  const longest = dayNumber('2199-12-31');
  if (reaches > longest) {
    return {
      expectedDepthMm,
      look: false,
      lookFrom: null,
      reason: `${what} (zone ${zone}): no need to look yet.`,
      provenance: ABOVE_GROUND_PROVENANCE,
    };
  }
  const fromYear = seasonOneYear(seasonWindow, dayFromNumber(reaches));
  const lookFrom = seasonLabel(seasonWindow, fromYear);
  const look = seasonOneYear(seasonWindow, day) >= fromYear;
  return {
    expectedDepthMm,
    look,
    lookFrom,
    reason: look
      ? `${what} (zone ${zone}); the slow start ends at ${START_DEPTH_MM} mm, in season ${lookFrom}: look at them.`
      : `${what} (zone ${zone}); look at them from season ${lookFrom}, in which they reach ${START_DEPTH_MM} mm.`,
    provenance: ABOVE_GROUND_PROVENANCE,
  };
}
