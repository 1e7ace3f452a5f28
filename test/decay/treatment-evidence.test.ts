import { describe, expect, it } from 'vitest';
import { ABOVE_GROUND_PROVENANCE } from '../../src/decay/above-ground-depth.ts';
import {
  PACE_SPREAD_PROVENANCE,
  TREATMENT_CLASS_KEYS,
  TREATMENT_CLASSES,
  type TreatmentClass,
  treatmentFactorProvenance,
  woodFactorProvenance,
} from '../../src/decay/treatment-class.ts';

const named = (keys: readonly TreatmentClass[], tag: string): Record<string, string> =>
  Object.fromEntries(keys.map((key) => [key, tag]));

/** How sure anybody can be of each class's numbers. */
const STANDING = {
  ...named(
    [
      'untreated-softwood',
      'untreated-hardwood',
      'untreated-douglas-fir',
      'heartwood-class-1',
      'heartwood-class-2',
      'heartwood-class-3',
      'heartwood-class-4',
    ],
    'memory',
  ),
  ...named(['redcedar-redwood-heartwood'], 'read at second hand'),
  ...named(
    [
      'black-locust',
      'juniper-osage-orange',
      'round-pine-cca',
      'round-pine-penta',
      'round-pine-acza',
      'round-pine-creosote',
      'round-pine-copper-naphthenate',
    ],
    'derived',
  ),
  ...named(
    [
      'above-ground-stock',
      'refractory-unincised',
      'refractory-incised',
      'ground-contact',
      'heavy-duty',
      'extreme-duty',
      'unknown-treated',
      'does-not-rot',
    ],
    'judgement',
  ),
};
const isUntreated = (key: TreatmentClass): boolean => TREATMENT_CLASSES[key].treatmentFactor === 1;

describe('the evidence of a treatment class', () => {
  it('says of every class whether it was read, remembered, worked out or judged', () => {
    expect(Object.fromEntries(TREATMENT_CLASS_KEYS.map((key) => [key, TREATMENT_CLASSES[key].provenance.tag]))).toEqual(
      STANDING,
    );
  });

  it('is for untreated wood what was seen of that wood, and its treatment factor is one by definition', () => {
    const untreated = TREATMENT_CLASS_KEYS.filter(isUntreated);
    expect(untreated).toHaveLength(10);
    for (const key of untreated) {
      expect(woodFactorProvenance(key), key).toBe(TREATMENT_CLASSES[key].provenance);
      expect(treatmentFactorProvenance(key), key).toMatchObject({ tag: 'derived' });
      expect(treatmentFactorProvenance(key).source, key).toContain('by definition');
    }
  });

  it('is for treated wood the remembered sapwood factor, and what was seen of the treatment', () => {
    for (const key of TREATMENT_CLASS_KEYS.filter((name) => !isUntreated(name))) {
      expect(woodFactorProvenance(key), key).toMatchObject({ tag: 'memory' });
      expect(woodFactorProvenance(key).source, key).toContain('k_wood');
      expect(treatmentFactorProvenance(key), key).toBe(TREATMENT_CLASSES[key].provenance);
    }
  });

  it('is a judgement where it comes to the spread from fence to fence', () => {
    expect(PACE_SPREAD_PROVENANCE).toMatchObject({ tag: 'judgement', source: expect.stringMatching(/\S/) as string });
  });
});

it('is said of the law above ground to be from memory', () => {
  expect(ABOVE_GROUND_PROVENANCE.tag).toBe('memory');
  expect(ABOVE_GROUND_PROVENANCE.source).toContain('Manual No. 4');
});
