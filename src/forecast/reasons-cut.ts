import type { SectionLoss } from '../capacity/section-properties.ts';
import { DAYS_PER_YEAR, dayNumber } from '../units/calendar-day.ts';
import type { Provenance } from '../units/provenance.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const CUTS: Provenance = { source: 'yearly cut of the register over the years without guards', tag: 'derived' };

/** Steps of what trimmers have cut into one face; none where they have cut nothing. */
export function cutSteps({ model, postClass, season }: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  if (loss.oneFaceMm === 0) return [];
  const { measured, yearlyCutMm, untilDay } = postClass.sample.post.cuts;
  const { earliestDay, latestDay } = model.classes.kinds[postClass.kind]!;
  const installed = earliestDay + (latestDay - earliestDay) * model.points.levels['install date'][0]!;
  const until = Math.min(dayNumber(season.day), untilDay ?? Number.POSITIVE_INFINITY);
  const part = { basis: 'both', group: 'rot' } as const;
  const step = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
    reasonStep(part, what, provenance);
  const steps: ReasonStep[] = [];
  if (measured) {
    steps.push(
      step(
        {
          symbol: 'c_m',
          quantity: 'cut as last measured',
          value: measured.depthMm,
          unit: 'mm',
          equation: 'inspection',
        },
        RECORDED,
      ),
    );
  }
  return [
    ...steps,
    step(
      { symbol: 'c_a', quantity: 'yearly cut', value: yearlyCutMm, unit: 'mm/a', equation: 'as the office set it' },
      RECORDED,
    ),
    step(
      {
        symbol: 't_c',
        quantity: 'years trimmed without guards',
        value: Math.max(0, until - (measured?.day ?? installed)) / DAYS_PER_YEAR,
        unit: 'a',
        equation: `from ${measured ? 'the measurement' : 'installation'} to ${untilDay === null ? 'the day shown' : 'the guards'}, days / ${DAYS_PER_YEAR}`,
      },
      RECORDED,
    ),
    step(
      {
        symbol: 'c',
        quantity: 'trimmer cut into one face',
        value: loss.oneFaceMm,
        unit: 'mm',
        equation: measured ? 'c_m + c_a t_c' : 'c_a t_c',
      },
      CUTS,
    ),
  ];
}
