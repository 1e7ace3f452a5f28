import { describe, expect, it } from 'vitest';
import { postNumbers, typedNumber } from '../../../src/web/crew/crew-form.ts';

describe('what crews type', () => {
  it.each([
    ['2 3/8', 'en', '2.375'],
    ['2-3/8', 'en', '2.375'],
    ['3/8', 'en', '0.375'],
    [' 2.5 ', 'en', '2.5'],
    ['61,5', 'es', '61.5'],
    // what is none stays for the check to say so
    ['61,5', 'en', '61,5'],
    ['3/0', 'en', '3/0'],
    ['about 2', 'en', 'about 2'],
    ['', 'en', ''],
  ] as const)('%s in %s is %s', (typed, language, plain) => {
    expect(typedNumber(typed, language)).toBe(plain);
  });

  it.each([
    ['2, 5-8', [2, 5, 6, 7, 8]],
    ['9 3;3', [3, 9]],
    ['4–5', [4, 5]],
    ['8-5', null],
    ['all', null],
    ['0', null],
    ['', null],
    ['1-2001', null],
  ])('the posts %s are %j', (text, numbers) => {
    expect(postNumbers(text)).toEqual(numbers);
  });
});
