import type { BrokenPromiseReason, LeftOutReason, StageResult } from '../season/plan/season-plan.ts';

/** Why something is not in the plan, in plain words. */
const LEFT_OUT: Readonly<Record<LeftOutReason, string>> = {
  'locate-notice-too-late': 'the notice to have buried utilities marked comes too late',
  'cure-time-too-late': 'a footing would not have its strength before the season opens',
  'ground-frozen': 'the ground counts as frozen in every week that would do otherwise',
  'weeks-closed': 'the storm season opens before any week of the plan',
  'no-crew-with-skill': 'no crew has a licensed applicator',
  'no-crew-goes-to-site': 'no crew goes to this site',
  'too-far-for-any-crew': 'the way there leaves no crew enough hours in a week',
  'longer-than-any-crew-week': 'it takes longer than any crew has in a week',
  'costs-more-than-it-saves': 'it costs more than the loss it saves',
  'cheaper-to-replace-next-year': 'it is cheaper to replace the fence next year',
  'travel-costs-more-than-it-saves': 'the way there costs more than it saves',
  'no-crew-hours': 'no crew hours are left in the weeks that would do',
  'another-option-is-better': 'other works at the same fence are better',
  'kept-as-planned-before': 'kept as it was planned before',
  'promised-otherwise': 'something else was promised for this fence',
  'does-not-serve-the-must': 'it would not make the fence safe or hold its design gust',
  'nothing-to-do': 'no works of the catalogue are worth their price there',
};

/** Why something is not in the plan, as a clause. */
export const leftOutText = (reason: LeftOutReason): string => LEFT_OUT[reason];

const BROKEN: Readonly<Record<BrokenPromiseReason, string>> = {
  'week-outside-plan': 'the week lies outside the plan',
  'crew-unknown': 'the crew is no longer in the register',
  'option-unknown': 'these works make no sense at the fence any more',
  'week-barred': 'locate notice, cure time, frozen ground or the season forbid that week',
  'no-crew-with-skill': 'no crew has a licensed applicator',
  'no-crew-goes-to-site': 'no crew goes to this site',
  'longer-than-the-crew-week': 'it takes longer than the crew has that week',
  'hours-go-to-other-promises': 'other promises take the hours of that week',
};

/** Why a promised date cannot be kept, as a clause. */
export const brokenPromiseText = (reason: BrokenPromiseReason): string => BROKEN[reason];

/** Why a plan serves a fence, by its must rank, in a few words. */
export const WHY_SERVED: readonly [string, string, string, string] = [
  'worth its price',
  'danger',
  'much hangs on it',
  'short',
];

/** What the words above mean, as a sentence. */
export const WHY_SERVED_NOTE =
  'Why a fence is served – worth its price: it need not be, and the works take away more expected loss than they cost; danger: posts are broken, leaning or closed off; much hangs on it: it is short or closing and a pool or a footpath is beside it; short: it does not hold its design gust.';

/** Why the fences that lack most are not always in the first weeks, as a sentence. */
export const ORDER_NOTE =
  'Why the order is as it is – what is done before the season opens counts nearly alike whichever week it is done in, so the weeks are filled by site and way and not by how much a fence lacks; only fences with dangerous posts are drawn to the front, for each week that they wait counts.';

/** What the hours of a plan count, as a sentence. */
export const HOURS_NOTE =
  'Hours are those of all people of the crew together: two people for one hour are two. The way is there and back, once a visit.';

const STAGES: Readonly<Record<StageResult['stage'], string>> = {
  promised: 'Promised dates kept',
  'must-1': 'Dangerous fences made safe',
  'must-2': 'Short or closing fences on which much hangs, made to hold',
  'must-3': 'Other short fences made to hold their design gust',
  benefit: 'Worth of the plan',
};

/**
 * How far a stage of the plan got, and how far any plan could, as a sentence.
 * @param money writes an amount with its currency
 */
export function stageText({ stage, value, bound, gap }: StageResult, money: (amount: number) => string): string {
  if (stage === 'benefit') {
    const most =
      gap === 0
        ? 'no other plan is worth more'
        : `no plan is worth more than ${money(bound)}, so it is at most ${(100 * gap).toFixed(1)} % from the best`;
    return `${STAGES[stage]}: ${money(value)}; ${most}`;
  }
  const what = stage === 'promised' ? 'dates' : 'fences';
  if (bound === 0) return `${STAGES[stage]}: no ${what} to count`;
  const counted = (count: number): string => `${count} ${count === 1 ? what.slice(0, -1) : what}`;
  const most = gap === 0 ? 'no plan does more of them' : `no plan does more than ${counted(bound)}`;
  return `${STAGES[stage]}: ${counted(value)}; ${most}`;
}
