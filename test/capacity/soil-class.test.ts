import { expect, it } from 'vitest';
import { bromsSandForce, SAND_MODEL_FACTOR } from '../../src/capacity/footing.ts';
import { SOIL_CLASS_KEYS, SOIL_CLASSES, WATER_UNIT_WEIGHT_N_PER_M3 } from '../../src/capacity/soil-class.ts';

const strengths = SOIL_CLASS_KEYS.map((key) => SOIL_CLASSES[key].strength);
const sands = strengths.filter((strength) => strength.kind === 'sand');
const clays = strengths.filter((strength) => strength.kind === 'clay');

it('orders sands and clays from weak to strong', () => {
  const angles = sands.map((strength) => strength.frictionAngleDeg);
  const shear = clays.map((strength) => strength.undrainedShearPa);
  expect([angles.length, shear.length]).toEqual([3, 3]);
  expect(angles).toEqual([...angles].sort((a, b) => a - b));
  expect(shear).toEqual([...shear].sort((a, b) => a - b));
});

it('loses about half a sand footing under water', () => {
  const post = { embedmentM: 0.6, widthM: 0.23, armM: 1 };
  for (const strength of sands) {
    const dry = SAND_MODEL_FACTOR * bromsSandForce(post, strength);
    const unitWeightNPerM3 = strength.unitWeightNPerM3 - WATER_UNIT_WEIGHT_N_PER_M3;
    const wet = SAND_MODEL_FACTOR * bromsSandForce(post, { ...strength, unitWeightNPerM3 });
    expect(wet / dry).toBeGreaterThan(0.4);
    expect(wet / dry).toBeLessThan(0.55);
  }
});
