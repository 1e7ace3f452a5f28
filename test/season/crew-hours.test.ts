import { describe, expect, it } from 'vitest';
import { type CrewTimes, membersOn, personHoursInWeek, personHoursOn } from '../../src/season/crew-hours.ts';

const member = (ref: string, hoursPerWeek: number, days: { fromDay?: string; toDay?: string } = {}) => ({
  ref,
  hoursPerWeek,
  skills: [],
  languages: [],
  fromDay: days.fromDay ?? null,
  toDay: days.toDay ?? null,
});
const MONDAY = '2027-03-01';
const crew: CrewTimes = { members: [member('a', 40), member('b', 30)], daysOff: [], weatherReserve: 0 };

describe('hours of a crew', () => {
  it('are the hours of all its people over a week', () => {
    expect(personHoursInWeek(crew, MONDAY)).toBeCloseTo(70, 9);
  });

  it('lack what is kept for weather', () => {
    expect(personHoursInWeek({ ...crew, weatherReserve: 0.2 }, MONDAY)).toBeCloseTo(56, 9);
  });

  it('lack a fifth of the week for each day off, of one or of all, the first and last day included', () => {
    const one = { memberRef: 'b', firstDay: '2027-03-02', lastDay: '2027-03-03' };
    expect(personHoursInWeek({ ...crew, daysOff: [one] }, MONDAY)).toBeCloseTo(70 - 12, 9);
    const all = { memberRef: null, firstDay: '2027-03-05', lastDay: '2027-03-09' };
    expect(personHoursInWeek({ ...crew, daysOff: [all] }, MONDAY)).toBeCloseTo(56, 9);
    expect(personHoursInWeek({ ...crew, daysOff: [all] }, '2027-03-08')).toBeCloseTo(42, 9);
  });

  it('count a day off only once where two records have it', () => {
    const all = { memberRef: null, firstDay: '2027-03-02', lastDay: '2027-03-02' };
    const one = { memberRef: 'a', firstDay: '2027-03-02', lastDay: '2027-03-02' };
    expect(personHoursInWeek({ ...crew, daysOff: [all, one] }, MONDAY)).toBeCloseTo(56, 9);
  });

  it('begin and end with the days of each in the crew', () => {
    const joins = { ...crew, members: [member('a', 40, { fromDay: '2027-03-03' })] };
    expect(personHoursInWeek(joins, MONDAY)).toBeCloseTo(24, 9);
    const leaves = { ...crew, members: [member('a', 40, { toDay: '2027-03-01' })] };
    expect(personHoursInWeek(leaves, MONDAY)).toBeCloseTo(8, 9);
    expect(membersOn(leaves, '2027-03-02')).toEqual([]);
  });

  it('lack the days of the week that are gone', () => {
    expect(personHoursInWeek(crew, MONDAY, '2027-03-04')).toBeCloseTo(28, 9);
    expect(personHoursOn(crew, '2027-03-04')).toBeCloseTo(14, 9);
  });
});
