import { makeSeasonPlan } from '../service/make-season-plan.ts';
import { CAUTION_LIST } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { planJson, planText } from './plan-text.ts';
import { counter, jsonText } from './terminal.ts';

/** Options of `plan`. */
export interface PlanOptions extends GlobalOptions {
  readonly weeks?: number;
  readonly json?: boolean;
}

/** Makes the plan for the coming season and prints it by week and crew. */
export async function runPlan(context: CliContext, options: PlanOptions): Promise<void> {
  const { terminal, clock } = context;
  const progress = counter(terminal, 'Planning:');
  try {
    const made = await withExistingRegister(configOf(context, options), (register) =>
      makeSeasonPlan(register, {
        now: clock,
        weeks: options.weeks ?? null,
        kept: new Map(),
        onProgress: (done, total) =>
          progress.show(done < total ? `${done} of ${total} fences looked at` : 'filling the weeks of the crews'),
      }),
    );
    progress.end();
    if (made.crews.length === 0) {
      throw new CliError(
        EXIT.refused,
        'the register holds no crew, so there are no weeks to fill',
        'import crews and crew-members (docs/csv.md), then plan again',
      );
    }
    terminal.out(options.json ? jsonText({ ...(planJson(made) as object), cautions: CAUTION_LIST }) : planText(made));
  } finally {
    progress.end();
  }
}
