import { medianDecayRate } from '../decay/decay-rate.ts';
import {
  PACE_SPREAD_PROVENANCE,
  TREATMENT_CLASSES,
  treatmentFactorProvenance,
  woodFactorProvenance,
} from '../decay/treatment-class.ts';
import type { Provenance } from '../units/provenance.ts';
import { pacePrior } from './pace-prior.ts';
import type { ReasonContext } from './reason-context.ts';
import { type ReasonStep, reasonStep } from './reason-step.ts';

const LEARNED: Provenance = {
  source: 'readings of this register, partly pooled with the published value',
  tag: 'derived',
};
const SEEN: Provenance = { source: 'readings and storm outcomes of this fence', tag: 'derived' };
const RATE: Provenance = { source: 'the three factors multiplied', tag: 'derived' };

/** Where the rate is not the published one: what the register learned, and what readings and storms made of it. */
function seenRateSteps(
  { facts, model, postClass }: ReasonContext,
  published: number,
  rate: number,
): readonly ReasonStep[] {
  const { post } = postClass.sample;
  const part = { basis: 'both', group: 'rot' } as const;
  const steps: ReasonStep[] = [];
  const { medianRate } = pacePrior(post.wood.treatmentClass, facts.site.climate, model.points.learned);
  if (medianRate !== published) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'r_learned',
          quantity: 'median rot rate, as this register learned it',
          value: medianRate,
          unit: 'mm/a',
          equation: `r exp(shift) of acceptance ${model.points.learned!.version}`,
        },
        LEARNED,
      ),
    );
  }
  if (rate !== medianRate) {
    const factor = `${medianRate === published ? 'r' : 'r_learned'} exp(tau z_pace)`;
    const own = model.points.piecePaces.has(post.piece);
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'z_pace',
          quantity: 'score of the rot pace of the fence, after what was seen',
          value: model.points.scores.pace[0]!,
          unit: '-',
          equation: 'median of the posterior',
        },
        SEEN,
      ),
      reasonStep(
        part,
        {
          symbol: 'r_seen',
          quantity: own
            ? 'rot rate of this post after what was read at it'
            : 'rot rate of this fence after what was seen',
          value: rate,
          unit: 'mm/a',
          equation: own ? `median of its own posterior, given a fence of z_pace; ${factor} of the fence` : factor,
        },
        SEEN,
      ),
    );
  }
  return steps;
}

/** Steps from treatment class and climate factor to the rate at which the deciding post rots. @param rate the rate taken [mm/a] */
export function paceSteps(context: ReasonContext, rate: number): readonly ReasonStep[] {
  const { facts, model, postClass } = context;
  const { treatmentClass } = postClass.sample.post.wood;
  const parameters = TREATMENT_CLASSES[treatmentClass];
  const part = { basis: 'both', group: 'rot' } as const;
  const published = medianDecayRate(treatmentClass, facts.site.climate);
  return [
    reasonStep(
      part,
      {
        symbol: 'k_wood',
        quantity: `wood factor, ${parameters.name}`,
        value: parameters.woodFactor,
        unit: '-',
        equation: 'table of treatment classes',
      },
      woodFactorProvenance(treatmentClass),
    ),
    reasonStep(
      part,
      {
        symbol: 'phi',
        quantity: 'treatment factor',
        value: parameters.treatmentFactor,
        unit: '-',
        equation: 'table of treatment classes',
      },
      treatmentFactorProvenance(treatmentClass),
    ),
    reasonStep(
      part,
      {
        symbol: 'r',
        quantity: 'median rot rate per face',
        value: published,
        unit: 'mm/a',
        equation: 'phi k_wood k_climate',
      },
      RATE,
    ),
    reasonStep(
      part,
      {
        symbol: 'tau',
        quantity: 'spread of ln r from fence to fence',
        value: pacePrior(treatmentClass, facts.site.climate, model.points.learned).spread,
        unit: '-',
        equation: 'table of treatment classes',
      },
      PACE_SPREAD_PROVENANCE,
    ),
    ...seenRateSteps(context, published, rate),
  ];
}
