/**
 * When in a year its payment falls. `end-of-year`: the first payment lies a year ahead. `beginning-of-year`: the first payment
 * is made today. Spreadsheets call them type 0 and type 1.
 */
export type PaymentTiming = 'end-of-year' | 'beginning-of-year';

function growthOf(yearlyRate: number, what: string): number {
  if (!(yearlyRate > -1 && Number.isFinite(yearlyRate)))
    throw new RangeError(`${what} ${yearlyRate} a year: give a share over -1, such as 0.03 for three per cent`);
  return 1 + yearlyRate;
}

function wholeYears(years: number): number {
  if (!(Number.isInteger(years) && years >= 1)) throw new RangeError(`${years} years: give a whole number from 1`);
  return years;
}

/**
 * Present value of one payment a year, in the unit of the payments.
 * @param payments first year's first; positive or negative
 * @param yearlyRate rate of discount, over -1 [1/a]
 * Source: PV = sum of C_k / (1 + r)^k, k from 1 (`end-of-year`) or from 0 (`beginning-of-year`).
 */
export function presentValue(payments: readonly number[], yearlyRate: number, timing: PaymentTiming): number {
  const growth = growthOf(yearlyRate, 'rate of discount');
  const atStart = payments.reduceRight((later, payment) => payment + later / growth, 0);
  return timing === 'beginning-of-year' ? atStart : atStart / growth;
}

/**
 * Present value of one unit of money a year for so many years [-].
 * @param years whole years, 1 or more [a]
 * @param yearlyRate rate of interest, over -1 [1/a]
 * Source: (1 - (1 + r)^-n) / r at the end of years, times (1 + r) at their beginning; n where r is 0.
 */
export function annuityFactor(years: number, yearlyRate: number, timing: PaymentTiming): number {
  const count = wholeYears(years);
  const growth = growthOf(yearlyRate, 'rate of interest');
  // The logarithms keep small rates exact, where 1 - (1 + r)^-n would lose its figures.
  const atEnd = yearlyRate === 0 ? count : -Math.expm1(-count * Math.log1p(yearlyRate)) / yearlyRate;
  return timing === 'end-of-year' ? atEnd : atEnd * growth;
}

/** An amount that is paid or set aside evenly over years. */
export interface Spread {
  readonly years: number;
  /** Rate of interest, over -1 [1/a]. */
  readonly yearlyRate: number;
  readonly timing: PaymentTiming;
}

/** The level yearly amount whose present value is the amount given, in its unit. Source: amount over the annuity factor. */
export const levelPayment = (amount: number, { years, yearlyRate, timing }: Spread): number =>
  amount / annuityFactor(years, yearlyRate, timing);

/** The level yearly amount to set aside that has grown to the target at the end of the last year, in its unit. */
export const levelSaving = (target: number, spread: Spread): number =>
  levelPayment(target / growthOf(spread.yearlyRate, 'rate of interest') ** wholeYears(spread.years), spread);

/**
 * Rate at which money gains on prices [1/a].
 * @param interest rate of interest as the bank names it, over -1 [1/a]
 * @param inflation rise of prices, over -1 [1/a]
 * Source: Fisher's relation, (1 + interest) / (1 + inflation) - 1.
 */
export const realRate = (interest: number, inflation: number): number =>
  growthOf(interest, 'rate of interest') / growthOf(inflation, 'inflation') - 1;

/**
 * What an amount in today's money costs after so many years of inflation [-], as a factor.
 * @param inflation rise of prices, over -1 [1/a]
 * @param years from today, 0 or more [a]
 */
export const priceFactor = (inflation: number, years: number): number => growthOf(inflation, 'inflation') ** years;
