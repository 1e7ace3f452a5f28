import { type SeasonWindow, YEAR_ROUND } from '../forecast/season-calendar.ts';
import type { Provenance } from '../units/provenance.ts';

/** A storm season that sites of a region share: its window and share of the yearly hazard, and where they come from. */
export interface StormSeason {
  readonly ref: string;
  readonly name: string;
  readonly window: SeasonWindow;
  /** Of the two days. */
  readonly days: Provenance;
  /** Of the share of the yearly hazard. */
  readonly share: Provenance;
}

const NOAA: Provenance = {
  source: 'NOAA: official dates of the hurricane season of the basin',
  tag: 'read at second hand',
};
const JUDGED: Provenance = { source: 'judgement of this program', tag: 'judgement' };
const judgedShare = (reason: string): Provenance => ({ ...JUDGED, source: `${JUDGED.source}: ${reason}` });

/** The storm seasons that come with the program; a register may change them and add its own. */
export const SHIPPED_STORM_SEASONS: readonly StormSeason[] = [
  {
    ref: 'atlantic-hurricane',
    name: 'Atlantic hurricane season',
    window: { opens: '06-01', closes: '11-30', share: 0.9 },
    days: NOAA,
    share: judgedShare('nearly all storm-days fall in the window, some strong gusts of the year are winter fronts'),
  },
  {
    ref: 'eastern-pacific-hurricane',
    name: 'Eastern Pacific hurricane season',
    window: { opens: '05-15', closes: '11-30', share: 0.8 },
    days: NOAA,
    share: judgedShare('winter storms have a larger part of the yearly gusts on that coast'),
  },
  {
    ref: 'pacific-windstorm',
    name: 'Pacific Northwest windstorm season',
    window: { opens: '10-01', closes: '03-31', share: 0.9 },
    days: JUDGED,
    share: judgedShare('the strongest gusts of nearly every year come with winter lows'),
  },
  {
    ref: 'noreaster',
    name: "Nor'easter season",
    window: { opens: '10-01', closes: '04-30', share: 0.75 },
    days: JUDGED,
    share: judgedShare('summer thunderstorms and late tropical storms have the rest'),
  },
  {
    ref: 'plains-convective',
    name: 'Plains thunderstorm season',
    window: { opens: '03-15', closes: '09-30', share: 0.8 },
    days: JUDGED,
    share: judgedShare('strong gusts of the plains come with thunderstorms of spring and summer'),
  },
  {
    ref: 'year-round',
    name: 'No storm season: the whole year',
    window: YEAR_ROUND,
    days: { source: 'by definition', tag: 'derived' },
    share: { source: 'by definition', tag: 'derived' },
  },
];

/**
 * True where the day of the year lies in the window, its first and last day included.
 * @param monthDay `MM-DD`
 */
export const inSeason = ({ opens, closes }: Pick<SeasonWindow, 'opens' | 'closes'>, monthDay: string): boolean =>
  opens <= closes ? opens <= monthDay && monthDay <= closes : monthDay >= opens || monthDay <= closes;
