import { setImmediate } from 'node:timers/promises';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { seasonOneYear } from '../forecast/season-calendar.ts';
import type { Register } from '../register/database.ts';
import type { FenceRecord } from '../register/fence-record.ts';
import { readSettings } from '../register/settings-store.ts';
import type { SiteRecord } from '../register/site-record.ts';
import { lifeGust } from '../season/fence-life.ts';
import { type FenceOutlook, fenceOutlook } from '../season/fence-outlook.ts';
import { type FenceMoney, fenceMoney } from '../season/money/fence-money.ts';
import { seasonToPlan } from '../season/planned-season.ts';
import { doingNothing, type WhatIf, type WhatIfRow, whatIfRow } from '../season/what-if.ts';
import type { WorksCatalogue } from '../season/works-catalogue.ts';
import { chosenOption, type LeftOut, type RecipePart, worksOptions } from '../season/works-options.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { forecastSettingsOf } from './run-sweep.ts';
import { loadCatalogue } from './season-register.ts';
import { USUAL_TERMS } from './usual-terms.ts';

/** One fence of the register, as its page has loaded it. */
export interface FenceInView {
  readonly fence: Pick<FenceRecord, 'consequence'>;
  readonly site: Pick<SiteRecord, 'timeZone'>;
  readonly facts: FenceFacts;
}

interface Ahead {
  readonly outlook: FenceOutlook;
  readonly seasonYear: number;
  readonly catalogue: WorksCatalogue;
}

/**
 * A fence seen ahead from today, or from the last thing that is recorded of it.
 * @param season `present`: from the season that is running or next to open; `to plan`: from the next for which works can still be done
 */
async function lookAhead(
  register: Register,
  { site, facts }: FenceInView,
  now: Clock,
  season: 'present' | 'to plan',
): Promise<Ahead> {
  const today = dayInZone(now(), site.timeZone);
  const day = [...facts.works, ...facts.inspections, ...facts.outcomes].reduce(
    (last, each) => (each.day > last ? each.day : last),
    today,
  );
  const settings = forecastSettingsOf(await readSettings(register.db));
  const { seasonWindow } = facts.site;
  const seasonYear = season === 'to plan' ? seasonToPlan(seasonWindow, today).year : seasonOneYear(seasonWindow, day);
  return {
    outlook: fenceOutlook(facts, settings, day, seasonYear),
    seasonYear,
    catalogue: await loadCatalogue(register.db),
  };
}

/**
 * The money of one fence: its cheapest year of replacement, what waiting costs, by the usual terms (rails and boards worn out
 * after 25 years, an inspection every 5). Null where it cannot be planned, as a fence that is not built yet.
 */
export async function moneyOfFence(register: Register, view: FenceInView, now: Clock): Promise<FenceMoney | null> {
  try {
    const { outlook, seasonYear, catalogue } = await lookAhead(register, view, now, 'to plan');
    return fenceMoney(
      { outlook, seasonYear, catalogue, consequence: view.fence.consequence },
      {
        firstYear: seasonYear,
        rule: 'cheapest',
        longestServiceYears: USUAL_TERMS.longestServiceYears,
        inspectEveryYears: USUAL_TERMS.inspectEveryYears,
      },
    );
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** What was chosen to be done to a fence, held against doing nothing. */
export interface WorksCompared extends Pick<WhatIf, 'day' | 'designGustMps' | 'lifeGust' | 'nothing'> {
  /** Null where nothing was chosen, or it makes no sense. */
  readonly chosen: WhatIfRow | null;
  /** Why what was chosen makes no sense; null where it does. */
  readonly refused: LeftOut | null;
}

/** Compares chosen works at a fence with doing nothing. */
export async function compareChosen(
  register: Register,
  view: FenceInView,
  choice: readonly RecipePart[],
  now: Clock,
): Promise<WorksCompared> {
  const { outlook, catalogue } = await lookAhead(register, view, now, 'present');
  const { facts, risks, day } = outlook;
  const nothing = doingNothing(outlook);
  const compared = { day, designGustMps: risks.designGustMps, lifeGust: lifeGust(risks), nothing };
  if (choice.length === 0) return { ...compared, chosen: null, refused: null };
  const option = chosenOption(choice, { facts, risks, catalogue, day });
  if (!('works' in option)) return { ...compared, chosen: null, refused: option };
  return { ...compared, chosen: whatIfRow(outlook, nothing, option), refused: null };
}

/** Everything that could be done to a fence, side by side; other pages are answered between two of them. */
export async function compareAll(register: Register, view: FenceInView, now: Clock): Promise<WhatIf> {
  const { outlook, catalogue } = await lookAhead(register, view, now, 'present');
  const { facts, risks, day } = outlook;
  const nothing = doingNothing(outlook);
  const { options, leftOut } = worksOptions({ facts, risks, catalogue, day });
  const rows: WhatIfRow[] = [];
  for (const option of options) {
    await setImmediate();
    rows.push(whatIfRow(outlook, nothing, option));
  }
  return {
    fenceRef: facts.ref,
    day,
    designGustMps: risks.designGustMps,
    lifeGust: lifeGust(risks),
    nothing,
    rows,
    leftOut,
  };
}
