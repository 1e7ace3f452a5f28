import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inDayOrder } from '../../../src/season/visit/day-order.ts';

const stop = (uid: string, startsAt: string | null, latitude: number | null) => ({
  visit: { uid, startsAt },
  place: latitude === null ? null : { latitude, longitude: -90 },
});
const uids = (...args: Parameters<typeof inDayOrder>): readonly string[] => inDayOrder(...args).map(({ uid }) => uid);

describe('the order of a day', () => {
  const base = { latitude: 30, longitude: -90 };

  it('goes to the nearest next where no time is agreed', () => {
    expect(uids([stop('far', null, 31), stop('near', null, 30.1), stop('middle', null, 30.5)], base)).toEqual([
      'near',
      'middle',
      'far',
    ]);
  });

  it('keeps agreed times first and goes on from the last of them', () => {
    const visits = [
      stop('near base', null, 30.1),
      stop('noon', '12:00', 32),
      stop('early', '08:00', 31),
      stop('north', null, 31.9),
    ];
    expect(uids(visits, base)).toEqual(['early', 'noon', 'north', 'near base']);
  });

  it('goes by uid where nothing is known of where anything is', () => {
    expect(uids([stop('b', null, null), stop('a', null, null)], null)).toEqual(['a', 'b']);
  });

  it('makes every visit once, in the same order however they come', () => {
    const visit = fc.record({
      startsAt: fc.option(fc.constantFrom('08:00', '10:30'), { nil: null }),
      latitude: fc.option(fc.double({ min: 29, max: 31, noNaN: true }), { nil: null }),
    });
    fc.assert(
      fc.property(fc.array(visit, { maxLength: 8 }), fc.boolean(), (made, reversed) => {
        const visits = made.map(({ startsAt, latitude }, index) => stop(`v${index}`, startsAt, latitude));
        const order = uids(visits, base);
        expect([...order].sort()).toEqual(visits.map(({ visit: { uid } }) => uid).sort());
        expect(uids(reversed ? visits.toReversed() : visits, base)).toEqual(order);
      }),
    );
  });
});
