import { describe, expect, it } from 'vitest';
import type { LabelRequest } from '../../src/drawing/label-placement.ts';
import { placeLabels } from '../../src/drawing/label-placement.ts';

const ground = { bounds: { left: 0, top: 0, right: 200, bottom: 100 }, lines: [], uprights: [], taken: [] };
const label = (text: string, places: readonly (readonly [number, number])[]): LabelRequest => ({
  text,
  sizePx: 12,
  weight: 400,
  className: 'any',
  fill: '#000000',
  candidates: places.map(([x, y], index) => ({ x, y, anchor: 'start', cost: index })),
});

describe('placing labels', () => {
  it('lets the first label have its place and moves the second to its next', () => {
    const placed = placeLabels(
      [
        label('first', [[10, 20]]),
        label('second', [
          [12, 22],
          [10, 60],
        ]),
      ],
      ground,
    );
    expect(placed.map(({ text, y }) => [text, y])).toEqual([
      ['first', 20],
      ['second', 60],
    ]);
  });

  it('leaves a label out rather than writing over another or out of bounds', () => {
    const placed = placeLabels(
      [
        label('first', [[10, 20]]),
        label('second', [
          [12, 22],
          [190, 60],
        ]),
      ],
      ground,
    );
    expect(placed.map(({ text }) => text)).toEqual(['first']);
  });

  it('prefers a place off a line, and drops a dispensable label that would cross one', () => {
    const lines = [
      [
        { x: 0, y: 18 },
        { x: 200, y: 18 },
      ],
    ];
    expect(
      placeLabels(
        [
          label('word', [
            [10, 20],
            [10, 60],
          ]),
        ],
        { ...ground, lines },
      )[0]?.y,
    ).toBe(60);
    expect(placeLabels([label('word', [[10, 20]])], { ...ground, lines })).toHaveLength(1);
    expect(placeLabels([{ ...label('word', [[10, 20]]), dispensable: true }], { ...ground, lines })).toHaveLength(0);
  });
});
