import { SOIL_CLASSES } from '../capacity/soil-class.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../decay/treatment-class.ts';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { fenceStates, stateOn } from '../forecast/fence-state.ts';
import type { FenceState, PostState } from '../forecast/post-state.ts';
import type { PostWood } from '../forecast/post-wood.ts';
import { builtMoment } from '../forecast/snap-resistance.ts';
import type { Works, WorksKind } from '../forecast/works.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { CatalogueBuild } from './catalogue-entry.ts';

/** Works that may be done to a fence. */
export interface WorksWish {
  readonly kind: WorksKind;
  /** The fence with whatever is done before; of works of one day those of the lesser ref come first. */
  readonly facts: FenceFacts;
  readonly day: CalendarDay;
  readonly posts: 'all' | readonly number[];
  readonly build: CatalogueBuild;
  readonly ref: string;
}

/** The works as the forecast takes them, with how many posts they touch or set, or why they make no sense at this fence. */
export type PlannedWorks =
  | {
      readonly kind: 'works';
      readonly works: Works;
      /** Ascending; of added posts the lower number of each bay that gets one. */
      readonly posts: readonly number[];
      readonly postCount: number;
    }
  | { readonly kind: 'no sense'; readonly reason: string };

/** Bays under twice this are not halved by added posts [m]; judgement: an auger needs room. */
const SHORTEST_HALF_BAY_M = 0.9;

const noSense = (reason: string): PlannedWorks => ({ kind: 'no sense', reason });

const rots = ({ wood }: PostState): boolean => TREATMENT_CLASSES[wood.treatmentClass].rots;
const isWood = ({ wood }: PostState): boolean => wood.momentCapacityNm === null;
const isSetOn = ({ installed }: PostState, day: CalendarDay): boolean =>
  installed.earliest === day && installed.latest === day;

/** The classes of sawn treated pine, the one that rots fastest first. */
const SAWN_PINE_CLASSES: readonly TreatmentClass[] = ['ground-contact', 'heavy-duty', 'extreme-duty'];

/**
 * What a new post is made of: treated pine of the size and grade of the old for wood, of the catalogue's class or the old
 * one's where that is better; of a round treated pine post its own class; what does not rot is replaced by its like.
 * Source: judgement, what the trade stocks.
 */
export function newPostWood(wood: PostWood, build: CatalogueBuild): PostWood {
  if (wood.momentCapacityNm !== null) return wood;
  const { section, treatmentClass: old } = wood;
  const isBetter = SAWN_PINE_CLASSES.indexOf(old) > SAWN_PINE_CLASSES.indexOf(build.treatmentClass);
  const isRoundPine = section.kind === 'round' && old.startsWith('round-pine');
  return {
    section,
    species: 'southern-pine',
    grade: wood.grade === 'unknown' ? 'no-2' : wood.grade,
    incised: false,
    treatmentClass: isBetter || isRoundPine ? old : build.treatmentClass,
    momentCapacityNm: null,
  };
}

/** The bays that are long enough to be halved: their middles [m], and the lower number of the posts at their ends. */
function longBays({ posts }: FenceState): readonly { readonly middleM: number; readonly post: number }[] {
  return posts.slice(1).flatMap(({ positionM, number }, index) => {
    const from = posts[index]!;
    return positionM - from.positionM >= 2 * SHORTEST_HALF_BAY_M
      ? [{ middleM: (from.positionM + positionM) / 2, post: Math.min(from.number, number) }]
      : [];
  });
}

/** What each kind can be done to, and what is said where no post is left. */
const CAN_TAKE: Readonly<
  Partial<Record<WorksKind, { readonly takes: (post: PostState, wish: WorksWish) => boolean; readonly else: string }>>
> = {
  'groundline-treatment': {
    takes: (post, { day }) => rots(post) && !post.condition.broken && post.sleeveNm === null && !isSetOn(post, day),
    else: 'none of these posts rots on: they do not rot, are new, are broken, or a sleeve carries them',
  },
  liner: {
    takes: (post, { day }) => rots(post) && isSetOn(post, day),
    else: 'a full-height liner goes on before a post is set: it comes with a post swap or a rebuild',
  },
  'trimmer-guard': {
    takes: ({ cuts }) => cuts.yearlyCutMm > 0 && cuts.untilDay === null,
    else: 'no yearly trimmer cut is recorded at these posts, or guards have ended it',
  },
  'footing-reset': {
    takes: (post, { build }) => post.condition.leaning || post.condition.collarCracked || isBetterFooting(post, build),
    else: 'the footings recorded are as deep and as wide as the new ones would be, and none leans',
  },
  'post-swap': {
    takes: (post) => post.condition.broken || (rots(post) && isWood(post)),
    else: 'none of these posts rots and none is broken',
  },
  'steel-sleeve': {
    // A sleeve is in series with the wood above it: one weaker than the sound post would hold less than the post was built to.
    takes: (post, { day, build }) =>
      isWood(post) && post.sleeveNm === null && !isSetOn(post, day) && builtMoment(post) <= build.sleeveMomentNm,
    else: 'these posts are not wood, are new, have a sleeve, or hold more when sound than the sleeve of the catalogue',
  },
};

