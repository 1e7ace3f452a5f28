import { READING_METHODS } from '../forecast/evidence/reading-method.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { PointRisks } from '../forecast/point-risks.ts';
import type { WorksKind } from '../forecast/works.ts';
import { type ExpectedLoss, expectedLoss, type LossTerms, lossTerms } from './expected-loss.ts';
import { type FenceOutlook, risksAfter, type StandingAhead, standingAhead } from './fence-outlook.ts';
import { readingSignal } from './reading-signal.ts';
import type { FenceConsequence } from './snap-consequence.ts';
import { valueOfInformation } from './value-of-inspection.ts';
import type { WorksCatalogue } from './works-catalogue.ts';
import { type WorksCost, worksCost } from './works-cost.ts';
import { type WorksOption, worksOptions } from './works-options.ts';
import { strictestRules, type WorksCalendar, type WorksWindow, worksWindow } from './works-window.ts';

/** What doing something takes from the expected loss, in the register's currency of today; positive where it helps. */
interface LossDrop {
  /** In season 1. */
  readonly thisSeason: number;
  /** Over 30 years, discounted, where it is done before season 1 opens (or at once, where that is running). */
  readonly toHorizon: number;
  /** The same where it is done only after season 1: season 1 passes as if nothing were done. */
  readonly ifLate: number;
}

interface CandidateBase {
  readonly key: string;
  readonly cost: WorksCost;
  readonly window: WorksWindow;
  /** Worth of doing it now less its price, against doing nothing now; null without a hazard curve. */
  readonly netBenefit: number | null;
}

/** Works that could be done to a fence. */
export interface WorksCandidate extends CandidateBase {
  readonly kind: 'works';
  readonly option: WorksOption;
  /** Null without a hazard curve. */
  readonly drop: LossDrop | null;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  /** True where the standing of the fence or of its ends becomes another. */
  readonly changesStanding: boolean;
  /** Posts found broken, leaning or closed off that are so no longer. */
  readonly mends: readonly number[];
  /** Fewer posts expected short in season 1 [-]; negative where more are. */
  readonly fewerPostsShort: number;
}

/** What is best where the mean of the readings falls into a stretch. */
interface ReadingAdvice {
  /** Stretch of the mean depth [mm]; null: unbounded. */
  readonly fromMm: number | null;
  readonly toMm: number | null;
  readonly probability: number;
  /** Key of the works that are then best; null: none. */
  readonly best: string | null;
}

/** Looking first. Its worth counts what is decided better after it; its price is taken off the net benefit. */
export interface InspectCandidate extends CandidateBase {
  readonly kind: 'inspect';
  /** Posts to be read. */
  readonly posts: readonly number[];
  /** Expected value of what the readings tell, before their price; null without a hazard curve. */
  readonly evsi: number | null;
  /** No inspection could be worth more than this. */
  readonly evpi: number | null;
  /** Net benefit where the works that turn out best follow in the same season: `netBenefit` and what is best now. */
  readonly netBenefitWithWorks: number | null;
  readonly advice: readonly ReadingAdvice[];
}

export type FenceCandidate = WorksCandidate | InspectCandidate;

/** Everything that could be done at one fence this season. */
export interface FenceCandidates extends StandingAhead {
  readonly fenceRef: string;
  readonly terms: LossTerms;
  /** Expected loss where nothing is done; null without a hazard curve. */
  readonly loss: Pick<ExpectedLoss, 'thisSeason' | 'toHorizon'> | null;
  readonly candidates: readonly FenceCandidate[];
}

/** What candidates are made from. */
export interface CandidateInputs {
  readonly outlook: FenceOutlook;
  readonly catalogue: WorksCatalogue;
  readonly consequence: FenceConsequence;
  readonly calendar: WorksCalendar;
}

/** Most posts that are read to learn the pace of a fence; judgement. */
const MOST_POSTS_READ = 8;
/** Outcomes of an inspection told apart; judgement. */
const READING_BINS = 24;

/** Works and what they do, for one fence. */
interface Weighed {
  readonly candidate: WorksCandidate;
  /** Net benefit to the horizon at each belief point; null without a hazard curve. */
  readonly benefitAt: Float64Array | null;
}

const unmended = ({ found }: PointRisks): readonly number[] => [
  ...new Set([...found.broken, ...found.leaning, ...found.closedOff]),
];

