import { z } from 'zod';
import type { ClimateFacts } from '../decay/climate-factor.ts';
import { RANGES } from './value-ranges.ts';
import { rangedSchema, refSchema, refuseInto, requiredTextSchema, wholeSchema } from './value-schemas.ts';

const MEASURED = ['rainMmPerYear', 'meanTemperatureC', 'dryMonths'] as const;

/** A named climate: measured means, or only a decay zone, with where the numbers come from. */
export const climateZoneSchema = z
  .object({
    ref: refSchema,
    name: requiredTextSchema(200),
    rainMmPerYear: rangedSchema(RANGES.rainMmPerYear).nullable(),
    meanTemperatureC: rangedSchema(RANGES.meanTemperatureC).nullable(),
    dryMonths: wholeSchema(RANGES.dryMonths).nullable(),
    decayZone: wholeSchema(RANGES.decayZone).nullable(),
    irrigated: z.boolean(),
    source: requiredTextSchema(1000),
  })
  .superRefine((zone, context) => {
    const refuse = refuseInto(context);
    for (const key of MEASURED) {
      if (zone.decayZone === null && zone[key] === null) {
        refuse(key, 'a climate needs rain, mean temperature and dry months together, or only a decay zone 1 to 5');
      }
      if (zone.decayZone !== null && zone[key] !== null) {
        refuse(key, 'given beside a decay zone; keep the measured means or the decay zone, not both');
      }
    }
    if (zone.decayZone !== null && zone.irrigated) {
      refuse('irrigated', 'a decay zone has no rain to raise; enter the next decay zone instead');
    }
  });

export type ClimateZoneRecord = Readonly<z.infer<typeof climateZoneSchema>>;

/** Rain that irrigated ground is taken to have at least [mm/a]; judgement: watered lawns rot posts in dry places too. */
const IRRIGATED_RAIN_MM_PER_YEAR = 500;

/** What the decay model takes from a zone. Throws where the record breaks its own rules. */
export function climateFacts(zone: ClimateZoneRecord): ClimateFacts {
  if (zone.decayZone !== null) return { kind: 'decay-zone', zone: zone.decayZone as 1 | 2 | 3 | 4 | 5 };
  const { rainMmPerYear, meanTemperatureC, dryMonths } = zone;
  if (rainMmPerYear === null || meanTemperatureC === null || dryMonths === null) {
    throw new Error(`climate zone ${zone.ref} has neither measured means nor a decay zone`);
  }
  const rain = zone.irrigated ? Math.max(rainMmPerYear, IRRIGATED_RAIN_MM_PER_YEAR) : rainMmPerYear;
  return { kind: 'measured', rainMmPerYear: rain, meanTemperatureC, dryMonths };
}
