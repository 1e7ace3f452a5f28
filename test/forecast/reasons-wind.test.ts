import { beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts, RunFacts } from '../../src/forecast/fence-facts.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';
import { expectWhole, fenceWith, type ReasonReader, readReasons, siteWith } from './reason-reader.ts';

const runWith = (change: Partial<RunFacts>): FenceFacts => fenceWith({ run: { ...EXAMPLE_FENCE.run, ...change } });

/** A corner: post 1 carries the first bay of a longer and higher run as well. */
const CORNER: FenceFacts = fenceWith({
  posts: [
    {
      number: 1,
      positionM: null,
      installed: null,
      wood: null,
      sharedRun: {
        fenceRef: 'EX-2',
        run: {
          ...EXAMPLE_FENCE.run,
          heightM: 2.4,
          ends: [{ kind: 'free' }, { kind: 'free' }],
        },
        end: 0,
      },
    },
  ],
});

describe('the steps of the wind on a solid fence', () => {
  let plain: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
  });

  it('name the geometry as recorded', () => {
    expect(plain.at('wind', 'h')).toBeCloseTo(1.8288, 12);
    expect(plain.at('wind', 's')).toBeCloseTo(1.8288, 12);
    expect(plain.at('wind', 'B')).toBeCloseTo(24.384, 12);
    expect(plain.at('wind', 'B/s')).toBeCloseTo(80 / 6, 12);
    expect(plain.at('wind', 'eps')).toBe(1);
    expect(plain.at('wind', 'F_eps')).toBe(1);
    expect(plain.at('wind', 'e')).toBeCloseTo(0.55 * 1.8288, 12);
    expect(plain.step('wind', 'B').equation).toBe('end A return 6.10 m, end B return 6.10 m');
    expect(plain.step('wind', 'x').equation).toBe('posts every 2.438 m unless recorded');
    // every post stands at a whole number of bays
    expect((plain.at('wind', 'x') / 2.4384) % 1).toBeCloseTo(0, 9);
  });

  it('take Case A of an inner post as coefficient times bay, and the larger of the cases', () => {
    // s/h = 1, B/s = 13.3: the table has 1.3 from B/s 10 to 20
    expect(plain.at('wind', 'Cf,A')).toBe(1.3);
    expect(plain.at('wind', '(Cf L)_A')).toBeCloseTo(1.3 * 2.4384, 10);
    const [a, c] = [plain.at('wind', '(Cf L)_A'), plain.at('wind', '(Cf L)_C')];
    expect(plain.at('wind', 'Cf L')).toBe(Math.max(a, c));
    expect(plain.step('wind', 'Cf L')).toMatchObject({
      quantity: 'governing, case A',
      equation: 'the larger of A and C',
    });
  });

  it.each(['expected', 'code'] as const)('multiply to the force at 1 m/s, basis %s', (basis) => {
    const z = basis === 'expected' ? 1.8288 : 4.572;
    const kz = 2.01 * (z / 365.76) ** (2 / 7);
    expect(plain.at('wind', 'Kz', basis)).toBeCloseTo(kz, 12);
    expect(plain.step('wind', 'Kz', basis).equation).toContain('alpha 7, zg 365.8 m');
    const factors = ['Kzt', 'Kd', 'Ke', 'G', 'Cf L', 's'].map((symbol) => plain.at('wind', symbol));
    expect(plain.at('wind', 'k', basis)).toBeCloseTo(
      factors.reduce((a, b) => a * b, 0.613 * kz),
      12,
    );
  });

  it('are whole, and the shared factors belong to both bases', () => {
    expectWhole(plain);
    for (const symbol of ['Kzt', 'Kd', 'Ke', 'G', 'h', 's', 'Cf L', 'e']) {
      expect(plain.step('wind', symbol).basis, symbol).toBe('both');
    }
    expect([plain.at('wind', 'Kd'), plain.at('wind', 'G')]).toEqual([0.85, 0.85]);
    expect(plain.has('wind', 'k2')).toBe(false);
    expect(plain.has('wind', 'Cf')).toBe(false);
  });
});

