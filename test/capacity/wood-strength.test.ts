import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { medianBendingStrength, medianShearStrength, SPECIES, SPECIES_KEYS } from '../../src/capacity/wood-strength.ts';

const POST = nominalSection('4x4');

describe('the median strength of a post', () => {
  it('rises with the grade and falls with the size', () => {
    for (const species of SPECIES_KEYS) {
      const at = medianBendingStrength(species, 'no-2', POST);
      expect(medianBendingStrength(species, 'no-1', POST) / at).toBeCloseTo(1.15, 12);
      expect(medianBendingStrength(species, 'no-3', POST)).toBeLessThan(at);
      expect(medianBendingStrength(species, 'unknown', POST)).toBe(at);
      expect(medianBendingStrength(species, 'no-2', nominalSection('6x6')) / at).toBeCloseTo(0.9, 12);
    }
  });

  it('counts a 4x6 as lumber, not as a timber', () => {
    expect(medianBendingStrength('redwood', 'no-2', nominalSection('4x6'))).toBe(SPECIES.redwood.sawnMedianMpa);
  });

  it('counts a post as a timber from a shorter side of 114 mm on', () => {
    const sawn = (side: number) => ({ kind: 'rectangular', widthMm: side, depthMm: 140 }) as const;
    expect(medianBendingStrength('southern-pine', 'no-2', sawn(114))).toBeCloseTo(29.25, 10);
    expect(medianBendingStrength('southern-pine', 'no-2', sawn(113.9))).toBeCloseTo(32.5, 10);
  });

  it('is in shear 860 to 7,300 of that in bending', () => {
    expect(medianShearStrength('southern-pine', 'no-2', POST)).toBeCloseTo((32.5 * 860) / 7300, 1);
    expect(medianShearStrength('western-redcedar', 'no-1', POST)).toBeCloseTo((25.3 * 860) / 7300, 1);
  });

  it('takes a round post from clear wood, whatever the grade', () => {
    const round = { kind: 'round', diameterMm: 110 } as const;
    expect(medianBendingStrength('southern-pine', 'no-1', round)).toBeCloseTo(0.9 * 51, 12);
    expect(medianBendingStrength('southern-pine', 'no-3', round)).toBeCloseTo(0.9 * 51, 12);
  });

  it('lies under the green clear strength in every species', () => {
    for (const species of SPECIES_KEYS) {
      expect(SPECIES[species].sawnMedianMpa, species).toBeLessThan(SPECIES[species].clearGreenMpa);
      expect(medianShearStrength(species, 'no-2', POST)).toBeLessThan(medianBendingStrength(species, 'no-2', POST));
    }
  });
});
