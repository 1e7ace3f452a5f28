import type { PageLanguage } from '../frame/page-language.ts';

/** The words of the page of one's own account. */
export interface OwnAccountWords {
  readonly title: string;
  readonly signedInAs: (name: string) => string;
  readonly roles: Readonly<Record<'office' | 'crew' | 'board', string>>;
  readonly language: string;
  readonly setLanguage: string;
  readonly password: string;
  readonly demo: string;
  readonly now: string;
  readonly another: string;
  readonly hint: string;
  readonly setPassword: string;
  readonly wrong: string;
  readonly wait: (seconds: number) => string;
  readonly changed: string;
}

/** The words of the page of one's own account, by language. */
export const OWN_ACCOUNT_WORDS: Readonly<Record<PageLanguage, OwnAccountWords>> = {
  en: {
    title: 'Your account',
    signedInAs: (name) => `You sign in as ${name}.`,
    roles: {
      office: 'You belong to the office: every page is open to you.',
      crew: 'You belong to a crew: its days and visits, what you enter there, the fences and their reasons are open to you.',
      board: 'You sit on a board: the fences of these sites are open to you, to read.',
    },
    language: 'Language of your own pages',
    setLanguage: 'Set the language',
    password: 'Change your password',
    demo: 'You look around the demo: this account has no password.',
    now: 'Password until now',
    another: 'New password',
    hint: 'At least 12 characters. Length is all that counts: a few words in a row are good.',
    setPassword: 'Change it',
    wrong: 'That is not your password until now. Nothing was changed.',
    wait: (seconds) => `Too many tries. Wait ${seconds} seconds. Nothing was changed.`,
    changed: 'Your password is changed. Wherever else you were signed in, you no longer are.',
  },
  es: {
    title: 'Su cuenta',
    signedInAs: (name) => `Usted inicia sesión como ${name}.`,
    roles: {
      office: 'Usted es de la oficina: todas las páginas le están abiertas.',
      crew: 'Usted es de una cuadrilla: puede ver sus días y visitas, anotar en ellas, y ver las cercas y sus razones.',
      board: 'Usted es de una junta: puede ver las cercas de estos sitios, solo para leer.',
    },
    language: 'Idioma de sus páginas',
    setLanguage: 'Cambiar el idioma',
    password: 'Cambiar su contraseña',
    demo: 'Está recorriendo la demostración: esta cuenta no tiene contraseña.',
    now: 'Contraseña hasta ahora',
    another: 'Contraseña nueva',
    hint: 'Al menos 12 caracteres. Solo cuenta el largo: unas palabras seguidas sirven.',
    setPassword: 'Cambiarla',
    wrong: 'Esa no es su contraseña hasta ahora. No se cambió nada.',
    wait: (seconds) => `Demasiados intentos. Espere ${seconds} segundos. No se cambió nada.`,
    changed: 'Su contraseña está cambiada. Donde más tuviera la sesión abierta, ya no la tiene.',
  },
};
