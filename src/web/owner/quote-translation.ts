import { cautionsIn } from '../../drawing/cautions.ts';
import { quotedConditions, quotedSetUp } from '../../drawing/quote-words.ts';
import { type Phrase, phraseBook } from '../../drawing/spanish/phrase-book.ts';
import type { OwnerQuote } from '../../service/owner-quotes.ts';
import { worksTextIn } from './works-words.ts';

/** Stands for the days of a condition while its words are paired. */
const SOME_DAYS = 987;
const EVERY_RULE = {
  permit: true,
  locateNoticeDays: SOME_DAYS,
  licensedApplicator: true,
  notOnFrozenGround: true,
  cureDays: SOME_DAYS,
} as const;

/** Conditions and cautions as quotes have them, each with the same in Spanish. */
function pairs(): readonly Phrase[] {
  const told = (language: 'en' | 'es'): readonly string[] => [
    ...quotedConditions(EVERY_RULE, language).map((text) => text.replace(String(SOME_DAYS), '{}')),
    ...cautionsIn(language).all,
  ];
  const spanish = told('es');
  return told('en').map((text, index): Phrase => [text, spanish[index] ?? text]);
}

const book = phraseBook(pairs());

/** A condition or caution of a quote in Spanish; null for words of the office's own, which are nobody's to translate. */
export const conditionInSpanish = (text: string): string | null => book(text);

/** What a line of a quote says in Spanish; null for one that is not of its works. */
export function lineInSpanish({ quote, parts }: Pick<OwnerQuote, 'quote' | 'parts'>, index: number): string | null {
  const part = parts[index];
  if (part) return worksTextIn(part, 'es');
  return quote.lines[index]?.unit === 'visit' ? quotedSetUp('es') : null;
}

const UNITS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  post: ['poste', 'postes'],
  visit: ['visita', 'visitas'],
};

/** A quantity with its unit in Spanish. */
export function quantityInSpanish(quantity: number, unit: string): string {
  const [one, many] = UNITS[unit] ?? [unit, unit];
  return `${quantity} ${quantity === 1 ? one : many}`;
}
