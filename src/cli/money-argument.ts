import { InvalidArgumentError } from 'commander';
import { type Money, moneyFromAmount } from '../season/money/money.ts';

const AMOUNT = /^-?(\d+|\d{1,3}(,\d{3})+)([.]\d{1,2})?$/;
const NUMBER = /^-?\d+([.]\d+)?$/;
const MOST = 1e12;

/** An amount of money as people write it: `60000`, `60,000.50`; below nothing only where that is allowed. */
export const amountArgument =
  (least: 'any' | 'from 0') =>
  (text: string): Money => {
    const amount = AMOUNT.test(text.trim()) ? Number(text.trim().replaceAll(',', '')) : Number.NaN;
    if (Math.abs(amount) <= MOST && (least === 'any' || amount >= 0)) return moneyFromAmount(amount);
    throw new InvalidArgumentError(
      `write an amount${least === 'any' ? '' : ' from 0'} with a point before its cents, such as 60000 or 60000.50.`,
    );
  };

/** A number within bounds: `3`, `2.5`. */
export const numberArgument =
  (from: number, to: number, what: 'number' | 'whole number') =>
  (text: string): number => {
    const value = NUMBER.test(text.trim()) ? Number(text.trim()) : Number.NaN;
    if (value >= from && value <= to && (what === 'number' || Number.isInteger(value))) return value;
    throw new InvalidArgumentError(`write a ${what} from ${from} to ${to}.`);
  };

/** Code of a currency: `USD`. */
export function currencyArgument(text: string): string {
  if (/^[A-Za-z]{3}$/.test(text)) return text.toUpperCase();
  throw new InvalidArgumentError('write the three letters of a currency, such as USD.');
}

const STRETCH = /^(\d{1,4})(?:-(\d{1,4}))?$/;
const MOST_POSTS = 2000;

/** Numbers of posts: `3,4,7` or `3-5,7`; each once, ascending. */
export function postsArgument(text: string): readonly number[] {
  const numbers = text.split(/[\s,]+/).flatMap((part) => {
    const [, from, to = from] = STRETCH.exec(part) ?? [];
    const count = Number(to) - Number(from) + 1;
    if (!(Number(from) >= 1 && count >= 1 && count <= MOST_POSTS))
      throw new InvalidArgumentError('write numbers of posts parted by commas, such as 3,4,7 or 3-5,7.');
    return Array.from({ length: count }, (_, index) => Number(from) + index);
  });
  return [...new Set(numbers)].sort((a, b) => a - b);
}
