import { expect, it } from 'vitest';
import {
  type NominalSection,
  nominalSection,
  postBreadthMm,
  postDiagonalMm,
  shortestSideMm,
} from '../../src/capacity/post-section.ts';

const sides = (name: NominalSection): readonly [number, number] => {
  const section = nominalSection(name);
  if (section.kind !== 'rectangular') throw new Error('sawn posts are rectangular');
  return [section.widthMm, section.depthMm];
};

it('dresses a nominal 4x4 to 3.5 in and keeps the order of a 4x6', () => {
  for (const side of sides('4x4')) expect(side).toBeCloseTo(88.9, 10);
  expect(sides('4x6')).toEqual([...sides('6x4')].reverse());
  expect(sides('4x6')[1]).toBeCloseTo(139.7, 10);
});

it('measures across a post: 4.95 in over the corners of a 4x4, the diameter of a round', () => {
  expect(postDiagonalMm(nominalSection('4x4')) / 25.4).toBeCloseTo(4.95, 2);
  expect(postDiagonalMm({ kind: 'round', diameterMm: 110 })).toBe(110);
  expect(postBreadthMm(nominalSection('6x4'))).toBeCloseTo(139.7, 10);
  expect(postBreadthMm({ kind: 'round', diameterMm: 110 })).toBe(110);
});

it('measures the narrowest of a post: the shorter side whichever way it faces, the diameter of a round', () => {
  expect(shortestSideMm(nominalSection('4x6'))).toBeCloseTo(88.9, 10);
  expect(shortestSideMm(nominalSection('6x4'))).toBeCloseTo(88.9, 10);
  expect(shortestSideMm({ kind: 'round', diameterMm: 110 })).toBe(110);
});
