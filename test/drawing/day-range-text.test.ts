import { describe, expect, it } from 'vitest';
import { dayRangeText } from '../../src/drawing/day-range-text.ts';

describe('a range of days', () => {
  it.each([
    ['2001-05-03', '2001-05-03', '2001-05-03'],
    ['2001-05-01', '2001-05-31', 'May 2001'],
    ['2004-02-01', '2004-02-29', 'February 2004'],
    ['2013-01-01', '2013-12-31', '2013'],
    ['2008-01-01', '2012-12-31', '2008 to 2012'],
    ['2003-02-01', '2003-02-27', 'between 2003-02-01 and 2003-02-27'],
    ['2001-05-01', '2001-06-30', 'between 2001-05-01 and 2001-06-30'],
  ])('from %s to %s reads %s', (earliest, latest, words) => {
    expect(dayRangeText(earliest, latest)).toBe(words);
  });
});
