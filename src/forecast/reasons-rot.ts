import type { SectionLoss } from '../capacity/section-properties.ts';
import {
  CLIMATE_FACTOR_FLOOR,
  CLIMATE_FACTOR_PROVENANCE,
  climateFactor,
  rainFunction,
  temperatureFunction,
  unflooredClimateFactor,
} from '../decay/climate-factor.ts';
import { DECAY_DEPTH_PROVENANCE, decayLaw } from '../decay/decay-depth.ts';
import { medianDecayRate } from '../decay/decay-rate.ts';
import {
  PACE_SPREAD_PROVENANCE,
  TREATMENT_CLASSES,
  treatmentFactorProvenance,
  woodFactorProvenance,
} from '../decay/treatment-class.ts';
import { dayNumber } from '../units/calendar-day.ts';
import type { Provenance } from '../units/provenance.ts';
import { pacePrior } from './pace-prior.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const LEARNED: Provenance = {
  source: 'readings of this register, partly pooled with the published value',
  tag: 'derived',
};
const SEEN: Provenance = { source: 'readings and storm outcomes of this fence', tag: 'derived' };
const RATE: Provenance = { source: 'the three factors multiplied', tag: 'derived' };
const CUTS: Provenance = { source: 'yearly cut of the register over the years without guards', tag: 'derived' };
const JUDGED = (source: string): Provenance => ({ source, tag: 'judgement' });

function climateSteps({ facts }: ReasonContext): readonly ReasonStep[] {
  const { climate } = facts.site;
  const part = { basis: 'both', group: 'rot' } as const;
  const factor = climateFactor(climate);
  if (climate.kind === 'decay-zone') {
    return [
      reasonStep(
        part,
        {
          symbol: 'k_climate',
          quantity: 'climate factor',
          value: factor,
          unit: '-',
          equation: `decay zone ${climate.zone}`,
        },
        JUDGED('factors of decay zones 1 to 5'),
      ),
    ];
  }
  const { rainMmPerYear: rain, meanTemperatureC: temperature, dryMonths } = climate;
  const floored = unflooredClimateFactor(rain, temperature, dryMonths) < CLIMATE_FACTOR_FLOOR;
  return [
    reasonStep(
      part,
      { symbol: 'R', quantity: 'mean annual rain', value: rain, unit: 'mm/a', equation: 'climate zone' },
      RECORDED,
    ),
    reasonStep(
      part,
      { symbol: 'T', quantity: 'mean annual temperature', value: temperature, unit: 'degC', equation: 'climate zone' },
      RECORDED,
    ),
    reasonStep(
      part,
      { symbol: 'N', quantity: 'dry months', value: dryMonths, unit: '-', equation: 'climate zone' },
      RECORDED,
    ),
    reasonStep(
      part,
      {
        symbol: 'f',
        quantity: 'rain function',
        value: rainFunction(rain, dryMonths),
        unit: '-',
        equation: '10 (1 - exp(-0.001 (R - 250))) (1 - N/6)',
      },
      CLIMATE_FACTOR_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'g',
        quantity: 'temperature function',
        value: temperatureFunction(temperature),
        unit: '-',
        equation: '0 to 5 degC; -1 + 0.2 T to 20; -25 + 1.4 T above',
      },
      CLIMATE_FACTOR_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'k_climate',
        quantity: 'climate factor',
        value: factor,
        unit: '-',
        equation: floored ? `f^0.3 g^0.2, floored at ${CLIMATE_FACTOR_FLOOR}` : 'f^0.3 g^0.2',
      },
      floored ? JUDGED('floor of the climate factor') : CLIMATE_FACTOR_PROVENANCE,
    ),
  ];
}

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
    const own = model.points.piecePaces.has(post.piece);
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'r_seen',
          quantity: own
            ? 'rot rate of this post after what was read at it'
            : 'rot rate of this fence after what was seen',
          value: rate,
          unit: 'mm/a',
          equation: own
            ? 'median of its own posterior, given its fence'
            : 'r exp(tau z), z the median of the posterior',
        },
        SEEN,
      ),
    );
  }
  return steps;
}

/** Steps from climate and treatment to rot depth. */
export function rotSteps(context: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { facts, model, postClass, season, sound } = context;
  const { post } = postClass.sample;
  const { treatmentClass } = post.wood;
  const parameters = TREATMENT_CLASSES[treatmentClass];
  const part = { basis: 'both', group: 'rot' } as const;
  if (!parameters.rots) {
    return [
      reasonStep(
        part,
        { symbol: 'd', quantity: 'rot depth per face', value: 0, unit: 'mm', equation: parameters.name },
        parameters.provenance,
      ),
    ];
  }
  const published = medianDecayRate(treatmentClass, facts.site.climate);
  const rate = model.rots[postClass.kind]!.medianRate(0);
  const law = decayLaw(rate);
  const exposure = sound ? 0 : model.rots[postClass.kind]!.moment(0, dayNumber(season.day)).exposureYears;
  const steps = [
    ...climateSteps(context),
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
    reasonStep(
      part,
      { symbol: 't_lag', quantity: 'lag', value: law.lagYears, unit: 'a', equation: '5.5 r^-0.95' },
      DECAY_DEPTH_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 't_d0',
        quantity: 'end of the slow start',
        value: law.startEndsYears,
        unit: 'a',
        equation: 't_lag + 5/r',
      },
      DECAY_DEPTH_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 't',
        quantity: 'exposure that counts for rot',
        value: exposure,
        unit: 'a',
        equation: 'age less years stopped by treatment; half pace behind a liner',
      },
      JUDGED('clock shift after works'),
    ),
    reasonStep(
      part,
      {
        symbol: 'd',
        quantity: 'rot depth per face, median',
        value: loss.depthMm,
        unit: 'mm',
        equation: `5 (t / t_d0)^2 up to t_d0, then r (t - t_lag)${model.points.piecePaces.has(post.piece) ? '; never under what was read' : ''}`,
      },
      DECAY_DEPTH_PROVENANCE,
    ),
  ];
  if (loss.oneFaceMm > 0) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'c',
          quantity: 'trimmer cut into one face',
          value: loss.oneFaceMm,
          unit: 'mm',
          equation: post.cuts.measured
            ? 'as measured at an inspection, and the yearly cut since'
            : 'yearly cut x years trimmed without guards',
        },
        CUTS,
      ),
    );
  }
  return steps;
}