describe('the steps of the wind elsewhere', () => {
  it('carry height above the sea, hill and exposure of a site', () => {
    const high = readReasons(siteWith({ exposure: 'C', elevationM: 1500, topographicFactor: 1.2 }));
    const kz = 2.01 * (1.8288 / 274.32) ** (2 / 9.5);
    expect(high.at('wind', 'Kz', 'expected')).toBeCloseTo(kz, 12);
    expect(high.at('wind', 'Ke')).toBeCloseTo(Math.exp(-0.000119 * 1500), 12);
    expect(high.step('wind', 'Ke').equation).toContain('z = 1500 m');
    expect(high.at('wind', 'Kzt')).toBe(1.2);
    const force = 0.613 * kz * 1.2 * 0.85 * Math.exp(-0.1785) * 0.85 * high.at('wind', 'Cf L') * 1.8288;
    expect(high.at('wind', 'k', 'expected')).toBeCloseTo(force, 10);
  });

  it('take openings off a fence that is solid enough, and lift the arm over a gap', () => {
    const picket = readReasons(runWith({ solidity: 0.8, bottomGapM: 0.2 }));
    expect(picket.at('wind', 's')).toBeCloseTo(1.6288, 12);
    expect(picket.at('wind', 'B/s')).toBeCloseTo(24.384 / 1.6288, 12);
    expect(picket.at('wind', 'e')).toBeCloseTo(1.8288 - 0.8144, 12);
    const eps = 1 - 0.2 ** 1.5;
    expect(picket.at('wind', 'F_eps')).toBeCloseTo(eps, 12);
    // s/h = 0.8906 between rows 0.7 and 0.9: 1.4 at 0.9, 1.55 at 0.7 (B/s 14.97)
    const share = (1.6288 / 1.8288 - 0.7) / 0.2;
    expect(picket.at('wind', 'Cf,A')).toBeCloseTo(1.55 + share * (1.4 - 1.55), 10);
    expect(picket.at('wind', '(Cf L)_A')).toBeCloseTo(picket.at('wind', 'Cf,A') * eps * 2.4384, 10);
    expectWhole(picket);
  });

  it('take the open-sign table below that, on the solid area', () => {
    const open = readReasons(runWith({ solidity: 0.5 }));
    expect(open.at('wind', 'Cf')).toBe(1.6);
    expect(open.at('wind', 'Cf L')).toBeCloseTo(1.6 * 0.5 * 2.4384, 10);
    expect(open.step('wind', 'Cf L')).toMatchObject({
      quantity: 'governing, case open',
      equation: 'Cf eps L, the solid area only',
      tag: 'read',
    });
    for (const symbol of ['F_eps', 'Cf,A', '(Cf L)_A', '(Cf L)_C'])
      expect(open.has('wind', symbol), symbol).toBe(false);
    expectWhole(open);
  });

  it('find Case C to govern at free ends, and say what stands there', () => {
    const free = readReasons(runWith({ ends: [{ kind: 'free' }, { kind: 'gate' }] }), { which: 'ends' });
    expect(free.step('wind', 'B').equation).toBe('end A free, end B gate');
    expect(free.at('wind', '(Cf L)_C')).toBeGreaterThan(free.at('wind', '(Cf L)_A'));
    expect(free.at('wind', 'Cf L')).toBe(free.at('wind', '(Cf L)_C'));
    expect(free.step('wind', 'Cf L').quantity).toBe('governing, case C');
    expect(free.step('wind', 'Cf L').tag).toBe('read at second hand');
  });

  it('place an added post where it was added', () => {
    const positionsM = [1, 2, 3, 4, 5, 6, 7, 8, 9].map((bay) => (bay + 0.5) * 2.4384);
    const added = readReasons(
      fenceWith({
        works: [
          { kind: 'added-posts', ref: 'W', day: '2026-03-01', posts: 'all', positionsM, wood: EXAMPLE_FENCE.wood },
        ],
      }),
    );
    // half the bay, half the load
    expect(added.at('wind', '(Cf L)_A')).toBeCloseTo((1.3 * 2.4384) / 2, 10);
  });
});

describe('the steps of the wind on a corner post', () => {
  let corner: ReasonReader;
  beforeAll(() => {
    corner = readReasons(CORNER, { which: 'ends' });
  });

  it('give arm and force of the other run on both bases', () => {
    expect(corner.context.postClass.numbers).toEqual([1]);
    expect(corner.at('wind', 'e2')).toBeCloseTo(0.55 * 2.4, 12);
    expect(corner.step('wind', 'e2')).toMatchObject({ unit: 'm', basis: 'both' });
    const kz = 2.01 * (2.4 / 365.76) ** (2 / 7);
    const codeKz = 2.01 * (4.572 / 365.76) ** (2 / 7);
    // the same coefficient, length and solid height: the forces are as the Kz
    expect(corner.at('wind', 'k2', 'code') / corner.at('wind', 'k2', 'expected')).toBeCloseTo(codeKz / kz, 10);
    expect(corner.step('wind', 'k2', 'expected').equation).toContain('fence EX-2');
    expectWhole(corner);
  });

  it('let the worse run decide, by bending and by shear', () => {
    const worse = Math.max(
      corner.at('wind', 'k', 'expected') * corner.at('wind', 'e'),
      corner.at('wind', 'k2', 'expected') * corner.at('wind', 'e2'),
    );
    expect(corner.at('snap', 'V_bend')).toBeCloseTo(Math.sqrt(corner.at('snap', 'M') / worse), 10);
    const k = Math.max(corner.at('wind', 'k', 'expected'), corner.at('wind', 'k2', 'expected'));
    const shear = ((2 / 3) * 0.118 * corner.at('snap', 'f') * corner.at('section', 'A')) / k;
    expect(corner.at('snap', 'V_shear')).toBeCloseTo(Math.sqrt(shear), 10);
  });

  it('leave the other posts to the one run', () => {
    expect(readReasons(CORNER).has('wind', 'k2')).toBe(false);
  });
});
