import type { HeldNotice } from '../../register/held-notices.ts';

/** Why a notice waits for the office. */
export const WHY_HELD: Readonly<Record<HeldNotice['held'], string>> = {
  'first sweep': 'found by the first sweep, or new while its notices wait',
  'large import': 'its fence came with a large import, or is new while such notices wait',
  matter: 'its matter is held',
  'kept back': 'others of its owner were released before it',
};

/** A number of things: `1 notice`, `3 notices`. */
export const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;
