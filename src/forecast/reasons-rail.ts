import {
  NAIL_ULTIMATE_PROVENANCE,
  RAIL_CONNECTION_PROVENANCE,
  SPECIFIC_GRAVITY_PROVENANCE,
  usualRailConnection,
} from '../capacity/rail-connection.ts';
import type { Provenance } from '../units/provenance.ts';
import type { PostState } from './post-state.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const STATICS: Provenance = { source: 'statics', tag: 'derived' };

const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
  reasonStep({ basis: 'expected', group: 'snap' }, what, provenance);

/** Steps from the nails of a rail to the speed at which they pull out, for a post whose connection was reported. */
export function railSteps(
  post: PostState,
  left: number,
  speed: { readonly railN: number; readonly speedMps: number; readonly equation: string },
): readonly ReasonStep[] {
  const { nailCount, nailDiameterMm, penetrationMm, specificGravity } = usualRailConnection(post.wood.species);
  return [
    add(
      {
        symbol: 'G',
        quantity: 'specific gravity of the wood that holds the nails',
        value: specificGravity,
        unit: '-',
        equation: 'table of species',
      },
      SPECIFIC_GRAVITY_PROVENANCE,
    ),
    add(
      {
        symbol: 'D_n',
        quantity: 'diameter of a nail',
        value: nailDiameterMm,
        unit: 'mm',
        equation: '16d common stands in',
      },
      RAIL_CONNECTION_PROVENANCE,
    ),
    add(
      {
        symbol: 'L_n',
        quantity: 'length of a nail in the post',
        value: penetrationMm,
        unit: 'mm',
        equation: '16d common stands in',
      },
      RAIL_CONNECTION_PROVENANCE,
    ),
    add(
      {
        symbol: 'q',
        quantity: 'what is left of a sound connection, as found',
        value: left,
        unit: '-',
        equation: 'inspection',
      },
      RECORDED,
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
        quantity: 'force on the post at which its rails pull out',
        value: speed.railN,
        unit: 'N',
        equation: `q x ${nailCount} x 7,850 lbf G^2.5 D_n L_n / share, D_n and L_n in inches`,
      },
      NAIL_ULTIMATE_PROVENANCE,
    ),
    add(
      {
        symbol: 'V_rail',
        quantity: 'speed at which its rails pull out',
        value: speed.speedMps,
        unit: 'm/s',
        equation: speed.equation,
      },
      STATICS,
    ),
  ];
}
