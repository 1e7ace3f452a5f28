import { describe, expect, it } from 'vitest';
import { allowableStress } from '../../src/capacity/allowable-stress.ts';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { type Grade, SPECIES_KEYS, type Species } from '../../src/capacity/wood-strength.ts';
import { psiFromMpa } from '../../src/units/pressure.ts';

const wood = (species: Species, grade: Grade = 'no-2', size: '4x4' | '4x6' | '6x6' = '4x4', incised = false) =>
  allowableStress({ species, grade, incised, section: nominalSection(size) });

describe('the allowable stress of a post', () => {
  it('is spared the wet service factor up to 1,150 psi, and only in bending', () => {
    expect(wood('southern-pine').wetServiceFactor).toBe(1);
    expect(wood('southern-pine', 'no-1').wetServiceFactor).toBe(0.85);
    expect(psiFromMpa(wood('southern-pine').shearMpa)).toBeCloseTo(175 * 1.6 * 0.97, 9);
  });

  it('has no wet service factor in timbers', () => {
    for (const species of SPECIES_KEYS) expect(wood(species, 'no-1', '6x6').wetServiceFactor).toBe(1);
  });

  it('takes a fifth off for incising', () => {
    const plain = wood('hem-fir');
    const incised = wood('hem-fir', 'no-2', '4x4', true);
    expect(incised.bendingMpa / plain.bendingMpa).toBeCloseTo(0.8, 12);
    expect(incised.shearMpa / plain.shearMpa).toBeCloseTo(0.8, 12);
  });

  it('reads an unknown grade as No.2, and a poorer grade never stronger', () => {
    for (const species of SPECIES_KEYS) {
      for (const size of ['4x4', '4x6', '6x6'] as const) {
        const [first, second, third] = (['no-1', 'no-2', 'no-3'] as const).map((grade) => wood(species, grade, size));
        expect(wood(species, 'unknown', size)).toEqual(second);
        expect(first!.referenceFbPsi, `${species} ${size}`).toBeGreaterThanOrEqual(second!.referenceFbPsi);
        expect(second!.referenceFbPsi, `${species} ${size}`).toBeGreaterThan(third!.referenceFbPsi);
      }
    }
  });

  it('says which species stands in where the tables have none', () => {
    expect(wood('black-locust').standsIn).toBe('redwood');
    expect(wood('unknown').standsIn).toBe('western woods');
    expect(wood('southern-pine').standsIn).toBeNull();
  });

  it('takes a round as 1.18 times the timber value', () => {
    const round = allowableStress({
      species: 'southern-pine',
      grade: 'no-2',
      incised: false,
      section: { kind: 'round', diameterMm: 100 },
    });
    expect(round.referenceFbPsi).toBeCloseTo(1.18 * 850, 9);
  });
});
