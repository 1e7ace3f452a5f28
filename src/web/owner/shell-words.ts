import type { OwnerScope } from '../../service/owner-links.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** The pages of an owner that the line above each of them leads to. */
export type OwnerPlace = 'fences' | 'money' | 'documents' | 'visits' | 'quotes' | 'call' | 'preferences';

/** Where each page lies under the owner's, and what a link must be good for to open it. */
export const OWNER_PLACES: readonly {
  readonly place: OwnerPlace;
  readonly path: string;
  readonly scope: OwnerScope;
}[] = [
  { place: 'fences', path: '', scope: 'see' },
  { place: 'visits', path: '/visits', scope: 'book' },
  { place: 'quotes', path: '/quotes', scope: 'accept' },
  { place: 'money', path: '/money', scope: 'see' },
  { place: 'documents', path: '/documents', scope: 'see' },
  { place: 'call', path: '/call', scope: 'call' },
  { place: 'preferences', path: '/preferences', scope: 'preferences' },
];

interface OwnerShellWords {
  readonly pages: string;
  readonly places: Readonly<Record<OwnerPlace, string>>;
  readonly linkNote: (until: string) => string;
}

/** The words around every page behind an owner's link, by language. */
export const OWNER_SHELL_WORDS: Readonly<Record<PageLanguage, OwnerShellWords>> = {
  en: {
    pages: 'Your pages',
    places: {
      fences: 'Your fences',
      visits: 'Visits',
      quotes: 'Quotes',
      money: 'Plan and money',
      documents: 'Documents',
      call: 'Ask for a call',
      preferences: 'What we write about',
    },
    linkNote: (until) =>
      `Whoever has this link sees these pages and can answer on them: pass it on only to people who may. It opens until ${until}; the office can end it before.`,
  },
  es: {
    pages: 'Sus páginas',
    places: {
      fences: 'Sus cercas',
      visits: 'Visitas',
      quotes: 'Presupuestos',
      money: 'Plan y dinero',
      documents: 'Documentos',
      call: 'Pedir una llamada',
      preferences: 'De qué le escribimos',
    },
    linkNote: (until) =>
      `Quien tenga este enlace ve estas páginas y puede responder en ellas: páselo solo a quien pueda hacerlo. Se abre hasta el ${until}; la oficina puede anularlo antes.`,
  },
};
