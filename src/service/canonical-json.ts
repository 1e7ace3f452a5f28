import { createHash } from 'node:crypto';

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, each]) => [key, sorted(each)]));
}

/** JSON with the keys of every object in order: equal values have equal text, whatever order they were built in. */
export const canonicalJson = (value: unknown): string => JSON.stringify(sorted(value));

/** SHA-256 of a text or of bytes, in hexadecimal. */
export const sha256 = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');
