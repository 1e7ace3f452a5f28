import { randomInt } from 'node:crypto';

/** Shortest and longest password [characters]. */
export const PASSWORD_LENGTHS = { fewest: 12, most: 200 } as const;

/** A name as it is stored and compared: composed, in small letters, without blanks around it. */
export const foldedName = (name: string): string => name.normalize('NFKC').trim().toLowerCase();

const NAME_SHAPE = /^[\p{L}\p{N}][\p{L}\p{M}\p{N}._@+-]{1,79}$/u;

/** True for a name to sign in with: 2 to 80 letters, digits and . _ @ + -, as folded. */
export const isAccountName = (name: string): boolean => NAME_SHAPE.test(name);

/** What is wrong with a password. */
export type PasswordFault = 'short' | 'long' | 'holds name' | 'one letter';

/**
 * What is wrong with a password; null where nothing is. Length is what counts: there are no rules about kinds of letters. It
 * must not hold the name it belongs to, and not be one letter over and over.
 * @param names the name to sign in with, and how the person is called
 */
export function passwordFault(password: string, names: readonly string[]): PasswordFault | null {
  const letters = [...password.normalize('NFC')];
  if (letters.length < PASSWORD_LENGTHS.fewest) return 'short';
  if (letters.length > PASSWORD_LENGTHS.most) return 'long';
  if (new Set(letters).size === 1) return 'one letter';
  const folded = foldedName(password);
  const known = names.map(foldedName).filter((name) => name.length > 2);
  return known.some((name) => folded.includes(name)) ? 'holds name' : null;
}

/** Letters and digits that are not taken for each other when read aloud. */
const CLEAR_SIGNS = '23456789abcdefghjkmnpqrstuvwxyz';

/** Signs drawn by chance in groups of four, easily read and typed; about 4.95 bits a sign. */
export const spokenCode = (groups: number): string =>
  Array.from({ length: groups }, () =>
    Array.from({ length: 4 }, () => CLEAR_SIGNS[randomInt(CLEAR_SIGNS.length)]).join(''),
  ).join('-');
