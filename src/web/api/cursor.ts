import type { ApiProblem } from './api-problem.ts';

/** A cursor's text: what the page after begins behind, in base64url. It means nothing to whoever is given it. */
export const cursorText = (after: readonly (string | number)[]): string =>
  Buffer.from(JSON.stringify(after)).toString('base64url');

/**
 * What a cursor begins behind; null for a text that is no cursor of this kind.
 * @param parts how many parts such a cursor has
 */
function readCursor(text: string, parts: number): readonly (string | number)[] | null {
  try {
    const read: unknown = JSON.parse(Buffer.from(text, 'base64url').toString());
    const isWhole =
      Array.isArray(read) &&
      read.length === parts &&
      read.every((part) => typeof part === 'string' || typeof part === 'number');
    return isWhole ? read : null;
  } catch {
    return null;
  }
}

/** Where a list is read on from: behind a place, or (null) from its beginning. */
export type ReadOn =
  | { readonly kind: 'from'; readonly after: readonly (string | number)[] | null }
  | { readonly kind: 'no cursor' };

/** Reads the cursor of a question. @param parts how many parts such a cursor has */
export function readOn(cursor: string | undefined, parts: number): ReadOn {
  if (cursor === undefined) return { kind: 'from', after: null };
  const after = readCursor(cursor, parts);
  return after === null ? { kind: 'no cursor' } : { kind: 'from', after };
}

/** The cursor after a page; null where fewer rows came than were asked for, so that it was the last. */
export function nextAfter<Row>(
  rows: readonly Row[],
  limit: number,
  keyOf: (row: Row) => readonly (string | number)[],
): string | null {
  const last = rows.at(-1);
  return last !== undefined && rows.length === limit ? cursorText(keyOf(last)) : null;
}

/** A cursor that is none. */
export const BAD_CURSOR: ApiProblem = {
  status: 400,
  title: 'No such cursor',
  what: 'the cursor is not one that this list gave',
  wayOut: 'send `next` of the page before unchanged, or leave cursor out for the first page',
};
