import { expect, it } from 'vitest';
import { schefferClass, schefferIndex } from '../../src/decay/scheffer-index.ts';

const year = (meanTemperatureF: number, wetDays: number) =>
  Array.from({ length: 12 }, () => ({ meanTemperatureF, wetDays }));

it('adds ten points a month at 65 degF and 13 wet days', () => {
  // (65 - 35)(13 - 3) / 30 = 10
  expect(schefferIndex(year(65, 13))).toBeCloseTo(120, 12);
});

it('counts neither frost nor drought, nor the two together', () => {
  expect(schefferIndex(year(20, 20))).toBe(0);
  expect(schefferIndex(year(80, 2))).toBe(0);
  expect(schefferIndex(year(20, 1))).toBe(0);
});

it('refuses anything but twelve months', () => {
  expect(() => schefferIndex(year(60, 10).slice(1))).toThrow(/12 months, got 11/);
  expect(() => schefferIndex([])).toThrow(RangeError);
});

it('has its classes change at 35 and 65', () => {
  expect([34.9, 35, 65, 65.1].map(schefferClass)).toEqual(['low', 'moderate', 'moderate', 'high']);
});
