import { ALLOWABLE_STRESS_PROVENANCE, allowableStress, LOAD_DURATION_WIND } from '../capacity/allowable-stress.ts';
import { PRESUMPTIVE_FOOTING_PROVENANCE } from '../capacity/footing.ts';
import { speedAtResistance } from '../capacity/post-resistance.ts';
import { NAIL_WITHDRAWAL_PROVENANCE } from '../capacity/rail-connection.ts';
import type { SectionLoss } from '../capacity/section-properties.ts';
import { LATERAL_BEARING_PROVENANCE, SOIL_CLASSES } from '../capacity/soil-class.ts';
import type { Provenance } from '../units/provenance.ts';
import { codeSpeeds } from './code-speeds.ts';
import { allowableFootingForce, groundAfter } from './lean-resistance.ts';
import type { Demand } from './post-demand.ts';
import { type PostState, soundPost } from './post-state.ts';
import type { ReasonContext } from './reason-context.ts';
import { type ReasonStep, reasonStep } from './reason-step.ts';
import { allowableSnapResistance } from './snap-resistance.ts';
import { windLoadFactor } from './three-second-gust.ts';
import { groundAt } from './unknown-priors.ts';

const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
  reasonStep({ basis: 'code', group: 'code check' }, what, provenance);

/** How the allowable moment follows from what is printed before it. */
function momentEquation({ condition, wood, sleeveNm }: PostState): string {
  if (condition.broken) return 'found broken';
  if (wood.momentCapacityNm !== null) return 'M / 1.67';
  return sleeveNm === null ? "Fb' S" : "the lesser of M_sleeve / 1.67 and Fb' S0 above it";
}

/** Steps of what a plan checker would compute for the deciding post, basis `code` (allowable stress design). */
export function codeSteps(context: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { facts, model, postClass, season, sound } = context;
  const { post, demands } = postClass.sample;
  const recorded = groundAt(post.ground, model.points, 0);
  const ground = sound ? recorded : groundAfter(post.condition, recorded);
  const factor = windLoadFactor(facts.site.wind.basis);
  const checked = sound ? soundPost(post) : post;
  const allowable = allowableSnapResistance(checked, loss);
  const footingOf = (demand: Demand): number =>
    allowableFootingForce(facts.site, ground, { section: post.wood.section, armM: demand.armM });
  const worstFooting = demands.reduce((a, b) =>
    footingOf(b) / b.codeForcePerV2 < footingOf(a) / a.codeForcePerV2 ? b : a,
  );
  const code = codeSpeeds(model, postClass, season.day, sound);
  const soil = SOIL_CLASSES[facts.site.soilClass];
  const steps: ReasonStep[] = [];
  if (post.wood.momentCapacityNm === null) {
    const stress = allowableStress(post.wood);
    const factors = `CD ${LOAD_DURATION_WIND} x CM ${stress.wetServiceFactor} x Ci ${stress.incisingFactor}`;
    steps.push(
      add(
        {
          symbol: "Fb'",
          quantity: 'allowable bending stress',
          value: stress.bendingMpa,
          unit: 'MPa',
          equation: `Fb ${Math.round(stress.referenceFbPsi)} psi x ${factors}`,
        },
        ALLOWABLE_STRESS_PROVENANCE,
      ),
      add(
        {
          symbol: "Fv'",
          quantity: 'allowable shear stress',
          value: stress.shearMpa,
          unit: 'MPa',
          equation: 'Fv x CD x CM x Ci',
        },
        ALLOWABLE_STRESS_PROVENANCE,
      ),
    );
  }
  const { broken, railConnection } = checked.condition;
  if (railConnection !== null && !broken) {
    steps.push(
      add(
        {
          symbol: 'P_rail',
          quantity: 'allowable force on the post by its rail connection',
          value: allowable.railN,
          unit: 'N',
          equation: 'q x 2 x 1,380 lbf G^2.5 D_n L_n x CD 1.6 x CM 0.25 / share, D_n and L_n in inches',
        },
        NAIL_WITHDRAWAL_PROVENANCE,
      ),
    );
  }
  const shear = Number.isFinite(allowable.shearN) && !broken;
  const share = post.wood.section.kind === 'round' ? '3/4' : '2/3';
  steps.push(
    add(
      {
        symbol: 'M_a',
        quantity: 'allowable moment at the groundline',
        value: allowable.momentNm,
        unit: 'N m',
        equation: momentEquation(checked),
      },
      ALLOWABLE_STRESS_PROVENANCE,
    ),
    add(
      {
        symbol: 'gamma_W',
        quantity: 'load factor on wind',
        value: factor,
        unit: '-',
        equation: '0.6 W for ultimate speeds, 1.0 W for nominal ones',
      },
      factor === 1 ? { source: 'ASCE 7-05 2.4', tag: 'memory' } : { source: 'ASCE 7-10 2.4', tag: 'read' },
    ),
    add(
      {
        symbol: 'V_post',
        quantity: 'speed at which the post reaches its allowable stress',
        value: code.snapMps,
        unit: 'm/s',
        equation: `sqrt(least of M_a / e${shear ? `, ${share} Fv' A` : ''}${railConnection === null ? '' : ', P_rail'}, over gamma_W k)`,
      },
      ALLOWABLE_STRESS_PROVENANCE,
    ),
    add(
      {
        symbol: 'S_1',
        quantity: `lateral bearing per depth, ${soil.name} [psf/ft]${facts.site.lateralBearingDoubled ? ', doubled' : ''}`,
        value: soil.lateralBearingPsfPerFt * (facts.site.lateralBearingDoubled ? 2 : 1),
        unit: 'psf/ft',
        equation: 'Table 1806.2; 1806.3.4 doubles it for isolated poles where allowed',
      },
      LATERAL_BEARING_PROVENANCE,
    ),
    add(
      {
        symbol: 'P',
        quantity: 'allowable force on the footing',
        value: footingOf(worstFooting),
        unit: 'N',
        equation: 'S_1 w L^3 / (7.02 (L + 1.09 e))',
      },
      PRESUMPTIVE_FOOTING_PROVENANCE,
    ),
    add(
      {
        symbol: 'V_footing',
        quantity: 'speed at which the footing reaches its allowable bearing',
        value: speedAtResistance(footingOf(worstFooting) / factor, worstFooting.codeForcePerV2),
        unit: 'm/s',
        equation: 'sqrt(P / (gamma_W k))',
      },
      PRESUMPTIVE_FOOTING_PROVENANCE,
    ),
    add(
      {
        symbol: '16 psf',
        quantity: 'least pressure, 9.6 psf allowable, over one bay',
        value: `post ${code.postMeetsMinimum ? 'meets it' : 'does not meet it'}, footing ${code.footingMeetsMinimum ? 'meets it' : 'does not meet it'}`,
        unit: '-',
        equation: '0.6 x 16 psf x spacing x s against M_a / e and P',
      },
      { source: 'ASCE 7-16 29.7', tag: 'memory' },
    ),
  );
  return steps;
}
