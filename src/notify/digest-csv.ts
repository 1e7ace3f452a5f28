import { displaySpeed, speedUnit } from '../drawing/speed-text.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { csvText } from './csv-cell.ts';
import { MATTERS } from './matter-rules.ts';
import type { NoticedFence } from './message-facts.ts';
import { offeredFor } from './works-offer.ts';

const COLUMNS = [
  'fence',
  'site',
  'place',
  'season',
  'standing',
  'ends_standing',
  'short_season',
  'speed_unit',
  'holds',
  'holds_p10',
  'holds_p90',
  'should_hold',
  'leans_at_told_once',
  'once_in_years',
  'once_in_years_is',
  'p_short',
  'matters',
  'suggested',
  'cost_low',
  'cost_high',
  'currency',
] as const;

/** Return period beyond which neither pages nor mails name a figure [a]: no record of gusts reaches so far. */
const LONGEST_TOLD_YEARS = 1000;

/**
 * A return period [a] and what it is: pages and mails say `over 1,000` beyond a thousand years, and so does the file: a figure that
 * a spreadsheet can sort by, and beside it `more than`.
 */
function onceIn(years: number | null): readonly [number | null, string | null] {
  if (years === null) return [null, null];
  return years > LONGEST_TOLD_YEARS ? [LONGEST_TOLD_YEARS, 'more than'] : [rounded(years, 1), 'about'];
}

/** The least that is suggested at a fence and what it may come to. */
function leastOffer({ offer, matters }: NoticedFence): readonly (string | number | null)[] {
  const [least] = offeredFor(
    offer,
    MATTERS.filter((matter) => matters.includes(matter)),
  );
  return least && offer ? [least.kind, least.cost.low, least.cost.high, offer.currency] : [null, null, null, null];
}

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** The fences of a digest as CSV (RFC 4180): one row a fence, speeds in the units of its site. */
export function digestCsv(fences: readonly NoticedFence[]): string {
  const rows = fences.map((fence) => {
    const one = seasonOne(fence.forecast);
    const group = judgedGroup(one);
    const speed = (mps: number): number => rounded(displaySpeed(mps, fence.units), 1);
    return [
      fence.forecast.fenceRef,
      fence.siteName,
      fence.place,
      one.label,
      fence.standing,
      fence.endsStanding,
      fence.forecast.shortSeason,
      speedUnit(fence.units),
      speed(group.snapMps.p50),
      speed(group.snapMps.p10),
      speed(group.snapMps.p90),
      speed(fence.forecast.designGust.gustMps),
      fence.first ? speed(group.leanMps.p50) : null,
      ...onceIn(group.onceInYears),
      one.pShort === null ? null : rounded(one.pShort, 3),
      fence.matters.join('; '),
      ...leastOffer(fence),
    ];
  });
  return csvText([COLUMNS, ...rows]);
}
