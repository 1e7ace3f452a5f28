import { z } from 'zod';
import type { RegisterDb } from './record-store.ts';
import { isTimeZone, TIME_ZONE_REASON } from './site-record.ts';
import { RANGES } from './value-ranges.ts';
import { rangedSchema, requiredTextSchema, textSchema, wholeSchema } from './value-schemas.ts';

const settingsShape = {
  /** Return period at which map speeds are read off a site's curve for the standing [a]. */
  standingReturnPeriodYears: rangedSchema(RANGES.standingReturnPeriodYears),
  lookAheadSeasons: wholeSchema(RANGES.lookAheadSeasons),
  /** How long before a season opens a fence that is short is reminded of [d]; 0: never. */
  reminderDays: wholeSchema(RANGES.reminderDays),
  /** Whether what a register's first sweep finds waits until the office releases it. */
  holdFirstSweep: z.enum(['yes', 'no'], 'write yes or no'),
  /** An import of so many new fences or more into a register that was swept before has their first notices wait. */
  largeImportFences: wholeSchema(RANGES.largeImportFences),
  /** Code of the currency that prices are in: `USD`. */
  currency: z.string().regex(/^[A-Z]{3}$/, 'write the three letters of a currency, such as USD'),
  /** Zone in which the register's own days and nights are counted. */
  timeZone: z.string().refine(isTimeZone, TIME_ZONE_REASON),
  companyName: requiredTextSchema(200),
  companyPostalAddress: textSchema(500),
  companyPhone: textSchema(50),
  /** Address that notices come from and replies go to. */
  senderAddress: z.email('not a mail address; write one as name@example.org'),
};
const settingsSchema = z.object(settingsShape);

/** The settings whose values are numbers. */
const NUMBERS: ReadonlySet<string> = new Set([
  'standingReturnPeriodYears',
  'lookAheadSeasons',
  'reminderDays',
  'largeImportFences',
]);

/** What holds for the whole register. */
export type RegisterSettings = Readonly<z.infer<typeof settingsSchema>>;

/** Settings of a register in which nothing was set. */
export const DEFAULT_SETTINGS: RegisterSettings = {
  standingReturnPeriodYears: 300,
  lookAheadSeasons: 2,
  reminderDays: 60,
  holdFirstSweep: 'yes',
  largeImportFences: 25,
  currency: 'USD',
  timeZone: 'UTC',
  companyName: 'Fence office',
  companyPostalAddress: '',
  companyPhone: '',
  senderAddress: 'fences@example.org',
};

/** The names of all settings. */
export const SETTING_NAMES = Object.keys(settingsShape) as readonly (keyof RegisterSettings)[];

/** A setting's value from what a person wrote, or why it is refused. */
export function settingFromText(
  name: keyof RegisterSettings,
  text: string,
): { readonly value: string | number } | { readonly reason: string } {
  if (NUMBERS.has(name) && !/^\s*-?\d+([.]\d+)?\s*$/.test(text)) return { reason: 'not a number; write one as 300' };
  const checked = settingsShape[name].safeParse(NUMBERS.has(name) ? Number(text) : text);
  if (checked.success) return { value: checked.data };
  return { reason: checked.error.issues.map((issue) => issue.message).join('; ') };
}

/** The register's settings, defaults where none was set. Throws (zod) where a stored one breaks its rule. */
export async function readSettings(db: RegisterDb): Promise<RegisterSettings> {
  const rows = await db.selectFrom('settings').select(['key', 'value']).execute();
  const stored = Object.fromEntries(
    rows.filter((row) => row.key in settingsShape).map((row) => [row.key, JSON.parse(row.value) as unknown]),
  );
  return settingsSchema.parse({ ...DEFAULT_SETTINGS, ...stored });
}

/**
 * Sets some settings and leaves the others. Throws (zod) where a value breaks its rule; then nothing is set.
 * @param now moment of writing, ISO 8601
 */
export async function writeSettings(db: RegisterDb, changes: Partial<RegisterSettings>, now: string): Promise<void> {
  const checked = settingsSchema.partial().strict().parse(changes);
  const rows = Object.entries(checked).map(([key, value]) => ({ key, value: JSON.stringify(value), updated_at: now }));
  if (rows.length === 0) return;
  await db
    .insertInto('settings')
    .values(rows)
    .onConflict((conflict) =>
      conflict
        .column('key')
        .doUpdateSet((eb) => ({ value: eb.ref('excluded.value'), updated_at: eb.ref('excluded.updated_at') })),
    )
    .execute();
}