function isBetterFooting({ ground }: PostState, build: CatalogueBuild): boolean {
  const { embedmentM, footing, footingDiameterM } = ground;
  if (embedmentM === null || footing === null || footing !== build.footing) return true;
  return build.embedmentM > embedmentM || (footingDiameterM !== null && build.footingDiameterM > footingDiameterM);
}

function drainageReason(facts: FenceFacts, state: FenceState): string | null {
  if (!state.soilSaturated) return 'the soil of the site is not recorded as saturated';
  if (SOIL_CLASSES[facts.site.soilClass].strength.kind === 'clay') {
    return 'in clay the water changes nothing that this model counts';
  }
  return null;
}

function wholeFence(wish: WorksWish, state: FenceState): PlannedWorks {
  const { kind, facts, day, ref, build } = wish;
  const base = { ref, day, posts: 'all' as const };
  const all = state.posts.map(({ number }) => number).sort((a, b) => a - b);
  const planned = (works: Works, postCount: number): PlannedWorks => ({ kind: 'works', works, posts: all, postCount });
  if (kind === 'drainage') {
    const reason = drainageReason(facts, state);
    return reason === null ? planned({ ...base, kind }, all.length) : noSense(reason);
  }
  if (kind === 'added-posts') {
    const bays = longBays(state);
    if (bays.length === 0) return noSense(`no bay is as long as ${2 * SHORTEST_HALF_BAY_M} m`);
    const positionsM = bays.map(({ middleM }) => middleM);
    return {
      kind: 'works',
      works: { ...base, kind, positionsM, wood: newPostWood(facts.wood, build) },
      posts: bays.map(({ post }) => post).sort((a, b) => a - b),
      postCount: positionsM.length,
    };
  }
  return planned({ ...base, kind: 'rebuild', wood: newPostWood(facts.wood, build), postSpacingM: null }, all.length);
}

function works(wish: WorksWish, posts: readonly number[], every: boolean): Works {
  const { kind, facts, day, ref, build } = wish;
  const base = { ref, day, posts: every ? ('all' as const) : posts };
  switch (kind) {
    case 'groundline-treatment':
      return { ...base, kind, yearsEffective: build.yearsEffective };
    case 'footing-reset': {
      const { embedmentM, footing, footingDiameterM } = build;
      return { ...base, kind, embedmentM, footing, footingDiameterM: footing === 'concrete' ? footingDiameterM : null };
    }
    case 'post-swap':
      return { ...base, kind, wood: newPostWood(facts.wood, build) };
    case 'steel-sleeve':
      return { ...base, kind, momentCapacityNm: build.sleeveMomentNm };
    case 'liner':
    case 'trimmer-guard':
      return { ...base, kind };
    case 'drainage':
    case 'added-posts':
    case 'rebuild':
      throw new Error(`works ${ref} of kind ${kind} are done to a whole fence`);
  }
}

/**
 * Works of a kind at chosen posts of a fence, as the forecast takes them: posts to which they can do nothing are left out,
 * and where none is left the reason is given. Drainage, added posts and a rebuild are always done to the whole fence.
 * Throws RangeError where a chosen post does not exist on that day.
 * Source: what acts on what, as in `Works` and the states of a fence; what is sensible, judgement.
 */
export function plannedWorks(wish: WorksWish): PlannedWorks {
  const { kind, facts, day, posts } = wish;
  const state = stateOn(fenceStates(facts), day);
  if (state.built.earliest > day) return noSense(`the fence is not built on ${day}`);
  const rule = CAN_TAKE[kind];
  if (!rule) return wholeFence(wish, state);
  const numbers = state.posts.map(({ number }) => number);
  const stray = posts === 'all' ? [] : posts.filter((number) => !numbers.includes(number));
  if (stray.length > 0) {
    throw new RangeError(
      `works ${wish.ref}: fence ${facts.ref} has no post ${stray.join(', ')} on ${day}; choose among ${numbers.length} posts`,
    );
  }
  if (posts !== 'all' && posts.length === 0) return noSense('no post is chosen');
  const chosen = state.posts
    .filter((post) => (posts === 'all' || posts.includes(post.number)) && rule.takes(post, wish))
    .map(({ number }) => number)
    .sort((a, b) => a - b);
  if (chosen.length === 0) return noSense(rule.else);
  return {
    kind: 'works',
    works: works(wish, chosen, chosen.length === numbers.length),
    posts: chosen,
    postCount: chosen.length,
  };
}
