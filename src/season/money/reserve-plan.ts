import type { Band } from '../../forecast/band.ts';
import { type Dependence, distributionOf, meanCents, sumBand } from './amount-distribution.ts';
import { cents, type Money, sumMoney } from './money.ts';
import { type FenceCourse, fenceCourses, type PlanFence, type Responsible } from './plan-fence.ts';
import { type Contribution, fundLedger, type LedgerYear } from './reserve-ledger.ts';
import { checkReservePlan, type ReservePlanRequest } from './reserve-request.ts';
import { setAside } from './set-aside.ts';
import { sumWaiting, type WaitingCost, waitingCost } from './waiting-cost.ts';

/** What a reserve plan is, for every place that shows one. */
export const RESERVE_PLAN_LABEL = 'a planning aid, not a statutory reserve study';

/** One year of a plan; money of that year. Bands in whole cents. */
export interface ReserveYear extends LedgerYear {
  readonly year: number;
  /** What of the ledger's `spending` goes into repairs and care; the rest into replacements. */
  readonly repairs: Money;
  /** The payer's spending in this year alone; the ledger's `spending` is its mean. */
  readonly spendingBand: Band;
  /** The payer's spending from the first year to this one. */
  readonly spentSoFar: Band;
  /** Closing balance where spending so far goes along its 90th, 50th and 10th percentile. */
  readonly closingBand: Band;
  /** Expected spending of those who answer for the other fences. */
  readonly othersSpending: Readonly<Partial<Record<Responsible, Money>>>;
}

/** What to pay in, the same every year or rising with prices. */
export interface SetAside {
  readonly flat: Contribution;
  readonly rising: Contribution;
}

/** What a plan says of one fence. */
interface ReserveFence {
  readonly ref: string;
  readonly responsible: Responsible;
  /** Chance that it is replaced within the plan [-]. */
  readonly pReplaced: number;
  /** Chance that it snaps before the plan replaces it [-]. */
  readonly pSnapped: number;
  /** First calendar year by whose end it is replaced as likely as not; null where it is not. */
  readonly likelyYear: number | null;
  /** Expected spending over the plan, in the money of each year. */
  readonly expectedSpending: Money;
  readonly waiting: WaitingCost;
}

export interface ReservePlan {
  readonly label: string;
  readonly payer: Responsible;
  readonly dependence: Dependence;
  readonly floor: Money;
  readonly contribution: Contribution;
  readonly years: readonly ReserveYear[];
  /** What keeps the floor for the expected spending, and for what nine courses in ten stay under, year by year. */
  readonly setAside: { readonly expected: SetAside; readonly nineInTen: SetAside };
  readonly fences: readonly ReserveFence[];
  /** What waiting one year costs over the payer's fences. */
  readonly waiting: WaitingCost;
}

interface Followed {
  readonly fence: PlanFence;
  readonly courses: readonly FenceCourse[];
}

const spendingIn = ({ courses }: Followed, amount: (course: FenceCourse) => Money) =>
  distributionOf(courses.map((course) => ({ amount: amount(course), probability: course.probability })));

/** Mean of an amount over fences, rounded once to the cent. */
const expectedOf = (followed: readonly Followed[], amount: (course: FenceCourse) => Money): Money =>
  cents(Math.round(followed.reduce((sum, one) => sum + meanCents(spendingIn(one, amount)), 0)));

/** Expected spending of fences in a year of the plan. */
const expectedIn = (followed: readonly Followed[], year: number): Money =>
  expectedOf(followed, ({ spendingByYear }) => spendingByYear[year]!);

/** Bands of what is spent so far: what is spent stays spent, so a later one is held up where the steps of its sum put it a cent lower. */
function neverFalling(soFar: readonly Band[]): readonly Band[] {
  let reached: Band = { p10: 0, p50: 0, p90: 0 };
  return soFar.map(({ p10, p50, p90 }) => {
    reached = { p10: Math.max(reached.p10, p10), p50: Math.max(reached.p50, p50), p90: Math.max(reached.p90, p90) };
    return reached;
  });
}

/** Spending year by year from bands of what is spent so far, along one of their percentiles. */
function spendingAlong(soFar: readonly Band[], percentile: keyof Band): readonly Money[] {
  return soFar.map((band, year) => cents(band[percentile] - (soFar[year - 1]?.[percentile] ?? 0)));
}

