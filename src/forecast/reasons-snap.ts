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
import { soundPost } from './post-state.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';
import { railSteps } from './reasons-rail.ts';
import { seenFactorSteps } from './reasons-seen-factor.ts';
import { fibreSpread, snapResistance } from './snap-resistance.ts';
import { PERMANENT_LOAD_SPREAD } from './state-model.ts';

const SEEN: Provenance = { source: 'storm outcomes of this fence', tag: 'derived' };
const STATICS: Provenance = { source: 'statics', tag: 'derived' };

/** Steps from strength and residual section to the speed at which the deciding post snaps, basis `expected`. */
export function snapSteps({ model, postClass, sound }: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { demands } = postClass.sample;
  const post = sound ? soundPost(postClass.sample.post) : postClass.sample.post;
  const { wood } = post;
  const fibre = Math.exp(fibreSpread(wood) * model.points.scores['fibre strength'][0]!);
  const load = model.loadFactor[0]!;
  const { armM, forcePerV2 } = governingDemand(demands);
  const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
    reasonStep({ basis: 'expected', group: 'snap' }, what, provenance);
  // Bending and force need not be governed by the same run of a corner post.
  const force = postClass.forcePerV2 * load;
  const { momentNm, shearN, railN } = snapResistance(post, loss, fibre);
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
  steps.push(
    ...seenFactorSteps({
      group: 'snap',
      symbol: 'F',
      quantity: 'fibre strength over the median, after what was seen',
      spread: fibreSpread(wood),
      score: model.points.scores['fibre strength'][0]!,
      learnedShift: null,
      seen: SEEN,
    }),
    ...seenFactorSteps({
      group: 'snap',
      symbol: 'Q',
      quantity: 'wind force over the median (shelter, shape), after what was seen',
      spread: PERMANENT_LOAD_SPREAD,
      score: model.points.scores['permanent load'][0]!,
      learnedShift: null,
      seen: SEEN,
    }),
  );
  const { broken } = post.condition;
  if (post.sleeveNm !== null && isWood) {
    steps.push(
      add(
        {
          symbol: 'M_sleeve',
          quantity: 'moment the steel sleeve resists',
          value: post.sleeveNm,
          unit: 'N m',
          equation: 'as entered',
        },
        RECORDED,
      ),
    );
  }
  const strength = fibre === 1 ? 'f' : 'F f';
  const ofWood = post.sleeveNm === null ? `${strength} S` : `the lesser of M_sleeve and ${strength} S0 above it`;
  const equation = broken ? 'found broken' : isWood ? ofWood : 'as entered';
  steps.push(
    add(
      { symbol: 'M', quantity: 'moment the post resists at the groundline', value: momentNm, unit: 'N m', equation },
      isWood ? STATICS : RECORDED,
    ),
    add(
      {
        symbol: 'V_bend',
        quantity: 'speed at which it breaks by bending',
        value: speedAtResistance(momentNm / armM, forcePerV2 * load),
        unit: 'm/s',
        equation: `sqrt(M / (e k${load === 1 ? '' : ' Q'})), e and k of the worse run`,
      },
      STATICS,
    ),
  );
  if (Number.isFinite(shearN) && !broken) {
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
          value: speedAtResistance(shearN, force),
          unit: 'm/s',
          equation: `sqrt(${share} ${fibre === 1 ? '' : 'F '}f_v A / ${load === 1 ? 'k' : '(k Q)'})`,
        },
        STATICS,
      ),
    );
  }
  const { railConnection } = post.condition;
  if (railConnection !== null && !broken) {
    const speedMps = speedAtResistance(railN, force);
    const by = load === 1 ? 'k' : '(k Q)';
    steps.push(...railSteps(post, railConnection, { railN, speedMps, equation: `sqrt(H_rail / ${by})` }));
  }
  return steps;
}
