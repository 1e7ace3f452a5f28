import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import type { PageLanguage } from '../frame/page-language.ts';

type Counts = Readonly<Record<FenceStanding, number>>;

/** Words of the page on which a board begins. */
export interface BoardWords {
  readonly title: string;
  readonly lead: (total: number, unswept: number, counts: Counts) => string;
  readonly none: string;
  readonly next: (season: string, refs: readonly string[]) => string;
  readonly sites: string;
  readonly sitesCaption: string;
  readonly columns: readonly string[];
  readonly fences: string;
  readonly never: string;
  readonly plan: (site: string) => string;
  readonly years: string;
  readonly show: string;
  readonly yearsTable: string;
  readonly fencesTable: string;
  readonly ground: string;
  readonly documents: string;
  readonly documentsNote: string;
  readonly planDocument: (site: string) => string;
  readonly csvYears: (site: string) => string;
  readonly csvFences: (site: string) => string;
  readonly more: string;
  readonly noPlan: (why: string) => string;
  readonly workedOut: string;
  readonly readOnly: string;
  readonly page: string;
  readonly pdf: string;
  readonly csv: string;
}

const shortOf = (counts: Counts): number => counts.short + counts['short from new'];

/** The words of the page on which a board begins, by language. */
export const BOARD_WORDS: Readonly<Record<PageLanguage, BoardWords>> = {
  en: {
    title: 'Our fences',
    lead: (total, unswept, counts) => {
      const short = shortOf(counts);
      const known = total - unswept;
      const later = unswept === 0 ? '' : ` ${unswept === 1 ? 'One is' : `${unswept} are`} not computed yet.`;
      if (known === 0) return `You have ${total === 1 ? 'one fence' : `${total} fences`}.${later}`;
      const now =
        short === 0
          ? `${known === 1 ? 'Your fence holds' : `All ${known} fences hold`} the gust of ${known === 1 ? 'its' : 'their'} place now`
          : `${short} of ${known} fences ${short === 1 ? 'does' : 'do'} not hold the gust that ${short === 1 ? 'its' : 'their'} place asks for, at the line or at the ends`;
      const soon =
        counts.closing === 0
          ? 'none is close to it'
          : `${counts.closing} more ${counts.closing === 1 ? 'is' : 'are'} close to it`;
      return `${now}; ${soon}.${later}`;
    },
    none: 'No fences are assigned to your account yet. The fence office does that.',
    next: (season, refs) => `Next to go short, in season ${season}: ${refs.join(', ')}.`,
    sites: 'By site',
    sitesCaption: 'How the fences of each site stand against their design gust, at the line or at the ends',
    columns: ['Site', 'Fences', 'Clear', 'Closing', 'Short', 'Not computed', 'Next goes short in season'],
    fences: 'Every fence, one by one',
    never: 'not within 30',
    plan: (site) => `Plan and money: ${site}`,
    years: 'Years to plan',
    show: 'Show',
    yearsTable: 'Money per year as a table',
    fencesTable: 'Fence by fence',
    ground: 'What the plan rests on',
    documents: 'For your meeting',
    documentsNote: 'To print, or to send round.',
    planDocument: (site) => `Replacement plan of ${site}`,
    csvYears: (site) => `Money per year of ${site}, for a spreadsheet`,
    csvFences: (site) => `Fence by fence of ${site}, for a spreadsheet`,
    more: 'Reports and evidence files of single fences',
    noPlan: (why) => `There is no plan: ${why}.`,
    workedOut: 'The plan is being worked out. This page loads again by itself in a few seconds.',
    readOnly: 'You read here; the fence office changes what is wrong.',
    page: 'Page',
    pdf: 'PDF',
    csv: 'CSV',
  },
  es: {
    title: 'Nuestras cercas',
    lead: (total, unswept, counts) => {
      const short = shortOf(counts);
      const known = total - unswept;
      const later =
        unswept === 0
          ? ''
          : ` ${unswept === 1 ? 'Una todavía no está calculada.' : `${unswept} todavía no están calculadas.`}`;
      if (known === 0) return `Ustedes tienen ${total === 1 ? 'una cerca' : `${total} cercas`}.${later}`;
      const now =
        short === 0
          ? known === 1
            ? 'Su cerca aguanta la ráfaga que pide su lugar'
            : `Las ${known} cercas aguantan la ráfaga que pide su lugar`
          : `${short} de ${known} cercas no ${short === 1 ? 'aguanta' : 'aguantan'} la ráfaga que pide su lugar, en la línea o en los extremos`;
      const soon =
        counts.closing === 0
          ? 'ninguna está cerca del límite'
          : `${counts.closing} más ${counts.closing === 1 ? 'está' : 'están'} cerca del límite`;
      return `${now}; ${soon}.${later}`;
    },
    none: 'Su cuenta todavía no tiene cercas. La oficina de cercas las asigna.',
    next: (season, refs) => `Las próximas en dejar de aguantar, en la temporada ${season}: ${refs.join(', ')}.`,
    sites: 'Por sitio',
    sitesCaption: 'Cómo están las cercas de cada sitio frente a su ráfaga de diseño, en la línea o en los extremos',
    columns: [
      'Sitio',
      'Cercas',
      'Con margen',
      'Cerca del límite',
      'Insuficientes',
      'Sin calcular',
      'La próxima deja de aguantar en',
    ],
    fences: 'Todas las cercas, una por una',
    never: 'no en 30',
    plan: (site) => `Plan y dinero: ${site}`,
    years: 'Años del plan',
    show: 'Ver',
    yearsTable: 'Dinero por año, como tabla',
    fencesTable: 'Cerca por cerca',
    ground: 'En qué se basa el plan',
    documents: 'Para su reunión',
    documentsNote: 'Para imprimir o para repartir.',
    planDocument: (site) => `Plan de reemplazo de ${site}`,
    csvYears: (site) => `Dinero por año de ${site}, para una hoja de cálculo`,
    csvFences: (site) => `Cerca por cerca de ${site}, para una hoja de cálculo`,
    more: 'Informes y constancias de cada cerca',
    noPlan: (why) => `No hay plan: ${why}.`,
    workedOut: 'El plan se está calculando. Esta página se carga de nuevo sola en unos segundos.',
    readOnly: 'Aquí se lee; la oficina de cercas corrige lo que esté mal.',
    page: 'Página',
    pdf: 'PDF',
    csv: 'CSV',
  },
};
