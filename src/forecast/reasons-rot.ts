import type { SectionLoss } from '../capacity/section-properties.ts';
import { DECAY_DEPTH_PROVENANCE, decayLaw } from '../decay/decay-depth.ts';
import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import { dayNumber } from '../units/calendar-day.ts';
import type { Provenance } from '../units/provenance.ts';
import type { ReasonContext } from './reason-context.ts';
import { type ReasonStep, reasonStep } from './reason-step.ts';
import { climateSteps } from './reasons-climate.ts';
import { cutSteps } from './reasons-cut.ts';
import { paceSteps } from './reasons-pace.ts';

const CLOCK: Provenance = { source: 'clock shift after works', tag: 'judgement' };

/** Steps from climate and treatment to rot depth. */
export function rotSteps(context: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { model, postClass, season, sound } = context;
  const { post } = postClass.sample;
  const parameters = TREATMENT_CLASSES[post.wood.treatmentClass];
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
  const rate = model.rots[postClass.kind]!.medianRate(0);
  const law = decayLaw(rate);
  const exposure = sound ? 0 : model.rots[postClass.kind]!.moment(0, dayNumber(season.day)).exposureYears;
  const pace = paceSteps(context, rate);
  const r = pace.findLast(({ unit }) => unit === 'mm/a')!.symbol;
  return [
    ...climateSteps(context),
    ...pace,
    reasonStep(
      part,
      { symbol: 't_lag', quantity: 'lag', value: law.lagYears, unit: 'a', equation: `5.5 ${r}^-0.95` },
      DECAY_DEPTH_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 't_d0',
        quantity: 'end of the slow start',
        value: law.startEndsYears,
        unit: 'a',
        equation: `t_lag + 5/${r}`,
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
      CLOCK,
    ),
    reasonStep(
      part,
      {
        symbol: 'd',
        quantity: 'rot depth per face, median',
        value: loss.depthMm,
        unit: 'mm',
        equation: `5 (t / t_d0)^2 up to t_d0, then ${r} (t - t_lag)${model.points.piecePaces.has(post.piece) ? '; never under what was read' : ''}; at most half the narrowest side`,
      },
      DECAY_DEPTH_PROVENANCE,
    ),
    ...cutSteps(context, loss),
  ];
}
