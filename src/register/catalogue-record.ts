import { z } from 'zod';
import { FOOTING_KINDS } from '../capacity/footing.ts';
import type { CatalogueEntry, CatalogueKind, CatalogueMaterial } from '../season/catalogue-entry.ts';
import { RANGES } from './value-ranges.ts';
import { rangedSchema, requiredTextSchema, wholeSchema } from './value-schemas.ts';
import { WORKS_KINDS } from './works-record.ts';

/** What a line of the catalogue can be about. */
export const CATALOGUE_KINDS = ['inspect', ...WORKS_KINDS] as const satisfies readonly CatalogueKind[];
/** Treatment classes of posts that a crew sets anew. */
export const NEW_POST_CLASSES = ['ground-contact', 'heavy-duty', 'extreme-duty'] as const;

/** A line of the works catalogue that stands in the place of the one that comes with the program. */
export const catalogueSchema = z.object({
  kind: z.enum(CATALOGUE_KINDS),
  personHoursFixed: rangedSchema(RANGES.personHours),
  personHoursPerPost: rangedSchema(RANGES.personHoursPerPost),
  priceFixed: rangedSchema(RANGES.price),
  pricePerPost: rangedSchema(RANGES.pricePerPost),
  cureDays: wholeSchema(RANGES.cureDays),
  locateNoticeDays: wholeSchema(RANGES.locateNoticeDays),
  notOnFrozenGround: z.boolean(),
  licensedApplicator: z.boolean(),
  permit: z.boolean(),
  embedmentM: rangedSchema(RANGES.embedmentM),
  footing: z.enum(FOOTING_KINDS),
  footingDiameterM: rangedSchema(RANGES.footingDiameterM),
  sleeveMomentNm: rangedSchema(RANGES.momentCapacityNm),
  yearsEffective: rangedSchema(RANGES.yearsEffective),
  treatmentClass: z.enum(NEW_POST_CLASSES),
  source: requiredTextSchema(1000),
});

export type CatalogueRecord = Readonly<z.infer<typeof catalogueSchema>>;

/** A catalogue line as the season plan takes it, with the materials that go with it. */
export const catalogueEntry = (line: CatalogueRecord, materials: readonly CatalogueMaterial[]): CatalogueEntry => ({
  kind: line.kind,
  personHours: { fixed: line.personHoursFixed, perPost: line.personHoursPerPost },
  materials,
  price: { fixed: line.priceFixed, perPost: line.pricePerPost },
  rules: {
    cureDays: line.cureDays,
    locateNoticeDays: line.locateNoticeDays,
    notOnFrozenGround: line.notOnFrozenGround,
    licensedApplicator: line.licensedApplicator,
    permit: line.permit,
  },
  build: {
    embedmentM: line.embedmentM,
    footing: line.footing,
    footingDiameterM: line.footingDiameterM,
    sleeveMomentNm: line.sleeveMomentNm,
    yearsEffective: line.yearsEffective,
    treatmentClass: line.treatmentClass,
  },
  source: line.source,
});
