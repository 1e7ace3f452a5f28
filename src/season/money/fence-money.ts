import type { InstallDate } from '../../forecast/fence-facts.ts';
import { middleOf, type PointRisks } from '../../forecast/point-risks.ts';
import { middleDay } from '../../forecast/season-days.ts';
import { lifeGust } from '../fence-life.ts';
import { type FenceOutlook, risksAfter } from '../fence-outlook.ts';
import { plannedWorks } from '../planned-works.ts';
import { EMERGENCY_FACTOR, type FenceConsequence, SNAP_CONSEQUENCES } from '../snap-consequence.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import { worksCost } from '../works-cost.ts';
import { type AgeReplacement, ageReplacement } from './age-replacement.ts';
import { type ShortCourse, shortCourse, survivalAhead } from './fence-survival.ts';
import { serviceLeft } from './longest-service.ts';
import { amountOf, type Money, moneyFromAmount, moneyTimes } from './money.ts';
import type { PlanFence, PlannedRepair, PlannedReplacement } from './plan-fence.ts';
import { inspectionRepairs, mendingRepairs } from './planned-repairs.ts';
import { type ReplacementAhead, replacementAhead } from './replacement-ahead.ts';

/**
 * When a plan replaces a fence. `cheapest`: at the age at which replacing costs least in the long run, as it stands today.
 * `before short`: before the first season in which it breaks below its design gust, whatever it costs; where it never held
 * that, when two thirds of its built strength are left.
 */
export type ReplacementRule = 'cheapest' | 'before short';

/** How the money of every fence of a plan is reckoned. */
export interface FenceMoneyTerms {
  /** First year of the plan, not after the season 1 of any of its fences. */
  readonly firstYear: number;
  /** The rule that is wanted; without a hazard curve it is `before short`. */
  readonly rule: ReplacementRule;
  /** Age at which a fence is rebuilt whatever its posts hold, its rails and boards being worn: 1 to 30 [a]. */
  readonly longestServiceYears: number;
  /** Years from one inspection to the next; 0: none is planned [a]. */
  readonly inspectEveryYears: number;
}

/** One fence with what its money depends on. */
export interface FenceToFund {
  readonly outlook: FenceOutlook;
  /** Calendar year in which season 1 of the outlook opens. */
  readonly seasonYear: number;
  readonly catalogue: WorksCatalogue;
  readonly consequence: FenceConsequence;
}

/** The money of one fence, in today's money. */
export interface FenceMoney {
  readonly ref: string;
  /** When the fence as it stands was built, or rebuilt. */
  readonly built: InstallDate;
  readonly ageYears: number;
  /** Rebuilding it in good time. */
  readonly price: Money;
  /** Rebuilding it in a bad week, after it snapped. */
  readonly priceAfterFailure: Money;
  /** What its snapping brings beside. */
  readonly consequence: Money;
  /** P(snap in the year that begins with season 1) [-]; null without a hazard curve. */
  readonly snapRisk: number | null;
  /** The rule that the plan goes by for this fence. */
  readonly rule: ReplacementRule;
  /** When to replace the fence that will follow it; null without a hazard curve. */
  readonly successor: AgeReplacement | null;
  /** When to replace this one; null without a hazard curve. */
  readonly ahead: ReplacementAhead | null;
  /** Year of its cheapest replacement, at the latest where it is kept until it snaps; null without a hazard curve. */
  readonly cheapestYear: number | null;
  /** Its age then [a]. */
  readonly cheapestAgeYears: number | null;
  /** What replacing it a year after its cheapest year costs; null without a hazard curve, and where it is kept until it snaps. */
  readonly waitingOneYear: Money | null;
  /** What replacing it before season 1 costs over its cheapest year; null without a hazard curve. */
  readonly replacingNow: Money | null;
  /** Label of the first season in which the middle of its snap speed is below the design gust; null where that is none of 30. */
  readonly shortSeason: string | null;
  /** True where that is season 1: it is short now, and no year of it lies ahead. */
  readonly isShortNow: boolean;
  /** True where its longest service is over before season 1. */
  readonly isOutworn: boolean;
  /** For the plan; who answers for it is added there. */
  readonly planned: Omit<PlanFence, 'responsible'>;
}

