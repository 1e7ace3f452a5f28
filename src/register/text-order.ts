import type BetterSqlite3 from 'better-sqlite3';

/** Longest run of digits in a ref that is compared as a number [-]. */
const DIGITS = 15;

const PLAIN = /^[ -~]*$/;

/** A text as it is searched: capitals and small letters alike in every script, composed letters in one form. */
export const foldedText = (text: string): string => text.normalize('NFC').toLowerCase();

/**
 * A key that puts texts into the order in which people count: numbers by their value (`CT-2` before `CT-10`), capitals among small
 * letters, letters with accents beside those without.
 */
function naturalKey(text: string): string {
  // a list asks for thousands of keys, nearly all of plain letters that have no accents to part from
  const plain = PLAIN.test(text) ? text : text.normalize('NFD').replaceAll(/\p{M}/gu, '');
  return plain.toLowerCase().replaceAll(/\d+/g, (digits) => digits.padStart(DIGITS, '0'));
}

/** Gives the database the two functions that its lists are kept by. */
export function addTextFunctions(sqlite: BetterSqlite3.Database): void {
  const ofText = (of: (text: string) => string) => (text: unknown) => (typeof text === 'string' ? of(text) : null);
  sqlite.function('folded_text', { deterministic: true }, ofText(foldedText));
  sqlite.function('natural_key', { deterministic: true }, ofText(naturalKey));
}
