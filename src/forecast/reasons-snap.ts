import { speedAtResistance } from '../capacity/post-resistance.ts';
import type { SectionLoss } from '../capacity/section-properties.ts';
import {
  medianBendingStrength,
  medianShearStrength,
  SHEAR_STRENGTH_PROVENANCE,
  strengthFactors,
  WOOD_STRENGTH_PROVENANCE,
} from '../capacity/wood-strength.ts';
import type { Provenance } from '../units/provenance.ts';
import { governingDemand } from './post-demand.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import { snapResistance } from './snap-resistance.ts';

const STATICS: Provenance = { source: 'statics', tag: 'derived' };

/** Steps from strength and residual section to the speed at which the deciding post snaps, basis `expected`. */
export function snapSteps({ postClass }: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { post, demands } = postClass.sample;
  const { wood } = post;
  const { armM, forcePerV2 } = governingDemand(demands);
  const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
    reasonStep({ basis: 'expected', group: 'snap' }, what, provenance);
  const { momentNm, shearN } = snapResistance(post, loss, 1);
  const steps: ReasonStep[] = [];
  const isWood = wood.momentCapacityNm === null;
  if (isWood) {
    const { base, grade, size } = strengthFactors(wood.species, wood.grade, wood.section);
    steps.push(
      add(
        {
          symbol: 'f',
          quantity: 'median green bending strength',
          value: medianBendingStrength(wood.species, wood.grade, wood.section),
          unit: 'MPa',
          equation: `${base} MPa of the species x grade ${grade} x size or shape ${size}`,
        },
        WOOD_STRENGTH_PROVENANCE,
      ),
    );
  }
  const sleeved = post.sleeveNm !== null;
  const equation = !isWood ? 'as entered' : sleeved ? 'the lesser of sleeve Fy Z and f S0 above it' : 'f S';
  steps.push(
    add(
      { symbol: 'M', quantity: 'moment the post resists at the groundline', value: momentNm, unit: 'N m', equation },
      isWood ? STATICS : RECORDED,
    ),
    add(
      {
        symbol: 'V_bend',
        quantity: 'speed at which it breaks by bending',
        value: speedAtResistance(momentNm / armM, forcePerV2),
        unit: 'm/s',
        equation: 'sqrt(M / (e k)), e and k of the worse run',
      },
      STATICS,
    ),
  );
  if (Number.isFinite(shearN)) {
    const share = wood.section.kind === 'round' ? '3/4' : '2/3';
    steps.push(
      add(
        {
          symbol: 'f_v',
          quantity: 'median green shear strength',
          value: medianShearStrength(wood.species, wood.grade, wood.section),
          unit: 'MPa',
          equation: '0.118 f',
        },
        SHEAR_STRENGTH_PROVENANCE,
      ),
      add(
        {
          symbol: 'V_shear',
          quantity: 'speed at which it shears',
          value: speedAtResistance(shearN, forcePerV2),
          unit: 'm/s',
          equation: `sqrt(${share} f_v A / k)`,
        },
        STATICS,
      ),
    );
  }
  return steps;
}