/** The fence as it would be once rebuilt on the day of the outlook. Throws RangeError where it is not built yet. */
function rebuilt({ outlook, catalogue }: FenceToFund): { readonly risks: PointRisks; readonly postCount: number } {
  const { facts, day } = outlook;
  const { build } = catalogue.rebuild;
  const wish = plannedWorks({ kind: 'rebuild', facts, day, posts: 'all', build, ref: '~ahead 1' });
  if (wish.kind === 'no sense')
    throw new RangeError(`fence ${facts.ref}: ${wish.reason}; plan its money once it stands`);
  return { risks: risksAfter(outlook, [wish.works]), postCount: wish.postCount };
}

/** Mean seasons until a course replaces the fence, did it not snap; so many as it has where some are left over. */
const meanSeasons = ({ chanceBySeason }: ShortCourse): number => {
  const replaced = chanceBySeason.reduce((sum, chance) => sum + chance, 0);
  const mean = chanceBySeason.reduce((sum, chance, season) => sum + chance * season, 0);
  return mean + Math.max(0, 1 - replaced) * chanceBySeason.length;
};

const wholeYears = (years: number): number | null => (years < Infinity ? Math.max(1, Math.round(years)) : null);

interface Course {
  readonly replacement: PlannedReplacement;
  readonly againAfterYears: number | null;
  /** From season 1 on. */
  readonly snapRiskBySeason: readonly number[];
  readonly snapRiskWherePlanned: readonly number[] | null;
}

/** Seasonal numbers as years of a plan that may begin before season 1. */
const fromFirstYear = (bySeason: readonly number[], offset: number): readonly number[] =>
  bySeason.length === 0 ? [] : [...new Array<number>(offset).fill(0), ...bySeason];

function planFence(
  {
    ref,
    price,
    priceAfterFailure,
    consequence,
  }: Pick<FenceMoney, 'ref' | 'price' | 'priceAfterFailure' | 'consequence'>,
  { replacement, againAfterYears, snapRiskBySeason, snapRiskWherePlanned }: Course,
  years: { readonly offset: number; readonly repairs: readonly PlannedRepair[] },
): FenceMoney['planned'] {
  return {
    ref,
    replacement,
    replacementCost: price,
    replacementCostAfterFailure: priceAfterFailure,
    consequence,
    snapRiskByYear: fromFirstYear(snapRiskBySeason, years.offset),
    ...(snapRiskWherePlanned ? { snapRiskWherePlanned: fromFirstYear(snapRiskWherePlanned, years.offset) } : {}),
    againAfterYears,
    repairs: years.repairs,
  };
}

/**
 * The money of one fence that stands today. A rebuild in good time costs the catalogue's price; after a snap it costs that in a
 * bad week, and what is stated for its consequence. Its age of replacement follows from its own survival, given that it
 * stands, and from the long-run cost of the fence that the catalogue would build in its place. It is not credited with more
 * than its longest service, as rails and boards are not forecast. Of repairs, only what was found and inspections are planned:
 * leaning is not priced, nor ends that break alone. Its successor is replaced after its mean years in service.
 * Throws RangeError where it is not built on the day of the outlook.
 * Source: Barlow & Hunter 1960 (`ageReplacement`, `replacementAhead`); `EMERGENCY_FACTOR`, `SNAP_CONSEQUENCES` (judgement).
 */
