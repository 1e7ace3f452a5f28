import fc from 'fast-check';
import { expect, it } from 'vitest';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../src/units/temperature.ts';

it('freezes water at 32 degF and boils it at 212', () => {
  expect(celsiusFromFahrenheit(32)).toBe(0);
  expect(fahrenheitFromCelsius(100)).toBe(212);
  expect(celsiusFromFahrenheit(-40)).toBe(-40);
});

it('comes back to the same temperature', () => {
  fc.assert(
    fc.property(fc.double({ min: -100, max: 200, noNaN: true }), (temperature) => {
      expect(celsiusFromFahrenheit(fahrenheitFromCelsius(temperature))).toBeCloseTo(temperature, 10);
    }),
  );
});
