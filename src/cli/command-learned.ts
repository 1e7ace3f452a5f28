import { nearestName } from '../register/csv/nearest-name.ts';
import { type LearnedAct, learnedHistory, learnedInForce } from '../register/learned-store.ts';
import { isoUtc } from '../service/clock.ts';
import {
  acceptLearning,
  type LearningProgress,
  learnFromRegister,
  planLearning,
  type RefusedAcceptance,
  type RegisterLearning,
  revertLearning,
} from '../service/learn-register.ts';
import { lackingText, ownersOf, quantityName, valueText } from '../service/learned-words.ts';
import { previewLearned } from '../service/preview-learned.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { previewText } from './learned-preview-text.ts';
import { entryLines, footingTable, nextSweep, paceTable, SPREAD_LEGEND } from './learned-text.ts';
import { counter, jsonText } from './terminal.ts';

/** Options of `learned` and of `learned history`. */
export interface LearnedOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Options of `learned revert`. */
export interface LearnedRevertOptions extends LearnedOptions {
  readonly by: string;
  readonly note?: string;
  readonly dryRun?: boolean;
}

/** Options of `learned accept`. */
export interface LearnedAcceptOptions extends LearnedRevertOptions {
  /** Keys of what is accepted, parted by commas. */
  readonly only?: string;
}

const NOTHING_SEEN =
  'Nothing has been learned: the register holds no groundline readings and no storm outcomes.\nEnter them with "stormpale inspect" and "stormpale storm", or import inspections.csv, readings.csv and outcomes.csv.';

/** Works with a counter of the fences walked. */
async function walking<T>(context: CliContext, work: (onProgress: LearningProgress) => Promise<T>): Promise<T> {
  const progress = counter(context.terminal, 'Learning:');
  try {
    return await work((done, total) => progress.show(`${done} of ${total} fences`));
  } finally {
    progress.end();
  }
}

function tellUnread({ terminal, end }: CliContext, { unread }: RegisterLearning): void {
  if (unread.length === 0) return;
  for (const { ref, message } of unread) terminal.err(`Fence ${ref}: ${message}\n`);
  terminal.err('What was seen of these does not count. Correct what is named and run this again.\n');
  end(EXIT.partly);
}

/** Shows what the register has learned beside the published values, and what of it is in force. */
export async function runLearned(context: CliContext, options: LearnedOptions): Promise<void> {
  const learning = await withExistingRegister(configOf(context, options), (register) =>
    walking(context, (onProgress) => learnFromRegister(register, onProgress)),
  );
  const { terminal } = context;
  const { cells, inForce, unread } = learning;
  if (options.json) {
    terminal.out(jsonText({ inForce: inForce?.number ?? null, cells, unread }));
  } else if (cells.length === 0) terminal.out(`${NOTHING_SEEN}\n`);
  else {
    terminal.out(
      [
        ...paceTable(cells),
        ...footingTable(cells),
        SPREAD_LEGEND,
        inForce
          ? `Version ${inForce.number} is in force: accepted by ${inForce.by} on ${inForce.at.slice(0, 10)}.`
          : 'Nothing of this is in force: forecasts use the published values.',
        'Forecasts use what you accept with "stormpale learned accept --by NAME"; "stormpale learned revert" takes it back.',
        '',
      ].join('\n'),
    );
  }
  tellUnread(context, learning);
}

function whoOf(by: string): string {
  const name = by.trim();
  if (name !== '' && name.length <= 200) return name;
  throw new CliError(
    EXIT.usage,
    `--by ${JSON.stringify(by)}: not a name of 1 to 200 characters`,
    'Nothing was stored. Say who decides, as --by "Nell Ardmore".',
  );
}

function noteOf(note = ''): string {
  if (note.length <= 2000) return note.trim();
  throw new CliError(
    EXIT.usage,
    `--note: ${note.length} characters, and 2000 are kept`,
    'Nothing was stored. Write it shorter.',
  );
}

function refuse(acceptance: RefusedAcceptance, { cells, inForce }: RegisterLearning): never {
  const known = cells.map(({ key }) => key);
  switch (acceptance.kind) {
    case 'not seen': {
      const [key = ''] = acceptance.keys;
      const near = nearestName(key, known);
      const seen = known.length === 0 ? 'nothing so far' : known.join(', ');
      throw new CliError(
        EXIT.refused,
        `--only ${acceptance.keys.join(',')}: the register has seen nothing of ${acceptance.keys.length === 1 ? 'that' : 'these'}${near ? `; did you mean ${near}?` : ''}`,
        `Nothing was accepted. Seen: ${seen}.`,
      );
    }
    case 'too few':
      throw new CliError(
        EXIT.refused,
        acceptance.cells.length === 0
          ? 'the register holds no groundline readings and no storm outcomes, so there is nothing to accept'
          : `too little was seen: ${acceptance.cells.map((cell) => `${quantityName(cell)}, named ${cell.key} (${lackingText(cell)})`).join('; ')}`,
        'Nothing was accepted. Enter more with "stormpale inspect" and "stormpale storm", or name with --only what can be accepted; "stormpale learned" lists it.',
      );
    case 'in force already':
      throw new CliError(
        EXIT.refused,
        `${acceptance.cells.map(quantityName).join(', ')}: in force already, as the register shows it now`,
        `Nothing was accepted. Version ${inForce?.number} stays; accept again once more was seen.`,
      );
  }
}

