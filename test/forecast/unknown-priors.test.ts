import { describe, expect, it } from 'vitest';
import { singlePoint } from '../../src/forecast/belief-points.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { groundAt, groundIsKnown } from '../../src/forecast/unknown-priors.ts';

const NOTHING = { embedmentM: null, footing: null, footingDiameterM: null };
const at = (embedment: number, diameter: number) => singlePoint({ embedment, 'footing diameter': diameter }, normalCdf);

describe('a footing that is not recorded', () => {
  it('is two feet in a nine-inch collar, spread by 0.15 and 0.12', () => {
    expect(groundAt(NOTHING, at(0, 0), 0)).toEqual({
      embedmentM: (24 * 25.4) / 1000,
      footing: 'concrete',
      diameterM: 0.2286,
    });
    const deep = groundAt(NOTHING, at(1, -2), 0);
    expect(deep.embedmentM).toBeCloseTo(0.6096 * Math.exp(0.15), 12);
    expect(deep.diameterM).toBeCloseTo(0.2286 * Math.exp(-0.24), 12);
  });

  it('gives way to what is recorded, part by part', () => {
    const part = { embedmentM: 0.9, footing: 'concrete', footingDiameterM: null } as const;
    expect(groundAt(part, at(1, 0), 0)).toEqual({ embedmentM: 0.9, footing: 'concrete', diameterM: 0.2286 });
    expect(groundAt({ ...NOTHING, footingDiameterM: 0.3 }, at(0, 1), 0).diameterM).toBe(0.3);
  });

  it('has no diameter where the post is set without concrete', () => {
    const soil = { embedmentM: 0.9, footing: 'soil', footingDiameterM: null } as const;
    expect(groundAt(soil, at(0, 1), 0)).toEqual({ embedmentM: 0.9, footing: 'soil', diameterM: null });
    expect(groundIsKnown(soil)).toBe(true);
  });

  it('is known only with its depth, its kind and, of concrete, its diameter', () => {
    const whole = { embedmentM: 0.6, footing: 'concrete', footingDiameterM: 0.2 } as const;
    expect(groundIsKnown(whole)).toBe(true);
    for (const gap of ['embedmentM', 'footing', 'footingDiameterM']) {
      expect(groundIsKnown({ ...whole, [gap]: null })).toBe(false);
    }
  });
});
