import { describe, expect, it } from 'vitest';
import { RECORDED, reasonStep } from '../../src/forecast/reason-step.ts';

const stepOf = (value: number | string, unit: string) =>
  reasonStep(
    { basis: 'code', group: 'wind' },
    { symbol: 'x', quantity: 'a length', value, unit, equation: 'y' },
    RECORDED,
  );

describe('a step of the reasons', () => {
  it('keeps what it is given, and says where it comes from', () => {
    expect(stepOf(0.1 + 0.2, '-')).toEqual({
      basis: 'code',
      group: 'wind',
      symbol: 'x',
      quantity: 'a length',
      value: 0.1 + 0.2,
      unit: '-',
      us: null,
      equation: 'y',
      source: 'the register',
      tag: 'recorded',
    });
  });

  it.each([
    ['mm', 50.8, 'in', 2],
    ['mm/a', 2.54, 'in/a', 0.1],
    ['m', 0.9144, 'ft', 3],
    ['mm2', 1290.32, 'in2', 2],
    ['mm3', 32774.128, 'in3', 2],
    ['m/s', 44.704, 'mph', 100],
    // 1 psi = 4.4482216152605 N over 645.16 mm2
    ['MPa', 4.4482216152605 / 645.16, 'psi', 1],
    ['N', 4.4482216152605, 'lbf', 1],
    ['N m', 4.4482216152605 * 0.3048 * 10, 'lbf ft', 10],
  ] as const)('gives %s in US customary units as well', (unit, value, usUnit, us) => {
    const step = stepOf(value, unit);
    expect(step.us?.unit).toBe(usUnit);
    expect(step.us?.value).toBeCloseTo(us, 9);
    expect(step.value).toBe(value);
  });

  it('gives no second unit to a text or to a unit that has none', () => {
    expect(stepOf('none', 'm/s').us).toBeNull();
    expect(stepOf(3, 'deg').us).toBeNull();
  });
});
