/** A cursor's text: what the page after begins behind, in base64url. It means nothing to whoever is given it. */
export const cursorText = (after: readonly (string | number)[]): string =>
  Buffer.from(JSON.stringify(after)).toString('base64url');

/**
 * What a cursor begins behind; null for a text that is no cursor of this kind.
 * @param parts how many parts such a cursor has
 */
export function readCursor(text: string, parts: number): readonly (string | number)[] | null {
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
