import type { Visit, VisitItem, VisitState, VisitWorks } from '../season/visit/visit.ts';
import type { VisitReminder } from '../season/visit/visit-reminders.ts';
import { postNumbersText, worksName } from './what-if-words.ts';

const posts = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'post' : 'posts'} ${postNumbersText(numbers)}`;

/** One kind of works with its posts: `post swap, posts 2–4`; of added posts how many. */
function visitWorksText({ kind, posts: numbers, postCount }: VisitWorks): string {
  if (kind === 'drainage' || kind === 'rebuild') return worksName(kind);
  if (kind === 'added-posts') return `${worksName(kind)}, ${postCount} more`;
  return numbers.length === 0 ? worksName(kind) : `${worksName(kind)}, ${posts(numbers)}`;
}

/** What is done at one fence: `post swap, posts 2–4 + groundline treatment, posts 1, 5–16`. */
export const visitItemText = ({ works }: Pick<VisitItem, 'works'>): string => works.map(visitWorksText).join(' + ');

/** The kinds of works of a visit, each once. */
const visitKindsText = ({ items }: Pick<Visit, 'items'>): string =>
  [...new Set(items.flatMap(({ works }) => works.map(({ kind }) => worksName(kind))))].join(', ');

const counted = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;

const STATE_HEADS: Readonly<Record<VisitState, string>> = {
  proposed: 'Proposed: ',
  confirmed: '',
  done: 'Done: ',
  missed: 'Missed: ',
  cancelled: 'Cancelled: ',
};

/** A visit in one line, as a calendar shows it: where it stands, the site, what is done, at how many fences. */
export const visitSummary = (visit: Pick<Visit, 'state' | 'items'>, siteName: string): string =>
  `${STATE_HEADS[visit.state]}${siteName} – ${visitKindsText(visit)}, ${counted(visit.items.length, 'fence')}`;

/** A reminder as a sentence. */
export function reminderSentence(reminder: VisitReminder): string {
  const where = `at ${reminder.fenceRefs.join(', ')}`;
  const what = reminder.works.map(worksName).join(', ');
  switch (reminder.kind) {
    case 'locate':
      return `Dig only where buried lines are marked (${what} ${where}): 811 is to be called by ${reminder.askBy}, ${counted(reminder.noticeDays, 'day')} before. No marks, no digging.`;
    case 'permit':
      return `A permit may be needed for ${what} ${where}: ask the office for it.`;
    case 'licensed-applicator':
      return `Only a licensed applicator does the ${what} ${where}, where the law says so.`;
    case 'frozen-ground':
      return `The ground may be frozen: then no ${what} ${where}.`;
  }
}
