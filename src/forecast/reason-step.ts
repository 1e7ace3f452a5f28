import { lbfFromNewtons, N_PER_LBF } from '../units/force.ts';
import { feetFromMetres, inchesFromMm, M_PER_FT, MM_PER_IN } from '../units/length.ts';
import { psiFromMpa } from '../units/pressure.ts';
import type { Provenance, Standing } from '../units/provenance.ts';
import { mphFromMps } from '../units/speed.ts';

/** One step of the chain from inputs to a fence's speeds. */
export interface ReasonStep {
  readonly basis: 'expected' | 'code' | 'both';
  /** Part of the chain: rot, section, wind, resistance, speed, hazard, standing. */
  readonly group: string;
  readonly symbol: string;
  readonly quantity: string;
  readonly value: number | string;
  readonly unit: string;
  /** The same in US customary units; null where there is none. */
  readonly us: { readonly value: number; readonly unit: string } | null;
  readonly equation: string;
  readonly source: string;
  readonly tag: Standing;
}

/** Provenance of what the register itself holds. */
export const RECORDED: Provenance = { source: 'the register', tag: 'recorded' };

const US: Readonly<Record<string, { readonly unit: string; readonly from: (value: number) => number }>> = {
  mm: { unit: 'in', from: inchesFromMm },
  'mm/a': { unit: 'in/a', from: inchesFromMm },
  m: { unit: 'ft', from: feetFromMetres },
  mm2: { unit: 'in2', from: (value) => value / MM_PER_IN ** 2 },
  mm3: { unit: 'in3', from: (value) => value / MM_PER_IN ** 3 },
  'm/s': { unit: 'mph', from: mphFromMps },
  MPa: { unit: 'psi', from: psiFromMpa },
  N: { unit: 'lbf', from: lbfFromNewtons },
  'N m': { unit: 'lbf ft', from: (value) => value / N_PER_LBF / M_PER_FT },
};

/** Builds a step; numbers are kept as computed, US customary units added where the unit has them. */
export function reasonStep(
  part: { readonly basis: ReasonStep['basis']; readonly group: string },
  what: {
    readonly symbol: string;
    readonly quantity: string;
    readonly value: number | string;
    readonly unit: string;
    readonly equation: string;
  },
  provenance: Provenance,
): ReasonStep {
  const us = typeof what.value === 'number' ? US[what.unit] : undefined;
  return {
    ...part,
    ...what,
    us: us && typeof what.value === 'number' ? { value: us.from(what.value), unit: us.unit } : null,
    source: provenance.source,
    tag: provenance.tag,
  };
}
