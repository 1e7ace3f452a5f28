import { describe, expect, it } from 'vitest';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import type { InputChange } from '../../src/forecast/input-change.ts';
import { runChanges } from '../../src/forecast/run-changes.ts';
import type { SensitivityCase } from '../../src/forecast/sensitivity-case.ts';
import { recordedChanges } from '../../src/forecast/sensitivity-changes.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { lastState, NO_1_WOOD, override } from './made-up-events.ts';

const caseOf = (facts: Partial<FenceFacts> = {}, site: Partial<SiteFacts> = {}): SensitivityCase => ({
  site: { ...WARM_SITE, ...site },
  state: lastState(facts),
  gustMps: 40,
});
const change = (at: SensitivityCase, input: string): InputChange => {
  const found = recordedChanges(at).find((each) => each.input === input);
  if (!found) throw new Error(`${input} is not moved`);
  return found;
};
const inputs = (at: SensitivityCase): readonly string[] => recordedChanges(at).map(({ input }) => input);
const labels = ({ low, high }: InputChange) => [low?.label.us ?? null, high?.label.us ?? null];
const metric = ({ low, high }: InputChange) => [low?.label.metric ?? null, high?.label.metric ?? null];
const cases = ({ low, high }: InputChange): readonly SensitivityCase[] => [low!.at, high!.at];
const ofWood = (wood: Partial<FenceFacts['wood']>): SensitivityCase => caseOf({ wood: { ...PINE_4X4, ...wood } });

describe('what may be off in a record', () => {
  it('is every recorded input, each alone', () => {
    expect(inputs(caseOf())).toEqual([
      'exposure category',
      'design gust',
      'annual rain',
      'mean temperature',
      'section',
      'treatment class',
      'grade',
      'post spacing',
      'height',
      'solidity',
      'install date',
    ]);
    expect(inputs(caseOf({ installed: { earliest: '2010-01-01', latest: '2012-01-01' } }))).not.toContain(
      'install date',
    );
  });

  it('is the design gust by 5 %', () => {
    const gust = change(caseOf(), 'design gust');
    expect(labels(gust)).toEqual(['−5 %', '+5 %']);
    expect(cases(gust).map(({ gustMps }) => gustMps)).toEqual([38, 42]);
    expect(cases(gust).every(({ site }) => site.exposure === 'B')).toBe(true);
  });

  it('is the exposure by a category, where there is another', () => {
    expect(labels(change(caseOf(), 'exposure category'))).toEqual([null, 'C']);
    const middle = change(caseOf({}, { exposure: 'C' }), 'exposure category');
    expect(labels(middle)).toEqual(['B', 'D']);
    expect(cases(middle).map(({ site }) => site.exposure)).toEqual(['B', 'D']);
    expect(labels(change(caseOf({}, { exposure: 'D' }), 'exposure category'))).toEqual(['C', null]);
  });

  it('is the climate: a fifth of the rain and 1.5 degrees, or a decay zone', () => {
    const rain = change(caseOf(), 'annual rain');
    // 1,280 and 1,920 mm are 50.4 and 75.6 in.
    expect([labels(rain), metric(rain)]).toEqual([
      ['50 in', '76 in'],
      ['1280 mm', '1920 mm'],
    ]);
    expect(cases(rain).map(({ site }) => site.climate)).toEqual([
      { kind: 'measured', rainMmPerYear: 1280, meanTemperatureC: 19.5, dryMonths: 0 },
      { kind: 'measured', rainMmPerYear: 1920, meanTemperatureC: 19.5, dryMonths: 0 },
    ]);
    const warmth = change(caseOf(), 'mean temperature');
    expect([labels(warmth), metric(warmth)]).toEqual([
      ['64.4 °F', '69.8 °F'],
      ['18 °C', '21 °C'],
    ]);
    expect(cases(warmth).map(({ site }) => site.climate)).toMatchObject([
      { meanTemperatureC: 18, rainMmPerYear: 1600 },
      { meanTemperatureC: 21, rainMmPerYear: 1600 },
    ]);
    const zoneOf = (zone: 1 | 3 | 5) => change(caseOf({}, { climate: { kind: 'decay-zone', zone } }), 'decay zone');
    expect([1, 3, 5].map((zone) => labels(zoneOf(zone as 1 | 3 | 5)))).toEqual([
      [null, 'zone 2'],
      ['zone 2', 'zone 4'],
      ['zone 4', null],
    ]);
    expect(cases(zoneOf(3)).map(({ site }) => site.climate)).toEqual([
      { kind: 'decay-zone', zone: 2 },
      { kind: 'decay-zone', zone: 4 },
    ]);
  });
});

