import { expect, it } from 'vitest';
import { closingDay, isMonthDay, seasonLabel, seasonOneYear, YEAR_ROUND } from '../../src/forecast/season-calendar.ts';

it('a season of one day closes on the day it opens', () => {
  const window = { opens: '06-01', closes: '06-01', share: 0.1 };
  expect(closingDay(window, 2027)).toBe('2027-06-01');
  expect(seasonLabel(window, 2027)).toBe('2027');
  expect(seasonOneYear(window, '2027-06-01')).toBe(2027);
  expect(seasonOneYear(window, '2027-06-02')).toBe(2028);
});

it('a year without a storm season is one season with the whole hazard', () => {
  expect(YEAR_ROUND).toEqual({ opens: '01-01', closes: '12-31', share: 1 });
  expect(seasonLabel(YEAR_ROUND, 2027)).toBe('2027');
});

it('takes as month and day two digits each with a hyphen between, and nothing about them', () => {
  expect(['01-01', '12-31', '04-30'].map(isMonthDay)).toEqual([true, true, true]);
  for (const text of ['', '0401', '04/30', '04-31', '00-10', '004-30', '04-300', ' 04-30', '04-30 ', '2001-04-30']) {
    expect(isMonthDay(text), text).toBe(false);
  }
});

it('labels a wrapping season that opens in the first years of a century with two digits', () => {
  expect(seasonLabel({ opens: '10-01', closes: '03-31', share: 0.8 }, 2108)).toBe('2108/09');
});
