import { describe, expect, it } from 'vitest';
import { hoursBefore, hoursTaken } from '../../../src/season/visit/hours-before.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const item = (personHours: number) => ({ ...madeUpVisit({ uid: 'x' }).items[0]!, personHours });
const isWeekend = (day: string): boolean => [0, 6].includes(new Date(`${day}T00:00:00Z`).getUTCDay());
// Wednesday, January 13, 2027, is the day of the opening
const TODAY = '2027-01-05';
const hoursOn = (crewRef: string, day: string): number => (isWeekend(day) ? 0 : crewRef === 'north' ? 8 : 4);
const hoursOf = (visits: readonly ReturnType<typeof madeUpVisit>[]) =>
  hoursBefore({
    crewRefs: ['north', 'south'],
    taken: hoursTaken(visits, TODAY, hoursOn),
    today: TODAY,
    opensOn: '2027-01-13',
    hoursOn,
  });

describe('the hours before an opening', () => {
  it('are those of the days before it: of the week in which it lies only Monday and Tuesday', () => {
    expect(hoursOf([])).toEqual([
      { crewRef: 'north', thereAre: 32 + 16, left: 48 },
      { crewRef: 'south', thereAre: 24, left: 24 },
    ]);
  });

  it('lose what visits take on those days, and nothing for what they take afterwards', () => {
    const spread = madeUpVisit({
      uid: 'A',
      firstDay: '2027-01-12',
      lastDay: '2027-01-13',
      travelPersonHours: 2,
      items: [item(10)],
    });
    const after = madeUpVisit({ uid: 'B', firstDay: '2027-01-14', lastDay: '2027-01-14', items: [item(5)] });
    const gone = madeUpVisit({ uid: 'C', firstDay: '2027-01-04', lastDay: '2027-01-04', items: [item(5)] });
    expect(hoursOf([spread, after, gone])[0]).toMatchObject({ thereAre: 48, left: 40 });
  });

  it('count a week with more work than hours as none, not against other weeks', () => {
    const much = madeUpVisit({ uid: 'A', firstDay: '2027-01-12', lastDay: '2027-01-12', items: [item(40)] });
    expect(hoursOf([much])[0]).toMatchObject({ left: 32 });
  });
});