function weigh(
  option: WorksOption,
  inputs: CandidateInputs,
  now: { readonly terms: LossTerms; readonly loss: ExpectedLoss | null; readonly standing: StandingAhead },
): Weighed {
  const { outlook, catalogue, calendar } = inputs;
  const kinds: readonly WorksKind[] = option.parts.map(({ kind }) => kind);
  const after = risksAfter(outlook, option.works);
  const lossAfter = expectedLoss(after, now.terms);
  const late = expectedLoss(
    { weights: after.weights, seasons: [outlook.risks.seasons[0]!, ...after.seasons.slice(1)] },
    now.terms,
  );
  const { loss } = now;
  const drop =
    loss && lossAfter && late
      ? {
          thisSeason: loss.thisSeason - lossAfter.thisSeason,
          toHorizon: loss.toHorizon - lossAfter.toHorizon,
          ifLate: loss.toHorizon - late.toHorizon,
        }
      : null;
  const standing = standingAhead(after, outlook.settings, now.standing);
  const left = new Set(unmended(after));
  return {
    candidate: {
      kind: 'works',
      key: option.key,
      option,
      cost: option.cost,
      window: worksWindow(strictestRules(kinds, catalogue), calendar),
      drop,
      netBenefit: drop && drop.toHorizon - option.cost.price,
      ...standing,
      changesStanding:
        standing.standing !== now.standing.standing || standing.endsStanding !== now.standing.endsStanding,
      mends: unmended(outlook.risks).filter((number) => !left.has(number)),
      fewerPostsShort: outlook.risks.expectedPostsShort - after.expectedPostsShort,
    },
    benefitAt:
      loss && lossAfter
        ? loss.toHorizonAt.map((each, point) => each - lossAfter.toHorizonAt[point]! - option.cost.price)
        : null,
  };
}

/** Posts to be read: those the fence is judged by, not broken, evenly picked. */
function postsToRead({ posts, found }: PointRisks): readonly number[] {
  const whole = posts.filter(({ number }) => !found.broken.includes(number));
  const line = whole.filter(({ isLinePost }) => isLinePost);
  const judged = (line.length > 0 ? line : whole).map(({ number }) => number);
  const count = Math.min(MOST_POSTS_READ, judged.length);
  return Array.from({ length: count }, (_, index) => judged[Math.floor(((index + 0.5) * judged.length) / count)]!);
}

function inspection(inputs: CandidateInputs, weighed: readonly Weighed[]): InspectCandidate | null {
  const { outlook, catalogue, calendar } = inputs;
  const { risks } = outlook;
  const posts = postsToRead(risks);
  if (posts.length === 0) return null;
  const cost = worksCost([{ kind: 'inspect', postCount: posts.length }], catalogue);
  const base = {
    kind: 'inspect',
    key: 'inspect',
    posts,
    cost,
    window: worksWindow(strictestRules(['inspect'], catalogue), calendar),
  } as const;
  const works = weighed.flatMap(({ candidate, benefitAt }) => (benefitAt ? [{ key: candidate.key, benefitAt }] : []));
  if (risks.hazard.kind === 'none') {
    return { ...base, evsi: null, evpi: null, netBenefit: null, netBenefitWithWorks: null, advice: [] };
  }
  const choices = [{ key: null, benefitAt: new Float64Array(risks.weights.length) }, ...works];
  const { signal, edgesMm } = readingSignal(risks.depth, risks.weights, {
    postCount: posts.length,
    errorMm: READING_METHODS['awl-or-probe'].errorMm,
    binCount: READING_BINS,
  });
  const value = valueOfInformation(
    { weights: risks.weights, benefits: choices.map(({ benefitAt }) => benefitAt) },
    signal,
  );
  const advice: ReadingAdvice[] = [];
  for (const [bin, { probability, best }] of value.outcomes.entries()) {
    const key = choices[best]!.key;
    const last = advice.at(-1);
    const toMm = edgesMm[bin] ?? null;
    if (last && last.best === key) {
      advice[advice.length - 1] = { ...last, toMm, probability: last.probability + probability };
    } else advice.push({ fromMm: edgesMm[bin - 1] ?? null, toMm, probability, best: key });
  }
  return {
    ...base,
    evsi: value.evsi,
    evpi: value.evpi,
    netBenefit: value.evsi - cost.price,
    netBenefitWithWorks: value.benefitNow + value.evsi - cost.price,
    advice,
  };
}

/**
 * Everything that could be done at one fence on the day of its outlook, with what it takes, what it takes from the expected
 * loss, and its rules; works first, in the order of the catalogue, then looking first. Only the snapping of the posts the
 * fence is judged by is priced: what works do for the ends alone, for single posts and for the lean shows in their standing,
 * in posts short and in what they mend.
 * Source: `pointRisks`, `expectedLoss`, `valueOfInformation`.
 */
export function fenceCandidates(inputs: CandidateInputs): FenceCandidates {
  const { outlook, catalogue, consequence } = inputs;
  const { facts, risks, day } = outlook;
  const rebuild = worksCost([{ kind: 'rebuild', postCount: risks.posts.length }], catalogue);
  const terms = lossTerms(rebuild.price, consequence);
  const loss = expectedLoss(risks, terms);
  const standing = standingAhead(risks, outlook.settings);
  const weighed = worksOptions({ facts, risks, catalogue, day }).options.map((option) =>
    weigh(option, inputs, { terms, loss, standing }),
  );
  const look = inspection(inputs, weighed);
  return {
    fenceRef: facts.ref,
    ...standing,
    terms,
    loss: loss && { thisSeason: loss.thisSeason, toHorizon: loss.toHorizon },
    candidates: [...weighed.map(({ candidate }) => candidate), ...(look ? [look] : [])],
  };
}
