import { PASSWORD_LENGTHS, type PasswordFault } from './account-rules.ts';

const REASONS: Readonly<Record<'en' | 'es', Readonly<Record<PasswordFault, string>>>> = {
  en: {
    short: `too short: write at least ${PASSWORD_LENGTHS.fewest} characters; a few words in a row are fine`,
    long: `too long: ${PASSWORD_LENGTHS.most} characters are the most`,
    'holds name': 'it holds the name that it belongs to: choose another',
    'one letter': 'it is one letter over and over: choose another',
  },
  es: {
    short: `demasiado corta: escriba al menos ${PASSWORD_LENGTHS.fewest} caracteres; unas palabras seguidas sirven`,
    long: `demasiado larga: ${PASSWORD_LENGTHS.most} caracteres como máximo`,
    'holds name': 'contiene el nombre al que pertenece: elija otra',
    'one letter': 'es una misma letra repetida: elija otra',
  },
};

/** What is wrong with a password and the way out, in one language. */
export const passwordReason = (fault: PasswordFault, language: 'en' | 'es'): string => REASONS[language][fault];
