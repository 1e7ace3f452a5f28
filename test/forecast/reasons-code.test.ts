import { beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { WindEntry } from '../../src/forecast/wind-entry.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { expectWhole, fenceWith, foundAtAll, type ReasonReader, readReasons, siteWith } from './reason-reader.ts';

const MPA_PER_PSI = 0.006894757293168;
const PA_PER_PSF = 47.88025898;
const windOf = (change: Partial<WindEntry>): FenceFacts => siteWith({ wind: { ...WARM_SITE.wind, ...change } });
const code = (reader: ReasonReader, symbol: string): number => reader.at('code check', symbol, 'code');

/** Speed at which the post reaches what is allowed, from what is printed [m/s]. */
function postSpeed(reader: ReasonReader, shearShare: number | null): number {
  const forces = [code(reader, 'M_a') / reader.at('wind', 'e')];
  if (shearShare !== null) forces.push(shearShare * code(reader, "Fv'") * reader.at('section', 'A'));
  if (reader.has('code check', 'P_rail')) forces.push(code(reader, 'P_rail'));
  return Math.sqrt(Math.min(...forces) / (code(reader, 'gamma_W') * reader.at('wind', 'k', 'code')));
}

/** Allowable force on the footing from what is printed [N], psf/ft turned into Pa/m. */
function footingForce(reader: ReasonReader): number {
  const L = reader.at('lean', 'L');
  const bearing = (code(reader, 'S_1') * PA_PER_PSF) / 0.3048;
  return (bearing * reader.at('lean', 'w') * L ** 3) / (7.02 * (L + 1.09 * reader.at('wind', 'e')));
}

/** Force of 9.6 psf on one bay [N]. */
const leastForce = 0.6 * 16 * PA_PER_PSF * 2.4384 * 1.8288;

describe('the code check of a sawn post', () => {
  let plain: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
  });

  it('leads from stresses to the speed of the post', () => {
    expect(code(plain, "Fb'")).toBeCloseTo(1100 * 1.6 * MPA_PER_PSI, 10);
    // size included: 1,100 psi is not over 1,150, so no wet factor; shear has 0.97
    expect(code(plain, "Fv'")).toBeCloseTo(175 * 1.6 * 0.97 * MPA_PER_PSI, 10);
    expect(plain.step('code check', "Fb'").equation).toBe('Fb 1100 psi x CD 1.6 x CM 1 x Ci 1');
    expect(code(plain, 'M_a')).toBeCloseTo((code(plain, "Fb'") * plain.at('section', 'S')) / 1000, 8);
    expect(plain.step('code check', 'M_a')).toMatchObject({ equation: "Fb' S", unit: 'N m', tag: 'memory' });
    expect(code(plain, 'V_post')).toBeCloseTo(postSpeed(plain, 2 / 3), 9);
    expect(plain.step('code check', 'V_post').equation).toBe("sqrt(least of M_a / e, 2/3 Fv' A, over gamma_W k)");
    expect(plain.has('code check', 'P_rail')).toBe(false);
  });

  it('leads from the bearing of the soil to the speed of the footing', () => {
    expect(code(plain, 'S_1')).toBe(300);
    expect(plain.step('code check', 'S_1').quantity).toBe('lateral bearing per depth, medium sand [psf/ft], doubled');
    expect(code(plain, 'P')).toBeCloseTo(footingForce(plain), 5);
    const speed = Math.sqrt(code(plain, 'P') / (0.6 * plain.at('wind', 'k', 'code')));
    expect(code(plain, 'V_footing')).toBeCloseTo(speed, 10);
    const single = readReasons(siteWith({ lateralBearingDoubled: false, soilClass: 'stiff-clay' }));
    expect(code(single, 'S_1')).toBe(100);
    expect(single.step('code check', 'S_1').quantity).toBe('lateral bearing per depth, stiff clay [psf/ft]');
    expect(code(single, 'P')).toBeCloseTo(footingForce(single), 5);
  });

  it('is whole, and belongs to the basis code alone', () => {
    expectWhole(plain);
    for (const step of plain.steps) {
      if (step.group === 'code check') expect(step.basis, step.symbol).toBe('code');
    }
  });

  it('holds post and footing against 16 psf over one bay', () => {
    expect(code(plain, 'M_a') / plain.at('wind', 'e')).toBeGreaterThan(leastForce / 4);
    const verdict = (reader: ReasonReader): string => {
      const post = code(reader, 'M_a') / reader.at('wind', 'e') >= leastForce ? 'meets it' : 'does not meet it';
      const footing = code(reader, 'P') >= leastForce ? 'meets it' : 'does not meet it';
      return `post ${post}, footing ${footing}`;
    };
    const strong = { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 140, depthMm: 140 } } as const;
    const deep = { embedmentM: 1.8, footing: 'concrete', footingDiameterM: 0.45 } as const;
    const readers = [
      plain,
      readReasons(fenceWith({ wood: strong })),
      readReasons(fenceWith({ ground: deep })),
      readReasons(fenceWith({ wood: strong, ground: deep })),
    ];
    const verdicts = readers.map((reader) => reader.step('code check', '16 psf').value);
    expect(verdicts).toEqual(readers.map(verdict));
    expect(new Set(verdicts).size).toBe(4);
  });
});

