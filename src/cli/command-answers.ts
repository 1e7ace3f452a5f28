import { newestDayWishes } from '../register/day-wish-store.ts';
import { listMessageLinks } from '../register/message-link-store.ts';
import { listOwnerAnswers, settleOwnerAnswer } from '../register/owner-answer-store.ts';
import { answerSentence, markSentence } from '../service/answer-sentence.ts';
import { isoUtc } from '../service/clock.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { jsonText } from './terminal.ts';

/** Marks that are listed, the newest. */
const MOST_MARKS = 1_000;

/** Options of `answers`. */
export interface AnswersOptions extends GlobalOptions {
  /** Only what the office has still to do something about. */
  readonly open?: boolean;
  /** Number of a call that was made. */
  readonly called?: number;
  readonly by?: string;
  readonly json?: boolean;
}

/** Notes that an owner who wanted a call was called. */
async function noteCalled(context: CliContext, id: number, options: AnswersOptions): Promise<void> {
  const settled = { at: isoUtc(context.clock()), by: options.by ?? '' };
  const done = await withExistingRegister(configOf(context, options), ({ db }) => settleOwnerAnswer(db, id, settled));
  if (!done) {
    throw new CliError(
      EXIT.notFound,
      `no call ${id} that waits`,
      '"stormpale answers --open" lists those who wait, with their numbers',
    );
  }
  if (options.json) context.terminal.out(jsonText({ id, settledAt: settled.at, settledBy: settled.by }));
  else context.terminal.out(`Call ${id} is noted as made.\n`);
}

/** Lists what owners answered by their links, the newest first; with `--called`, notes a call as made. */
export async function runAnswers(context: CliContext, options: AnswersOptions): Promise<void> {
  if (options.called !== undefined) return noteCalled(context, options.called, options);
  const { terminal } = context;
  const [answers, links, marks] = await withExistingRegister(configOf(context, options), async ({ db }) => [
    await listOwnerAnswers(db, options.open ? { open: true } : {}),
    options.json ? await listMessageLinks(db, {}) : [],
    options.open ? [] : await newestDayWishes(db, MOST_MARKS),
  ]);
  if (options.json) {
    const parsed = answers.map(({ detail, ...answer }) => ({ ...answer, detail: JSON.parse(detail) as unknown }));
    terminal.out(jsonText({ answers: parsed, links, marks }));
    return;
  }
  if (answers.length + marks.length === 0) {
    terminal.out(options.open ? 'Nobody waits for a call.\n' : 'No owner has answered yet.\n');
    return;
  }
  for (const answer of answers) {
    const waits = answer.settledAt === null ? ' WAITS' : '';
    terminal.out(
      `${answer.id}  ${answer.at.slice(0, 16).replace('T', ' ')} UTC  ${answer.ownerName ?? answer.ownerRef} (${answer.ownerRef}) ${answerSentence(answer)}.${waits}\n`,
    );
  }
  if (marks.length > 0) terminal.out('Days marked for shared visits:\n');
  for (const mark of marks) {
    terminal.out(
      `  ${mark.at.slice(0, 16).replace('T', ' ')} UTC  ${mark.ownerName ?? mark.ownerRef} (${mark.ownerRef}) ${markSentence(mark)}.\n`,
    );
  }
  if (answers.some(({ settledAt }) => settledAt === null)) {
    terminal.out('To note a call as made: stormpale answers --called NUMBER --by NAME\n');
  }
}
