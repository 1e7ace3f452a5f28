import type { FootingKind } from '../capacity/footing.ts';
import type { WorksKind } from '../forecast/works.ts';

/** What a crew can be sent to do: inspect, or any works. */
export type CatalogueKind = 'inspect' | WorksKind;

/** A quantity made of a part once a fence and a part a post. */
export interface FixedAndPerPost {
  readonly fixed: number;
  readonly perPost: number;
}

/** Something to load on the truck for one kind of works. */
export interface CatalogueMaterial {
  readonly name: string;
  /** What it is counted in: `bag`, `piece`, `kg`. */
  readonly unit: string;
  readonly quantity: FixedAndPerPost;
  /** What one unit costs the office, in the register's currency. */
  readonly unitCost: number;
}

/** What has to be kept when works of this kind are planned. */
export interface CatalogueRules {
  /** Whole days between the works and the opening of the storm season, while a footing gains strength [d]. */
  readonly cureDays: number;
  /** Whole days between asking for buried utilities to be marked and digging [d]; 0 where nothing is dug. */
  readonly locateNoticeDays: number;
  /** True where it is not done while the ground is frozen. */
  readonly notOnFrozenGround: boolean;
  /** True where the law may let only a licensed applicator do it: a crew with that skill is sent. */
  readonly licensedApplicator: boolean;
  /** True where a permit may be needed: the office is reminded to ask. */
  readonly permit: boolean;
}

/** How works of this kind are built where nothing else is said; only what its kind uses. Lengths [m], moments [N m], times [a]. */
export interface CatalogueBuild {
  readonly embedmentM: number;
  readonly footing: FootingKind;
  readonly footingDiameterM: number;
  readonly sleeveMomentNm: number;
  readonly yearsEffective: number;
  readonly treatmentClass: 'ground-contact' | 'heavy-duty' | 'extreme-duty';
}

/** One line of the works catalogue: what it takes, what it costs, which rules it has. */
export interface CatalogueEntry {
  readonly kind: CatalogueKind;
  /** Hours of one person [h]; a crew of two is done in half of it. */
  readonly personHours: FixedAndPerPost;
  readonly materials: readonly CatalogueMaterial[];
  /** What the owner is asked for, labour and materials included, before tax, in the register's currency. */
  readonly price: FixedAndPerPost;
  readonly rules: CatalogueRules;
  readonly build: CatalogueBuild;
  /** Where its numbers come from. */
  readonly source: string;
}
