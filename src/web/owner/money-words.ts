import { MEAN_BESIDE_RANGE } from '../../drawing/mean-beside-range.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** One way of paying in: at once (null: nothing) and every year, and what that comes to. */
interface WayOfPaying {
  readonly atOnce: string | null;
  readonly yearly: string;
  readonly inAll: string;
}

/** The two ways of paying in. */
interface WaysOfPaying {
  readonly expected: WayOfPaying;
  readonly nineInTen: WayOfPaying;
  /** True where the second asks less at once and more every year. */
  readonly lessAtOnce: boolean;
  readonly lastYear: number;
}

const wayEn = ({ atOnce, yearly, inAll }: WayOfPaying): string =>
  `${atOnce === null ? '' : `${atOnce} now and `}${yearly} every year, ${inAll} in all`;

const wayEs = ({ atOnce, yearly, inAll }: WayOfPaying): string =>
  `${atOnce === null ? '' : `${atOnce} ahora y `}${yearly} cada año, ${inAll} en total`;

interface MoneyWords {
  readonly title: string;
  readonly none: string;
  readonly workedOut: string;
  readonly lead: (fences: number, spending: string, first: number, last: number) => string;
  readonly setAside: (ways: WaysOfPaying) => string;
  readonly label: string;
  readonly unseen: (refs: string) => string;
  readonly byYear: string;
  readonly inCurrency: (currency: string) => string;
  readonly year: string;
  readonly repairs: string;
  readonly replacing: string;
  readonly together: string;
  readonly range: string;
  /** Why the mean may stand outside the range. */
  readonly rangeNote: string;
  readonly byFence: string;
  readonly fence: string;
  readonly site: string;
  readonly replace: string;
  readonly outworn: string;
  /** What the season plan does at a fence that is to be replaced now. */
  readonly meanwhile: (works: string, day: string, state: 'proposed' | 'confirmed') => string;
  readonly whenShort: string;
  readonly short: string;
  readonly notShort: string;
  readonly now: string;
  readonly price: string;
  readonly shared: (other: string, percent: number) => string;
  readonly notes: string;
}

/** The words of the page of an owner's plan and money, by language. */
export const MONEY_WORDS: Readonly<Record<PageLanguage, MoneyWords>> = {
  en: {
    title: 'Plan and money',
    none: 'There is no fence of yours to plan for now.',
    workedOut: 'Your plan is being worked out. This page loads again by itself in a few seconds.',
    lead: (fences, spending, first, last) =>
      `From ${first} to ${last} we expect ${fences === 1 ? 'your fence' : `your ${fences} fences`} to cost about ${spending} in repairs, care and replacement.`,
    setAside: ({ expected, nineInTen, lessAtOnce, lastYear }) =>
      `There are two ways of paying this in by ${lastYear}. To cover what is expected: ${wayEn(expected)}. To have enough in nine courses of ten: ${wayEn(nineInTen)}.${lessAtOnce ? ' The second asks less now because it asks more every year, the first included.' : ''}`,
    label:
      'This is a planning aid, not a statutory reserve study. Prices are those of the office’s catalogue, not a quote.',
    unseen: (refs) => `Not in the plan, because something is missing on record: ${refs}.`,
    byYear: 'Year by year',
    inCurrency: (currency) => `Expected spending in ${currency} of each year`,
    year: 'Year',
    repairs: 'Repairs and care',
    replacing: 'Replacement',
    together: 'Together',
    range: 'Eight years in ten',
    rangeNote: MEAN_BESIDE_RANGE.en,
    byFence: 'Fence by fence',
    fence: 'Fence',
    site: 'Site',
    replace: 'Cheapest to replace in',
    outworn: 'now: rails and boards are worn out',
    meanwhile: (works, day, state) =>
      `The season plan gives it ${works} on ${day}${state === 'proposed' ? ' (proposed)' : ''} all the same, because a post may break before it is rebuilt. If you have it rebuilt before then, tell us and that visit falls away.`,
    whenShort: 'before it goes short',
    short: 'Goes short in season',
    notShort: 'not within 30',
    now: 'now',
    price: 'Rebuilding it today',
    shared: (other, percent) => `shared with ${other}; ${percent} % of it counts here`,
    notes:
      'Prices rise 3 % a year and savings earn 2 %; a fence is replaced when that costs least in the long run, at 25 years at the latest, and inspected every five years. The office can plan it otherwise.',
  },
  es: {
    title: 'Plan y dinero',
    none: 'Ahora no hay ninguna cerca suya que planear.',
    workedOut: 'Su plan se está calculando. Esta página se carga otra vez sola en unos segundos.',
    lead: (fences, spending, first, last) =>
      `De ${first} a ${last} calculamos que ${fences === 1 ? 'su cerca costará' : `sus ${fences} cercas costarán`} unos ${spending} en reparación, cuidado y reemplazo.`,
    setAside: ({ expected, nineInTen, lessAtOnce, lastYear }) =>
      `Hay dos maneras de aportarlo hasta ${lastYear}. Para cubrir lo previsto: ${wayEs(expected)}. Para que alcance en nueve casos de diez: ${wayEs(nineInTen)}.${lessAtOnce ? ' La segunda pide menos ahora porque pide más cada año, desde el primero.' : ''}`,
    label:
      'Es una ayuda para planear, no un estudio de reservas exigido por ley. Los precios son los del catálogo de la oficina, no un presupuesto.',
    unseen: (refs) => `Fuera del plan, porque falta algo en el registro: ${refs}.`,
    byYear: 'Año por año',
    inCurrency: (currency) => `Gasto previsto en ${currency} de cada año`,
    year: 'Año',
    repairs: 'Reparación y cuidado',
    replacing: 'Reemplazo',
    together: 'En total',
    range: 'Ocho años de cada diez',
    rangeNote: MEAN_BESIDE_RANGE.es,
    byFence: 'Cerca por cerca',
    fence: 'Cerca',
    site: 'Sitio',
    replace: 'Más barato reemplazarla en',
    outworn: 'ya: travesaños y tablas están gastados',
    meanwhile: (works, day, state) =>
      `El plan de la temporada le hace ${works} el ${day}${state === 'proposed' ? ' (propuesto)' : ''} de todos modos, porque un poste puede romperse antes de que se reconstruya. Si la reconstruye antes, díganoslo y esa visita se cancela.`,
    whenShort: 'antes de que sea insuficiente',
    short: 'Insuficiente en la temporada',
    notShort: 'no en 30',
    now: 'ya',
    price: 'Reconstruirla hoy',
    shared: (other, percent) => `compartida con ${other}; aquí cuenta el ${percent} %`,
    notes:
      'Los precios suben un 3 % al año y lo ahorrado rinde un 2 %; una cerca se reemplaza cuando a la larga cuesta menos, a los 25 años como mucho, y se revisa cada cinco años. La oficina puede planearlo de otro modo.',
  },
};
