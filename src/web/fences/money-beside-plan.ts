import type { ChartLanguage } from '../../drawing/chart-words.ts';

/** Why a season plan or a notice may say something else than the advice to replace a fence now. */
export interface MoneyBesidePlan {
  /** The price is null where it is not shown, the day where there is no visit yet. */
  readonly mends: (works: string, price: string | null, day: string | null) => string;
  readonly leftOut: (plan: number) => string;
  readonly notKnown: string;
}

/** The words of it, by language. */
export const MONEY_BESIDE_PLAN: Readonly<Record<ChartLanguage, MoneyBesidePlan>> = {
  en: {
    mends: (works, price, day) =>
      `The season plan suggests ${works}${price === null ? '' : ` at ${price}`}${day === null ? '' : `, on ${day}`}. It goes by what may break in the coming season, as notices do; in the long run replacing the fence costs least. If it is replaced before ${day === null ? 'the season opens, leave the mend out' : 'that visit, call the visit off'}; else follow the plan.`,
    leftOut: (plan) =>
      `Season plan ${plan} does nothing there. It asks whether works take away more loss in the next 30 years than they cost; the advice here asks when to replace a fence that has to be replaced some day in any case. A notice goes by what may break in the coming season: if the fence is not replaced before that opens, do what the notice says.`,
    notKnown:
      'A season plan or a notice goes by what may break in the coming season, and may suggest to mend posts; in the long run replacing the fence costs least. If it is replaced before the season opens, leave the mend out.',
  },
  es: {
    mends: (works, price, day) =>
      `El plan de la temporada propone ${works}${price === null ? '' : ` por ${price}`}${day === null ? '' : `, el ${day}`}. Mira lo que puede romperse en la próxima temporada, igual que los avisos; a la larga reemplazar la cerca cuesta menos. Si se reemplaza antes de ${day === null ? 'que abra la temporada, no haga el arreglo' : 'esa visita, cancele la visita'}; si no, siga el plan.`,
    leftOut: (plan) =>
      `El plan de temporada ${plan} no le hace nada. Pregunta si un trabajo quita en los próximos 30 años más pérdida de lo que cuesta; el consejo de aquí pregunta cuándo reemplazar una cerca que algún día hay que reemplazar de todos modos. Un aviso mira lo que puede romperse en la próxima temporada: si la cerca no se reemplaza antes de que abra, haga lo que dice el aviso.`,
    notKnown:
      'Un plan de temporada o un aviso mira lo que puede romperse en la próxima temporada, y puede proponer arreglar postes; a la larga reemplazar la cerca cuesta menos. Si se reemplaza antes de que abra la temporada, no haga el arreglo.',
  },
};
