import { ALLOWABLE_STRESS_PROVENANCE, allowableStress, LOAD_DURATION_WIND } from '../capacity/allowable-stress.ts';
import { COLLAR_PROVENANCE } from '../capacity/collar.ts';
import { BROMS_CLAY_PROVENANCE, BROMS_SAND_PROVENANCE, PRESUMPTIVE_FOOTING_PROVENANCE } from '../capacity/footing.ts';
import { speedAtResistance } from '../capacity/post-resistance.ts';
import type { SectionLoss } from '../capacity/section-properties.ts';
import { SOIL_CLASSES } from '../capacity/soil-class.ts';
import { medianBendingStrength, WOOD_STRENGTH_PROVENANCE } from '../capacity/wood-strength.ts';
import type { Provenance } from '../units/provenance.ts';
import { allowableFootingForce, bearingWidth, collarBurstForce, footingForce } from './lean-resistance.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import { allowableSnapResistance, snapResistance } from './snap-resistance.ts';
import { windLoadFactor } from './three-second-gust.ts';
import { groundAt, groundIsKnown } from './unknown-priors.ts';

const STATICS: Provenance = { source: 'statics', tag: 'derived' };
const PRIOR: Provenance = { source: 'stands in for what is not recorded', tag: 'judgement' };

/** Steps from strength, section and soil to the speeds at which the deciding post snaps and leans, on both bases. */
export function resistanceSteps(context: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  return [...snapSteps(context, loss), ...leanSteps(context), ...codeSteps(context, loss)];
}

function snapSteps({ postClass }: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { post, demands } = postClass.sample;
  const { armM, forcePerV2 } = demands[0]!;
  const part = { basis: 'expected', group: 'snap' } as const;
  const resistance = snapResistance(post, loss, 1);
  const speed = (newtons: number): number => speedAtResistance(newtons, forcePerV2);
  const steps: ReasonStep[] = [];
  if (post.wood.momentCapacityNm === null) {
    const strength = medianBendingStrength(post.wood.species, post.wood.grade, post.wood.section);
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'f',
          quantity: 'median green bending strength',
          value: strength,
          unit: 'MPa',
          equation: 'No.2 4x4 median x grade x size; round 0.9 x clear',
        },
        WOOD_STRENGTH_PROVENANCE,
      ),
    );
  }
  steps.push(
    reasonStep(
      part,
      {
        symbol: 'M',
        quantity: 'moment the post resists at the groundline',
        value: resistance.momentNm,
        unit: 'N m',
        equation: post.sleeveNm === null ? 'f S' : 'the lesser of sleeve Fy Z and f S0 above it',
      },
      STATICS,
    ),
    reasonStep(
      part,
      {
        symbol: 'V_bend',
        quantity: 'speed at which it breaks by bending',
        value: speed(resistance.momentNm / armM),
        unit: 'm/s',
        equation: 'sqrt(M / (e k))',
      },
      STATICS,
    ),
  );
  if (Number.isFinite(resistance.shearN)) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'V_shear',
          quantity: 'speed at which it shears',
          value: speed(resistance.shearN),
          unit: 'm/s',
          equation: 'sqrt(2/3 f_v A / k), round 3/4',
        },
        { source: 'shear over bending strength of loblolly pine, Wood Handbook', tag: 'memory' },
      ),
    );
  }
  return steps;
}

