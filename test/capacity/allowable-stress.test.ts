import { describe, expect, it } from 'vitest';
import { allowableStress } from '../../src/capacity/allowable-stress.ts';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { type Grade, SPECIES_KEYS, type Species } from '../../src/capacity/wood-strength.ts';
import { psiFromMpa } from '../../src/units/pressure.ts';

const wood = (species: Species, grade: Grade = 'no-2', size: '4x4' | '4x6' | '6x4' | '6x6' = '4x4', incised = false) =>
  allowableStress({ species, grade, incised, section: nominalSection(size) });

describe('the allowable stress of a post, worked from the tables [psi]', () => {
  const bending = (...at: Parameters<typeof wood>): number => psiFromMpa(wood(...at).bendingMpa);
  const shear = (...at: Parameters<typeof wood>): number => psiFromMpa(wood(...at).shearMpa);

  it('is 1.6 x 1,100 of a No.2 southern pine 4x4, and 1.6 x 0.85 x 1,500 of a No.1', () => {
    expect(bending('southern-pine', 'no-2')).toBeCloseTo(1760, 8);
    expect(bending('southern-pine', 'no-1')).toBeCloseTo(2040, 8);
    expect(bending('southern-pine', 'no-3')).toBeCloseTo(1040, 8);
  });

  it('takes the wide values of southern pine where the deep side of a 4x6 faces the wind, not where its flat does', () => {
    expect(bending('southern-pine', 'no-2', '4x6')).toBeCloseTo(1600, 8);
    expect(bending('southern-pine', 'no-2', '6x4')).toBeCloseTo(1760, 8);
  });

  it('takes the size factor 1.5 of a 4x4 and 1.3 of a 4x6 for other species, wet service from 1,150 psi on', () => {
    // hem-fir No.2, 850 psi: 1,275 wet, 1,105 not
    expect(bending('hem-fir', 'no-2', '4x4')).toBeCloseTo(1734, 8);
    expect(bending('hem-fir', 'no-2', '4x6')).toBeCloseTo(1768, 8);
  });

  it('takes a timber by its own table, No.3 at six tenths of No.2', () => {
    expect(bending('hem-fir', 'no-1', '6x6')).toBeCloseTo(1560, 8);
    expect(bending('hem-fir', 'no-2', '6x6')).toBeCloseTo(920, 8);
    expect(bending('hem-fir', 'no-3', '6x6')).toBeCloseTo(552, 8);
    expect(shear('hem-fir', 'no-2', '6x6')).toBeCloseTo(224, 8);
    expect(shear('hem-fir', 'no-2', '4x4')).toBeCloseTo(232.8, 8);
  });

  it('counts a post as a timber, and its depth as wide, from 114 mm on', () => {
    const of = (widthMm: number, depthMm: number): number =>
      allowableStress({
        species: 'southern-pine',
        grade: 'no-2',
        incised: false,
        section: { kind: 'rectangular', widthMm, depthMm },
      }).referenceFbPsi;
    expect(of(114, 114)).toBe(850);
    expect(of(113, 114)).toBe(1000);
    expect(of(114, 113)).toBe(1100);
  });
});

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
