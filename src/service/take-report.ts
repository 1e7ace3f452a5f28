import type { Register } from '../register/database.ts';
import type { NotedReport } from '../register/delivery-reports.ts';
import { findMail, noteReport } from '../register/delivery-reports.ts';
import type { ReportFoundBy } from '../register/delivery-tables.ts';
import { mailSecret } from '../register/mail-secret.ts';
import { sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import type { DeliveryReport } from './delivery-report.ts';
import { NoDeliveryReport, readDeliveryReport } from './delivery-report.ts';
import { isOwnReturnAddress } from './return-address.ts';
import { newSecret } from './secret-token.ts';

/** What came of a delivery report. */
export interface TakenReport {
  readonly outboxId: number;
  readonly foundBy: ReportFoundBy;
  readonly report: DeliveryReport;
  readonly noted: NotedReport;
}

async function mailOf(
  register: Register,
  report: DeliveryReport,
): Promise<{ readonly outboxId: number; readonly foundBy: ReportFoundBy }> {
  const secret = await mailSecret(register, newSecret());
  for (const address of report.returnAddresses) {
    if (!isOwnReturnAddress(address, secret)) continue;
    const outboxId = await findMail(register, { returnAddress: address.toLowerCase() });
    if (outboxId !== null) return { outboxId, foundBy: 'signed address' };
  }
  const { messageId } = report;
  const outboxId = messageId === null ? null : await findMail(register, { messageId });
  if (outboxId === null) throw new NoDeliveryReport('it names no mail of this register');
  return { outboxId, foundBy: 'message id' };
}

/**
 * Takes a delivery report: finds its mail by the signed address it came to, or else by the Message-ID it names, and notes it.
 * A delivery that failed for good (action failed, status 5) stops mail to the address, but only where the signed address
 * proves that the mail was returned; anybody can write a Message-ID.
 * Throws `NoDeliveryReport` where it is none, or about no mail of this register.
 */
export async function takeReport(
  register: Register,
  raw: Uint8Array,
  options: { readonly now: Clock },
): Promise<TakenReport> {
  const report = await readDeliveryReport(raw);
  const { outboxId, foundBy } = await mailOf(register, report);
  const { action, status, recipient, diagnostic } = report;
  const isHard = action === 'failed' && status.startsWith('5.');
  const found = { sha256: sha256(raw), raw, outboxId, at: isoUtc(options.now()), foundBy };
  const stops = isHard && foundBy === 'signed address';
  const noted = await noteReport(register, { ...found, action, status, recipient, diagnostic }, stops);
  return { outboxId, foundBy, report, noted };
}
