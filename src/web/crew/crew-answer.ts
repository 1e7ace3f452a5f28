import type { VisitRefusal } from '../../service/crew-visit.ts';
import type { EntryOutcome } from '../../service/enter-once.ts';
import type { PhotoRefusal } from '../../service/enter-visit-photo.ts';
import type { ReadingRefusal } from '../../service/enter-visit-reading.ts';
import type { FinishRefusal } from '../../service/finish-visit.ts';
import type { PageContext } from '../access/visitor.ts';
import { fieldOfColumn } from './crew-form.ts';
import type { CrewWords } from './crew-words.ts';

/** Why an entry was not taken, in the crew's words. */
export interface NotTaken {
  readonly status: 403 | 404 | 409 | 413 | 422;
  readonly reasons: readonly string[];
  /** True where it is taken once it is confirmed. */
  readonly question: boolean;
}

/** A refusal with one reason and nothing to confirm. */
export const notTaken = (status: NotTaken['status'], reason: string): NotTaken => ({
  status,
  reasons: [reason],
  question: false,
});

function visitRefusal(refused: VisitRefusal, { refusal }: CrewWords): NotTaken {
  switch (refused.kind) {
    case 'no such visit':
      return notTaken(404, refusal.noVisit);
    case 'another crew':
      return notTaken(403, refusal.anotherCrew);
    case 'off':
      return notTaken(409, refusal.off);
    case 'fence not on it':
      return notTaken(409, refusal.fenceNotOnIt);
  }
}

/** Why something about a visit was not taken. */
export function whyNotTaken(refused: ReadingRefusal | FinishRefusal | PhotoRefusal, words: CrewWords): NotTaken {
  switch (refused.kind) {
    case 'faults': {
      const reasons = refused.faults.map(({ column, reason, question }) => {
        if (question && column !== '' && /groundline|depth|width|circumference|sound_to|soft_to/.test(column)) {
          return words.almostNothing;
        }
        const field = fieldOfColumn(column);
        const said = words.reason(reason);
        return field === null ? `${said}.` : `${words.field[field]}: ${said}.`;
      });
      return {
        status: 422,
        reasons: [...new Set(reasons)],
        question: refused.faults.every(({ question }) => question),
      };
    }
    case 'not inspected':
      return notTaken(422, words.notInspected(refused.fenceRefs.join(', ')));
    case 'refused':
    case 'asked':
      return {
        status: 422,
        reasons: refused.reasons.map((reason) => `${words.reason(reason)}.`),
        question: refused.kind === 'asked',
      };
    case 'unreadable':
      return notTaken(422, refused.field === 'posts' ? words.badPosts(refused.text) : words.badHours(refused.text));
    case 'no picture':
      return notTaken(422, words.refusal.noPicture);
    case 'too large':
      return notTaken(413, words.refusal.tooLarge);
    case 'no such visit':
    case 'another crew':
    case 'off':
    case 'fence not on it':
      return visitRefusal(refused, words);
  }
}

/** True where the page's script asks, and not a form that a browser sends. */
export const isByScript = (context: PageContext): boolean =>
  (context.req.header('accept') ?? '').includes('application/json');

/** What an entry came to: stored, or why not. */
export function takenOrNot<A>(
  outcome: EntryOutcome<A, ReadingRefusal | FinishRefusal | PhotoRefusal>,
  words: CrewWords,
): { readonly answer: A; readonly again: boolean } | NotTaken {
  switch (outcome.kind) {
    case 'stored':
      return { answer: outcome.answer, again: outcome.again };
    case 'other content':
      return notTaken(409, words.refusal.otherContent);
    case 'refused':
      return whyNotTaken(outcome.refused, words);
  }
}

/** Tells the page's script what an entry came to. */
export function tellScript<A>(
  context: PageContext,
  taken: { readonly answer: A; readonly again: boolean } | NotTaken,
): Response {
  if ('answer' in taken) return context.json({ stored: true, again: taken.again, answer: taken.answer });
  return context.json({ stored: false, reasons: taken.reasons, question: taken.question }, taken.status);
}
