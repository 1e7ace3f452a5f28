import type { Visit, VisitItem, VisitState, VisitWorks } from '../season/visit/visit.ts';
import type { VisitReminder } from '../season/visit/visit-reminders.ts';
import type { ChartLanguage } from './chart-words.ts';
import { postNumbersText, worksName, worksNameIn } from './what-if-words.ts';

function posts(numbers: readonly number[], language: ChartLanguage): string {
  const post = language === 'es' ? 'poste' : 'post';
  return `${post}${numbers.length === 1 ? '' : 's'} ${postNumbersText(numbers)}`;
}

/** One kind of works with its posts: `post swap, posts 2–4`; of added posts how many. */
function visitWorksText({ kind, posts: numbers, postCount }: VisitWorks, language: ChartLanguage): string {
  const name = worksNameIn(kind, language);
  if (kind === 'drainage' || kind === 'rebuild') return name;
  if (kind === 'added-posts') return `${name}, ${postCount} ${language === 'es' ? 'más' : 'more'}`;
  return numbers.length === 0 ? name : `${name}, ${posts(numbers, language)}`;
}

/** What is done at one fence: `post swap, posts 2–4 + groundline treatment, posts 1, 5–16`. */
export const visitItemText = ({ works }: Pick<VisitItem, 'works'>, language: ChartLanguage = 'en'): string =>
  works.map((each) => visitWorksText(each, language)).join(' + ');

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

function reminderInSpanish(reminder: VisitReminder): string {
  const where = `en ${reminder.fenceRefs.join(', ')}`;
  const what = reminder.works.map((kind) => worksNameIn(kind, 'es')).join(', ');
  switch (reminder.kind) {
    case 'locate':
      return `Cave solo donde las líneas enterradas estén marcadas (${what} ${where}): hay que llamar al 811 a más tardar el ${reminder.askBy}, ${reminder.noticeDays} ${reminder.noticeDays === 1 ? 'día' : 'días'} antes. Sin marcas no se cava.`;
    case 'permit':
      return `Puede hacer falta un permiso para ${what} ${where}: pídalo a la oficina.`;
    case 'licensed-applicator':
      return `Solo un aplicador con licencia hace esto donde la ley lo pide: ${what} ${where}.`;
    case 'frozen-ground':
      return `El suelo puede estar helado: entonces no se hace ${what} ${where}.`;
  }
}

/** A reminder as a sentence. */
export function reminderSentence(reminder: VisitReminder, language: ChartLanguage = 'en'): string {
  if (language === 'es') return reminderInSpanish(reminder);
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
