import { BROMS_CLAY_PROVENANCE, BROMS_SAND_PROVENANCE, passiveCoefficient } from '../capacity/footing.ts';
import { speedAtResistance } from '../capacity/post-resistance.ts';
import { SOIL_CLASSES, SOIL_PROVENANCE, WATER_UNIT_WEIGHT_N_PER_M3 } from '../capacity/soil-class.ts';
import type { Provenance } from '../units/provenance.ts';
import { footingPrior } from './footing-prior.ts';
import { bearingWidth, collarBurstForce, footingForce, groundAfter } from './lean-resistance.ts';
import type { Demand } from './post-demand.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import { collarSteps } from './reasons-collar.ts';
import { seenFactorSteps } from './reasons-seen-factor.ts';
import { groundAt, groundIsKnown } from './unknown-priors.ts';

const STATICS: Provenance = { source: 'statics', tag: 'derived' };
const PRIOR: Provenance = { source: 'stands in for what is not recorded', tag: 'judgement' };

const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
  reasonStep({ basis: 'expected', group: 'lean' }, what, provenance);

function soilSteps({ facts, model }: ReasonContext): readonly ReasonStep[] {
  const { strength } = SOIL_CLASSES[facts.site.soilClass];
  if (strength.kind === 'clay') {
    const cu = strength.undrainedShearPa / 1e6;
    return [
      add(
        { symbol: 'cu', quantity: 'undrained shear strength', value: cu, unit: 'MPa', equation: 'soil class' },
        SOIL_PROVENANCE,
      ),
    ];
  }
  const { frictionAngleDeg, unitWeightNPerM3 } = strength;
  const saturated = model.state.soilSaturated;
  const gamma = (unitWeightNPerM3 - (saturated ? WATER_UNIT_WEIGHT_N_PER_M3 : 0)) / 1000;
  return [
    add(
      {
        symbol: 'phi_s',
        quantity: 'friction angle of the sand',
        value: frictionAngleDeg,
        unit: 'deg',
        equation: 'soil class',
      },
      SOIL_PROVENANCE,
    ),
    add(
      {
        symbol: 'gamma',
        quantity: saturated ? 'submerged unit weight' : 'unit weight',
        value: gamma,
        unit: 'kN/m3',
        equation: saturated ? 'soil class less water, 9.81' : 'soil class',
      },
      SOIL_PROVENANCE,
    ),
    add(
      {
        symbol: 'Kp',
        quantity: 'passive coefficient',
        value: passiveCoefficient(frictionAngleDeg),
        unit: '-',
        equation: 'tan^2(45 + phi_s/2)',
      },
      STATICS,
    ),
  ];
}

/** Steps from soil and footing to the speed at which the deciding post leans, basis `expected`. */
export function leanSteps(context: ReasonContext): readonly ReasonStep[] {
  const { facts, model, postClass } = context;
  const { post, demands } = postClass.sample;
  const recorded = groundAt(post.ground, model.points, 0);
  const ground = context.sound ? recorded : groundAfter(post.condition, recorded);
  const prior = footingPrior(model.points.learned);
  const score = model.points.scores.footing[0]!;
  const held = Math.exp(prior.logShift + prior.spread * score);
  const load = model.loadFactor[0]!;
  const forces = (demand: Demand): { readonly footing: number; readonly collar: number } => {
    const at = { section: post.wood.section, armM: demand.armM };
    return {
      footing: footingForce(facts.site, model.state.soilSaturated, ground, at),
      collar: collarBurstForce(ground, at),
    };
  };
  const speed = (demand: Demand, force: number): number => speedAtResistance(force * held, demand.forcePerV2 * load);
  const leanOf = (demand: Demand): number => {
    const { footing, collar } = forces(demand);
    return speed(demand, Math.min(footing, collar));
  };
  const worst = demands.reduce((a, b) => (leanOf(b) < leanOf(a) ? b : a));
  const { footing, collar } = forces(worst);
  const speedOf = (force: string): string =>
    `sqrt(${held === 1 ? '' : 'B '}${force} / ${load === 1 ? 'k' : '(k Q)'}), k and e of the worse run`;
  const from = groundIsKnown(post.ground) ? RECORDED : PRIOR;
  const soil = SOIL_CLASSES[facts.site.soilClass];
  const clay = soil.strength.kind === 'clay';
  const steps = [
    ...soilSteps(context),
    add({ symbol: 'L', quantity: 'embedment', value: ground.embedmentM, unit: 'm', equation: 'footing' }, from),
    add(
      {
        symbol: 'w',
        quantity: `bearing width, ${ground.footing}`,
        value: bearingWidth(ground, post.wood.section),
        unit: 'm',
        equation: ground === recorded ? 'concrete diameter, else post diagonal' : 'collar found cracked: post diagonal',
      },
      from,
    ),
    add(
      {
        symbol: 'H',
        quantity: `footing resistance, ${soil.name}${model.state.soilSaturated ? ', saturated' : ''}`,
        value: footing,
        unit: 'N',
        equation: clay
          ? '9 cu w f with H (e + 1.5 w + 0.5 f) = 2.25 w cu g^2, f + g = L - 1.5 w'
          : '0.8 x 0.5 gamma w L^3 Kp / (e + L)',
      },
      clay ? BROMS_CLAY_PROVENANCE : BROMS_SAND_PROVENANCE,
    ),
    ...seenFactorSteps({
      group: 'lean',
      symbol: 'B',
      quantity: 'resistance of the footing over its median, after what was seen',
      spread: prior.spread,
      score,
      learnedShift: model.points.learned?.footing?.logShift ?? null,
      seen: { source: 'storm outcomes of this fence, and what the register learned', tag: 'derived' },
    }),
    add(
      {
        symbol: 'V_foot',
        quantity: 'speed at which the footing gives',
        value: speed(worst, footing),
        unit: 'm/s',
        equation: speedOf('H'),
      },
      STATICS,
    ),
  ];
  if (ground.diameterM === null) return steps;
  return [
    ...steps,
    ...collarSteps({
      section: post.wood.section,
      diameterM: ground.diameterM,
      burstN: collar,
      speedMps: speed(worst, collar),
      speedEquation: speedOf('H_c'),
    }),
  ];
}
