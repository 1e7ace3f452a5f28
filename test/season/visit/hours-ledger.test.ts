import { describe, expect, it } from 'vitest';
import { hoursLedger } from '../../../src/season/visit/hours-ledger.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const MEMBER = { ref: 'm', hoursPerWeek: 40, skills: [], languages: [], fromDay: null, toDay: null };
const CREWS = [
  {
    ref: 'north',
    times: {
      members: [MEMBER],
      daysOff: [{ memberRef: null, firstDay: '2027-01-18', lastDay: '2027-01-22' }],
      weatherReserve: 0.25,
    },
  },
  { ref: 'south', times: { members: [MEMBER], daysOff: [], weatherReserve: 0 } },
];
const item = (personHours: number) => ({ ...madeUpVisit({ uid: 'x' }).items[0]!, personHours });
const visit = (uid: string, day: string, parts: Parameters<typeof madeUpVisit>[0] | object = {}) =>
  madeUpVisit({ uid, firstDay: day, lastDay: day, travelPersonHours: 1, items: [item(4)], ...parts });
const ledger = (visits: readonly ReturnType<typeof madeUpVisit>[], today = '2027-01-04') =>
  hoursLedger({
    crews: CREWS,
    weeks: ['2027-01-04', '2027-01-11', '2027-01-18'],
    visits,
    today,
    hoursOn: (crewRef) => (crewRef === 'north' ? 6 : 8),
  });

describe('the ledger of hours left', () => {
  it('takes days off, the weather reserve and the visits with their ways from what there is', () => {
    const [first, second, third] = ledger([
      visit('A', '2027-01-05', { state: 'confirmed' }),
      visit('B', '2027-01-12'),
      visit('C', '2027-01-13', { crewRef: 'south', items: [item(7)] }),
    ]);
    expect(first?.cells[0]).toEqual({ crewRef: 'north', thereAre: 30, confirmed: 5, proposed: 0, left: 25 });
    expect(second?.cells.map(({ proposed, left }) => [proposed, left])).toEqual([
      [5, 25],
      [8, 32],
    ]);
    expect(third?.cells.map(({ thereAre, left }) => [thereAre, left])).toEqual([
      [0, 0],
      [40, 40],
    ]);
  });

  it('counts of the week that runs what is left of it, and no visit whose days are gone', () => {
    const [first] = ledger([visit('A', '2027-01-05', { state: 'confirmed' }), visit('B', '2027-01-08')], '2027-01-07');
    expect(first?.cells[0]).toMatchObject({ thereAre: 12, confirmed: 0, proposed: 5, left: 7 });
  });

  it('is negative where more stands than there are hours', () => {
    const [, , third] = ledger([visit('A', '2027-01-20')]);
    expect(third?.cells[0]).toMatchObject({ thereAre: 0, left: -5 });
  });
});
