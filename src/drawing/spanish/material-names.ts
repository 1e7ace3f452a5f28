import type { ChartLanguage } from '../chart-words.ts';
import { phraseBook } from './phrase-book.ts';

const book = phraseBook([
  ['treated post, {} ft', 'poste tratado, {} ft'],
  ['concrete mix, {} lb', 'mezcla de concreto, {} lb'],
  ['preservative paste', 'pasta preservante'],
  ['groundline wrap', 'venda a ras de suelo'],
  ['full-height post liner', 'forro de poste, altura completa'],
  ['drain pipe, {} ft', 'tubo de drenaje, {} ft'],
  ['drain gravel, {} lb', 'grava de drenaje, {} lb'],
  ['trimmer guard', 'protector contra la desbrozadora'],
  ['brackets and screws, set', 'escuadras y tornillos, juego'],
  ['steel sleeve', 'funda de acero'],
  ['rail, 2x4, {} ft', 'travesaño, 2x4, {} ft'],
  ['board, {} ft', 'tabla, {} ft'],
  ['screws and nails, set', 'tornillos y clavos, juego'],
]);

/** The same in a list of what to take, where its unit stands before it: `4 sets` of `brackets and screws`. */
export function loadedMaterialIn(name: string, unit: string, language: ChartLanguage): string {
  const named = materialNameIn(name, language);
  return unit === 'set' ? named.replace(/, (?:set|juego)$/, '') : named;
}

/** What a material of the catalogue that ships with the program is called; one of the office's own as the office wrote it. */
export const materialNameIn = (name: string, language: ChartLanguage): string =>
  language === 'es' ? (book(name) ?? name) : name;
