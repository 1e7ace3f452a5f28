import type { CatalogueEntry, CatalogueKind, FixedAndPerPost } from './catalogue-entry.ts';
import type { WorksCatalogue } from './works-catalogue.ts';

/** Part of what is done to a fence: one kind, at so many posts. */
export interface CostedPart {
  readonly kind: CatalogueKind;
  readonly postCount: number;
}

/** What works take and cost; money in the register's currency. */
export interface WorksCost {
  /** Hours of one person [h]. */
  readonly personHours: number;
  /** What the owner is asked for, before tax. */
  readonly price: number;
  /** What the materials cost the office. */
  readonly materialCost: number;
}

/** A quantity at so many posts. */
export const amountAt = ({ fixed, perPost }: FixedAndPerPost, postCount: number): number => fixed + perPost * postCount;

const materialCost = ({ materials }: CatalogueEntry, postCount: number): number =>
  materials.reduce((sum, { quantity, unitCost }) => sum + amountAt(quantity, postCount) * unitCost, 0);

/**
 * What one visit takes and costs whose parts are done together [h, money]. What is counted a post adds up; of what is
 * counted once a fence (getting there, setting up) the largest counts, and the others come with it.
 * Source: judgement.
 */
export function worksCost(parts: readonly CostedPart[], catalogue: WorksCatalogue): WorksCost {
  const together = (of: (entry: CatalogueEntry) => FixedAndPerPost): number =>
    Math.max(0, ...parts.map(({ kind }) => of(catalogue[kind]).fixed)) +
    parts.reduce((sum, { kind, postCount }) => sum + of(catalogue[kind]).perPost * postCount, 0);
  return {
    personHours: together(({ personHours }) => personHours),
    price: together(({ price }) => price),
    materialCost: parts.reduce((sum, { kind, postCount }) => sum + materialCost(catalogue[kind], postCount), 0),
  };
}