/**
 * A plan of repair and replacement by year: what is spent, as its mean and a band; the fund that pays it; what to set aside; what
 * waiting costs. The band carries when each fence is replaced, by all of its courses; prices, interest and costs are taken as
 * given. Throws RangeError where the request does not hold together.
 */
export function reservePlan(request: ReservePlanRequest): ReservePlan {
  checkReservePlan(request);
  const { payer, dependence, floor, fences } = request;
  const followed = fences.map((fence) => ({ fence, courses: fenceCourses(fence, request) }));
  const own = followed.filter(({ fence }) => fence.responsible === payer);
  const yearIndices = Array.from({ length: request.years }, (_, year) => year);
  const bandOver = (amount: (course: FenceCourse, year: number) => Money): readonly Band[] =>
    yearIndices.map((year) =>
      sumBand(
        own.map((one) => spendingIn(one, (course) => amount(course, year))),
        dependence,
      ),
    );
  const inYear = bandOver((course, year) => course.spendingByYear[year]!);
  const soFar = neverFalling(bandOver((course, year) => sumMoney(course.spendingByYear.slice(0, year + 1))));
  const expected = yearIndices.map((year) => expectedIn(own, year));
  const along = {
    p10: spendingAlong(soFar, 'p10'),
    p50: spendingAlong(soFar, 'p50'),
    p90: spendingAlong(soFar, 'p90'),
  };
  const setAsideFor = (spendingByYear: readonly Money[]): SetAside => {
    const need = { spendingByYear, floor };
    return { flat: setAside(request, 'flat', need), rising: setAside(request, 'rising', need) };
  };
  const found = { expected: setAsideFor(expected), nineInTen: setAsideFor(along.p90) };
  const contribution = contributionOf(request, found);
  const closings = (spending: readonly Money[]): readonly Money[] =>
    fundLedger(request, contribution, spending).map(({ closing }) => closing);
  const [lean, middle, fat] = [closings(along.p90), closings(along.p50), closings(along.p10)];
  const others = (['association', 'lot', 'office'] as const).filter(
    (who) => who !== payer && fences.some(({ responsible }) => responsible === who),
  );
  const lines = followed.map((one) => fenceLine(one, request));
  return {
    label: RESERVE_PLAN_LABEL,
    payer,
    dependence,
    floor,
    contribution,
    years: fundLedger(request, contribution, expected).map((line, year) => ({
      ...line,
      year: request.firstYear + year,
      repairs: expectedOf(own, ({ repairsByYear }) => repairsByYear[year]!),
      spendingBand: inYear[year]!,
      spentSoFar: soFar[year]!,
      closingBand: { p10: lean[year]!, p50: middle[year]!, p90: fat[year]! },
      othersSpending: Object.fromEntries(
        others.map((who) => [
          who,
          expectedIn(
            followed.filter(({ fence }) => fence.responsible === who),
            year,
          ),
        ]),
      ),
    })),
    setAside: found,
    fences: lines,
    waiting: sumWaiting(lines.filter(({ responsible }) => responsible === payer).map(({ waiting }) => waiting)),
  };
}

function contributionOf({ contribution }: ReservePlanRequest, found: ReservePlan['setAside']): Contribution {
  const { course } = contribution;
  if (contribution.kind === 'find') return found[contribution.cover === 'expected' ? 'expected' : 'nineInTen'][course];
  const { firstYear, atOnce } = contribution;
  return { firstYear, course, atOnce };
}

function fenceLine({ fence, courses }: Followed, request: ReservePlanRequest): ReserveFence {
  const chanceOf = (holds: (course: FenceCourse) => boolean): number =>
    Math.min(
      1,
      courses.filter(holds).reduce((sum, { probability }) => sum + probability, 0),
    );
  return {
    ref: fence.ref,
    responsible: fence.responsible,
    pReplaced: chanceOf(({ replacedIn }) => replacedIn !== null),
    pSnapped: chanceOf(({ snapped }) => snapped),
    likelyYear: likelyYear(courses, request.firstYear),
    expectedSpending: cents(
      Math.round(meanCents(spendingIn({ fence, courses }, ({ spendingByYear }) => sumMoney(spendingByYear)))),
    ),
    waiting: waitingCost(fence, request, request.interest),
  };
}

/** Courses come in the order of the years in which they replace the fence. */
function likelyYear(courses: readonly FenceCourse[], firstYear: number): number | null {
  let reached = 0;
  for (const { replacedIn, probability } of courses) {
    if (replacedIn === null) return null;
    reached += probability;
    if (reached >= 0.5) return firstYear + replacedIn;
  }
  return null;
}
