import { expect, it } from 'vitest';
import { medianDecayRate } from '../../src/decay/decay-rate.ts';
import { TREATMENT_CLASS_KEYS } from '../../src/decay/treatment-class.ts';

const zone = (number: 1 | 5) => ({ kind: 'decay-zone', zone: number }) as const;

it('is the product of class and climate', () => {
  expect(medianDecayRate('ground-contact', zone(1))).toBeCloseTo(0.055 * 5.44 * 1.0, 12);
  expect(medianDecayRate('redcedar-redwood-heartwood', zone(5))).toBeCloseTo(1.04 * 2.4, 12);
});

it('is nothing for what does not rot', () => {
  expect(medianDecayRate('does-not-rot', zone(5))).toBe(0);
});

it('is faster in the severe zone for every class that rots', () => {
  for (const key of TREATMENT_CLASS_KEYS.filter((name) => name !== 'does-not-rot')) {
    expect(medianDecayRate(key, zone(5)), key).toBeGreaterThan(medianDecayRate(key, zone(1)));
  }
});