describe('the wood in a record', () => {
  it('may be off by 3 mm a side', () => {
    const sawn = change(caseOf(), 'section');
    expect([labels(sawn), metric(sawn)]).toEqual([
      ['3.38 × 3.38 in', '3.62 × 3.62 in'],
      ['86 × 86 mm', '92 × 92 mm'],
    ]);
    const sides = cases(sawn).map(({ state }) => state.posts[0]!.wood.section);
    expect(sides).toMatchObject([{ kind: 'rectangular' }, { kind: 'rectangular' }]);
    for (const [index, side] of [85.9, 91.9].entries()) {
      const section = sides[index]!;
      if (section.kind === 'round') throw new Error('round');
      expect([section.widthMm, section.depthMm]).toEqual([expect.closeTo(side, 9), expect.closeTo(side, 9)]);
    }
    const round = change(ofWood({ section: { kind: 'round', diameterMm: 100 } }), 'section');
    expect(metric(round)).toEqual(['97 mm', '103 mm']);
    expect(cases(round).map(({ state }) => state.posts[3]!.wood.section)).toEqual([
      { kind: 'round', diameterMm: 97 },
      { kind: 'round', diameterMm: 103 },
    ]);
  });

  it('may be a treatment class apart within its own row of classes', () => {
    const of = (treatmentClass: FenceFacts['wood']['treatmentClass']) =>
      labels(change(ofWood({ treatmentClass }), 'treatment class'));
    expect(of('ground-contact')).toEqual(['above-ground stock', 'heavy duty']);
    expect(of('above-ground-stock')).toEqual([null, 'ground contact']);
    expect(of('extreme-duty')).toEqual(['heavy duty', null]);
    expect(of('refractory-incised')).toEqual(['not incised', null]);
    expect(of('refractory-unincised')).toEqual([null, 'incised']);
    expect(of('heartwood-class-4')).toEqual([null, 'class 3']);
    expect(of('heartwood-class-2')).toEqual(['class 3', 'class 1']);
    expect(cases(change(caseOf(), 'treatment class')).map(({ state }) => state.posts[0]!.wood.treatmentClass)).toEqual([
      'above-ground-stock',
      'heavy-duty',
    ]);
    expect(inputs(ofWood({ treatmentClass: 'round-pine-creosote' }))).not.toContain('treatment class');
  });

  it('may be a grade apart, one that is not known counting as No.2', () => {
    const of = (grade: FenceFacts['wood']['grade']) => labels(change(ofWood({ grade }), 'grade'));
    expect([of('no-3'), of('no-2'), of('no-1'), of('unknown')]).toEqual([
      [null, 'No.2'],
      ['No.3', 'No.1'],
      ['No.2', null],
      ['No.3', 'No.1'],
    ]);
    expect(cases(change(caseOf(), 'grade')).map(({ state }) => state.posts[0]!.wood.grade)).toEqual(['no-3', 'no-1']);
  });

  it('is that of most posts: the others stay as they are', () => {
    const woods = ([few, many]: readonly [number[], number[]]) =>
      caseOf({
        posts: [
          ...few.map((number) => override(number, { wood: NO_1_WOOD })),
          ...many.map((number) => override(number, { wood: { ...PINE_4X4, grade: 'no-3' } })),
        ],
      });
    const rest = cases(change(woods([[1], [4]]), 'grade'))[1]!.state.posts.map(({ wood }) => wood.grade);
    expect(rest.filter((grade) => grade === 'no-1')).toHaveLength(10);
    expect(rest[3]).toBe('no-3');
    expect(labels(change(woods([[1], [2, 3, 4, 5, 6, 7, 8]]), 'grade'))).toEqual([null, 'No.2']);
  });
});

