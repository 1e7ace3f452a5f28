/** Longest run of digits in a ref that is compared as a number [-]. */
const DIGITS = 15;

/** A text as it is searched: capitals and small letters alike in every script, composed letters in one form. */
export const foldedText = (text: string): string => text.normalize('NFC').toLowerCase();

/**
 * A key that puts texts into the order in which people count: numbers by their value (`CT-2` before `CT-10`), capitals among small
 * letters, letters with accents beside those without.
 */
export const naturalKey = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/\d+/g, (digits) => digits.padStart(DIGITS, '0'));
