import { figureText } from '../drawing/quantity-text.ts';
import type { BudgetRange } from '../season/money/budget-range.ts';
import type { MessageLanguage } from './message-facts.ts';

const NAMES: Readonly<Record<string, Readonly<Record<MessageLanguage, string>>>> = {
  USD: { en: 'dollars', es: 'dólares' },
  CAD: { en: 'Canadian dollars', es: 'dólares canadienses' },
  MXN: { en: 'Mexican pesos', es: 'pesos mexicanos' },
  EUR: { en: 'euros', es: 'euros' },
};

/** What a currency is called in a sentence; its code where it has no name here. */
const currencyName = (code: string, language: MessageLanguage): string => NAMES[code]?.[language] ?? code;

/** A range of money in words: `about 900 to 1,400 dollars`, `unos 900 a 1,400 dólares`. */
export function rangeInWords({ low, high }: BudgetRange, currency: string, language: MessageLanguage): string {
  const name = currencyName(currency, language);
  return language === 'en'
    ? `about ${figureText(low, 6)} to ${figureText(high, 6)} ${name}`
    : `unos ${figureText(low, 6)} a ${figureText(high, 6)} ${name}`;
}

/** One amount in words, to two figures: `about 2,300 dollars`. */
export const amountInWords = (amount: number, currency: string, language: MessageLanguage): string =>
  `${language === 'en' ? 'about' : 'unos'} ${figureText(amount, 2)} ${currencyName(currency, language)}`;
