import { z } from 'zod';
import type { CatalogueMaterial } from '../season/catalogue-entry.ts';
import { CATALOGUE_KINDS } from './catalogue-record.ts';
import { RANGES } from './value-ranges.ts';
import { rangedSchema, requiredTextSchema } from './value-schemas.ts';

/** Something to load for works of a kind; where a kind has any, they stand in the place of those that come with the program. */
export const materialSchema = z.object({
  kind: z.enum(CATALOGUE_KINDS),
  name: requiredTextSchema(100),
  unit: requiredTextSchema(20),
  quantityFixed: rangedSchema(RANGES.materialQuantity),
  quantityPerPost: rangedSchema(RANGES.materialQuantity),
  unitCost: rangedSchema(RANGES.pricePerPost),
});

export type MaterialRecord = Readonly<z.infer<typeof materialSchema>>;

/** A material as the season plan takes it. */
export const catalogueMaterial = (material: MaterialRecord): CatalogueMaterial => ({
  name: material.name,
  unit: material.unit,
  quantity: { fixed: material.quantityFixed, perPost: material.quantityPerPost },
  unitCost: material.unitCost,
});
