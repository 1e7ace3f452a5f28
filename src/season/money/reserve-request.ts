import type { Dependence } from './amount-distribution.ts';
import { type Money, moneyCell } from './money.ts';
import type { PlanFence, PlannedRepair, PlanYears, Responsible } from './plan-fence.ts';
import type { Contribution, FundTerms } from './reserve-ledger.ts';

/** What is asked of a plan. */
export interface ReservePlanRequest extends PlanYears, FundTerms {
  readonly fences: readonly PlanFence[];
  /** Whose fund it is: its balance pays for the fences that this one answers for; the others are shown beside. */
  readonly payer: Responsible;
  readonly contribution:
    | ({ readonly kind: 'given' } & Contribution)
    /** What keeps the floor, for what is expected or for what nine courses in ten stay under, year by year. */
    | { readonly kind: 'find'; readonly course: Contribution['course']; readonly cover: 'expected' | 'nine in ten' };
  /** The fund shall never stand below it, 0 or more. */
  readonly floor: Money;
  readonly dependence: Dependence;
}

const FEWEST_YEARS = 10;
const MOST_YEARS = 30;
/** Highest rates taken for meant [1/a]: over it, per cent was most likely written for a share. */
const HIGHEST_RATE = 0.3;
/** Slack of a sum of probabilities, for rounding in it. */
const SLACK = 1e-9;

function refuse(where: string, value: string | number, way: string): never {
  throw new RangeError(`${where}: ${value}; ${way}`);
}

const isWhole = (value: number, least: number): boolean => Number.isSafeInteger(value) && value >= least;
const isShare = (value: number): boolean => value >= 0 && value <= 1;

/** Throws RangeError, with the place, the value and the way out, where a request does not hold together. */
export function checkReservePlan(request: ReservePlanRequest): void {
  const { years, firstYear, inflation, interest, floor, contribution, fences } = request;
  if (!(isWhole(years, FEWEST_YEARS) && years <= MOST_YEARS))
    refuse('plan, years', years, `give a whole number from ${FEWEST_YEARS} to ${MOST_YEARS}`);
  if (!isWhole(firstYear, 1900)) refuse('plan, first year', firstYear, 'give a calendar year');
  if (!(interest >= 0 && interest <= HIGHEST_RATE))
    refuse('plan, interest', interest, `give a share from 0 to ${HIGHEST_RATE}, such as 0.02 for two per cent`);
  if (!(Math.abs(inflation) <= HIGHEST_RATE))
    refuse('plan, inflation', inflation, `give a share up to ${HIGHEST_RATE}, such as 0.03 for three per cent`);
  if (!(floor >= 0)) refuse('plan, floor', moneyCell(floor), 'give an amount from 0');
  if (contribution.kind === 'given' && !(contribution.firstYear >= 0))
    refuse('plan, contribution', moneyCell(contribution.firstYear), 'give an amount from 0');
  if (contribution.kind === 'given' && !(contribution.atOnce >= 0))
    refuse('plan, paid at once', moneyCell(contribution.atOnce), 'give an amount from 0');
  const refs = fences.map(({ ref }) => ref);
  const twice = refs.find((ref, index) => refs.indexOf(ref) !== index);
  if (twice !== undefined) refuse('plan, fence', twice, 'each fence is planned once; leave one out');
  for (const fence of fences) checkFence(fence);
}

function checkFence(fence: PlanFence): void {
  const at = (what: string): string => `fence ${fence.ref}, ${what}`;
  const costs = {
    'replacement cost': fence.replacementCost,
    'replacement cost after failure': fence.replacementCostAfterFailure,
    consequence: fence.consequence,
  };
  for (const [what, cost] of Object.entries(costs))
    if (!(cost >= 0)) refuse(at(what), moneyCell(cost), 'give an amount from 0');
  for (const [year, risk] of fence.snapRiskByYear.entries())
    if (!isShare(risk)) refuse(at(`risk of snapping in year ${year + 1}`), risk, 'give a probability from 0 to 1');
  for (const [year, risk] of (fence.snapRiskWherePlanned ?? []).entries())
    if (!isShare(risk))
      refuse(at(`risk of snapping where due in year ${year + 1}`), risk, 'give a probability from 0 to 1');
  const { replacement, againAfterYears } = fence;
  if (replacement.kind === 'by chance') {
    const { chanceByYear } = replacement;
    for (const [year, chance] of chanceByYear.entries())
      if (!isShare(chance)) refuse(at(`chance of replacement in year ${year + 1}`), chance, 'give one from 0 to 1');
    const sum = chanceByYear.reduce((total, chance) => total + chance, 0);
    if (sum > 1 + SLACK) refuse(at('chances of replacement'), `${sum} in all`, 'they may sum to 1 at most');
  }
  if (replacement.kind === 'in year' && !isWhole(replacement.year, 1900))
    refuse(at('year of replacement'), replacement.year, 'give a calendar year');
  if (againAfterYears !== null && !isWhole(againAfterYears, 1))
    refuse(at('years to the next replacement'), againAfterYears, 'give a whole number from 1, or none');
  for (const repair of fence.repairs) checkRepair(repair, at);
}

function checkRepair({ what, firstYear, everyYears, cost }: PlannedRepair, at: (what: string) => string): void {
  if (!isWhole(firstYear, 1900)) refuse(at(`first year of ${what}`), firstYear, 'give a calendar year');
  if (everyYears !== null && !isWhole(everyYears, 1))
    refuse(at(`years from one ${what} to the next`), everyYears, 'give a whole number from 1, or none');
  if (!(cost >= 0)) refuse(at(`cost of ${what}`), moneyCell(cost), 'give an amount from 0');
}
