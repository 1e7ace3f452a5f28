import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sharedWidths } from '../../../src/service/report/shared-widths.ts';

const wish = fc.record({
  weight: fc.double({ min: 0.1, max: 5, noNaN: true }),
  least: fc.double({ min: 0, max: 200, noNaN: true }),
});

describe('widths of columns', () => {
  it('fill the room, and none is under its least where there is room for all', () => {
    fc.assert(
      fc.property(
        fc.array(wish, { minLength: 1, maxLength: 12 }),
        fc.double({ min: 50, max: 900, noNaN: true }),
        (columns, room) => {
          const widths = sharedWidths(room, columns);
          expect(widths).toHaveLength(columns.length);
          expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(room, 6);
          const needed = columns.reduce((sum, { least }) => sum + least, 0);
          for (const [index, width] of widths.entries()) {
            expect(width).toBeGreaterThanOrEqual(needed < room ? columns[index]!.least - 1e-9 : 0);
          }
        },
      ),
      { seed: 20261126 },
    );
  });

  it('go by weight where nobody needs more', () => {
    expect(
      sharedWidths(400, [
        { weight: 1, least: 10 },
        { weight: 3, least: 10 },
      ]),
    ).toEqual([100, 300]);
    expect(
      sharedWidths(400, [
        { weight: 1, least: 200 },
        { weight: 3, least: 10 },
      ]),
    ).toEqual([200, 200]);
  });
});