/** Accepts what was learned as a new version. */
export async function runLearnedAccept(context: CliContext, options: LearnedAcceptOptions): Promise<void> {
  const act = { at: isoUtc(context.clock()), by: whoOf(options.by), note: noteOf(options.note) };
  const only = options.only === undefined ? null : [...new Set(options.only.split(',').map((key) => key.trim()))];
  if (options.dryRun) return previewAccept(context, options, act, only);
  const { learning, acceptance } = await withExistingRegister(configOf(context, options), (register) =>
    walking(context, (onProgress) => acceptLearning(register, act, only, onProgress)),
  );
  const { terminal } = context;
  if (acceptance.kind !== 'accepted') return refuse(acceptance, learning);
  const { version, fences } = acceptance;
  if (options.json) terminal.out(jsonText({ accepted: version, fencesForecastAnew: fences, unread: learning.unread }));
  else {
    const lines = version.values.map((value) => `  ${valueText(value, version.number)}`);
    terminal.out(`Accepted as version ${version.number} by ${version.by}:\n${lines.join('\n')}\n${nextSweep(fences)}`);
  }
  tellUnread(context, learning);
}

/** Says what accepting would change, and accepts nothing. */
async function previewAccept(
  context: CliContext,
  options: LearnedAcceptOptions,
  act: LearnedAct,
  only: readonly string[] | null,
): Promise<void> {
  const { learning, plan, preview } = await withExistingRegister(configOf(context, options), async (register) => {
    const planned = await walking(context, (onProgress) => planLearning(register, act, only, onProgress));
    if (planned.plan.kind !== 'planned') return { ...planned, preview: null };
    const { version } = planned.plan;
    const found = await walking(context, (onProgress) => previewLearned(register, version, context.clock, onProgress));
    return { ...planned, preview: found };
  });
  if (plan.kind !== 'planned') return refuse(plan, learning);
  if (!preview) return;
  const { version } = plan;
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ dryRun: true, wouldAccept: version, ...preview, owners: ownersOf(preview) }));
  } else {
    const lines = version.values.map((value) => `  ${valueText(value, version.number)}`);
    terminal.out(
      `Would accept as version ${version.number} by ${version.by}:\n${lines.join('\n')}\n${previewText(preview)}`,
    );
  }
  tellUnread(context, { ...learning, unread: preview.unread });
}

const nothingInForce = (): CliError =>
  new CliError(
    EXIT.refused,
    'nothing is in force that could be taken back',
    'Nothing was changed. "stormpale learned history" shows what was accepted and taken back.',
  );

/** Says what taking the version in force back would change, and takes nothing back. */
async function previewRevert(context: CliContext, options: LearnedRevertOptions): Promise<void> {
  const { inForce, after, preview } = await withExistingRegister(configOf(context, options), async (register) => {
    const now = await learnedInForce(register.db);
    if (!now) throw nothingInForce();
    const then = await learnedInForce(register.db, now.number);
    const found = await walking(context, (onProgress) => previewLearned(register, then, context.clock, onProgress));
    return { inForce: now, after: then, preview: found };
  });
  const { terminal } = context;
  if (options.json) {
    const numbers = { wouldRevert: inForce.number, inForce: after?.number ?? null };
    terminal.out(jsonText({ dryRun: true, ...numbers, ...preview, owners: ownersOf(preview) }));
  } else {
    const then = after ? `Version ${after.number} would hold again.` : 'The published values would hold again.';
    terminal.out(`Would take version ${inForce.number} back. ${then}\n${previewText(preview)}`);
  }
  tellUnread(context, { cells: [], inForce, unread: preview.unread });
}

/** Takes the version in force back. */
export async function runLearnedRevert(context: CliContext, options: LearnedRevertOptions): Promise<void> {
  const act = { at: isoUtc(context.clock()), by: whoOf(options.by), note: noteOf(options.note) };
  if (options.dryRun) return previewRevert(context, options);
  const reversion = await withExistingRegister(configOf(context, options), (register) => revertLearning(register, act));
  if (!reversion) throw nothingInForce();
  const { reverted, inForce, fences } = reversion;
  if (options.json) {
    context.terminal.out(
      jsonText({ reverted: reverted.number, inForce: inForce?.number ?? null, fencesForecastAnew: fences }),
    );
    return;
  }
  const now = inForce ? `Version ${inForce.number} holds again.` : 'The published values hold again.';
  context.terminal.out(`Version ${reverted.number} was taken back by ${act.by}. ${now}\n${nextSweep(fences)}`);
}

/** Shows everything that was accepted and taken back, oldest first. */
export async function runLearnedHistory(context: CliContext, options: LearnedOptions): Promise<void> {
  const entries = await withExistingRegister(configOf(context, options), ({ db }) => learnedHistory(db));
  if (options.json) context.terminal.out(jsonText(entries));
  else if (entries.length === 0)
    context.terminal.out('Nothing was ever accepted: forecasts use the published values.\n');
  else context.terminal.out(`${entries.flatMap(entryLines).join('\n')}\n`);
}
