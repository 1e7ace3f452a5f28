import { createPrivateKey } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { buffer } from 'node:stream/consumers';
import DKIM from 'nodemailer/lib/dkim';

/** What mails are signed with (DKIM, RFC 6376). */
export interface DkimIdentity {
  readonly domain: string;
  readonly selector: string;
  /** File of the private RSA key (PEM). */
  readonly keyFile: string;
}

/** Verifiers do not count signatures of shorter keys (RFC 8301, 3.2) [bits]. */
const LEAST_KEY_BITS = 1024;

/** Why a file holds no key that mails could be signed with; null where it does. */
export function dkimKeyReason(path: string): string | null {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    return `the file cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown'}); name the private key's file`;
  }
  try {
    const key = createPrivateKey(text);
    if (key.asymmetricKeyType !== 'rsa') return `the key is ${key.asymmetricKeyType}; an RSA key is needed`;
    const bits = key.asymmetricKeyDetails?.modulusLength ?? 0;
    return bits < LEAST_KEY_BITS ? `the key has ${bits} bits, which nobody trusts; make one of 2048` : null;
  } catch {
    return 'the file holds no private key in PEM without a passphrase; make one with "openssl genrsa 2048"';
  }
}

/** Why a text is no selector of a key; null where it is one. */
export const selectorReason = (text: string): string | null =>
  text.length <= 63 && /^[a-z0-9]([a-z0-9-]*[a-z0-9])?(\.[a-z0-9]([a-z0-9-]*[a-z0-9])?)*$/i.test(text)
    ? null
    : 'write the selector under which the public key is published, as fences2027';

/**
 * A mail's bytes with a DKIM signature before them. RSA by PKCS #1 v1.5 holds no chance and no time is noted, so that the same
 * bytes get the same signature; the outbox stores them signed all the same, and every try sends what is stored.
 * Throws where the key does not sign: a mail that was to be signed is not sent unsigned.
 */
export async function signedBytes(raw: Buffer, identity: DkimIdentity): Promise<Buffer> {
  const signer = new DKIM({
    domainName: identity.domain,
    keySelector: identity.selector,
    privateKey: readFileSync(identity.keyFile, 'utf8'),
  });
  const signed = await buffer(signer.sign(raw));
  if (!signed.subarray(0, 15).equals(Buffer.from('DKIM-Signature:'))) {
    throw new Error(
      `the mail could not be signed with ${identity.keyFile}: name an RSA key without a passphrase with STORMPALE_DKIM_KEY_FILE, or leave signing out`,
    );
  }
  return signed;
}
