import { X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { checked, line, wholeNumber } from './config-value.ts';
import type { DkimIdentity } from './mail-signature.ts';
import { dkimKeyReason, selectorReason } from './mail-signature.ts';
import type { QuietHours } from './quiet-hours.ts';
import { quietHoursOf, quietHoursReason } from './quiet-hours.ts';
import { returnPatternReason } from './return-address.ts';

/** How mails are sent, signed and followed up. */
export interface DeliveryConfig {
  /** Certificates (PEM) that vouch for the mail server; null: those that Node knows. */
  readonly authorityFile: string | null;
  /** Null: mails are not signed. */
  readonly dkim: DkimIdentity | null;
  /** Pattern of the addresses that delivery reports come back to; null: they come back to the sender's own. */
  readonly returnPattern: string | null;
  /** Folder of a mailbox into which delivery reports come; null for none. */
  readonly bounceFolder: string | null;
  readonly quietHours: QuietHours | null;
  /** Most ordinary mails to one domain within a minute. */
  readonly perMinute: number;
  /** A mail that the server puts off for so long is parked [d]. */
  readonly giveUpDays: number;
}

function certificateReason(path: string): string | null {
  try {
    void new X509Certificate(readFileSync(path));
    return null;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    return code === 'ENOENT' || code === 'EACCES' || code === 'EISDIR'
      ? `the file cannot be read (${code}); name a file of certificates in PEM`
      : 'the file holds no certificate in PEM';
  }
}

const domainReason = (text: string): string | null =>
  /^([a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?\.)+[a-z]([a-z0-9-]{0,61}[a-z0-9])?$/i.test(text)
    ? null
    : 'not a domain; write one as example.org';

/** The options of delivery: how each is checked. */
export const DELIVERY_OPTIONS = {
  STORMPALE_SMTP_CA: checked(certificateReason),
  STORMPALE_DKIM_DOMAIN: checked(domainReason),
  STORMPALE_DKIM_SELECTOR: checked(selectorReason),
  STORMPALE_DKIM_KEY_FILE: checked(dkimKeyReason),
  STORMPALE_BOUNCE_ADDRESS: checked(returnPatternReason),
  STORMPALE_BOUNCE_FOLDER: line(1000),
  STORMPALE_QUIET_HOURS: checked(quietHoursReason),
  STORMPALE_MAIL_PER_MINUTE: wholeNumber(1, 100_000),
  STORMPALE_MAIL_GIVE_UP_DAYS: wholeNumber(1, 30),
} as const;

type DeliveryVariable = keyof typeof DELIVERY_OPTIONS;
const DKIM_VARIABLES = ['STORMPALE_DKIM_DOMAIN', 'STORMPALE_DKIM_SELECTOR', 'STORMPALE_DKIM_KEY_FILE'] as const;

/** Gives an option's value as it was written; null where it was not. */
type GivenValue = (variable: DeliveryVariable | 'STORMPALE_MAIL_FROM' | 'STORMPALE_SMTP_URL') => string | null;

/** What is wrong with the options of delivery taken together, each with the variable that would mend it. */
export function deliveryProblems(
  value: GivenValue,
): readonly { readonly name: string; readonly value: string; readonly reason: string }[] {
  const missing = DKIM_VARIABLES.filter((variable) => value(variable) === null);
  const problems = [];
  if (missing.length > 0 && missing.length < DKIM_VARIABLES.length) {
    const reason = 'missing: signing needs domain, selector and key file; give all three or none';
    problems.push(...missing.map((name) => ({ name, value: '', reason })));
  }
  const domain = value('STORMPALE_DKIM_DOMAIN')?.toLowerCase();
  const sender = value('STORMPALE_MAIL_FROM')?.split('@').at(-1)?.toLowerCase();
  if (domain && sender && sender !== domain && !sender.endsWith(`.${domain}`)) {
    const reason = `mails come from ${sender}, and a signature of another domain speaks for nobody: write ${sender} or a domain above it`;
    problems.push({ name: 'STORMPALE_DKIM_DOMAIN', value: domain, reason });
  }
  if (value('STORMPALE_SMTP_CA') !== null && value('STORMPALE_SMTP_URL') === null) {
    const reason =
      'missing: certificates were named for a mail server, and none is; write one as smtp://mail.example.org';
    problems.push({ name: 'STORMPALE_SMTP_URL', value: '', reason });
  }
  return problems;
}

const path = (text: string | null): string | null => (text === null ? null : resolve(text));

/** How mails are delivered, from options that were found right; what was not given is as most offices want it. */
export function deliveryConfig(value: GivenValue): DeliveryConfig {
  const [domain, selector, keyFile] = DKIM_VARIABLES.map(value);
  return {
    authorityFile: path(value('STORMPALE_SMTP_CA')),
    dkim: domain && selector && keyFile ? { domain, selector, keyFile: resolve(keyFile) } : null,
    returnPattern: value('STORMPALE_BOUNCE_ADDRESS')?.toLowerCase() ?? null,
    bounceFolder: path(value('STORMPALE_BOUNCE_FOLDER')),
    quietHours: quietHoursOf(value('STORMPALE_QUIET_HOURS') ?? '20:00-08:00'),
    perMinute: Number(value('STORMPALE_MAIL_PER_MINUTE') ?? '300'),
    giveUpDays: Number(value('STORMPALE_MAIL_GIVE_UP_DAYS') ?? '5'),
  };
}
