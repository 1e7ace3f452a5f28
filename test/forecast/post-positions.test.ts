import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generatePostPositions } from '../../src/forecast/post-positions.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

describe('the posts of a run', () => {
  it('stand a full bay apart from end A, what is left over being the last bay', () => {
    expect(generatePostPositions(10, 2.5)).toEqual([0, 2.5, 5, 7.5, 10]);
    expect(generatePostPositions(6, 2.5)).toEqual([0, 2.5, 5, 6]);
    expect(generatePostPositions(5.2, 2.5)).toEqual([0, 2.5, 5, 5.2]);
  });

  it('are joined to the bay before where what is left over is under a twentieth of the spacing', () => {
    expect(generatePostPositions(5.1, 2.5)).toEqual([0, 2.5, 5.1]);
  });

  it('are two on a run shorter than a bay', () => {
    expect(generatePostPositions(1.2, 2.5)).toEqual([0, 1.2]);
    expect(generatePostPositions(0.05, 2.5)).toEqual([0, 0.05]);
  });

  it('begin at 0, end with the run, ascend, and stand no further apart than a bay and a twentieth', () => {
    fc.assert(
      fc.property(drawnEvenly(0.1, 200), drawnEvenly(0.5, 4), (lengthM, spacingM) => {
        const positions = generatePostPositions(lengthM, spacingM);
        expect(positions[0]).toBe(0);
        expect(positions.at(-1)).toBe(lengthM);
        positions.slice(1).forEach((position, index) => {
          expect(position).toBeGreaterThan(positions[index]!);
          expect(position - positions[index]!).toBeLessThanOrEqual(1.0501 * spacingM);
        });
      }),
    );
  });
});
