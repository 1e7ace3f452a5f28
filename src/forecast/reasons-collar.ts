import { COLLAR_PROVENANCE, COLLAR_TENSION_MPA } from '../capacity/collar.ts';
import { type PostSection, postBreadthMm } from '../capacity/post-section.ts';
import { MM_PER_M } from '../units/length.ts';
import type { Provenance } from '../units/provenance.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const GEOMETRY: Provenance = { source: 'geometry', tag: 'derived' };

const add = (what: Parameters<typeof reasonStep>[1], provenance: Provenance): ReasonStep =>
  reasonStep({ basis: 'expected', group: 'lean' }, what, provenance);

/** What the steps of a concrete collar are written from. */
export interface CollarReason {
  readonly section: PostSection;
  readonly diameterM: number;
  /** Force on the post that bursts it [N]. */
  readonly burstN: number;
  readonly speedMps: number;
  /** How the speed follows from `H_c`, in symbols. */
  readonly speedEquation: string;
}

/** Steps from the ring of concrete around a post to the speed at which it bursts. */
export function collarSteps({
  section,
  diameterM,
  burstN,
  speedMps,
  speedEquation,
}: CollarReason): readonly ReasonStep[] {
  const breadthMm = postBreadthMm(section);
  return [
    add(
      {
        symbol: 'b_c',
        quantity: 'breadth of the post inside the collar',
        value: breadthMm,
        unit: 'mm',
        equation: 'the wider side, or the diameter',
      },
      RECORDED,
    ),
    add(
      {
        symbol: 'c_w',
        quantity: 'wall of the collar',
        value: (diameterM * MM_PER_M - breadthMm) / 2,
        unit: 'mm',
        equation: '(w - b_c) / 2; nothing holds where it is 0 or less',
      },
      GEOMETRY,
    ),
    add(
      {
        symbol: 'f_t',
        quantity: 'tension the concrete carries',
        value: COLLAR_TENSION_MPA,
        unit: 'MPa',
        equation: '7.5 sqrt(fc), fc 2,500 psi',
      },
      COLLAR_PROVENANCE,
    ),
    add(
      {
        symbol: 'H_c',
        quantity: 'force on the post at which the collar bursts',
        value: burstN,
        unit: 'N',
        equation: 'f_t / [1/(2 c_w) + 0.75 b_c / c_w^2] / (4/L + 6 e/L^2), L and e in mm',
      },
      COLLAR_PROVENANCE,
    ),
    add(
      {
        symbol: 'V_collar',
        quantity: 'speed at which the collar bursts',
        value: speedMps,
        unit: 'm/s',
        equation: speedEquation,
      },
      COLLAR_PROVENANCE,
    ),
  ];
}
