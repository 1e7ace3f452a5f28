import { outcomeText } from '../drawing/evidence-text.ts';
import { speedText } from '../drawing/speed-text.ts';
import type { StormResult } from '../forecast/evidence/storm-outcome.ts';
import { STORM_RESULTS } from '../forecast/evidence/storm-outcome.ts';
import type { ImportReport } from '../register/csv/import-report.ts';
import { guardText } from '../register/csv/text-cell.ts';
import type { Register } from '../register/database.ts';
import { readRecord } from '../register/record-store.ts';
import type { CliContext } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import type { EvidenceOptions } from './enter-evidence.ts';
import { enterEvidence } from './enter-evidence.ts';
import { EXIT } from './exit-codes.ts';
import type { FenceInRegister } from './fence-in-register.ts';
import { quantityArgument, SPEED_UNITS } from './quantity-argument.ts';

/** Options of `storm`. */
export interface StormOptions extends EvidenceOptions {
  readonly day: string;
  readonly gust: string;
  readonly name: string;
  readonly reportedBy: string;
  readonly stood?: string;
  readonly leaned?: string;
  readonly snapped?: string;
  readonly gustSpread?: string;
  readonly gustSource?: string;
  readonly notes?: string;
  readonly ref?: string;
}

const LONGEST_NAME_IN_REF = 40;

/** A storm's name as part of a ref: plain letters, digits and hyphens. */
const nameInRef = (name: string): string =>
  name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^A-Za-z0-9]+/g, '-')
    .slice(0, LONGEST_NAME_IN_REF)
    .replaceAll(/^-|-$/g, '') || 'storm';

/** Enters what one storm was reported to have done to the posts of one fence. */
export async function runStorm(context: CliContext, fenceRef: string, options: StormOptions): Promise<void> {
  const results = STORM_RESULTS.filter((result) => options[result] !== undefined);
  if (results.length === 0) {
    throw new CliError(
      EXIT.usage,
      'none of --stood, --leaned and --snapped is given: what nobody reported is no evidence',
      'say what became of the posts, as --stood all --leaned 3,4',
    );
  }
  const gust = quantityArgument('--gust', options.gust, SPEED_UNITS);
  const base = options.ref ?? `${fenceRef}/${options.day}/${nameInRef(options.name)}`;
  const refOf = (result: StormResult): string => `${base}/${result}`;
  const shared: Readonly<Record<string, string>> = {
    storm: guardText(options.name),
    fence: fenceRef,
    day: options.day,
    [`gust_${gust.suffix}`]: gust.value,
    ...(options.gustSpread === undefined ? {} : { gust_spread_percent: percentOf(options.gustSpread) }),
    ...(options.gustSource === undefined ? {} : { gust_source: guardText(options.gustSource) }),
    reported_by: guardText(options.reportedBy),
    ...(options.notes === undefined ? {} : { notes: guardText(options.notes) }),
  };
  const rows = results.map((result) => ({
    ref: refOf(result),
    ...shared,
    posts: (options[result] ?? '').trim().replaceAll(/[\s,]+/g, ' '),
    result,
  }));
  for (const { posts, result } of rows) {
    if (posts === '')
      throw new CliError(EXIT.usage, `--${result} is empty`, `write all, or numbers, as --${result} 3,4`);
  }
  await enterEvidence(context, fenceRef, options, {
    files: [{ name: 'outcomes.csv', rows }],
    argumentOf: ({ column, value }, rowIndex) => argumentOf(column, value, results[rowIndex]),
    refuseKnown: (register) => refuseKnown(register, results.map(refOf)),
    told: (report, fence) => told(report, fence),
  });
}

/** `10%` and `10` are both ten percent. */
const percentOf = (text: string): string => text.trim().replace(/\s*%$/, '');

function argumentOf(column: string, value: string, result: StormResult | undefined): string {
  const shown = JSON.stringify(value);
  if (column === 'fence') return `fence ${shown}`;
  if (column === 'posts') return `--${result ?? 'posts'} ${shown}`;
  if (column === 'storm') return `--name ${shown}`;
  if (column === 'gust_spread_percent') return `--gust-spread ${shown}`;
  if (/^gust_(mph|mps|kmh|kt)$/.test(column)) return `--gust ${shown}`;
  return `--${column.replaceAll('_', '-')} ${shown}`;
}

async function refuseKnown(register: Register, refs: readonly string[]): Promise<void> {
  for (const ref of refs) {
    const known = await readRecord(register.db, 'outcomes', ref);
    if (!known) continue;
    throw new CliError(
      EXIT.refused,
      `${ref} is reported already: storm ${JSON.stringify(known.storm)} of ${known.day}, ${outcomeText(known, false)}`,
      'Nothing was stored. Correct it by an import of outcomes.csv, or give this report another --ref.',
    );
  }
}

function told(report: ImportReport, fence: FenceInRegister): readonly string[] {
  const { outcomes } = report.records;
  const [first] = outcomes;
  if (!first) return [`Nothing new of fence ${fence.ref}.`];
  const named = outcomes.some(({ posts }) => posts !== 'all');
  const spread = `${Number((first.gustSpread * 100).toFixed(1))} %`;
  return [
    `${report.dryRun ? 'Would store' : 'Stored'} of fence ${fence.ref} in storm ${JSON.stringify(first.storm)}, ${first.day}, gust ${speedText(first.gustMps, fence.units)} ± ${spread}:`,
    ...outcomes.map((outcome) => `  ${outcomeText(outcome, named)} (${outcome.ref})`),
  ];
}
