import { visitItemText } from '../drawing/visit-words.ts';
import { type DoneAtFence, type DoResult, doVisit, type HoursUsed } from '../service/do-visit.ts';
import type { WantedWorks } from '../service/fence-quote.ts';
import type { CliContext } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { type VisitOptions, wholeUid } from './command-visit.ts';
import { EXIT } from './exit-codes.ts';
import { jsonText } from './terminal.ts';
import { type ActOptions, actOf } from './visit-act.ts';
import { visitLine } from './visit-text.ts';
import { wantedWorks } from './works-argument.ts';

/** Options of `visit done`. */
export interface VisitDoneOptions extends VisitOptions, ActOptions {
  readonly day: string;
  /** `6.5`, or `FENCE=4.5` once for each fence. */
  readonly hours?: readonly string[];
  readonly only?: readonly string[];
  readonly except?: readonly string[];
  /** `FENCE=WORKS+WORKS`. */
  readonly did?: readonly string[];
  /** `FENCE=REF`. */
  readonly inspection?: readonly string[];
  readonly sure?: boolean;
}

/** What is said fence by fence: `FENCE=…`, each fence once. */
function byFence(option: string, texts: readonly string[] | undefined): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const text of texts ?? []) {
    const [, fenceRef = '', what = ''] = /^([^=]+)=(.+)$/s.exec(text) ?? [];
    if (fenceRef === '') {
      throw new CliError(
        EXIT.usage,
        `${option} ${JSON.stringify(text)}: no fence is named`,
        `write the fence, an equals sign and what it is, as ${option} OAK-1=…`,
      );
    }
    if (found.has(fenceRef)) {
      throw new CliError(EXIT.usage, `${option}: fence ${fenceRef} is named twice`, 'name each fence once');
    }
    found.set(fenceRef, what);
  }
  return found;
}

function hoursNumber(text: string): number {
  const hours = Number(text);
  if (Number.isFinite(hours) && hours > 0) return hours;
  throw new CliError(EXIT.usage, `--hours ${JSON.stringify(text)}: no number of hours`, 'write it as --hours 6.5');
}

function hoursOf(texts: readonly string[] | undefined): HoursUsed {
  const [first, ...others] = texts ?? [];
  if (first === undefined) return { kind: 'none' };
  if (!first.includes('=') && others.length === 0) return { kind: 'visit', personHours: hoursNumber(first) };
  const fences = byFence('--hours', texts);
  return { kind: 'fences', personHours: new Map([...fences].map(([ref, text]) => [ref, hoursNumber(text)])) };
}

const changedOf = (texts: readonly string[] | undefined): ReadonlyMap<string, readonly WantedWorks[]> =>
  new Map(
    [...byFence('--did', texts)].map(([ref, text]) => [ref, wantedWorks(text.split('+').map((each) => each.trim()))]),
  );

function doneLine({ fenceRef, works, worksRefs, inspectionRef, personHours }: DoneAtFence): string {
  const refs = [
    ...worksRefs.map((ref) => `works ${ref}`),
    ...(inspectionRef === null ? [] : [`inspection ${inspectionRef}`]),
  ];
  const hours = personHours === null ? '' : `; ${personHours.toFixed(1)} h`;
  return `  fence ${fenceRef}: ${visitItemText({ works })} (${refs.join(', ')}${hours})`;
}

function tell({ terminal }: CliContext, options: VisitDoneOptions, uid: string, result: DoResult): void {
  if (result.kind === 'no such visit') throw new Error(`visit ${uid} went while it was entered: try again`);
  if (result.kind !== 'done') {
    throw new CliError(
      EXIT.refused,
      [`visit ${visitLine(result.visit)}:`, ...result.reasons.map((reason) => `  ${reason}`)].join('\n'),
      result.kind === 'asked'
        ? 'Nothing was stored; correct the hours, or confirm them with --sure.'
        : 'Nothing was stored. Name what was done otherwise with --did, leave out with --except what was not done, or correct what is said.',
    );
  }
  const { visit, done, returned } = result;
  if (options.json) {
    terminal.out(jsonText({ visit, done, returned }));
    return;
  }
  for (const note of done.flatMap(({ notes }) => notes)) terminal.err(`Doubtful: ${note}\n`);
  terminal.out(
    [
      `Entered: visit ${visitLine(visit)}`,
      ...done.map(doneLine),
      ...(returned.length === 0 ? [] : [`Back to the plan: ${returned.join(', ')}.`]),
      'The next sweep takes it in; to have it now: stormpale sweep',
      '',
    ].join('\n'),
  );
}

/** Enters what was done of a visit. */
export async function runVisitDone(context: CliContext, text: string, options: VisitDoneOptions): Promise<void> {
  const act = actOf(options);
  const hours = hoursOf(options.hours);
  const changed = changedOf(options.did);
  const inspections = byFence('--inspection', options.inspection);
  const { uid, result } = await withExistingRegister(configOf(context, options), async (register) => {
    const whole = await wholeUid(register, text);
    const request = {
      uid: whole,
      now: context.clock,
      day: options.day,
      only: options.only ?? null,
      except: options.except ?? [],
      hours,
      changed,
      inspections,
      sure: options.sure === true,
      ...act,
    };
    return { uid: whole, result: await doVisit(register, request) };
  });
  tell(context, options, uid, result);
}
