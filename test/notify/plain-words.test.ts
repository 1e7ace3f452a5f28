import { describe, expect, it } from 'vitest';
import { dayInWords, likelihoodInWords, oneLine } from '../../src/notify/plain-words.ts';

describe('plain words', () => {
  it('write days out in both languages', () => {
    expect(dayInWords('2027-06-01', 'en')).toBe('June 1, 2027');
    expect(dayInWords('2027-12-31', 'es')).toBe('31 de diciembre de 2027');
  });

  it.each([
    [0.95, 'very likely (95 %)'],
    [0.9, 'very likely (90 %)'],
    [0.7, 'likely (70 %)'],
    [0.5, 'more likely than not (50 %)'],
    [0.4, 'less likely than not, but not far from even (40 %)'],
    [0.2, 'unlikely (20 %)'],
    [0.01, 'very unlikely (1 %)'],
  ])('say how likely %d is before the number', (probability, words) => {
    expect(likelihoodInWords(probability, 'en')).toBe(words);
  });

  it('put a text on one line', () => {
    expect(oneLine('Ann\r\nBcc: all@example.org\u2028x\t')).toBe('Ann Bcc: all@example.org x');
  });
});
