import { methodText, outcomeText, readingText } from '../drawing/evidence-text.ts';
import { type DisplayUnits, speedText } from '../drawing/speed-text.ts';
import { type FenceEvidence, loadFenceEvidence } from '../register/evidence-store.ts';
import { listWithdrawals, type Withdrawal } from '../register/evidence-withdrawal.ts';
import { readingFacts } from '../register/reading-record.ts';
import { readRecord } from '../register/record-store.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of `inspect list` and `storm list`. */
export interface EvidenceListOptions extends GlobalOptions {
  readonly json?: boolean;
}

interface Listed extends FenceEvidence {
  readonly units: DisplayUnits;
  readonly withdrawn: readonly Withdrawal[];
}

/** What was seen of a fence and what was withdrawn. Throws `CliError` (not found) where there is no such fence. */
function listed(
  context: CliContext,
  fenceRef: string,
  options: EvidenceListOptions,
  kind: Withdrawal['kind'],
): Promise<Listed> {
  return withExistingRegister(configOf(context, options), async ({ db, path }) => {
    const fence = await readRecord(db, 'fences', fenceRef);
    const site = fence && (await readRecord(db, 'sites', fence.siteRef));
    const withdrawn = await listWithdrawals(db, fenceRef, kind);
    if (!site && withdrawn.length === 0) {
      throw new CliError(
        EXIT.notFound,
        `no fence ${JSON.stringify(fenceRef)} in the register at ${path}`,
        'refs are compared letter by letter; "stormpale export fences" lists them, --data names another register',
      );
    }
    const evidence = (await loadFenceEvidence(db, [fenceRef])).get(fenceRef) ?? { inspections: [], outcomes: [] };
    return { ...evidence, units: site?.units ?? 'us', withdrawn };
  });
}

const withdrawnLines = (withdrawn: readonly Withdrawal[]): readonly string[] =>
  withdrawn.length === 0
    ? []
    : [
        '',
        'Withdrawn:',
        ...withdrawn.map(
          ({ ref, at, by, because }) => `  ${ref}, on ${at.slice(0, 10)}${by === '' ? '' : ` by ${by}`}: ${because}`,
        ),
      ];

/** Lists every reading of a fence with its day, post by post, and the inspections that were withdrawn. */
export async function runInspectList(
  context: CliContext,
  fenceRef: string,
  options: EvidenceListOptions,
): Promise<void> {
  const { inspections, units, withdrawn } = await listed(context, fenceRef, options, 'inspection');
  const { terminal } = context;
  if (options.json) {
    const records = inspections.map(({ record, readings }) => ({ ...record, readings }));
    terminal.out(jsonText({ fence: fenceRef, inspections: records, withdrawn }));
    return;
  }
  const readings = inspections
    .flatMap(({ record, readings: found }) => found.map((reading) => ({ record, reading })))
    .sort((a, b) => a.reading.post - b.reading.post);
  const rows = readings.map(({ record, reading }, index) => [
    readings[index - 1]?.reading.post === reading.post ? '' : `${reading.post}`,
    record.day,
    `${readingText(readingFacts(reading), units)}${reading.sure ? ' (confirmed)' : ''}`,
    methodText(record.method),
    record.inspector,
    record.ref,
  ]);
  const empty = inspections
    .filter(({ readings: found }) => found.length === 0)
    .map(({ record }) => `Inspection ${record.ref} of ${record.day} has no readings.`);
  const table =
    rows.length === 0
      ? [`No post of fence ${fenceRef} was read.`]
      : [plainTable(['Post', 'Day', 'Found', 'Method', 'Inspector', 'Inspection'], rows, [0]).trimEnd()];
  terminal.out(`${[...table, ...empty, ...withdrawnLines(withdrawn)].join('\n')}\n`);
}

/** Lists every storm outcome of a fence, and those that were withdrawn. */
export async function runStormList(context: CliContext, fenceRef: string, options: EvidenceListOptions): Promise<void> {
  const { outcomes, units, withdrawn } = await listed(context, fenceRef, options, 'outcome');
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ fence: fenceRef, outcomes, withdrawn }));
    return;
  }
  const rows = outcomes.map((outcome) => [
    outcome.day,
    outcome.storm,
    speedText(outcome.gustMps, units),
    outcomeText(
      outcome,
      outcomes.some(({ storm, posts }) => storm === outcome.storm && posts !== 'all'),
    ),
    outcome.reportedBy,
    outcome.ref,
  ]);
  const table =
    rows.length === 0
      ? [`No storm was reported of fence ${fenceRef}.`]
      : [plainTable(['Day', 'Storm', 'Gust', 'What it did', 'Reported by', 'Outcome'], rows).trimEnd()];
  terminal.out(`${[...table, ...withdrawnLines(withdrawn)].join('\n')}\n`);
}
