import { outcomeText } from '../drawing/evidence-text.ts';
import { speedText } from '../drawing/speed-text.ts';
import type { StormResult } from '../forecast/evidence/storm-outcome.ts';
import { postsOfOutcome, STORM_RESULTS } from '../forecast/evidence/storm-outcome.ts';
import { fenceStates, stateBefore } from '../forecast/fence-state.ts';
import type { ImportReport } from '../register/csv/import-report.ts';
import { parsePostNumbers } from '../register/csv/post-numbers-column.ts';
import { guardText } from '../register/csv/text-cell.ts';
import type { Register } from '../register/database.ts';
import { namedPosts, numberedTo } from '../register/evidence-post-list.ts';
import { readRecord } from '../register/record-store.ts';
import { type StormOutcomeRecord, stormOutcomeFacts } from '../register/storm-outcome-record.ts';
import { stormOutcomeRef } from '../service/storm-outcome-ref.ts';
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
  /** Posts that nobody looked at: `--stood all` does not cover them. */
  readonly unseen?: string;
  readonly gustSpread?: string;
  readonly gustSource?: string;
  readonly notes?: string;
  readonly ref?: string;
}

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
  const base = options.ref ?? stormOutcomeRef(fenceRef, options.day, options.name);
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
  const unseen = options.unseen === undefined ? [] : unseenPosts(options, options.unseen);
  await enterEvidence(context, fenceRef, options, {
    files: (fence) => [
      {
        name: 'outcomes.csv',
        rows: results.map((result) => {
          const posts = postsArgument(options[result] ?? '');
          if (posts === '')
            throw new CliError(EXIT.usage, `--${result} is empty`, `write all, or numbers, as --${result} 3,4`);
          const seen = posts.toLowerCase() === 'all' && unseen.length > 0 ? seenPosts(fence, options, unseen) : posts;
          return { ref: refOf(result), ...shared, posts: seen, result };
        }),
      },
    ],
    argumentOf: ({ column, value }, rowIndex) => {
      const result = results[rowIndex];
      return argumentOf(column, column === 'posts' && result ? (options[result] ?? '') : value, result);
    },
    refuseKnown: (register) => refuseKnown(register, results.map(refOf)),
    told: (report, fence) => told(report, fence),
    details: (report, fence) => ({
      covered: report.records.outcomes.map((outcome) => ({
        ref: outcome.ref,
        posts: coveredPosts(outcome, report, fence),
      })),
    }),
    howToConfirm: 'name these posts with --snapped or --unseen, or confirm with --sure that they stood',
  });
}

/** Posts as one argument names them, parted by blanks as in a CSV cell. */
const postsArgument = (text: string): string => text.trim().replaceAll(/[\s,]+/g, ' ');

function unseenPosts(options: StormOptions, text: string): readonly number[] {
  const argument = `--unseen ${JSON.stringify(text)}`;
  const parsed = parsePostNumbers(postsArgument(text));
  if ('reason' in parsed) throw new CliError(EXIT.usage, `${argument}: ${parsed.reason}`, 'write it as --unseen 3,5-7');
  if (parsed.value === 'all' || !STORM_RESULTS.some((result) => options[result]?.trim().toLowerCase() === 'all')) {
    throw new CliError(
      EXIT.usage,
      `${argument}: only ${parsed.value === 'all' ? 'some posts can be unseen' : 'posts that all would cover can be left out'}`,
      'posts that no argument names are unseen anyway; write --unseen beside --stood all',
    );
  }
  return parsed.value;
}

/** The posts that `all` covers without those that nobody looked at, as a CSV cell. */
function seenPosts(fence: FenceInRegister, options: StormOptions, unseen: readonly number[]): string {
  const { posts } = stateBefore(fenceStates(fence.facts), options.day);
  const known = posts.map(({ number }) => number);
  const stray = unseen.filter((number) => !known.includes(number));
  const named = STORM_RESULTS.flatMap((result) => {
    const parsed = parsePostNumbers(postsArgument(options[result] ?? 'all'));
    return 'reason' in parsed || parsed.value === 'all' ? [] : parsed.value;
  });
  const twice = unseen.filter((number) => named.includes(number));
  const argument = `--unseen ${JSON.stringify(options.unseen)}`;
  if (stray.length > 0) {
    throw new CliError(
      EXIT.refused,
      `${argument}: fence ${fence.ref} had ${numberedTo(known.length)} on that day, and no ${namedPosts(stray)}`,
      'Nothing was stored; correct the numbers.',
    );
  }
  if (twice.length > 0) {
    throw new CliError(
      EXIT.usage,
      `${argument}: ${namedPosts(twice)} said to be seen and unseen`,
      'name each post once',
    );
  }
  const stored = fence.facts.outcomes.flatMap((outcome) =>
    outcome.storm === options.name.trim() && outcome.posts !== 'all' ? outcome.posts : [],
  );
  const left = new Set([...unseen, ...named, ...stored]);
  const seen = known.filter((number) => !left.has(number));
  if (seen.length > 0) return seen.join(' ');
  throw new CliError(EXIT.usage, `${argument}: no post is left that all would cover`, 'leave all out');
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
      'Nothing was stored. Correct it by an import of outcomes.csv, take it back with "stormpale storm withdraw", or give this report another --ref.',
    );
  }
}

/** Numbers of the posts that an outcome just entered speaks of. */
function coveredPosts(
  outcome: StormOutcomeRecord,
  { records }: ImportReport,
  { facts }: FenceInRegister,
): readonly number[] {
  const all = [...facts.outcomes, ...records.outcomes.map(stormOutcomeFacts)];
  return [...postsOfOutcome(stormOutcomeFacts(outcome), all, stateBefore(fenceStates(facts), outcome.day))].sort(
    (a, b) => a - b,
  );
}

function told(report: ImportReport, fence: FenceInRegister): readonly string[] {
  const { outcomes } = report.records;
  const [first] = outcomes;
  if (!first) return [`Nothing new of fence ${fence.ref}.`];
  const named = outcomes.some(({ posts }) => posts !== 'all');
  const spread = `${Number((first.gustSpread * 100).toFixed(1))} %`;
  const covered = (outcome: StormOutcomeRecord): string =>
    outcome.posts === 'all' ? `: ${namedPosts(coveredPosts(outcome, report, fence))}` : '';
  return [
    `${report.dryRun ? 'Would store' : 'Stored'} of fence ${fence.ref} in storm ${JSON.stringify(first.storm)}, ${first.day}, gust ${speedText(first.gustMps, fence.units)} ± ${spread}:`,
    ...outcomes.map((outcome) => `  ${outcomeText(outcome, named)}${covered(outcome)} (${outcome.ref})`),
  ];
}