export function fenceMoney(fence: FenceToFund, terms: FenceMoneyTerms): FenceMoney {
  const { outlook, seasonYear, consequence } = fence;
  const { facts, risks, day } = outlook;
  const next = rebuilt(fence);
  const longest = terms.longestServiceYears;
  const { built, ageAt, seasonsLeft } = serviceLeft(facts, day, {
    seasonDay: risks.seasons[0]!.day,
    longestServiceYears: longest,
  });
  const quietPrice = worksCost([{ kind: 'rebuild', postCount: next.postCount }], fence.catalogue).price;
  const costs = {
    ref: facts.ref,
    price: moneyFromAmount(quietPrice),
    priceAfterFailure: moneyFromAmount(quietPrice * EMERGENCY_FACTOR),
    consequence: moneyFromAmount(SNAP_CONSEQUENCES[consequence].statedLoss),
  };
  const ofNew = survivalAhead(next.risks);
  const ofThis = survivalAhead(risks);
  const replacementCosts = {
    plannedCost: amountOf(costs.price),
    failureCost: amountOf(costs.priceAfterFailure) + amountOf(costs.consequence),
  };
  const successor = ofNew && ageReplacement(ofNew, replacementCosts, longest);
  const ahead = ofThis && successor && replacementAhead(ofThis, replacementCosts, successor.costPerYear, seasonsLeft);
  const cheapestSeasons = ahead && seasonsOf(ahead);
  const rule = ahead ? terms.rule : 'before short';
  const short = shortCourse(risks, lifeGust(risks).gustMps, seasonsLeft);
  const offset = seasonYear - terms.firstYear;
  const ground = { risks, seasonYear, catalogue: fence.catalogue };
  const lastSeen = facts.inspections.reduce((late, each) => (each.day > late ? each.day : late), middleDay(built));
  const snapRiskBySeason = ofThis
    ? ofThis.standing.slice(1).map((stands, season) => {
        const before = ofThis.standing[season]!;
        return before > 0 ? 1 - stands / before : 1;
      })
    : [];
  const course: Course =
    rule === 'cheapest' && successor && cheapestSeasons !== null
      ? {
          replacement: { kind: 'in year', year: seasonYear + cheapestSeasons },
          againAfterYears: wholeYears(successor.meanServiceYears),
          snapRiskBySeason,
          snapRiskWherePlanned: null,
        }
      : {
          replacement: { kind: 'by chance', chanceByYear: fromFirstYear(short.chanceBySeason, offset) },
          againAfterYears: wholeYears(
            meanSeasons(shortCourse(next.risks, lifeGust(next.risks).gustMps, Math.round(longest))),
          ),
          snapRiskBySeason: ofThis ? short.snapRiskBySeason : [],
          snapRiskWherePlanned: ofThis ? short.snapRiskWherePlanned : null,
        };
  return {
    ...costs,
    built,
    ageYears: ageAt(day),
    snapRisk: snapRiskBySeason[0] ?? null,
    rule,
    successor,
    ahead,
    cheapestYear: cheapestSeasons === null ? null : seasonYear + cheapestSeasons,
    cheapestAgeYears: cheapestSeasons === null ? null : ageAt(risks.seasons[0]!.day) + cheapestSeasons,
    waitingOneYear: ahead && waitingPast(ahead),
    replacingNow: ahead && moneyFromAmount(ahead.excessBySeason[0]!),
    shortSeason: risks.seasons.find(({ snapMps }) => middleOf(risks, snapMps) < risks.designGustMps)?.label ?? null,
    isShortNow: middleOf(risks, risks.seasons[0]!.snapMps) < risks.designGustMps,
    isOutworn: seasonsLeft === 0,
    planned: planFence(costs, course, {
      offset,
      repairs: [...mendingRepairs(ground), ...inspectionRepairs(ground, terms.inspectEveryYears, lastSeen)],
    }),
  };
}

/** Seasons ahead at whose opening a fence is replaced. */
function seasonsOf({ advice }: ReplacementAhead): number {
  if (advice.kind === 'replace now') return 0;
  if (advice.kind === 'in N years') return advice.seasons;
  if (!advice.latest) throw new Error('a fence with a longest service is kept beyond it');
  return advice.latest.seasons;
}

/** What a year more than advised costs; where the longest service ends it, the year may well save, as rails and boards have no price. */
function waitingPast(ahead: ReplacementAhead): Money | null {
  const { advice, excessBySeason } = ahead;
  if (advice.kind === 'run to failure') return null;
  const later = excessBySeason[seasonsOf(ahead) + 1];
  return later === undefined ? null : moneyFromAmount(later);
}

/** What one of several owners pays of a fence. @param share of every payment, 0 to 1 [-] */
export const partOf = (fence: FenceMoney['planned'], share: number): FenceMoney['planned'] => ({
  ...fence,
  replacementCost: moneyTimes(fence.replacementCost, share),
  replacementCostAfterFailure: moneyTimes(fence.replacementCostAfterFailure, share),
  consequence: moneyTimes(fence.consequence, share),
  repairs: fence.repairs.map((repair) => ({ ...repair, cost: moneyTimes(repair.cost, share) })),
});
