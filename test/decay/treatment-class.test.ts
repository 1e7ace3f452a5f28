import { describe, expect, it } from 'vitest';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';

const pace = (key: keyof typeof TREATMENT_CLASSES): number =>
  TREATMENT_CLASSES[key].woodFactor * TREATMENT_CLASSES[key].treatmentFactor;

describe('the treatment classes', () => {
  it('slow rot with heavier duty, and with the durability of heartwood', () => {
    const falling = [
      pace('untreated-softwood'),
      pace('above-ground-stock'),
      pace('refractory-incised'),
      pace('ground-contact'),
      pace('heavy-duty'),
      pace('extreme-duty'),
    ];
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    const heartwood = ([4, 3, 2, 1] as const).map((number) => pace(`heartwood-class-${number}`));
    expect(heartwood).toEqual([...heartwood].sort((a, b) => b - a));
  });

  it('spread an unknown treatment wider than any known one', () => {
    const others = TREATMENT_CLASS_KEYS.filter((key) => key !== 'unknown-treated');
    const widest = Math.max(...others.map((key) => TREATMENT_CLASSES[key].paceSpread));
    expect(TREATMENT_CLASSES['unknown-treated'].paceSpread).toBeGreaterThan(widest);
  });

  it('have a name and a source each, no two names the same', () => {
    const names = TREATMENT_CLASS_KEYS.map((key) => TREATMENT_CLASSES[key].name);
    expect(new Set(names).size).toBe(names.length);
    for (const key of TREATMENT_CLASS_KEYS) expect(TREATMENT_CLASSES[key].provenance.source).not.toBe('');
  });

  it('say that steel, concrete and composite do not rot, and that everything else does', () => {
    const sound = TREATMENT_CLASS_KEYS.filter((key) => !TREATMENT_CLASSES[key].rots);
    expect(sound).toEqual(['does-not-rot']);
    for (const key of TREATMENT_CLASS_KEYS) expect(pace(key) > 0, key).toBe(TREATMENT_CLASSES[key].rots);
  });
});
