import { describe, expect, it } from 'vitest';
import type { SeasonForecast } from '../../src/forecast/fence-forecast.ts';
import { fenceJudgement, type JudgementInputs } from '../../src/forecast/fence-judgement.ts';
import { group, season } from './made-up-season.ts';

const BUILT = season(2010, { line: group(60, 40) });
const judge = (seasons: readonly SeasonForecast[], inputs: Partial<JudgementInputs> = {}) =>
  fenceJudgement({
    built: BUILT,
    seasons,
    designGustMps: 45,
    lookAheadSeasons: 2,
    hazard: { kind: 'none', reason: 'made up' },
    ...inputs,
  });
/** Seasons from 2028 on, season 1 being the third, with the given snap speeds of the line posts [m/s]. */
const lineSnaps = (...speeds: readonly number[]) =>
  speeds.map((speed, index) => season(2028 + index, { line: group(speed, 40) }));

describe('the judgement of a fence', () => {
  it('looks at season 1 and those after it, not at those before', () => {
    const mended = judge(lineSnaps(30, 30, 50, 49, 48, 47));
    expect(mended).toMatchObject({ standing: 'clear', shortSeason: null, shortFrom: null });
  });

  it('names the first season in which it is short, and since when it has been', () => {
    expect(judge(lineSnaps(50, 48, 46, 45, 44.9))).toMatchObject({
      standing: 'closing',
      shortSeason: '2032',
      shortFrom: '2032',
    });
    expect(judge(lineSnaps(46, 44, 43, 42))).toMatchObject({
      standing: 'short',
      shortSeason: '2030',
      shortFrom: '2029',
    });
  });

  it('is short from new where sound wood never held the design gust', () => {
    const weak = { built: season(2010, { line: group(44, 40) }) };
    expect(judge(lineSnaps(44, 43, 42), weak)).toMatchObject({
      standing: 'short from new',
      shortSeason: '2030',
      shortFrom: 'new',
    });
  });

  it('holds an improvement against 3 % more than the design gust', () => {
    expect(judge(lineSnaps(50, 50, 46.3, 46.3))).toMatchObject({ standing: 'clear', standingWithMargin: 'short' });
    expect(judge(lineSnaps(50, 50, 46.4, 46.4))).toMatchObject({ standing: 'clear', standingWithMargin: 'clear' });
  });
});

describe('the ends of a fence', () => {
  const withEnds = (...ends: readonly number[]) =>
    ends.map((speed, index) => season(2028 + index, { line: group(60, 40), ends: group(speed, 40) }));
  const built = season(2010, { line: group(60, 40), ends: group(50, 40) });

  it('are judged apart from the line posts, in the same words', () => {
    const judgement = judge(withEnds(48, 46, 44, 43), { built });
    expect(judgement).toMatchObject({
      standing: 'clear',
      shortSeason: null,
      endsStanding: 'short',
      endsStandingWithMargin: 'short',
      endsShortSeason: '2030',
    });
    expect(judge(withEnds(50, 50, 46, 46), { built })).toMatchObject({
      endsStanding: 'clear',
      endsStandingWithMargin: 'short',
      endsShortSeason: null,
    });
    expect(judge(withEnds(50, 50, 45, 45, 45), { built })).toMatchObject({
      endsStanding: 'clear',
      endsShortSeason: null,
    });
    expect(judge(withEnds(50, 50, 46, 44), { built })).toMatchObject({
      endsStanding: 'closing',
      endsShortSeason: '2031',
    });
  });

  it('are what the fence is judged by, and not apart, where it has no line posts', () => {
    const stub = (...speeds: readonly number[]) =>
      speeds.map((speed, index) => season(2030 + index, { line: null, ends: group(speed, 40) }));
    const judgement = judge(stub(50, 44), { built: season(2010, { line: null, ends: group(60, 40) }) });
    expect(judgement).toMatchObject({
      standing: 'closing',
      shortSeason: '2031',
      endsStanding: null,
      endsStandingWithMargin: null,
      endsShortSeason: null,
    });
  });

  it('have no standing where there are none', () => {
    expect(judge(lineSnaps(50, 50, 50))).toMatchObject({
      endsStanding: null,
      endsStandingWithMargin: null,
      endsShortSeason: null,
    });
  });
});

describe('the turnover', () => {
  const years = (...pairs: readonly (readonly [snap: number, lean: number])[]) =>
    pairs.map(([snap, lean], index) => season(2028 + index, { line: group(snap, lean) }));

  it('is the season from which on it snaps before it leans', () => {
    expect(judge(years([50, 40], [45, 40], [41, 40], [40, 40], [39, 40])).turnover).toBe('2032');
    expect(judge(years([50, 40], [39, 40], [38, 40])).turnover).toBe('2029');
  });

  it('is since new where even sound wood snapped first', () => {
    const built = season(2010, { line: group(50, 70) });
    expect(judge(years([49, 70], [48, 70], [47, 70]), { built }).turnover).toBe('since new');
  });

  it('is none where it goes on leaning first, and where there are no posts', () => {
    expect(judge(years([50, 40], [50, 40], [50, 40])).turnover).toBeNull();
    expect(judge([season(2030, { line: null })], { built: season(2010, { line: null }) })).toMatchObject({
      turnover: null,
      standing: 'clear',
      shortSeason: null,
    });
  });
});

it('has the marks with it', () => {
  const rotted = [season(2029), season(2030, { left: 0.6 })];
  expect(judge(rotted)).toMatchObject({ marksCrossed: [{ mark: 'two thirds', season: '2030' }], marksAhead: [] });
});
