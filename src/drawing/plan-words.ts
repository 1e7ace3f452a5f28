import type { BrokenPromiseReason, LeftOutReason, StageResult } from '../season/plan/season-plan.ts';

/** Why something is not in the plan, in plain words. */
const LEFT_OUT: Readonly<Record<LeftOutReason, string>> = {
  'locate-notice-too-late': 'the notice to have buried utilities marked comes too late',
  'cure-time-too-late': 'a footing would not have its strength before the season opens',
  'ground-frozen': 'the ground is frozen in every week that is left',
  'weeks-closed': 'the season opens before any week of the plan',
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
  'nothing-to-do': 'nothing in the catalogue pays for itself or makes it hold its design gust',
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

const STAGES: Readonly<Record<StageResult['stage'], string>> = {
  promised: 'Promised dates kept',
  'must-1': 'Dangerous fences made safe',
  'must-2': 'Short or closing fences of high consequence served',
  'must-3': 'Other short fences served',
  benefit: 'Worth of the plan',
};

/** How far a stage of the plan got, and how far any plan could. @param money writes an amount */
export function stageText({ stage, value, bound, gap }: StageResult, money: (amount: number) => string): string {
  const write = stage === 'benefit' ? money : String;
  if (stage !== 'benefit' && bound === 0) return `${STAGES[stage]}: none to do`;
  const most =
    gap === 0
      ? 'no plan does better'
      : `no plan does better than ${write(bound)}: at most ${(100 * gap).toFixed(1)} % from the best`;
  return `${STAGES[stage]}: ${write(value)} (${most})`;
}
