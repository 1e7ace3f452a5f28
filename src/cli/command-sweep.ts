import { listHeldNotices } from '../register/held-notices.ts';
import type { SweepOutcome } from '../service/sweep-register.ts';
import { sweepRegister } from '../service/sweep-register.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { counter, jsonText } from './terminal.ts';

/** Options of `sweep`. */
export interface SweepCommandOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Sweeps the register now and writes the messages that come of it. Ctrl-C stops after the fence at hand; the next sweep goes on. */
export async function runSweepCommand(context: CliContext, options: SweepCommandOptions): Promise<void> {
  const config = configOf(context, options);
  const { terminal, clock } = context;
  const progress = counter(terminal, 'Sweeping:');
  const stop = new AbortController();
  const onInterrupt = (): void => stop.abort();
  process.once('SIGINT', onInterrupt);
  let outcome: SweepOutcome;
  let held = 0;
  try {
    outcome = await withExistingRegister(config, async (register) => {
      const swept = await sweepRegister(register, {
        now: clock,
        sender: config,
        signal: stop.signal,
        onProgress: ({ done, failed }) => progress.show(`${done} fences${failed > 0 ? `, ${failed} failed` : ''}`),
      });
      held = (await listHeldNotices(register)).length;
      return swept;
    });
  } finally {
    progress.end();
    process.removeListener('SIGINT', onInterrupt);
  }
  report(context, outcome, options.json === true);
  if (!options.json && held > 0) {
    terminal.out(
      `${count(held, 'notice')} held until you release ${held === 1 ? 'it' : 'them'}: see "stormpale mail held".\n`,
    );
  }
}

function report({ terminal, end }: CliContext, { report: sweep, composed }: SweepOutcome, asJson: boolean): void {
  if (sweep.kind === 'busy') {
    throw new CliError(
      EXIT.unexpected,
      `another sweep is at work (process ${sweep.heldBy.pid})`,
      'wait for it to end, or look at the page of fences, which says how far it is',
    );
  }
  if (asJson) terminal.out(jsonText({ ...sweep, composed }));
  else if (sweep.kind === 'interrupted') {
    terminal.out('Stopped. What was done is kept; "stormpale sweep" goes on from there.\n');
  } else {
    const { computed, unchanged, failed, notices } = sweep.sweep;
    terminal.out(
      `${computed} forecast, ${unchanged} unchanged, ${failed} failed; ${count(notices, 'notice')}, ${count(composed?.mails ?? 0, 'mail')} and ${count(composed?.letters ?? 0, 'letter')} written.\n`,
    );
  }
  if (sweep.kind === 'interrupted') {
    end(EXIT.partly);
    return;
  }
  for (const { ref, message } of sweep.failures) terminal.err(`Fence ${ref}: ${message}\n`);
  for (const { ownerRef, message } of composed?.failures ?? []) terminal.err(`Owner ${ownerRef}: ${message}\n`);
  if (sweep.failures.length > 0 || (composed?.failures.length ?? 0) > 0) {
    terminal.err('These keep their last forecast. Correct what is named and sweep again.\n');
    end(EXIT.partly);
  }
}

const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;
