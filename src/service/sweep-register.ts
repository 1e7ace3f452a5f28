import type { Register } from '../register/database.ts';
import type { RegisterSettings } from '../register/settings-store.ts';
import { DEFAULT_SETTINGS, readSettings } from '../register/settings-store.ts';
import type { ComposeReport } from './compose-notices.ts';
import { composeNotices } from './compose-notices.ts';
import { composeOfficeMail } from './compose-office-mail.ts';
import type { Config } from './config.ts';
import type { Sender } from './owner-messages.ts';
import type { SweepOptions, SweepReport } from './run-sweep.ts';
import { runSweep } from './run-sweep.ts';
import { isLoopbackHost } from './service-address.ts';
import { siftHeldNotices } from './sift-held-notices.ts';

/** The part of the configuration that says who writes; what it leaves open, the register's settings say. */
export type SenderConfig = Pick<
  Config,
  'officeName' | 'officePhone' | 'officeEmail' | 'mailFrom' | 'smtpUrl' | 'publicUrl'
> & {
  /** How mails are signed and to which addresses reports come back; not where not given. */
  readonly delivery?: Pick<Config['delivery'], 'dkim' | 'returnPattern'>;
};

/** The way out where the office has not said who it is. */
const OFFICE_WAY_OUT =
  'set who writes first, with "stormpale settings company-name=… sender-address=…" or STORMPALE_OFFICE_NAME and STORMPALE_OFFICE_EMAIL';

/** What is missing before a message may reach an owner, with the way out; null where nothing is. */
export function officeGap(config: SenderConfig, settings: RegisterSettings): string | null {
  const named = config.officeName !== null || settings.companyName !== DEFAULT_SETTINGS.companyName;
  const reached =
    config.officeEmail !== null ||
    config.mailFrom !== null ||
    settings.senderAddress !== DEFAULT_SETTINGS.senderAddress;
  const missing = [...(named ? [] : ["the office's name"]), ...(reached ? [] : ["the office's mail address"])];
  if (missing.length === 0) return null;
  return `owners would be written to without ${missing.join(' and ')}: ${OFFICE_WAY_OUT}`;
}

/** Where mails lead: nowhere where they reach owners and the pages only this machine. */
const linksUnder = ({ publicUrl, smtpUrl }: SenderConfig): string | null =>
  smtpUrl !== null && isLoopbackHost(new URL(publicUrl).hostname) ? null : publicUrl;

/** Who writes: the configuration first, then the register's settings. */
export function senderOf(config: SenderConfig, settings: RegisterSettings): Sender {
  return {
    office: {
      name: config.officeName ?? (settings.companyName === DEFAULT_SETTINGS.companyName ? null : settings.companyName),
      phone: config.officePhone ?? (settings.companyPhone || null),
      email: config.officeEmail ?? config.mailFrom ?? settings.senderAddress,
      postalAddress: settings.companyPostalAddress || null,
    },
    from: config.mailFrom ?? settings.senderAddress,
    gap: officeGap(config, settings),
    mailReachesOwners: config.smtpUrl !== null,
    timeZone: settings.timeZone,
    ...config.delivery,
    publicUrl: linksUnder(config),
  };
}

/** What came of a sweep and of the messages written after it; no messages where it did not finish. */
export interface SweepOutcome {
  readonly report: SweepReport;
  readonly composed: ComposeReport | null;
}

/** Writes the messages of the notices that have none yet. */
export async function writeMessages(
  register: Register,
  options: Pick<SweepOptions, 'now' | 'signal'> & { readonly sender: SenderConfig },
): Promise<ComposeReport> {
  const sender = senderOf(options.sender, await readSettings(register.db));
  const { now, signal } = options;
  return composeNotices(register, { now, sender, ...(signal ? { signal } : {}) });
}

/** Writes the daily mail to the office where something is new for it. Returns how many things it names; 0 where there is none. */
export async function writeOfficeMail(
  register: Register,
  options: Pick<SweepOptions, 'now'> & { readonly sender: SenderConfig },
): Promise<number> {
  const sender = senderOf(options.sender, await readSettings(register.db));
  return composeOfficeMail(register, { now: options.now, sender });
}

/** Sweeps the register, makes void what waits for the office and is no longer so, then writes the messages of the notices it left and the office's daily mail. */
export async function sweepRegister(
  register: Register,
  options: SweepOptions & { readonly sender: SenderConfig },
): Promise<SweepOutcome> {
  const report = await runSweep(register, options);
  if (report.kind !== 'finished') return { report, composed: null };
  await siftHeldNotices(register, options);
  const composed = await writeMessages(register, options);
  await writeOfficeMail(register, options);
  return { report, composed };
}
