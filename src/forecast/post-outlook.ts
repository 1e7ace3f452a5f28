import type { PostSection } from '../capacity/post-section.ts';
import type { SectionLoss } from '../capacity/section-properties.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { type Band, bandOf, rounded } from './band.ts';
import { fenceBelief, medianOf } from './evidence/fence-belief.ts';
import type { FenceFacts } from './fence-facts.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import type { FenceState, PostCondition } from './post-state.ts';
import { seasonDays } from './season-days.ts';
import { classValues, type StateModel, sectionLossOn, stateModel } from './state-model.ts';

/** One post at the opening of one season, at median post scatter. */
export interface PostMoment {
  /** Label of the season, and its number: 1 = running or next to open. */
  readonly label: string;
  readonly season: number;
  readonly day: CalendarDay;
  /** Groundline rot depth per face [mm]. */
  readonly depthMm: Band;
  /** Cut into one face by trimmers, and a cavity in the middle as found: middle values [mm]. */
  readonly oneFaceMm: number;
  readonly cavityDiameterMm: number;
  /** Gust that snaps it [m/s]; 0 for a broken post. */
  readonly snapMps: Band;
  readonly leanMps: Band;
  /** Bending strength left over as built [-]. */
  readonly strengthLeft: Band;
}

/** One post with what becomes of it. */
export interface PostOutlook {
  readonly number: number;
  /** From end A, the named end [m]. */
  readonly positionM: number;
  readonly isLinePost: boolean;
  readonly section: PostSection;
  /** False for steel, concrete and composite: it is known by its moment alone. */
  readonly rots: boolean;
  readonly sleeved: boolean;
  readonly embedmentM: number | null;
  readonly condition: PostCondition;
  /** One a season asked for, in the order of the seasons; a season in which the post no longer stands is left out. */
  readonly moments: readonly PostMoment[];
}

/** A model of one state with the medians beside it. */
interface Pair {
  readonly state: FenceState;
  readonly full: StateModel;
  readonly median: StateModel;
}

type Asked = Pick<PostMoment, 'label' | 'season' | 'day'>;

/** The moments of every post of a state at one season, by the posts' numbers. */
function momentsAt({ full, median }: Pair, at: Asked): ReadonlyMap<number, PostMoment> {
  const { weights } = full.points;
  const values = classValues(full, at.day);
  const today = dayNumber(at.day);
  const moments = new Map<number, PostMoment>();
  for (const [index, { kind, numbers }] of full.classes.classes.entries()) {
    const loss: SectionLoss = sectionLossOn(median, { kind, point: 0, dayNumber: today, sound: false });
    const moment: PostMoment = {
      label: at.label,
      season: at.season,
      day: at.day,
      depthMm: bandOf(values.depthMm[index]!, 2, weights),
      oneFaceMm: rounded(loss.oneFaceMm, 2),
      cavityDiameterMm: rounded(loss.cavityDiameterMm, 2),
      snapMps: bandOf(values.snapMps[index]!, 3, weights),
      leanMps: bandOf(full.leanMps[index]!, 3, weights),
      strengthLeft: bandOf(values.strengthLeft[index]!, 4, weights),
    };
    for (const number of numbers) moments.set(number, moment);
  }
  return moments;
}

/**
 * Every post of a fence as it stands in season 1, with its rot, cuts, cavity, speeds and strength left at the openings of
 * the seasons asked for [mm, m/s, -]: what a fence's forecast says of its posts, post by post. In the order of their positions.
 * @param seasonOneYear calendar year in which season 1 opens
 * @param seasons seasons from 1 to 30, 1 among them or not
 * Source: as for `forecastFence`, of which it is a part.
 */
export function postOutlook(
  facts: FenceFacts,
  seasonOneYear: number,
  seasons: readonly number[],
): readonly PostOutlook[] {
  const states = fenceStates(facts);
  const { points } = fenceBelief(facts, states);
  const medianPoints = medianOf(points);
  const pairs = new Map<FenceState, Pair>();
  const pairOn = (day: CalendarDay): Pair => {
    const state = stateOn(states, day);
    const known = pairs.get(state);
    if (known) return known;
    const pair = {
      state,
      full: stateModel(facts.site, state, points),
      median: stateModel(facts.site, state, medianPoints),
    };
    pairs.set(state, pair);
    return pair;
  };
  const days = seasonDays(facts, seasonOneYear);
  const first = days.find(({ season }) => season === 1)!;
  const asked = days.flatMap(({ label, season, day }): readonly Asked[] =>
    season !== null && seasons.includes(season) ? [{ label, season, day }] : [],
  );
  const moments = asked.map((at) => momentsAt(pairOn(at.day), at));
  const { state, full } = pairOn(first.day);
  const lineNumbers = new Set(full.classes.classes.flatMap(({ isLinePost, numbers }) => (isLinePost ? numbers : [])));
  return state.posts.map((post) => ({
    number: post.number,
    positionM: post.positionM,
    isLinePost: lineNumbers.has(post.number),
    section: post.wood.section,
    rots: post.wood.momentCapacityNm === null,
    sleeved: post.sleeveNm !== null,
    embedmentM: post.ground.embedmentM,
    condition: post.condition,
    moments: moments.flatMap((each) => each.get(post.number) ?? []),
  }));
}
