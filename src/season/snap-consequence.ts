import type { Provenance } from '../units/provenance.ts';

/** What a snapped fence brings with it beside its rebuild. */
export interface SnapConsequence {
  readonly name: string;
  /** Loss beside the rebuild, in the register's currency. */
  readonly statedLoss: number;
  readonly provenance: Provenance;
}

const judged = (source: string): Provenance => ({ source, tag: 'judgement' });

/**
 * Loss beside the rebuild when a fence snaps, by what the register says stands behind it, in round US dollars: expected
 * over what may happen, most snaps hurting nobody.
 * Source: judgement throughout.
 */
export const SNAP_CONSEQUENCES = {
  ordinary: {
    name: 'ordinary',
    statedLoss: 500,
    provenance: judged('debris cleared, a few panels replaced, plants and furniture beneath'),
  },
  'pool-barrier': {
    name: 'pool barrier',
    statedLoss: 12_000,
    provenance: judged('the pool is closed and guarded until a barrier stands; a child may reach it'),
  },
  'over-footpath': {
    name: 'over a footpath',
    statedLoss: 8_000,
    provenance: judged('the path is closed; somebody may be under it'),
  },
  livestock: {
    name: 'keeps livestock',
    statedLoss: 4_000,
    provenance: judged('animals are caught, some are lost, a road may be near'),
  },
  'other-high': {
    name: 'other high consequence',
    statedLoss: 10_000,
    provenance: judged('as the office has marked it, of the order of a pool barrier'),
  },
} as const satisfies Record<string, SnapConsequence>;

/** What the register says stands behind a fence. */
export type FenceConsequence = keyof typeof SNAP_CONSEQUENCES;

/** A rebuild after a storm over one in a quiet week [-]: crews and posts are short, and the old fence is cleared first. Source: judgement. */
export const EMERGENCY_FACTOR = 1.4;

/** Yearly discount rate above inflation [1/a]. Source: judgement, between a saver's and a borrower's. */
export const YEARLY_DISCOUNT_RATE = 0.04;
