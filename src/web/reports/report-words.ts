import type { PageLanguage } from '../frame/page-language.ts';

/** Words of the pages around reports. */
export interface ReportPageWords {
  readonly documents: string;
  readonly lead: Readonly<Record<'office' | 'crew' | 'board', string>>;
  readonly search: string;
  readonly find: string;
  readonly nothingFound: (text: string) => string;
  readonly fences: string;
  readonly fencesNote: string;
  readonly allOfFence: string;
  readonly noFence: (ref: string) => string;
  readonly show: string;
  readonly pagesOf: (what: string) => string;
  readonly pageOf: (page: number, pages: number) => string;
  readonly toPage: (page: number) => string;
  readonly fenceReport: string;
  readonly fenceReportNote: string;
  readonly evidence: string;
  readonly evidenceNote: string;
  readonly evidenceOn: string;
  readonly quote: string;
  readonly quoteNote: string;
  readonly plans: string;
  readonly planNote: string;
  readonly owners: string;
  readonly letters: string;
  readonly lettersNote: string;
  readonly noLetters: string;
  readonly sheets: string;
  readonly sheetsNote: string;
  readonly noSheets: string;
  readonly page: string;
  readonly pdf: string;
  readonly back: string;
  readonly otherLanguage: string;
  readonly asOf: string;
  readonly asOfHint: string;
}

/** The words of the pages around reports, by language. */
export const REPORT_PAGE_WORDS: Readonly<Record<PageLanguage, ReportPageWords>> = {
  en: {
    documents: 'Documents',
    lead: {
      office: 'What can be read, printed and handed on, each as a page and as a PDF.',
      crew: 'The report of any fence, and your day sheets, each as a page and as a PDF.',
      board: 'What can be read and printed for your meeting, each as a page and as a PDF.',
    },
    search: 'Fence, site or owner',
    find: 'Find documents',
    nothingFound: (text) => `Nothing here has “${text}” in its name or ref.`,
    fences: 'Fences',
    fencesNote: 'Look for a ref, a site or an owner; capitals and small letters are the same.',
    allOfFence: 'All its documents',
    show: 'Show it',
    pagesOf: (what) => `Pages of ${what.toLowerCase()}`,
    pageOf: (page, pages) => `Page ${page} of ${pages}`,
    toPage: (page) => `Page ${page}`,
    noFence: (ref) => `There is no fence ${ref} here. Refs are compared letter by letter, capitals too.`,
    fenceReport: 'Fence report',
    fenceReportNote: 'What it holds, season by season, and on what that rests.',
    evidence: 'Evidence file',
    evidenceNote: 'For whoever insures it: what it holds on which basis, inspections, works, notices.',
    evidenceOn: 'Evidence file of a day that is past',
    quote: 'Quote',
    quoteNote: 'Choose the works; the quote is made of your prices.',
    plans: 'Replacement plans',
    planNote: 'Money per year, and what to set aside.',
    owners: 'Replacement plans of owners',
    letters: 'Letters',
    lettersNote: 'As they were written. The outbox keeps every one of them.',
    noLetters: 'There are no letters.',
    sheets: 'Day sheets',
    sheetsNote: 'The days ahead on which a crew has visits.',
    noSheets: 'No visits are planned.',
    page: 'Page',
    pdf: 'PDF',
    back: 'All documents',
    otherLanguage: 'En español',
    asOf: 'As believed on',
    asOfHint: 'Write a day as 2025-06-30; empty for today.',
  },
  es: {
    documents: 'Documentos',
    lead: {
      office: 'Lo que se puede leer, imprimir y entregar, como página y como PDF.',
      crew: 'El informe de cualquier cerca y sus hojas del día, como página y como PDF.',
      board: 'Lo que se puede leer e imprimir para su reunión, como página y como PDF.',
    },
    search: 'Cerca, sitio o dueño',
    find: 'Buscar documentos',
    nothingFound: (text) => `Nada aquí tiene «${text}» en su nombre o clave.`,
    fences: 'Cercas',
    fencesNote: 'Busque una clave, un sitio o un dueño; da igual con mayúsculas o minúsculas.',
    allOfFence: 'Todos sus documentos',
    show: 'Verla',
    pagesOf: (what) => `Páginas de ${what.toLowerCase()}`,
    pageOf: (page, pages) => `Página ${page} de ${pages}`,
    toPage: (page) => `Página ${page}`,
    noFence: (ref) => `Aquí no hay ninguna cerca ${ref}. Las claves se comparan letra por letra, con mayúsculas.`,
    fenceReport: 'Informe de la cerca',
    fenceReportNote: 'Qué aguanta, temporada por temporada, y en qué se basa.',
    evidence: 'Constancia para el seguro',
    evidenceNote: 'Qué aguanta y sobre qué base, inspecciones, trabajos, avisos.',
    evidenceOn: 'Constancia de un día pasado',
    quote: 'Cotización',
    quoteNote: 'Elija los trabajos; se hace con sus precios.',
    plans: 'Planes de reemplazo',
    planNote: 'Dinero por año y cuánto apartar.',
    owners: 'Planes de reemplazo de dueños',
    letters: 'Cartas',
    lettersNote: 'Tal como se escribieron. La bandeja de salida las guarda todas.',
    noLetters: 'No hay cartas.',
    sheets: 'Hojas del día',
    sheetsNote: 'Los próximos días en que una cuadrilla tiene visitas.',
    noSheets: 'No hay visitas planeadas.',
    page: 'Página',
    pdf: 'PDF',
    back: 'Todos los documentos',
    otherLanguage: 'In English',
    asOf: 'Según lo que se cree el',
    asOfHint: 'Escriba un día como 2025-06-30; vacío para hoy.',
  },
};
