import { describe, expect, it } from 'vitest';
import type { SeasonForecast } from '../../src/forecast/fence-forecast.ts';
import { presentOrNextStretch } from '../../src/forecast/stretch.ts';
import { season } from './made-up-season.ts';

const SEASONS = [2027, 2028, 2029, 2030, 2031, 2032].map((year) => season(year));
/** True in the seasons of the given years. */
const inYears =
  (...years: readonly number[]) =>
  ({ label }: SeasonForecast): boolean =>
    years.includes(Number(label));

describe('the stretch in which something is so', () => {
  it('began in the first of the seasons in a row that reach season 1', () => {
    expect(presentOrNextStretch(SEASONS, inYears(2029, 2030, 2031), false)).toEqual({ label: '2029', present: true });
    expect(presentOrNextStretch(SEASONS, inYears(2030), false)).toEqual({ label: '2030', present: true });
  });

  it('does not reach back over a season in which it was mended', () => {
    expect(presentOrNextStretch(SEASONS, inYears(2027, 2029, 2030), true)).toEqual({ label: '2029', present: true });
  });

  it('is as old as the fence where it was so when built and ever since', () => {
    expect(presentOrNextStretch(SEASONS, inYears(2027, 2028, 2029, 2030), true)).toEqual({
      label: 'new',
      present: true,
    });
  });

  it('began in the first season where it was not yet so when built', () => {
    expect(presentOrNextStretch(SEASONS, inYears(2027, 2028, 2029, 2030), false)).toEqual({
      label: '2027',
      present: true,
    });
  });

  it('lies ahead where it is not so in season 1, whatever was before', () => {
    expect(presentOrNextStretch(SEASONS, inYears(2028, 2029, 2032), true)).toEqual({ label: '2032', present: false });
    expect(presentOrNextStretch(SEASONS, inYears(2031, 2032), false)).toEqual({ label: '2031', present: false });
  });

  it('is none where it is so in no season from season 1 on', () => {
    expect(presentOrNextStretch(SEASONS, inYears(2027, 2028, 2029), true)).toBeNull();
  });
});
