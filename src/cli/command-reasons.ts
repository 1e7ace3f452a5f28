import { fenceAgeText } from '../drawing/quantity-text.ts';
import { quantityText } from '../drawing/reason-text.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import type { Reasons } from '../forecast/reasons.ts';
import { explainForecast } from '../forecast/reasons.ts';
import { CAUTION_LIST, CAUTIONS } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import type { FenceInRegister } from './fence-in-register.ts';
import { fenceInRegister } from './fence-in-register.ts';
import { evidenceLines } from './reasons-evidence.ts';
import { jsonText } from './terminal.ts';
import { chartColumns } from './terminal-columns.ts';

/** Options of `reasons`. */
export interface ReasonsOptions extends GlobalOptions {
  /** Label of the season to explain; season 1 where not given. */
  readonly season?: string;
  /** Explain the posts that decide the ends instead of the line. */
  readonly ends?: boolean;
  readonly json?: boolean;
}

/** Shows each step from a fence's inputs to its speeds. */
export async function runReasons(context: CliContext, ref: string, options: ReasonsOptions): Promise<void> {
  const fence = await withExistingRegister(configOf(context, options), (register) =>
    fenceInRegister(register, ref, context.clock),
  );
  const reasons = explain(fence, options);
  const { terminal } = context;
  terminal.out(
    options.json
      ? jsonText({ ...reasons, inputHash: fence.inputHash, cautions: CAUTION_LIST })
      : reasonsText(fence, reasons, terminal.columns),
  );
}

function explain(fence: FenceInRegister, options: ReasonsOptions): Reasons {
  try {
    return explainForecast(fence.facts, fence.seasonOneYear, fence.settings, {
      ...(options.season === undefined ? {} : { seasonLabel: options.season }),
      ...(options.ends ? { which: 'ends' } : {}),
    });
  } catch (error) {
    if (options.season === undefined || !(error instanceof RangeError)) throw error;
    throw new CliError(
      EXIT.notFound,
      error.message,
      'give one of these with --season, or leave it out for the season at hand',
    );
  }
}

function reasonsText(fence: FenceInRegister, reasons: Reasons, columns: number): string {
  const { seasons } = forecastFence(fence.facts, fence.seasonOneYear, fence.settings);
  const ageYears = seasons.find(({ label }) => label === reasons.season)?.ageYears ?? reasons.ageYears;
  const lines = [
    `Fence ${fence.ref}, ${fence.siteName}: ${reasons.season === 'new' ? 'as built' : `season ${reasons.season}`}, ${reasons.group}, posts ${reasons.postNumbers.join(' ')}`,
    `On ${reasons.day}, ${fenceAgeText(ageYears)}. What is not known stands at its middle value.`,
  ];
  let group = '';
  for (const step of reasons.steps) {
    if (step.group !== group) {
      group = step.group;
      lines.push('', group.toUpperCase());
    }
    const us = step.us ? ` (${quantityText(step.us)})` : '';
    lines.push(`  ${step.symbol} = ${quantityText(step)}${us}   ${step.quantity} [${step.basis}]`);
    lines.push(`      ${step.equation}`);
    lines.push(`      ${step.source} (${step.tag})`);
  }
  return [
    ...lines,
    '',
    ...evidenceLines(reasons, fence.units, chartColumns(columns)),
    '',
    `Model ${reasons.modelVersion}, inputs ${fence.inputHash}`,
    CAUTIONS,
  ].join('\n');
}
