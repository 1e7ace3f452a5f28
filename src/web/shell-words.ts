/** The words of the frame of a page. */
export interface ShellWords {
  readonly skip: string;
  readonly pages: string;
  readonly fences: string;
  readonly outbox: string;
  readonly caughtMail: string;
  readonly accounts: string;
  readonly signOut: string;
  readonly pleaseNote: string;
}

/** The words of the frame, by language. */
export const SHELL_WORDS: Readonly<Record<'en' | 'es', ShellWords>> = {
  en: {
    skip: 'Skip to the content',
    pages: 'Pages',
    fences: 'Fences',
    outbox: 'Outbox',
    caughtMail: 'Caught mail',
    accounts: 'Accounts',
    signOut: 'Sign out',
    pleaseNote: 'Please note',
  },
  es: {
    skip: 'Ir al contenido',
    pages: 'Páginas',
    fences: 'Cercas',
    outbox: 'Bandeja de salida',
    caughtMail: 'Correo retenido',
    accounts: 'Cuentas',
    signOut: 'Cerrar sesión',
    pleaseNote: 'Tenga en cuenta',
  },
};
