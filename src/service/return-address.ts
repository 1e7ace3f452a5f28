import { createHash, createHmac } from 'node:crypto';
import { z } from 'zod';
import { isSameSecret } from './secret-token.ts';

/** Letters of a mail's own mark, and of the signature that shows the mark to be ours [hex digits]. */
const [MARK_DIGITS, SIGNATURE_DIGITS] = [12, 16];
const SIGNED_MARK = new RegExp(`([0-9a-f]{${MARK_DIGITS}})-([0-9a-f]{${SIGNATURE_DIGITS}})`, 'i');
/** Longest local part of a mail address (RFC 5321, 4.5.3.1.1) [characters]. */
const LONGEST_LOCAL_PART = 64;

/** Why a text is no pattern of return addresses; null where it is one. */
export function returnPatternReason(text: string): string | null {
  const wanted = 'write one as bounces+*@example.org: a mark of each mail takes the place of the star';
  const [local = '', domain] = text.split('@');
  if (domain === undefined || local.split('*').length !== 2 || domain.includes('*')) return wanted;
  const written = local.replace('*', `${'0'.repeat(MARK_DIGITS)}-${'0'.repeat(SIGNATURE_DIGITS)}`);
  if (written.length > LONGEST_LOCAL_PART) {
    const most = LONGEST_LOCAL_PART - MARK_DIGITS - SIGNATURE_DIGITS - 1;
    return `too long: beside the star at most ${most} characters may stand before the @`;
  }
  return z.email().safeParse(`${written}@${domain}`).success ? null : wanted;
}

const signatureOf = (mark: string, secret: string): string =>
  createHmac('sha256', secret).update(`return address ${mark}`).digest('hex').slice(0, SIGNATURE_DIGITS);

/** The address that a mail's delivery reports come back to: the pattern with the mail's mark, signed, for its star. */
export function returnAddressOf(messageId: string, pattern: string, secret: string): string {
  const mark = createHash('sha256').update(messageId).digest('hex').slice(0, MARK_DIGITS);
  return pattern.replace('*', `${mark}-${signatureOf(mark, secret)}`);
}

/** True for an address whose mark this register has signed; letters may have changed case on the way. */
export function isOwnReturnAddress(address: string, secret: string): boolean {
  const [, mark, signature] = SIGNED_MARK.exec(address.toLowerCase()) ?? [];
  return mark !== undefined && signature !== undefined && isSameSecret(signature, signatureOf(mark, secret));
}
