import { z } from 'zod';
import { isMonthDay, type SeasonWindow } from '../forecast/season-calendar.ts';
import { MONTH_DAY_REASON, type SiteRecord } from './site-record.ts';
import { RANGES } from './value-ranges.ts';
import { rangedSchema, refSchema, refuseInto, requiredTextSchema } from './value-schemas.ts';

/** A storm season that sites share: a yearly window that may wrap the year end, and its share of the yearly hazard. */
export const stormSeasonSchema = z
  .object({
    ref: refSchema,
    name: requiredTextSchema(200),
    opens: z.string().refine(isMonthDay, MONTH_DAY_REASON),
    closes: z.string().refine(isMonthDay, MONTH_DAY_REASON),
    share: rangedSchema(RANGES.seasonShare, 'missing; a season has a share of the yearly wind, as 0.8'),
    source: requiredTextSchema(1000),
  })
  .superRefine(({ opens, closes, share }, context) => {
    const refuse = refuseInto(context);
    if (opens === closes) refuse('closes', 'a season of one day; close it after the day it opens');
    if (opens === '01-01' && closes === '12-31' && share !== 1) {
      refuse('share', 'a season that lasts all year has all of the yearly wind; write 1');
    }
  });

export type StormSeasonRecord = Readonly<z.infer<typeof stormSeasonSchema>>;

/**
 * The storm season of a site as the forecast takes it: that of the storm season it names, else its own.
 * Throws where it names one that is not there.
 */
export function seasonWindow(
  site: Pick<SiteRecord, 'stormSeasonRef' | 'seasonOpens' | 'seasonCloses' | 'seasonShare'>,
  stormSeasons: ReadonlyMap<string, StormSeasonRecord>,
): SeasonWindow {
  const ref = site.stormSeasonRef;
  if (ref === null) return { opens: site.seasonOpens, closes: site.seasonCloses, share: site.seasonShare };
  const named = stormSeasons.get(ref);
  if (!named) throw new Error(`the register refers to storm season ${ref}, which is not there: restore a backup`);
  return { opens: named.opens, closes: named.closes, share: named.share };
}
