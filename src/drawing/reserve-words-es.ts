import type { ReservePlan } from '../season/money/reserve-plan.ts';
import { wholeText } from './reserve-fences.ts';
import type { ReserveNaming, ReserveWords } from './reserve-naming.ts';

const PAYERS = { association: 'la asociación', lot: 'el dueño del lote', office: 'la oficina' } as const;

const DEPENDENCE = {
  independent: 'cada cerca por su cuenta',
  together: 'todas las cercas temprano o todas tarde a la vez',
} as const;

/** What a plan is, in Spanish: as `RESERVE_PLAN_LABEL`. */
const RESERVE_PLAN_LABEL_ES = 'una ayuda para planear, no un estudio de reservas exigido por ley';

/** What is paid in: `61,200 USD de una vez y 9,300 USD cada año`. */
function contributionEs({ contribution }: ReservePlan, currency: string): string {
  const { firstYear, course, atOnce } = contribution;
  const amount = `${wholeText(firstYear)} ${currency}`;
  const yearly = course === 'flat' ? `${amount} cada año` : `${amount} el primer año, subiendo con los precios`;
  return atOnce === 0 ? yearly : `${wholeText(atOnce)} ${currency} de una vez y ${yearly}`;
}

function waitingEs({ waiting }: ReservePlan, currency: string): string {
  const amount = `${wholeText(Math.abs(waiting.total))} ${currency}`;
  if (waiting.total === 0) return 'Aplazar un año todos los reemplazos previstos no cambia nada.';
  return `Aplazar un año todos los reemplazos previstos ${waiting.total > 0 ? 'cuesta' : 'ahorra'} ${amount} en dinero de hoy, contando las roturas de ese año.`;
}

/** The words of a reserve plan's picture in Spanish. */
export function reserveWordsEs(plan: ReservePlan, { currency, payerName }: ReserveNaming): ReserveWords {
  const [first, last] = [plan.years[0], plan.years.at(-1)];
  const under = plan.years.filter(({ lowest }) => lowest < plan.floor).map(({ year }) => year);
  const floor = `${wholeText(plan.floor)} ${currency}`;
  const kept = under.length === 0 ? `Nunca baja de ${floor}.` : `Baja de ${floor} en ${under.join(', ')}.`;
  return {
    title: `Plan de reservas ${first?.year ?? ''} a ${last?.year ?? ''}, a cargo de ${payerName ?? PAYERS[plan.payer]}`,
    summary: `Se aportan ${contributionEs(plan, currency)}; el fondo termina ${last?.year ?? ''} con ${last ? wholeText(last.closing) : ''} ${currency}. ${kept}`,
    keys: {
      spending: `gasto esperado en el año, en ${currency} de ese año; raya vertical: ocho años de cada diez (percentiles 10 a 90)`,
      fund: `fondo al final del año, con aportes de ${contributionEs(plan, currency)}; franja: si el gasto hasta entonces resulta alto o bajo`,
      floor: `mínimo ${floor}`,
    },
    notes: [
      `Franjas: cuándo se reemplaza cada cerca, ${DEPENDENCE[plan.dependence]}; los precios y el interés se dan por ciertos.`,
      waitingEs(plan, currency),
      `Esto es ${RESERVE_PLAN_LABEL_ES}.`,
    ],
  };
}
