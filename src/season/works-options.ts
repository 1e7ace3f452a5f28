import type { FenceFacts } from '../forecast/fence-facts.ts';
import type { PointRisks } from '../forecast/point-risks.ts';
import type { Works, WorksKind } from '../forecast/works.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { plannedWorks } from './planned-works.ts';
import { chosenPosts, type PostChoice } from './post-choice.ts';
import type { WorksCatalogue } from './works-catalogue.ts';
import { type WorksCost, worksCost } from './works-cost.ts';

/** One kind of works at chosen posts. */
export interface RecipePart {
  readonly kind: WorksKind;
  readonly at: PostChoice;
}

/** Works worth comparing, in the order in which they are done. */
interface Recipe {
  readonly parts: readonly RecipePart[];
  /** Why these belong together; null for works that stand alone. */
  readonly why: string | null;
}

const alone = (kind: WorksKind, ...choices: readonly PostChoice[]): readonly Recipe[] =>
  choices.map((at) => ({ parts: [{ kind, at }], why: null }));

const together = (why: string, ...parts: readonly (readonly [WorksKind, PostChoice])[]): Recipe => ({
  why,
  parts: parts.map(([kind, at]) => ({ kind, at })),
});

/**
 * Everything that is compared: each kind of works by itself at the posts it may be wanted for, and the combinations in which
 * one part makes another cheaper, possible or lasting. A sleeve and a treatment at the same post are not among them: behind
 * a sleeve rot no longer decides. Nor are works at the line posts alone: they would raise the speed a fence is
 * judged by and leave the ends, which carry more, as they are.
 * Source: judgement.
 */
export const RECIPES: readonly Recipe[] = [
  ...alone('groundline-treatment', 'all'),
  ...alone('trimmer-guard', 'all'),
  ...alone('drainage', 'all'),
  ...alone('liner', 'all'),
  ...alone('steel-sleeve', 'found', 'weak', 'ends', 'all'),
  ...alone('footing-reset', 'found', 'all'),
  ...alone('post-swap', 'found', 'weak', 'ends', 'all'),
  ...alone('added-posts', 'all'),
  ...alone('rebuild', 'all'),
  together(
    'both stop what thins the groundline, in one visit',
    ['groundline-treatment', 'all'],
    ['trimmer-guard', 'all'],
  ),
  together(
    'what was found broken and what was found leaning, mended in one visit',
    ['post-swap', 'found'],
    ['footing-reset', 'found'],
  ),
  together(
    'the weak posts are carried, the others are kept from following',
    ['steel-sleeve', 'weak'],
    ['groundline-treatment', 'others'],
  ),
  together(
    'the weak posts are new, the others are kept from following',
    ['post-swap', 'weak'],
    ['groundline-treatment', 'others'],
  ),
  together('the weak posts are new, and no trimmer thins them again', ['post-swap', 'weak'], ['trimmer-guard', 'all']),
  together(
    'the holes are open: deeper and wider footings go in with the posts',
    ['post-swap', 'all'],
    ['footing-reset', 'all'],
  ),
  together('a liner goes on only before a post is set', ['post-swap', 'all'], ['liner', 'all']),
  together(
    'the groundline is laid bare for the footing, so it is treated too',
    ['footing-reset', 'all'],
    ['groundline-treatment', 'all'],
  ),
  together(
    'old and new posts share the load, and the old ones stop rotting',
    ['added-posts', 'all'],
    ['groundline-treatment', 'all'],
  ),
  together(
    'new posts in the old shallow footings would lean as the old ones did',
    ['rebuild', 'all'],
    ['footing-reset', 'all'],
  ),
  together('a liner goes on only before a post is set', ['rebuild', 'all'], ['liner', 'all']),
];

/** Works that can be done to a fence, with what they take. */
export interface WorksOption {
  /** Stable within a fence: `steel-sleeve at 3 5 + groundline-treatment`. */
  readonly key: string;
  readonly parts: readonly {
    readonly kind: WorksKind;
    readonly at: PostChoice;
    readonly posts: readonly number[];
    /** Posts touched, or set anew. */
    readonly postCount: number;
  }[];
  readonly why: string | null;
  readonly works: readonly Works[];
  readonly cost: WorksCost;
}

/** Works that make no sense at a fence, and why. */
export interface LeftOut {
  readonly kind: WorksKind;
  readonly reason: string;
}

/** What the options are made from. */
export interface OptionInputs {
  /** The fence as it is. */
  readonly facts: FenceFacts;
  /** Its risks, without works ahead. */
  readonly risks: PointRisks;
  readonly catalogue: WorksCatalogue;
  readonly day: CalendarDay;
}

function optionOf(recipe: Recipe, inputs: OptionInputs): WorksOption | LeftOut {
  const { facts, risks, catalogue, day } = inputs;
  const done: Works[] = [];
  const parts: WorksOption['parts'][number][] = [];
  for (const [index, { kind, at }] of recipe.parts.entries()) {
    const planned = plannedWorks({
      kind,
      facts: { ...facts, works: [...facts.works, ...done] },
      day,
      posts: at === 'all' ? 'all' : chosenPosts(at, kind, risks),
      build: catalogue[kind].build,
      ref: `~ahead ${index + 1}`,
    });
    if (planned.kind === 'no sense') return { kind, reason: planned.reason };
    done.push(planned.works);
    parts.push({ kind, at, posts: planned.posts, postCount: planned.postCount });
  }
  const key = parts
    .map(({ kind, posts }, index) => (done[index]!.posts === 'all' ? kind : `${kind} at ${posts.join(' ')}`))
    .join(' + ');
  return { key, parts, why: recipe.why, works: done, cost: worksCost(parts, catalogue) };
}

/** Works that set posts come first: others go on them. */
const SETTING_POSTS: readonly WorksKind[] = ['rebuild', 'post-swap', 'added-posts'];

const placeOf = ({ kind }: RecipePart): number => {
  const place = SETTING_POSTS.indexOf(kind);
  return place === -1 ? SETTING_POSTS.length : place;
};

/**
 * Works chosen by hand at one fence, done together in the order that lets one make another possible; the first of them that
 * makes no sense there, and why, where one does not.
 * @param parts one or more kinds, each once
 */
export function chosenOption(parts: readonly RecipePart[], inputs: OptionInputs): WorksOption | LeftOut {
  if (parts.some(({ kind }) => kind === 'rebuild') && parts.some(({ kind }) => kind === 'post-swap'))
    return { kind: 'post-swap', reason: 'a rebuild sets every post anew, so there is none left to swap' };
  return optionOf({ parts: [...parts].sort((a, b) => placeOf(a) - placeOf(b)), why: null }, inputs);
}

/**
 * Every works and each sensible combination that can be done to a fence on a day, none twice, and the kinds that make no
 * sense there with the reason.
 */
export function worksOptions(inputs: OptionInputs): {
  readonly options: readonly WorksOption[];
  readonly leftOut: readonly LeftOut[];
} {
  const options = new Map<string, WorksOption>();
  const leftOut = new Map<WorksKind, LeftOut>();
  for (const recipe of RECIPES) {
    const option = optionOf(recipe, inputs);
    if ('works' in option) {
      if (!options.has(option.key)) options.set(option.key, option);
    } else if (recipe.parts.length === 1 && recipe.parts[0]!.at === 'all') leftOut.set(option.kind, option);
  }
  return { options: [...options.values()], leftOut: [...leftOut.values()] };
}
