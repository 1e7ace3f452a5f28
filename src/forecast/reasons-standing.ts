import { FIBRE_SPREAD_POST } from '../capacity/wood-strength.ts';
import { POST_PACE_SPREAD } from '../decay/decay-rate.ts';
import type { Provenance } from '../units/provenance.ts';
import { effectiveCount } from './band.ts';
import type { GroupSpeeds } from './fence-forecast.ts';
import { returnPeriodOf } from './hazard-curve.ts';
import type { ReasonContext } from './reason-context.ts';
import { type ReasonStep, reasonStep } from './reason-step.ts';

const BELIEF: Provenance = { source: 'quantiles over the belief points; spreads by judgement', tag: 'judgement' };
const MODEL: Provenance = { source: 'definition of standing', tag: 'judgement' };
const WORKED: Provenance = { source: 'the steps above', tag: 'derived' };
const GUMBEL: Provenance = { source: 'Gumbel, rate form 1/T = exp(-(v - u)/a)', tag: 'derived' };
const SHORT: Provenance = { source: 'total probability over belief points and post scatter', tag: 'derived' };

const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
  reasonStep({ basis: 'expected', group: 'standing' }, what, provenance);

/** Speeds of the explained posts that the steps before end in, every unknown at its median [m/s]. */
interface WorkedSpeeds {
  readonly snapMps: number;
  readonly leanMps: number;
}

/** Which group of posts is told of, and what the chain so far has worked out for it. */
export interface StandingAsk {
  readonly group: GroupSpeeds;
  /** True where the group is what the fence is judged by. */
  readonly judged: boolean;
  readonly name: 'line posts' | 'ends';
  readonly worked: WorkedSpeeds;
}

/** What one quantile is taken over, in words. */
function quantileText({ belief }: ReasonContext, name: StandingAsk['name']): string {
  const weights = belief.weights
    ? `unlike in weight, worth ${effectiveCount(belief.weights).toFixed(1)} of equal weight`
    : 'of equal weight';
  const at = name === 'line posts' ? 'the median post of the line' : 'the weakest post of the ends';
  return `Harrell-Davis quantile at 0.5 over ${belief.count} points of the belief, ${weights}; at each point ${at}`;
}

/** From the speed worked out at the medians to the p50 over the belief. */
function bandSteps(context: ReasonContext, { group, name, worked }: StandingAsk): readonly ReasonStep[] {
  const { snapMps, leanMps } = group;
  const each = [
    {
      kind: 'snap',
      band: snapMps,
      by: group.snapState,
      at: worked.snapMps,
      least: 'the least of V_bend, V_shear and V_rail, as far as given above',
    },
    {
      kind: 'lean',
      band: leanMps,
      by: group.leanState,
      at: worked.leanMps,
      least: 'the lesser of V_foot and V_collar, as far as given above',
    },
  ] as const;
  return each.flatMap(({ kind, band, by, at, least }) => [
    add(
      {
        symbol: `V_${kind},m`,
        quantity: `${kind} speed of the posts explained, every unknown at its median`,
        value: at,
        unit: 'm/s',
        equation: least,
      },
      WORKED,
    ),
    add(
      {
        symbol: `V_${kind}`,
        quantity: `${kind} speed p50 (p10 ${band.p10.toFixed(1)}, p90 ${band.p90.toFixed(1)} m/s), by ${by}`,
        value: band.p50,
        unit: 'm/s',
        equation: quantileText(context, name),
      },
      BELIEF,
    ),
    add(
      {
        symbol: `V_${kind} - V_${kind},m`,
        quantity: 'p50 over the belief less the speed worked out at the medians',
        value: band.p50 - at,
        unit: 'm/s',
        equation:
          'the middle of the speeds is not the speed at the middles: the unknowns act on it unevenly, the quantile takes in the points near the middle, and at each point another post may speak for the group or another way to fail come first',
      },
      WORKED,
    ),
  ]);
}

/** A whole number, thousands apart by commas. */
const grouped = (value: number): string => String(value).replace(/\B(?=(?:\d{3})+$)/g, ',');

/** How often the gust comes that the p50 still holds; where the curve says nothing of so rare a gust, that it is rarer. */
function rarityStep({ forecast }: ReasonContext, group: GroupSpeeds): readonly ReasonStep[] {
  const { hazard } = forecast;
  if (hazard.kind === 'none' || group.onceInYears === null) return [];
  const longest = returnPeriodOf(hazard, Number.POSITIVE_INFINITY);
  return [
    add(
      {
        symbol: 'N',
        quantity: 'the gust it still holds comes about once in',
        value: group.onceInYears < longest ? group.onceInYears : `more than ${grouped(longest)}`,
        unit: 'a',
        equation: 'exp((V_snap - u) / a)',
      },
      GUMBEL,
    ),
  ];
}

/** How many posts are short beside the chance that the group is: two questions, whose answers need not rise together. */
function shortSteps({ season }: ReasonContext, name: StandingAsk['name']): readonly ReasonStep[] {
  if (season.pShort === null || season.expectedPostsShort === null) return [];
  const [speaks, many] =
    name === 'line posts'
      ? ['the median post of the line', 'a line whose median post holds can have several weak posts that do not']
      : ['the weakest post of the ends, at median scatter', 'posts weaker than is usual of their fence add to it'];
  return [
    add(
      {
        symbol: 'P(short)',
        quantity: `chance that the snap speed of ${speaks} is under V_design`,
        value: season.pShort,
        unit: '-',
        equation: 'weight of the points of the belief at which it is',
      },
      SHORT,
    ),
    add(
      {
        symbol: 'n_short',
        quantity: 'posts of the whole fence expected short of V_design',
        value: season.expectedPostsShort,
        unit: '-',
        equation: `sum over all posts of the chance that each is short, its own ln pace spread by ${POST_PACE_SPREAD} and its own ln strength by ${FIBRE_SPREAD_POST} about those of the fence. P(short) asks only of ${speaks}, n_short counts single weak posts: ${many}, so P(short) can be under 1 % where n_short is 1 or more`,
      },
      SHORT,
    ),
  ];
}

/** Steps from the speeds to what is told: the belief's band, once in N years, how many posts are short, the standing. */
export function standingSteps(context: ReasonContext, ask: StandingAsk): readonly ReasonStep[] {
  const { forecast, season } = context;
  const { group, judged, name } = ask;
  const steps = [...bandSteps(context, ask), ...rarityStep(context, group)];
  if (judged) steps.push(...shortSteps(context, name));
  const standing = judged ? forecast.standing : forecast.endsStanding;
  if (season.season === 1 && standing !== null) {
    steps.push(
      add(
        {
          symbol: 'standing',
          quantity: `standing of the ${name === 'ends' ? 'end posts' : name}, before any margin`,
          value: standing,
          unit: '-',
          equation: 'V_snap against V_design, as built, now and within the look-ahead',
        },
        MODEL,
      ),
    );
  }
  return steps;
}
