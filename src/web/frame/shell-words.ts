/** The words of the frame of a page. */
export interface ShellWords {
  readonly skip: string;
  readonly pages: string;
  readonly pagesHere: string;
  readonly signOut: string;
  readonly pleaseNote: string;
  readonly toFences: string;
}

/** The words of the frame, by language. */
export const SHELL_WORDS: Readonly<Record<'en' | 'es', ShellWords>> = {
  en: {
    skip: 'Skip to the content',
    pages: 'Pages',
    pagesHere: 'Pages under this one',
    signOut: 'Sign out',
    pleaseNote: 'Please note',
    toFences: 'Go to the list of fences',
  },
  es: {
    skip: 'Ir al contenido',
    pages: 'Páginas',
    pagesHere: 'Páginas de esta sección',
    signOut: 'Cerrar sesión',
    pleaseNote: 'Tenga en cuenta',
    toFences: 'Ir a la lista de cercas',
  },
};
