import { phraseBook } from './phrase-book.ts';

const book = phraseBook([
  ['{} has not come yet: today is {} at the site', '{} todavía no llega: hoy es {} en el sitio'],
  [
    'fence {} was not built before {}, so nothing was believed of it on {}',
    'la cerca {} no se construyó antes del {}, así que el {} no se creía nada de ella',
  ],
  ['{} owns no fence in the register', '{} no tiene ninguna cerca en el registro'],
  ['{} has no fence in the register', '{} no tiene ninguna cerca en el registro'],
  [
    'fence {}: something is recorded on {}, after {}; look ahead from {} or a later day',
    'en la cerca {} hay algo anotado el {}, después del {}; mire desde el {} o desde un día posterior',
  ],
  [
    'fence {}: post {} recorded, but the run has posts 1 to {}',
    'en la cerca {} está anotado el poste {}, pero el tramo tiene postes del 1 al {}',
  ],
  ['site {}', 'sitio {}'],
  ['owner {}', 'dueño {}'],
  ['fence {}', 'cerca {}'],
]);

/** Why a document or a plan is not to be had, in Spanish; as it stands where no phrase has it. */
export const refusalInSpanish = (reason: string): string => book(reason) ?? reason;
