import { speedAtResistance } from '../capacity/post-resistance.ts';
import {
  NAIL_ULTIMATE_PROVENANCE,
  RAIL_CONNECTION_PROVENANCE,
  SPECIFIC_GRAVITY_PROVENANCE,
  specificGravity,
} from '../capacity/rail-connection.ts';
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
import { fibreSpread, snapResistance } from './snap-resistance.ts';

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
  if (fibre !== 1) {
    steps.push(
      add(
        {
          symbol: 'F',
          quantity: 'fibre strength over the median, after what was seen',
          value: fibre,
          unit: '-',
          equation: 'exp(spread z), z the median of the posterior',
        },
        SEEN,
      ),
    );
  }
  steps.push(...loadSteps(load));
  const sleeved = post.sleeveNm !== null;
  const equation = post.condition.broken
    ? 'found broken'
    : !isWood
      ? 'as entered'
      : sleeved
        ? 'the lesser of sleeve Fy Z and f S0 above it'
        : fibre === 1
          ? 'f S'
          : 'F f S';
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
          value: speedAtResistance(shearN, forcePerV2 * load),
          unit: 'm/s',
          equation: `sqrt(${share} ${fibre === 1 ? '' : 'F '}f_v A / ${load === 1 ? 'k' : '(k Q)'})`,
        },
        STATICS,
      ),
    );
  }
  if (Number.isFinite(railN) && !post.condition.broken) {
    steps.push(
      add(
        {
          symbol: 'G',
          quantity: 'specific gravity of the wood that holds the nails',
          value: specificGravity(wood.species),
          unit: '-',
          equation: 'table of species',
        },
        SPECIFIC_GRAVITY_PROVENANCE,
      ),
      add(
        {
          symbol: 'share',
          quantity: "share of the post's force at one end of a rail",
          value: post.bays === 1 ? 0.5 : 0.25,
          unit: '-',
          equation: 'three rails, the middle one takes half; one bay at an end of the run, two elsewhere',
        },
        RAIL_CONNECTION_PROVENANCE,
      ),
      add(
        {
          symbol: 'H_rail',
          quantity: `force on the post at which its rails pull out, ${post.condition.railConnection} of a sound connection`,
          value: railN,
          unit: 'N',
          equation:
            'two nails a rail end, 7,850 G^2.5 D L each; a rail end carries a quarter of the force on an inner post',
        },
        NAIL_ULTIMATE_PROVENANCE,
      ),
      add(
        {
          symbol: 'V_rail',
          quantity: 'speed at which its rails pull out',
          value: speedAtResistance(railN, forcePerV2 * load),
          unit: 'm/s',
          equation: `sqrt(H_rail / ${load === 1 ? 'k' : '(k Q)'})`,
        },
        STATICS,
      ),
    );
  }
  return steps;
}

/** What storms told of the fence's permanent load, where they told anything. */
function loadSteps(load: number): readonly ReasonStep[] {
  if (load === 1) return [];
  return [
    reasonStep(
      { basis: 'expected', group: 'snap' },
      {
        symbol: 'Q',
        quantity: 'wind force over the median (shelter, shape), after what was seen',
        value: load,
        unit: '-',
        equation: 'exp(0.17 z), z the median of the posterior',
      },
      SEEN,
    ),
  ];
}
