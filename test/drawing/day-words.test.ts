import { describe, expect, it } from 'vitest';
import { countWords, dayWords, hoursWords, listWords, numberWords, sentenceCase } from '../../src/drawing/day-words.ts';

describe('words of days, counts and hours', () => {
  it('name the year of a day only where it is another than today’s', () => {
    expect(dayWords('2027-06-01', '2027-01-05')).toBe('June 1');
    expect(dayWords('2027-06-01', '2026-12-31')).toBe('June 1, 2027');
  });

  it('count one, several and none', () => {
    expect([countWords(1, 'fence'), countWords(0, 'fence'), countWords(1234567, 'fence')]).toEqual([
      '1 fence',
      'no fences',
      '1,234,567 fences',
    ]);
    expect(countWords(2, 'visit is', 'visits are')).toBe('2 visits are');
    expect(numberWords(999)).toBe('999');
  });

  it('list names and write hours', () => {
    expect([listWords([]), listWords(['a']), listWords(['a', 'b']), listWords(['a', 'b', 'c'])]).toEqual([
      '',
      'a',
      'a and b',
      'a, b and c',
    ]);
    expect([hoursWords(0), hoursWords(0.25), hoursWords(9.96), hoursWords(12.4), hoursWords(1200)]).toEqual([
      '0',
      '0.3',
      '10',
      '12',
      '1,200',
    ]);
    expect(sentenceCase('no fences')).toBe('No fences');
  });
});
