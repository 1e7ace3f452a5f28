import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** Length of a secret [bytes]: 256 bits. */
const SECRET_BYTES = 32;

/** A new secret: 256 bits of chance in base64url, 43 characters. */
export const newSecret = (): string => randomBytes(SECRET_BYTES).toString('base64url');

/** True where two texts are the same, in a time that does not tell how much of them is. */
export const isSameSecret = (a: string, b: string): boolean =>
  timingSafeEqual(createHash('sha256').update(a).digest(), createHash('sha256').update(b).digest());
