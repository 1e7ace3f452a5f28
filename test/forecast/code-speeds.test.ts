import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { MEDIAN_POINT } from '../../src/forecast/belief-points.ts';
import { type CodeSpeeds, codeSpeeds } from '../../src/forecast/code-speeds.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { stateModel } from '../../src/forecast/state-model.ts';
import { metresFromFeet } from '../../src/units/length.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';

/** A line post (or any other by its number) as a plan checker sees it when new, or on a day. */
function checked(facts: FenceFacts, number = 6, day: string | null = null): CodeSpeeds {
  const model = stateModel(facts.site, fenceStates(facts)[0]!.state, MEDIAN_POINT);
  const postClass = model.classes.classes.find(({ numbers }) => numbers.includes(number))!;
  return codeSpeeds(model, postClass, day ?? '2015-03-01', day === null);
}
const onBasis = (basis: FenceFacts['site']['wind']['basis']): FenceFacts => ({
  ...EXAMPLE_FENCE,
  site: { ...WARM_SITE, wind: { ...WARM_SITE.wind, basis } },
});
const embedded = (feet: number): FenceFacts => ({
  ...EXAMPLE_FENCE,
  ground: { ...EXAMPLE_FENCE.ground, embedmentM: metresFromFeet(feet) },
});
const SIX_BY_SIX: FenceFacts = { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, section: nominalSection('6x6') } };

describe('the speeds a plan checker computes', () => {
  it('are of the example post those worked by hand: 39.9 m/s for the post, 15.2 m/s for its footing', () => {
    // 1,760 psi = 12.135 MPa x 117,097 mm3 / 1.00584 m = 1,412.7 N over 0.6, over 1.13571 x 1.2993 N at 1 m/s
    expect(checked(EXAMPLE_FENCE).snapMps).toBeCloseTo(39.94, 1);
    // 45.81 lbf = 203.8 N over 0.6, over the same; two feet deep, bearing doubled
    expect(checked(EXAMPLE_FENCE).leanMps).toBeCloseTo(15.17, 1);
  });

  it('take wind in full on a nominal speed: the root of 0.6 of the ultimate one', () => {
    for (const kind of ['snapMps', 'leanMps'] as const) {
      const ultimate = checked(onBasis('ultimate'))[kind];
      expect(checked(onBasis('nominal'))[kind] / ultimate).toBeCloseTo(0.7746, 4);
      expect(checked(onBasis('asd'))[kind]).toBe(ultimate);
    }
  });

  it('are less for a post that has rotted, at its p50 depth, while its footing is as it was', () => {
    const old = checked(EXAMPLE_FENCE, 6, '2035-03-01');
    expect(old.snapMps).toBeLessThan(0.8 * checked(EXAMPLE_FENCE).snapMps);
    expect(old.leanMps).toBe(checked(EXAMPLE_FENCE).leanMps);
  });

  it('are limited by shear where a stout post is low: 404 m/s of a 6x6 at 0.3 m', () => {
    // 2/3 x 165 x 1.6 psi (1.8202 MPa) x 19,516 mm2 = 23.68 kN; bending would hold 9.377 MPa x 454,400 mm3 / 0.165 m = 25.8 kN
    const low = checked({ ...SIX_BY_SIX, run: { ...EXAMPLE_FENCE.run, heightM: 0.3 } });
    expect(low.snapMps).toBeCloseTo(403.8, 0);
  });
});

describe('the least pressure of 16 psf', () => {
  it('is not carried by the 4x4 of the example, and is by a 6x6', () => {
    // 0.6 x 16 psf x 8 ft x 6 ft = 460.8 lbf; a 4x4 holds 317.6 lbf, a 6x6 850 x 1.6 psi x 27.73 in3 / 39.6 in = 952 lbf
    expect(checked(EXAMPLE_FENCE).postMeetsMinimum).toBe(false);
    expect(checked(SIX_BY_SIX).postMeetsMinimum).toBe(true);
    expect(checked(SIX_BY_SIX).footingMeetsMinimum).toBe(false);
  });

  it('is carried by a footing six feet deep and not by one of four', () => {
    // 300 psf/ft, 9 in wide, pushed at 3.3 ft: 4 ft hold 270 lbf, 6 ft 721 lbf
    expect(checked(embedded(4)).footingMeetsMinimum).toBe(false);
    expect(checked(embedded(6)).footingMeetsMinimum).toBe(true);
    expect(checked(embedded(6)).postMeetsMinimum).toBe(false);
  });

  it('asks more of posts that stand further apart', () => {
    const spaced = (feet: number): FenceFacts => ({
      ...EXAMPLE_FENCE,
      run: { ...EXAMPLE_FENCE.run, postSpacingM: metresFromFeet(feet) },
    });
    expect(checked(spaced(5)).postMeetsMinimum).toBe(true);
    expect(checked(spaced(6)).postMeetsMinimum).toBe(false);
  });
});

describe('a corner post', () => {
  const corner = (heightFt: number, facts: FenceFacts): CodeSpeeds => {
    const run = { ...EXAMPLE_FENCE.run, heightM: metresFromFeet(heightFt) };
    const shared = { number: 1, positionM: null, installed: null, wood: null };
    return checked({ ...facts, posts: [{ ...shared, sharedRun: { fenceRef: 'EX-2', run, end: 0 } }] }, 1);
  };

  it('has the lower speeds of its two runs', () => {
    const alone = checked(EXAMPLE_FENCE, 1);
    expect(corner(4, EXAMPLE_FENCE)).toEqual(alone);
    expect(corner(8, EXAMPLE_FENCE).snapMps).toBeLessThan(alone.snapMps);
    expect(corner(8, EXAMPLE_FENCE).leanMps).toBeLessThan(alone.leanMps);
  });

  it('has to carry the least pressure from both: a 6x6 five feet deep does beside a run of 6 ft, not beside one of 14 ft', () => {
    const stout = { ...embedded(5), wood: SIX_BY_SIX.wood };
    expect(corner(6, stout)).toMatchObject({ postMeetsMinimum: true, footingMeetsMinimum: true });
    expect(corner(14, stout)).toMatchObject({ postMeetsMinimum: false, footingMeetsMinimum: false });
  });
});
