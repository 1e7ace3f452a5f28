import type { Register } from '../register/database.ts';
import type { RegisterSettings } from '../register/settings-store.ts';
import { readSettings } from '../register/settings-store.ts';
import type { ComposeReport, Sender } from './compose-notices.ts';
import { composeNotices } from './compose-notices.ts';
import type { Config } from './config.ts';
import type { SweepOptions, SweepReport } from './run-sweep.ts';
import { runSweep } from './run-sweep.ts';

/** The part of the configuration that says who writes; what it leaves open, the register's settings say. */
export type SenderConfig = Pick<Config, 'officeName' | 'officePhone' | 'officeEmail' | 'mailFrom'>;

/** Who writes: the configuration first, then the register's settings. */
function senderOf(config: SenderConfig, settings: RegisterSettings): Sender {
  return {
    office: {
      name: config.officeName ?? settings.companyName,
      phone: config.officePhone ?? (settings.companyPhone || null),
      email: config.officeEmail ?? config.mailFrom ?? settings.senderAddress,
    },
    from: config.mailFrom ?? settings.senderAddress,
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

/** Sweeps the register, then writes the messages of the notices it left. */
export async function sweepRegister(
  register: Register,
  options: SweepOptions & { readonly sender: SenderConfig },
): Promise<SweepOutcome> {
  const report = await runSweep(register, options);
  if (report.kind !== 'finished') return { report, composed: null };
  return { report, composed: await writeMessages(register, options) };
}
