import { STORM_RESULTS } from '../forecast/evidence/storm-outcome.ts';
import type { Register } from '../register/database.ts';
import {
  type Withdrawal,
  type WithdrawalAct,
  withdrawInspection,
  withdrawOutcomes,
} from '../register/evidence-withdrawal.ts';
import type { StormOutcomeRecord } from '../register/storm-outcome-record.ts';
import { isoUtc } from '../service/clock.ts';
import { outcomesOfRef, spreadingOutcome } from '../service/withdraw-evidence.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { jsonText } from './terminal.ts';

/** Options of `inspect withdraw` and `storm withdraw`. */
export interface WithdrawOptions extends GlobalOptions {
  readonly because: string;
  readonly by?: string;
  readonly json?: boolean;
  /** Takes an outcome back though another one then speaks of its posts. */
  readonly sure?: boolean;
}

const LONGEST_REASON = 2000;
const LONGEST_NAME = 200;

function actOf({ clock }: CliContext, options: WithdrawOptions): WithdrawalAct {
  const because = options.because.trim();
  const by = options.by?.trim() ?? '';
  if (because === '' || because.length > LONGEST_REASON) {
    throw new CliError(
      EXIT.usage,
      `--because: ${because === '' ? 'empty' : `${because.length} characters, and ${LONGEST_REASON} are kept`}`,
      'Nothing was withdrawn. Say why, as --because "read at the wrong fence".',
    );
  }
  if (by.length > LONGEST_NAME) {
    throw new CliError(
      EXIT.usage,
      `--by: ${by.length} characters, and ${LONGEST_NAME} are kept`,
      'Nothing was withdrawn. Write it shorter.',
    );
  }
  return { because, by, at: isoUtc(clock()) };
}

/** Takes an inspection back with its readings; what it said is kept. */
export async function runInspectWithdraw(context: CliContext, ref: string, options: WithdrawOptions): Promise<void> {
  const act = actOf(context, options);
  const withdrawal = await withExistingRegister(configOf(context, options), (register) =>
    withdrawInspection(register, ref, act),
  );
  if (!withdrawal) {
    throw new CliError(
      EXIT.notFound,
      `no inspection ${JSON.stringify(ref)} in the register`,
      'Nothing was withdrawn. "stormpale inspect list FENCE" shows the inspections of a fence with their refs.',
    );
  }
  tell(context, options, [withdrawal]);
}

/** Refuses to leave an outcome of "all" posts behind that would then speak of posts whose own outcome was taken back. */
async function refuseSpreading(register: Register, outcomes: readonly StormOutcomeRecord[]): Promise<void> {
  const spreading = await spreadingOutcome(register, outcomes);
  if (spreading === null) return;
  throw new CliError(
    EXIT.refused,
    spreading,
    'Nothing was withdrawn. Correct or withdraw that one first, or confirm with --sure that it holds for these posts as well.',
  );
}

/** Takes storm outcomes back: the one of that ref, or all that one command stored under it; what they said is kept. */
export async function runStormWithdraw(context: CliContext, ref: string, options: WithdrawOptions): Promise<void> {
  const act = actOf(context, options);
  const withdrawals = await withExistingRegister(configOf(context, options), async (register) => {
    const outcomes = await outcomesOfRef(register, ref);
    if (outcomes.length > 0 && options.sure !== true) await refuseSpreading(register, outcomes);
    return withdrawOutcomes(register, outcomes, act);
  });
  if (withdrawals.length === 0) {
    throw new CliError(
      EXIT.notFound,
      `no storm outcome ${JSON.stringify(ref)} in the register, nor any of ${STORM_RESULTS.map((result) => `${ref}/${result}`).join(', ')}`,
      'Nothing was withdrawn. "stormpale storm list FENCE" shows the outcomes of a fence with their refs.',
    );
  }
  tell(context, options, withdrawals);
}

function tell({ terminal }: CliContext, options: WithdrawOptions, withdrawals: readonly Withdrawal[]): void {
  if (options.json) {
    terminal.out(jsonText({ withdrawn: withdrawals }));
    return;
  }
  const lines = withdrawals.map(({ kind, ref, fenceRef, record }) => {
    const readings = Array.isArray(record.readings) ? record.readings.length : 0;
    const what =
      kind === 'inspection'
        ? `inspection ${ref} of fence ${fenceRef} with ${readings} ${readings === 1 ? 'reading' : 'readings'}`
        : `storm outcome ${ref} of fence ${fenceRef}`;
    return `Withdrawn: ${what}.`;
  });
  terminal.out(
    `${lines.join('\n')}\nWhat was withdrawn is kept with the reason and listed by "stormpale ${withdrawals[0]?.kind === 'inspection' ? 'inspect' : 'storm'} list ${withdrawals[0]?.fenceRef ?? ''}"; forecasts no longer rest on it.\nThe next sweep takes it in; to have it now: stormpale sweep\n`,
  );
}
