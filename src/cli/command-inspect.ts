import { methodText, readingText } from '../drawing/evidence-text.ts';
import type { ImportReport } from '../register/csv/import-report.ts';
import { guardText } from '../register/csv/text-cell.ts';
import type { Register } from '../register/database.ts';
import { namedPosts } from '../register/evidence-post-list.ts';
import { loadFenceEvidence } from '../register/evidence-store.ts';
import { readingFacts } from '../register/reading-record.ts';
import { readRecord } from '../register/record-store.ts';
import type { CliContext } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import type { EvidenceOptions } from './enter-evidence.ts';
import { enterEvidence } from './enter-evidence.ts';
import { EXIT } from './exit-codes.ts';
import type { FenceInRegister } from './fence-in-register.ts';
import { readingCells, readingWord } from './reading-argument.ts';

/** Options of `inspect`. */
export interface InspectOptions extends EvidenceOptions {
  readonly day: string;
  readonly inspector: string;
  readonly method: string;
  /** What was found, one text a post. */
  readonly post: readonly string[];
  readonly qualification?: string;
  readonly instrument?: string;
  readonly notes?: string;
  readonly ref?: string;
}

/** Enters an inspection of one fence with its readings. */
export async function runInspect(context: CliContext, fenceRef: string, options: InspectOptions): Promise<void> {
  const { day, inspector, method } = options;
  const ref = options.ref ?? `${fenceRef}/${day}/${method}`;
  const readings = options.post.map(readingCells);
  refuseTwice(readings.map(({ post = '' }) => post));
  const sure = options.sure === true ? { sure: 'yes' } : {};
  const texts = {
    inspector,
    qualification: options.qualification,
    instrument: options.instrument,
    notes: options.notes,
  };
  const guarded = Object.entries(texts).flatMap(([column, text]) =>
    text === undefined ? [] : [[column, guardText(text)] as const],
  );
  await enterEvidence(context, fenceRef, options, {
    files: () => [
      { name: 'inspections.csv', rows: [{ ref, fence: fenceRef, day, method, ...Object.fromEntries(guarded) }] },
      { name: 'readings.csv', rows: readings.map((cells) => ({ inspection: ref, ...cells, ...sure })) },
    ],
    argumentOf: ({ file, column, value }, rowIndex) => {
      if (file === 'readings.csv') {
        const argument = `--post ${JSON.stringify(options.post[rowIndex] ?? '')}`;
        return column === 'post' ? argument : `${argument}, ${readingWord(column)}`;
      }
      return `${column === 'fence' ? 'fence' : `--${column}`} ${JSON.stringify(value)}`;
    },
    refuseKnown: (register) =>
      refuseKnown(register, fenceRef, ref, { ...options, posts: readings.map((cells) => Number(cells.post)) }),
    told: (report, fence) => told(report, fence, ref),
    howToConfirm: 'correct that, or confirm the readings with --sure where they are as they are',
  });
}

function refuseTwice(posts: readonly string[]): void {
  const twice = posts.find((post, index) => posts.indexOf(post) !== index);
  if (twice === undefined) return;
  throw new CliError(
    EXIT.usage,
    `--post: post ${twice} is named twice, and one inspection has one reading of a post`,
    'put what was found at one post into one --post',
  );
}

/** Readings may be added to an inspection that is there; nothing of it may be replaced. */
async function refuseKnown(
  register: Register,
  fenceRef: string,
  ref: string,
  {
    day,
    inspector,
    method,
    posts,
  }: Pick<InspectOptions, 'day' | 'inspector' | 'method'> & { readonly posts: readonly number[] },
): Promise<void> {
  const known = await readRecord(register.db, 'inspections', ref);
  if (!known) return;
  const same =
    known.fenceRef === fenceRef && known.day === day && known.method === method && known.inspector === inspector.trim();
  if (!same) {
    throw new CliError(
      EXIT.refused,
      `--ref ${JSON.stringify(ref)}: that inspection is there already: fence ${known.fenceRef}, ${known.day}, ${known.inspector}, ${known.method}`,
      'Nothing was stored. Give this one another --ref, or correct that one by an import of inspections.csv, or take it back with "stormpale inspect withdraw".',
    );
  }
  const evidence = (await loadFenceEvidence(register.db, [fenceRef])).get(fenceRef);
  const read = evidence?.inspections.find(({ record }) => record.ref === ref)?.readings ?? [];
  const twice = posts.filter((post) => read.some((reading) => reading.post === post));
  if (twice.length === 0) return;
  throw new CliError(
    EXIT.refused,
    `--post: inspection ${ref} has a reading of ${namedPosts(twice)} already`,
    `Nothing was stored. Enter a second look as an inspection of its own with --ref, or correct the reading by an import of readings.csv, or take the inspection back with "stormpale inspect withdraw ${ref} --because TEXT" and enter it anew.`,
  );
}

function told(report: ImportReport, fence: FenceInRegister, ref: string): readonly string[] {
  const { inspections, readings } = report.records;
  const [inspection] = inspections;
  const verb = report.dryRun ? 'Would store' : 'Stored';
  const head = inspection
    ? `${verb} inspection ${ref} of fence ${fence.ref}: ${inspection.day}, ${inspection.inspector}, ${methodText(inspection.method)}.`
    : `${report.dryRun ? 'Would add' : 'Added'} to inspection ${ref} of fence ${fence.ref}.`;
  return [
    head,
    ...readings.map((reading) => `  post ${reading.post}: ${readingText(readingFacts(reading), fence.units)}`),
  ];
}
