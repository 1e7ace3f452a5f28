import { describe, expect, it } from 'vitest';
import { bromsSandForce, SAND_MODEL_FACTOR } from '../../src/capacity/footing.ts';
import { SOIL_CLASS_KEYS, SOIL_CLASSES, WATER_UNIT_WEIGHT_N_PER_M3 } from '../../src/capacity/soil-class.ts';

const SANDS = ['loose-sand', 'medium-sand', 'dense-sand'] as const;
const CLAYS = ['soft-clay', 'firm-clay', 'stiff-clay'] as const;

describe('the soil classes', () => {
  it('are three sands and three clays, each from weak to strong', () => {
    expect(SOIL_CLASS_KEYS).toEqual([...SANDS, ...CLAYS]);
    expect(SANDS.map((key) => SOIL_CLASSES[key].strength)).toEqual([
      { kind: 'sand', frictionAngleDeg: 30, unitWeightNPerM3: 17_000 },
      { kind: 'sand', frictionAngleDeg: 34, unitWeightNPerM3: 18_000 },
      { kind: 'sand', frictionAngleDeg: 38, unitWeightNPerM3: 19_500 },
    ]);
    expect(CLAYS.map((key) => SOIL_CLASSES[key].strength)).toEqual([
      { kind: 'clay', undrainedShearPa: 25_000 },
      { kind: 'clay', undrainedShearPa: 50_000 },
      { kind: 'clay', undrainedShearPa: 100_000 },
    ]);
  });

  it('have a name each, and the bearing that the code tabulates for clay, sand and gravel', () => {
    expect(new Set(SOIL_CLASS_KEYS.map((key) => SOIL_CLASSES[key].name)).size).toBe(6);
    expect(SANDS.map((key) => SOIL_CLASSES[key].lateralBearingPsfPerFt)).toEqual([150, 150, 200]);
    expect(CLAYS.map((key) => SOIL_CLASSES[key].lateralBearingPsfPerFt)).toEqual([100, 100, 100]);
  });
});

it('loses about half a sand footing under water', () => {
  const post = { embedmentM: 0.6, widthM: 0.23, armM: 1 };
  for (const { strength } of SANDS.map((key) => SOIL_CLASSES[key])) {
    if (strength.kind !== 'sand') throw new Error('a sand without a friction angle');
    const dry = SAND_MODEL_FACTOR * bromsSandForce(post, strength);
    const unitWeightNPerM3 = strength.unitWeightNPerM3 - WATER_UNIT_WEIGHT_N_PER_M3;
    const wet = SAND_MODEL_FACTOR * bromsSandForce(post, { ...strength, unitWeightNPerM3 });
    expect(wet / dry).toBeGreaterThan(0.4);
    expect(wet / dry).toBeLessThan(0.55);
  }
});
