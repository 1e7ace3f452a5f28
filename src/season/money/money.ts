declare const minorUnits: unique symbol;

/**
 * An amount of money in whole minor units (cents) of the register's one currency, which has a hundred of them to the unit.
 * Only the functions here make one, so that no fraction of a cent ever enters a sum.
 */
export type Money = number & { readonly [minorUnits]: true };

/** Minor units in one unit of the currency. */
const MINOR_PER_UNIT = 100;

/** So many cents as money. Throws RangeError where the number is not whole or too large to be held exactly. */
export function cents(count: number): Money {
  if (!Number.isSafeInteger(count))
    throw new RangeError(`money: ${count} cents is not a whole number that can be held exactly; round it first`);
  return (count + 0) as Money;
}

export const NO_MONEY: Money = cents(0);

/** A decimal number, as it is written in its shortest form: `digits` over ten to the power `scale`. */
interface Decimal {
  readonly digits: bigint;
  readonly scale: number;
}

function decimalOf(value: number): Decimal {
  if (!Number.isFinite(value)) throw new RangeError(`money: ${value} is not a number to reckon with`);
  const [mantissa = '0', exponent = '0'] = String(value).split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  const scale = fraction.length - Number(exponent);
  const digits = BigInt(whole + fraction);
  return scale >= 0 ? { digits, scale } : { digits: digits * 10n ** BigInt(-scale), scale: 0 };
}

/** A whole number divided by a positive one, halves away from zero. */
function roundedQuotient(dividend: bigint, divisor: bigint): bigint {
  const size = dividend < 0n ? -dividend : dividend;
  const rounded = (2n * size + divisor) / (2n * divisor);
  return dividend < 0n ? -rounded : rounded;
}

/** A decimal amount of the currency as money, halves of a cent away from zero: 1.005 is 101 cents. */
export function moneyFromAmount(amount: number): Money {
  const { digits, scale } = decimalOf(amount);
  return cents(Number(roundedQuotient(digits * BigInt(MINOR_PER_UNIT), 10n ** BigInt(scale))));
}

/** Money as a decimal amount of the currency, for reckoning that is not book-keeping. */
export const amountOf = (money: Money): number => money / MINOR_PER_UNIT;

/**
 * Money times a decimal factor (a quantity, a rate of interest), rounded once to the cent, halves away from zero. The factor is
 * taken as it is written, so 3 x 0.1 hours at 10.00 is never a cent off.
 */
export function moneyTimes(money: Money, factor: number): Money {
  const { digits, scale } = decimalOf(factor);
  return cents(Number(roundedQuotient(BigInt(money) * digits, 10n ** BigInt(scale))));
}

/** So many per cent of an amount, rounded to the cent, halves away from zero. */
export function percentOf(money: Money, percent: number): Money {
  const { digits, scale } = decimalOf(percent);
  return cents(Number(roundedQuotient(BigInt(money) * digits, 100n * 10n ** BigInt(scale))));
}

/** The sum of amounts, exact to the cent. */
export const sumMoney = (amounts: readonly Money[]): Money => cents(amounts.reduce((sum, amount) => sum + amount, 0));

export const minusMoney = (from: Money, taken: Money): Money => cents(from - taken);

/** Money for a machine: `1234.50`, `-0.05`. */
export function moneyCell(money: Money): string {
  const size = Math.abs(money);
  const fraction = String(size % MINOR_PER_UNIT).padStart(2, '0');
  return `${money < 0 ? '-' : ''}${Math.floor(size / MINOR_PER_UNIT)}.${fraction}`;
}

/** Money for a reader: `1,234.50`, `-0.05`. */
export const moneyText = (money: Money): string => moneyCell(money).replace(/\B(?=(?:\d{3})+\.)/g, ',');
