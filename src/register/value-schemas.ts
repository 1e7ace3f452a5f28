import { z } from 'zod';
import { type CalendarDay, isCalendarDay } from '../units/calendar-day.ts';
import type { ValueRange } from './value-ranges.ts';

const REF_SHAPE = /^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/;
export const REF_REASON =
  'a ref is 1 to 40 letters (A to Z), digits, points, hyphens and underscores, and begins with a letter or digit';

/** True where the text can be a ref. */
export const isRef = (text: string): boolean => REF_SHAPE.test(text);

/** The name by which a record is known: unique within its kind, compared byte by byte. */
export const refSchema = z.string().regex(REF_SHAPE, REF_REASON);

const EVIDENCE_REF_SHAPE = /^[A-Za-z0-9][A-Za-z0-9._/-]{0,119}$/;
export const EVIDENCE_REF_REASON =
  'such a ref is 1 to 120 letters (A to Z), digits, points, hyphens, underscores and slashes, and begins with a letter or digit';

/** True where the text can be the ref of an inspection or a storm outcome: as other refs, longer and with slashes. */
export const isEvidenceRef = (text: string): boolean => EVIDENCE_REF_SHAPE.test(text);

/** The name of an inspection or a storm outcome: it may be put together from its fence, day and method. */
export const evidenceRefSchema = z.string().regex(EVIDENCE_REF_SHAPE, EVIDENCE_REF_REASON);

/** Control and lost characters, and marks that turn the direction of the text after them. */
const HIDDEN = /[\p{Cc}\p{Cs}\uFFFD\u202A-\u202E\u2066-\u2069]/u;
export const HIDDEN_REASON = 'it holds a character that cannot be shown or was lost in a conversion; type it again';

/** True where the text holds a control character (line ends and tabs aside), half a character, or a lost one. */
export const hidesCharacters = (text: string): boolean => HIDDEN.test(text.replace(/[\n\t]/g, ''));

const SPREADSHEET_ERROR = /^#(REF!|N\/A|VALUE!|NAME\?|DIV\/0!|NUM!|NULL!)$/;
export const SPREADSHEET_ERROR_REASON = 'an error of a spreadsheet formula; put the value itself there';
/** True where the text is what a spreadsheet shows for a formula that failed. */
export const isSpreadsheetError = (text: string): boolean => SPREADSHEET_ERROR.test(text);

/** Free text: line ends become `\n`, blanks around it go; control characters and halves of characters are refused. */
export const textSchema = (longest: number): z.ZodType<string> =>
  z
    .string()
    .transform((text) => text.replace(/\r\n?/g, '\n').trim())
    .refine((text) => text.length <= longest, `longer than ${longest} characters; shorten it`)
    .refine((text) => !hidesCharacters(text), HIDDEN_REASON)
    .refine((text) => !isSpreadsheetError(text), SPREADSHEET_ERROR_REASON);

/** Free text that must say something. */
export const requiredTextSchema = (longest: number): z.ZodType<string> =>
  textSchema(longest).refine((text) => text.length > 0, 'it is empty; write something');

/** A finite number within its range; negative zero becomes zero. `absent` says what to do where there is none. */
export const rangedSchema = ([lowest, highest]: ValueRange, absent?: string): z.ZodType<number> =>
  z
    .number(absent)
    .refine((value) => value >= lowest && value <= highest, `outside the allowed ${lowest} to ${highest}`)
    .transform((value) => (value === 0 ? 0 : value));

/** A whole number within its range. */
export const wholeSchema = (range: ValueRange): z.ZodType<number> =>
  rangedSchema(range).refine((value) => Number.isInteger(value), 'not a whole number');

/** A calendar day, `YYYY-MM-DD`. */
export const daySchema: z.ZodType<CalendarDay> = z.string().refine(isCalendarDay, 'not a day; write YYYY-MM-DD');

/** One of the keys of a table of the model. */
export const keySchema = <K extends string>(keys: readonly K[]): z.ZodType<K> =>
  z.custom<K>((value) => typeof value === 'string' && keys.includes(value as K), `not one of ${keys.join(', ')}`);

/** Adds one reason to a key of the record, from within `superRefine`. */
export type Refuse = (key: string, reason: string) => void;

/** Turns zod's issue sink into `Refuse`. */
export const refuseInto =
  (context: z.RefinementCtx): Refuse =>
  (key, message) =>
    context.addIssue({ code: 'custom', path: [key], message });
