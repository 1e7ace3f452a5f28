import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseNumber, plainDecimal } from '../../../src/register/csv/number-cell.ts';

test.each([
  ['6', 6],
  ['-5.25', -5.25],
  ['.5', 0.5],
  ['007', 7],
])('%s is read as a number', (text, value) => {
  expect(parseNumber(text)).toEqual({ value });
});

test.each([
  ['1,200', 'thousands are separated; write the digits only, as 1200'],
  ['1 200.5', 'thousands are separated; write the digits only, as 1200.5'],
  ['-1,25', 'a decimal comma; write a point, as -1.25'],
  ['1.5E-2', 'written in powers of ten, as spreadsheets do; write the digits, as 0.015'],
  ['6ft', "a unit is written in the cell; write the number only, the unit is in the column's name"],
  ['72"', "a unit is written in the cell; write the number only, the unit is in the column's name"],
  ['20 °C', "a unit is written in the cell; write the number only, the unit is in the column's name"],
  ['5 1/2', 'not a number; write digits with a decimal point, as 5.5'],
  ['Infinity', 'not a number; write digits with a decimal point, as 5.5'],
  ['1.', 'not a number; write digits with a decimal point, as 5.5'],
])('%s is refused with what to write instead', (text, reason) => {
  expect(parseNumber(text)).toEqual({ reason });
});

test('any finite number survives as a plain decimal', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      const text = plainDecimal(value === 0 ? 0 : value);
      expect(text).not.toContain('e');
      expect(parseNumber(text)).toEqual({ value: value === 0 ? 0 : value });
    }),
  );
});
