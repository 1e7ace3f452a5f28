import type { ReservePlan } from '../season/money/reserve-plan.ts';
import { wholeText } from './reserve-fences.ts';
import type { ReserveNaming, ReserveWords } from './reserve-naming.ts';
import { reserveWordsEs } from './reserve-words-es.ts';

const PAYERS = {
  association: 'the association',
  lot: 'the lot owner',
  office: 'the office',
} as const;

const DEPENDENCE = {
  independent: 'each fence by itself',
  together: 'all fences early or all late together',
} as const;

/** What is paid in, as words: `61,200 USD at once, and 9,300 USD every year`. */
function contributionWords({ contribution }: ReservePlan, currency: string): string {
  const { firstYear, course, atOnce } = contribution;
  const amount = `${wholeText(firstYear)} ${currency}`;
  const yearly = course === 'flat' ? `${amount} every year` : `${amount} in the first year, rising with prices`;
  return atOnce === 0 ? yearly : `${wholeText(atOnce)} ${currency} at once, and ${yearly}`;
}

function waitingWords({ waiting }: ReservePlan, currency: string): string {
  const amount = `${wholeText(Math.abs(waiting.total))} ${currency}`;
  if (waiting.total === 0) return 'Putting every planned replacement off by a year changes nothing.';
  return `Putting every planned replacement off by a year ${waiting.total > 0 ? 'costs' : 'saves'} ${amount} in today's money, failures in that year counted.`;
}

/** The words of a reserve plan's picture, for page and terminal alike. */
export function reserveWords(plan: ReservePlan, naming: ReserveNaming): ReserveWords {
  if (naming.language === 'es') return reserveWordsEs(plan, naming);
  const { currency, payerName } = naming;
  const [first, last] = [plan.years[0], plan.years.at(-1)];
  const span = `${first?.year ?? ''} to ${last?.year ?? ''}`;
  const title = `Reserve plan ${span}, paid by ${payerName ?? PAYERS[plan.payer]}`;
  const under = plan.years.filter(({ lowest }) => lowest < plan.floor).map(({ year }) => year);
  const floor = `${wholeText(plan.floor)} ${currency}`;
  const kept =
    under.length === 0 ? `It never stands below ${floor}.` : `It stands below ${floor} in ${under.join(', ')}.`;
  return {
    title,
    summary: `${contributionWords(plan, currency)} is paid in; the fund ends ${last?.year ?? ''} with ${last ? wholeText(last.closing) : ''} ${currency}. ${kept}`,
    keys: {
      spending: `spending expected in the year, ${currency} of that year; upright: eight years in ten (10th to 90th percentile)`,
      fund: `fund at the end of the year, paid in: ${contributionWords(plan, currency)}; band: if spending so far goes high or low`,
      floor: `floor ${floor}`,
    },
    notes: [
      `Bands: when each fence is replaced, ${DEPENDENCE[plan.dependence]}; prices and interest are taken as given.`,
      waitingWords(plan, currency),
      `This is ${plan.label}.`,
    ],
  };
}