describe('the run in a record', () => {
  it('may have bays a foot longer or shorter, with its length and its posts in proportion', () => {
    const spacing = change(caseOf(), 'post spacing');
    expect([labels(spacing), metric(spacing)]).toEqual([
      ['7 ft', '9 ft'],
      ['2.13 m', '2.74 m'],
    ]);
    for (const [index, feet] of [7, 9].entries()) {
      const { run, posts } = cases(spacing)[index]!.state;
      expect(run.postSpacingM).toBeCloseTo(feet * 0.3048, 10);
      expect(run.runLengthM).toBeCloseTo(10 * feet * 0.3048, 10);
      expect(posts[4]!.positionM).toBeCloseTo(4 * feet * 0.3048, 10);
    }
  });

  it('may be a quarter of a foot higher or lower, and a tenth more or less solid as far as a fence can be', () => {
    const height = change(caseOf(), 'height');
    expect(labels(height)).toEqual(['5.75 ft', '6.25 ft']);
    expect(cases(height).map(({ state }) => state.run.heightM)).toEqual([
      expect.closeTo(5.75 * 0.3048, 10),
      expect.closeTo(6.25 * 0.3048, 10),
    ]);
    const solid = (solidity: number) => change(caseOf({ run: { ...EXAMPLE_FENCE.run, solidity } }), 'solidity');
    expect([
      labels(solid(1)),
      labels(solid(0.5)),
      labels(solid(0.95)),
      labels(solid(0.1)),
      labels(solid(0.05)),
    ]).toEqual([
      ['0.9', null],
      ['0.4', '0.6'],
      ['0.85', '1'],
      ['0.05', '0.2'],
      [null, '0.15'],
    ]);
    expect(cases(solid(0.5)).map(({ state }) => state.run.solidity)).toEqual([0.4, 0.6]);
  });

  it('is never off by more than half', () => {
    const [spacing, height] = runChanges(caseOf(), { spacingM: 2, heightM: 1.5, solidity: 0.1 });
    expect(spacing!.low!.at.state.run.postSpacingM).toBeCloseTo(4 * 0.3048, 10);
    expect(height!.low!.at.state.run.heightM).toBeCloseTo(3 * 0.3048, 10);
    expect(height!.high!.at.state.run.heightM).toBeCloseTo(6 * 0.3048 + 1.5, 10);
  });
});

describe('the install date in a record', () => {
  it('may be a year off, of the posts of the build alone', () => {
    const swapped = { earliest: '2020-01-01', latest: '2020-01-01' };
    const sameDay = { earliest: '2015-03-01', latest: '2016-03-01' };
    const facts = { posts: [override(3, { installed: swapped }), override(4, { installed: sameDay })] };
    const date = change(caseOf(facts), 'install date');
    expect(labels(date)).toEqual(['−1 year', '+1 year']);
    const [earlier, later] = cases(date);
    // 365.2425 days before 1 March 2015 and after.
    expect(earlier!.state.built).toEqual({ earliest: '2014-03-01', latest: '2014-03-01' });
    expect(later!.state.built).toEqual({ earliest: '2016-02-29', latest: '2016-02-29' });
    expect(later!.state.posts.slice(0, 4).map(({ installed }) => installed)).toEqual([
      later!.state.built,
      later!.state.built,
      swapped,
      sameDay,
    ]);
  });
});