function leanSteps({ facts, model, postClass }: ReasonContext): readonly ReasonStep[] {
  const { post, demands } = postClass.sample;
  const { armM, forcePerV2 } = demands[0]!;
  const part = { basis: 'expected', group: 'lean' } as const;
  const ground = groundAt(post.ground, model.points, 0);
  const from = groundIsKnown(post.ground) ? RECORDED : PRIOR;
  const at = { section: post.wood.section, armM };
  const soil = SOIL_CLASSES[facts.site.soilClass];
  const clay = soil.strength.kind === 'clay';
  const footing = footingForce(facts.site, model.state.soilSaturated, ground, at);
  const collar = collarBurstForce(ground, at);
  const steps = [
    reasonStep(
      part,
      { symbol: 'L', quantity: 'embedment', value: ground.embedmentM, unit: 'm', equation: 'footing' },
      from,
    ),
    reasonStep(
      part,
      {
        symbol: 'w',
        quantity: `bearing width, ${ground.footing}`,
        value: bearingWidth(ground, post.wood.section),
        unit: 'm',
        equation: 'concrete diameter, else post diagonal',
      },
      from,
    ),
    reasonStep(
      part,
      {
        symbol: 'H',
        quantity: `footing resistance, ${soil.name}${model.state.soilSaturated ? ', saturated' : ''}`,
        value: footing,
        unit: 'N',
        equation: clay ? '9 cu b f, H (e + 1.5 b + 0.5 f) = 2.25 b cu g^2' : '0.8 x 0.5 gamma b L^3 Kp / (e + L)',
      },
      clay ? BROMS_CLAY_PROVENANCE : BROMS_SAND_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'V_foot',
        quantity: 'speed at which the footing gives',
        value: speedAtResistance(footing, forcePerV2),
        unit: 'm/s',
        equation: 'sqrt(H / k)',
      },
      STATICS,
    ),
  ];
  if (Number.isFinite(collar)) {
    steps.push(
      reasonStep(
        part,
        {
          symbol: 'V_collar',
          quantity: 'speed at which the collar bursts',
          value: speedAtResistance(collar, forcePerV2),
          unit: 'm/s',
          equation: 'ring w [1/(2c) + 0.75 b/c^2] = 7.5 sqrt(fc), w = 4 V/L + 6 M/L^2',
        },
        COLLAR_PROVENANCE,
      ),
    );
  }
  return steps;
}

function codeSteps({ facts, model, postClass }: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { post, demands } = postClass.sample;
  const { armM, codeForcePerV2 } = demands[0]!;
  const part = { basis: 'code', group: 'code check' } as const;
  const ground = groundAt(post.ground, model.points, 0);
  const factor = windLoadFactor(facts.site.wind.basis);
  const allowable = allowableSnapResistance(post, loss);
  const footing = allowableFootingForce(facts.site, ground, { section: post.wood.section, armM });
  const steps: ReasonStep[] = [];
  if (post.wood.momentCapacityNm === null) {
    const stress = allowableStress(post.wood);
    steps.push(
      reasonStep(
        part,
        {
          symbol: "Fb'",
          quantity: 'allowable bending stress',
          value: stress.bendingMpa,
          unit: 'MPa',
          equation: `Fb ${Math.round(stress.referenceFbPsi)} psi x CD ${LOAD_DURATION_WIND} x CM ${stress.wetServiceFactor} x Ci ${stress.incisingFactor}`,
        },
        ALLOWABLE_STRESS_PROVENANCE,
      ),
    );
  }
  const soil = SOIL_CLASSES[facts.site.soilClass];
  steps.push(
    reasonStep(
      part,
      {
        symbol: 'gamma_W',
        quantity: 'load factor on wind',
        value: factor,
        unit: '-',
        equation: '0.6 W for ultimate speeds, 1.0 W for nominal ones',
      },
      { source: 'ASCE 7-10 2.4', tag: 'read' },
    ),
    reasonStep(
      part,
      {
        symbol: 'V_post',
        quantity: 'speed at which the post reaches its allowable stress',
        value: speedAtResistance(Math.min(allowable.momentNm / armM, allowable.shearN) / factor, codeForcePerV2),
        unit: 'm/s',
        equation: "sqrt(Fb' S / (e gamma_W k))",
      },
      ALLOWABLE_STRESS_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'P',
        quantity: `allowable force on the footing, ${soil.lateralBearingPsfPerFt} psf/ft${facts.site.lateralBearingDoubled ? ' doubled' : ''}`,
        value: footing,
        unit: 'N',
        equation: 'S b d^3 / (7.02 d + 7.65 h)',
      },
      PRESUMPTIVE_FOOTING_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'V_footing',
        quantity: 'speed at which the footing reaches its allowable bearing',
        value: speedAtResistance(footing / factor, codeForcePerV2),
        unit: 'm/s',
        equation: 'sqrt(P / (gamma_W k))',
      },
      PRESUMPTIVE_FOOTING_PROVENANCE,
    ),
  );
  return steps;
}
