/** What a cell says, or why it cannot be taken. */
export type Parsed<T> = { readonly value: T } | { readonly reason: string };

const PLAIN = /^-?(\d+(\.\d+)?|\.\d+)$/;
const THOUSANDS = /^-?\d{1,3}(,\d{3})+(\.\d+)?$|^-?\d{1,3}([ '\u00A0\u202F]\d{3})+(\.\d+)?$/;
const DECIMAL_COMMA = /^-?\d+,\d+$/;
const POWER_OF_TEN = /^-?\d+(\.\d+)?[eE][+-]?\d+$/;
const WITH_UNIT = /^-?(\d+(\.\d+)?|\.\d+)\s*(["'\u2032\u2033%]|\u00B0?[A-Za-z][A-Za-z/0-9\u00B2\u00B3]*)$/;

/** Reads a number written in plain digits; every other way of writing one is refused with what to write instead. */
export function parseNumber(text: string): Parsed<number> {
  if (PLAIN.test(text)) return { value: Number(text) };
  if (THOUSANDS.test(text)) {
    return { reason: `thousands are separated; write the digits only, as ${text.replace(/[^\d.-]/g, '')}` };
  }
  if (DECIMAL_COMMA.test(text)) return { reason: `a decimal comma; write a point, as ${text.replace(',', '.')}` };
  if (POWER_OF_TEN.test(text)) {
    const value = Number(text);
    if (!Number.isFinite(value))
      return { reason: 'a number too large to be meant; write the digits with a decimal point' };
    if (value === 0) return { reason: 'a number too small to be meant; write the digits with a decimal point, or 0' };
    return {
      reason: `written in powers of ten, as spreadsheets do; write the digits, as ${plainDecimal(value)}`,
    };
  }
  if (WITH_UNIT.test(text)) {
    return { reason: "a unit is written in the cell; write the number only, the unit is in the column's name" };
  }
  return { reason: 'not a number; write digits with a decimal point, as 5.5' };
}

/** The shortest plain decimal that reads back as the same number: no powers of ten. */
export function plainDecimal(value: number): string {
  const shortest = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(shortest);
  if (!match) return shortest;
  const [, sign = '', first = '', rest = '', power] = match;
  const exponent = Number(power);
  const digits = first + rest;
  if (exponent < 0) return `${sign}0.${'0'.repeat(-exponent - 1)}${digits}`;
  return `${sign}${digits.padEnd(exponent + 1, '0')}`;
}
