import { describe, expect, it } from 'vitest';
import { aboveGroundFlag } from '../../src/forecast/above-ground.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

/** Built on 1 March 2015 in zone C; sapwood reaches 5 mm after 3.67 years, in November 2018. Season 1 March to 31 October. */
const SAPWOOD: FenceFacts = { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, treatmentClass: 'untreated-softwood' } };
/** Class 4 heartwood reaches 5 mm after 9.77 years, in December 2024. */
const HEARTWOOD: FenceFacts = { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, treatmentClass: 'heartwood-class-4' } };

describe('the flag for rails and infill', () => {
  it('goes up in the season in which 5 mm is reached, and stays up', () => {
    expect(aboveGroundFlag(SAPWOOD, '2018-10-31')).toMatchObject({ look: false, lookFrom: '2019' });
    expect(aboveGroundFlag(SAPWOOD, '2018-11-01')).toMatchObject({ look: true, lookFrom: '2019' });
    expect(aboveGroundFlag(SAPWOOD, '2019-03-01')).toMatchObject({ look: true });
    expect(aboveGroundFlag(SAPWOOD, '2040-03-01')).toMatchObject({ look: true, lookFrom: '2019' });
    expect(aboveGroundFlag(HEARTWOOD, '2024-03-01')).toMatchObject({ look: false, lookFrom: '2025' });
  });

  it('goes up at the opening of the season within which 5 mm is reached', () => {
    const laterInTheYear: FenceFacts = { ...SAPWOOD, installed: { earliest: '2015-09-01', latest: '2015-09-01' } };
    expect(aboveGroundFlag(laterInTheYear, '2019-03-01')).toMatchObject({ look: true, lookFrom: '2019' });
    expect(aboveGroundFlag(laterInTheYear, '2019-03-01').expectedDepthMm).toBeLessThan(5);
  });

  it('gives the depth by the law: 5 mm at the end of the slow start, then 4.24 mm a year', () => {
    expect(aboveGroundFlag(SAPWOOD, '2018-11-01').expectedDepthMm).toBeCloseTo(5, 1);
    const twoYears =
      aboveGroundFlag(SAPWOOD, '2022-11-01').expectedDepthMm! - aboveGroundFlag(SAPWOOD, '2020-11-01').expectedDepthMm!;
    expect(twoYears / 2).toBeCloseTo(4.24, 1);
    expect(aboveGroundFlag(SAPWOOD, '2014-06-01').expectedDepthMm).toBe(0);
  });

  it('says plainly that no law covers treated stock, and that steel posts tell nothing of the rails', () => {
    const treated = aboveGroundFlag(EXAMPLE_FENCE, '2030-03-01');
    expect(treated).toMatchObject({ expectedDepthMm: null, look: null, lookFrom: null });
    expect(treated.reason).toMatch(/^No published law gives .* ground contact \(UC4A\): look at .* every visit\.$/);
    const steel: FenceFacts = {
      ...EXAMPLE_FENCE,
      wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 },
    };
    expect(aboveGroundFlag(steel, '2030-03-01')).toMatchObject({ look: null, expectedDepthMm: null });
    expect(aboveGroundFlag(steel, '2030-03-01').reason).toMatch(/The posts do not rot/);
  });

  it('takes a range of install dates at its middle', () => {
    const ranged: FenceFacts = { ...SAPWOOD, installed: { earliest: '2014-03-01', latest: '2016-02-29' } };
    expect(aboveGroundFlag(ranged, '2022-03-01').expectedDepthMm).toBeCloseTo(
      aboveGroundFlag(SAPWOOD, '2022-03-01').expectedDepthMm!,
      1,
    );
  });

  it('starts anew with the wood of a rebuild, from its day on, and is not touched by a treatment of the posts', () => {
    const rebuilt: FenceFacts = {
      ...SAPWOOD,
      works: [
        { ref: 'W1', day: '2024-05-01', posts: 'all', kind: 'rebuild', wood: HEARTWOOD.wood, postSpacingM: null },
        { ref: 'W0', day: '2016-05-01', posts: 'all', kind: 'groundline-treatment', yearsEffective: 5 },
      ],
    };
    expect(aboveGroundFlag(rebuilt, '2024-04-30')).toEqual(aboveGroundFlag(SAPWOOD, '2024-04-30'));
    const since = aboveGroundFlag(rebuilt, '2025-03-01');
    expect(since.look).toBe(false);
    expect(since.lookFrom).toBe('2034');
  });

  it('takes the wood of the last rebuild by then, in whatever order they are recorded, from its very day', () => {
    const rebuild = (ref: string, day: string, wood: FenceFacts['wood']) =>
      ({ ref, day, posts: 'all', kind: 'rebuild', wood, postSpacingM: null }) as const;
    const works = [rebuild('W1', '2016-05-01', HEARTWOOD.wood), rebuild('W2', '2024-05-01', SAPWOOD.wood)];
    const young: FenceFacts = { ...SAPWOOD, installed: { earliest: '2024-05-01', latest: '2024-05-01' } };
    const middle: FenceFacts = { ...HEARTWOOD, installed: { earliest: '2016-05-01', latest: '2016-05-01' } };
    for (const done of [works, works.toReversed()]) {
      const facts: FenceFacts = { ...SAPWOOD, works: done };
      expect(aboveGroundFlag(facts, '2026-05-01')).toEqual(aboveGroundFlag(young, '2026-05-01'));
      expect(aboveGroundFlag(facts, '2024-05-01').expectedDepthMm).toBe(0);
      expect(aboveGroundFlag(facts, '2024-04-30')).toEqual(aboveGroundFlag(middle, '2024-04-30'));
    }
  });

  it('says that whose wood the rails are of is a judgement, where no law says more', () => {
    expect(aboveGroundFlag(EXAMPLE_FENCE, '2030-03-01').provenance).toMatchObject({ tag: 'judgement' });
  });

  it('does not ask for a look within the calendar where heartwood stands in a dry place', () => {
    const dry: FenceFacts = {
      ...EXAMPLE_FENCE,
      site: {
        ...EXAMPLE_FENCE.site,
        climate: { kind: 'measured', rainMmPerYear: 200, meanTemperatureC: 23.9, dryMonths: 2 },
      },
      wood: { ...PINE_4X4, treatmentClass: 'heartwood-class-1' },
      installed: { earliest: '2160-03-01', latest: '2160-03-01' },
    };
    expect(aboveGroundFlag(dry, '2170-03-01')).toMatchObject({ look: false, lookFrom: null });
  });
});