describe('the code check on each basis of the wind', () => {
  it.each([
    { basis: 'ultimate', factor: 0.6, tag: 'read' },
    { basis: 'asd', factor: 0.6, tag: 'read' },
    { basis: 'nominal', factor: 1, tag: 'memory' },
    { basis: 'fastest-mile', factor: 1, tag: 'memory' },
  ] as const)('takes $factor of the wind for a speed entered as $basis', ({ basis, factor, tag }) => {
    const reader = readReasons(windOf({ basis, returnPeriodYears: 50 }));
    expect(code(reader, 'gamma_W')).toBe(factor);
    expect(reader.step('code check', 'gamma_W')).toMatchObject({ tag, unit: '-' });
    expect(code(reader, 'V_post')).toBeCloseTo(postSpeed(reader, 2 / 3), 9);
    expect(code(reader, 'V_footing')).toBeCloseTo(
      Math.sqrt(code(reader, 'P') / (factor * reader.at('wind', 'k', 'code'))),
      9,
    );
    expectWhole(reader);
  });
});

describe('the code check of other posts', () => {
  it('takes a round post as a timber with its form factor', () => {
    const round = readReasons(
      fenceWith({ wood: { ...PINE_4X4, incised: true, section: { kind: 'round', diameterMm: 127 } } }),
    );
    expect(code(round, "Fb'")).toBeCloseTo(850 * 1.18 * 1.6 * 0.8 * MPA_PER_PSI, 10);
    expect(round.step('code check', "Fb'").equation).toBe('Fb 1003 psi x CD 1.6 x CM 1 x Ci 0.8');
    expect(code(round, 'V_post')).toBeCloseTo(postSpeed(round, 3 / 4), 9);
    expect(round.step('code check', 'V_post').equation).toContain("3/4 Fv' A");
  });

  it('takes 1 / 1.67 of a steel moment, without stresses of wood', () => {
    const steel = readReasons(
      fenceWith({ wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 } }),
    );
    expect(code(steel, 'M_a')).toBeCloseTo(4000 / 1.67, 10);
    expect(steel.step('code check', 'M_a').equation).toBe('M / 1.67');
    expect(steel.has('code check', "Fb'")).toBe(false);
    expect(steel.has('code check', "Fv'")).toBe(false);
    expect(code(steel, 'V_post')).toBeCloseTo(postSpeed(steel, null), 9);
    expect(steel.step('code check', 'V_post').equation).toBe('sqrt(least of M_a / e, over gamma_W k)');
  });

  it('takes a sleeve in series with the sound wood above it', () => {
    const sleeved = (momentCapacityNm: number): ReasonReader =>
      readReasons(
        fenceWith({ works: [{ kind: 'steel-sleeve', ref: 'W', day: '2026-03-01', posts: 'all', momentCapacityNm }] }),
      );
    const weak = sleeved(1500);
    expect(code(weak, 'M_a')).toBeCloseTo(1500 / 1.67, 10);
    expect(weak.step('code check', 'M_a').equation).toBe("the lesser of M_sleeve / 1.67 and Fb' S0 above it");
    expect(weak.step('code check', 'V_post').equation).not.toContain("Fv'");
    const strong = sleeved(9000);
    expect(code(strong, 'M_a')).toBeCloseTo((code(strong, "Fb'") * 88.9 ** 3) / 6 / 1000, 8);
  });

  it('takes a quarter of the nails where wood wets and dries', () => {
    const rails = readReasons(fenceWith(foundAtAll({ railConnection: 0.4 })));
    // two nails, 1,380 lbf/in G^2.5 D L, CD 1.6, CM 0.25, 0.4 left, a quarter of the force at a rail end
    const force = (2 * 1380 * 4.4482216152605 * 0.55 ** 2.5 * 0.162 * 2 * 1.6 * 0.25 * 0.4) / 0.25;
    expect(code(rails, 'P_rail')).toBeCloseTo(force, 8);
    expect(code(rails, 'V_post')).toBeCloseTo(postSpeed(rails, 2 / 3), 9);
    expect(rails.step('code check', 'V_post').equation).toBe(
      "sqrt(least of M_a / e, 2/3 Fv' A, P_rail, over gamma_W k)",
    );
    expect(rails.step('code check', 'P_rail').unit).toBe('N');
    expectWhole(rails);
  });

  it('allows nothing of a broken post', () => {
    const broken = readReasons(fenceWith(foundAtAll({ groundline: { kind: 'broken' }, railConnection: 0.5 })));
    expect([code(broken, 'M_a'), code(broken, 'V_post')]).toEqual([0, 0]);
    expect(broken.step('code check', 'M_a').equation).toBe('found broken');
    expect(broken.has('code check', 'P_rail')).toBe(false);
    expect(broken.step('code check', 'V_post').equation).not.toContain("Fv'");
  });

  it('takes what was found on the day of installation for nothing as built', () => {
    const facts = fenceWith(
      foundAtAll({ groundline: { kind: 'broken' }, collarCracked: true, railConnection: 0.5 }, '2015-03-01'),
    );
    const fresh = readReasons(facts, { seasonLabel: 'new' });
    expect(code(fresh, 'M_a')).toBeCloseTo((code(fresh, "Fb'") * 88.9 ** 3) / 6 / 1000, 8);
    expect(fresh.has('code check', 'P_rail')).toBe(false);
    expect(code(fresh, 'P')).toBeCloseTo(footingForce(fresh), 5);
    const later = readReasons(facts);
    expect(code(later, 'P')).toBeCloseTo(footingForce(later), 5);
    expect(code(later, 'P')).toBeLessThan(code(fresh, 'P'));
  });

  it('takes the run of a corner that asks more of the footing, first or second', () => {
    // A thin post at the corner, so that it decides the ends.
    const thin = { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 64, depthMm: 64 } } as const;
    const first = { number: 1, positionM: null, installed: null, wood: thin };
    const FREE: FenceFacts['run'] = { ...EXAMPLE_FENCE.run, ends: [{ kind: 'free' }, { kind: 'free' }] };
    for (const [run, other] of [
      [EXAMPLE_FENCE.run, { ...FREE, heightM: 2.4 }],
      [FREE, { ...EXAMPLE_FENCE.run, heightM: 1.2 }],
    ] as const) {
      const corner = readReasons(
        fenceWith({ run, posts: [{ ...first, sharedRun: { fenceRef: 'EX-2', run: other, end: 0 } }] }),
        { which: 'ends' },
      );
      const L = corner.at('lean', 'L');
      const bearing = (code(corner, 'S_1') * PA_PER_PSF) / 0.3048;
      const speed = (e: string, k: string): number =>
        Math.sqrt(
          (bearing * corner.at('lean', 'w') * L ** 3) /
            (7.02 * (L + 1.09 * corner.at('wind', e))) /
            (0.6 * corner.at('wind', k, 'code')),
        );
      expect(code(corner, 'V_footing')).toBeCloseTo(Math.min(speed('e', 'k'), speed('e2', 'k2')), 6);
    }
  });
});
