import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';

/**
 * Cost of a password's hash: about 32 MiB and three passes. Source: OWASP Password Storage Cheat Sheet, one of its equal
 * choices for scrypt (N 2^15, r 8, p 3); from memory.
 */
const LOG2_COST = 15;
const BLOCK_SIZE = 8;
const PARALLELISM = 3;
const SALT_BYTES = 16;
const KEY_BYTES = 32;
/** Room that the hash may take [bytes]. */
const MOST_MEMORY = 128 * 1024 * 1024;

const derive = (password: string, salt: Uint8Array, options: ScryptOptions): Promise<Buffer> =>
  new Promise((resolve, reject) =>
    // one password typed on two keyboards may reach us composed or decomposed
    scrypt(password.normalize('NFC'), salt, KEY_BYTES, { ...options, maxmem: MOST_MEMORY }, (error, key) =>
      error ? reject(error) : resolve(key),
    ),
  );

/** The hash of a password with its cost and a salt of its own, as text: `scrypt$15$8$3$salt$key`. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(SALT_BYTES);
  const key = await derive(password, salt, { N: 2 ** LOG2_COST, r: BLOCK_SIZE, p: PARALLELISM });
  const parts = [LOG2_COST, BLOCK_SIZE, PARALLELISM, salt.toString('base64url'), key.toString('base64url')];
  return `scrypt$${parts.join('$')}`;
}

/** A hash that no password has; it takes as long to try as a real one. */
const NOBODYS = `scrypt$${LOG2_COST}$${BLOCK_SIZE}$${PARALLELISM}$${'A'.repeat(22)}$${'A'.repeat(43)}`;

/**
 * True where the password is the one that was hashed. Without a hash, as for a name that nobody has, it takes the same time
 * and is false. Throws where the text is no hash.
 */
export async function isPasswordOf(password: string, hash: string | null): Promise<boolean> {
  const [kind, cost, blockSize, parallelism, salt, key] = (hash ?? NOBODYS).split('$');
  if (kind !== 'scrypt' || salt === undefined || key === undefined) {
    throw new Error('the register holds a password hash of an unknown kind: set the password anew');
  }
  const options = { N: 2 ** Number(cost), r: Number(blockSize), p: Number(parallelism) };
  const derived = await derive(password, Buffer.from(salt, 'base64url'), options);
  return timingSafeEqual(derived, Buffer.from(key, 'base64url')) && hash !== null;
}
