import { describe, expect, it } from 'vitest';
import { regionSeason } from '../../src/season/region-season.ts';

const SUMMER = { opens: '06-01', closes: '11-30', share: 0.9 };
const WINTER = { opens: '10-01', closes: '03-31', share: 0.9 };

describe('where the storm season of a region stands', () => {
  it('counts the days to its opening before it', () => {
    expect(regionSeason(SUMMER, '2027-05-31')).toEqual({
      kind: 'ahead',
      nextOpening: '2027-06-01',
      daysToOpening: 1,
    });
    expect(regionSeason(SUMMER, '2026-12-01')).toMatchObject({ kind: 'ahead', daysToOpening: 182 });
  });

  it('counts the days it still runs, the first and the last among them', () => {
    expect(regionSeason(SUMMER, '2027-06-01')).toMatchObject({ kind: 'runs', closesOn: '2027-11-30', daysLeft: 183 });
    expect(regionSeason(SUMMER, '2027-11-30')).toMatchObject({
      kind: 'runs',
      daysLeft: 1,
      nextOpening: '2028-06-01',
    });
  });

  it('runs over the end of the year', () => {
    expect(regionSeason(WINTER, '2026-12-31')).toMatchObject({ kind: 'runs', closesOn: '2027-03-31', daysLeft: 91 });
    expect(regionSeason(WINTER, '2027-01-01')).toMatchObject({ kind: 'runs', closesOn: '2027-03-31', daysLeft: 90 });
    expect(regionSeason(WINTER, '2027-04-01')).toMatchObject({ kind: 'ahead', nextOpening: '2027-10-01' });
  });

  it('is none where the whole year counts', () => {
    expect(regionSeason({ opens: '01-01', closes: '12-31', share: 1 }, '2027-06-01')).toEqual({ kind: 'all year' });
  });
});
