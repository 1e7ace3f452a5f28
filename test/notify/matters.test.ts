import { describe, expect, it } from 'vitest';
import type { FenceStanding, Mark } from '../../src/forecast/fence-forecast.ts';
import type { JudgedFence, ToldState } from '../../src/notify/matters.ts';
import { decideNotices, stillHolds, toldMarksAfter } from '../../src/notify/matters.ts';
import { noticedFence } from './noticed-fence.ts';

const { forecast } = noticedFence();

const judged = (changes: {
  readonly standing?: FenceStanding;
  readonly ends?: FenceStanding | null;
  readonly marks?: readonly Mark[];
  readonly generation?: string;
  readonly closedOff?: readonly number[];
}): JudgedFence => ({
  forecast: {
    ...forecast,
    marksCrossed: (changes.marks ?? []).map((mark) => ({ mark, season: '2027' })),
    found: { ...forecast.found, closedOff: changes.closedOff ?? [] },
  },
  standing: changes.standing ?? 'clear',
  endsStanding: changes.ends ?? null,
  generation: changes.generation ?? 'as built',
});
const told = (changes: Partial<ToldState> = {}): ToldState => ({
  standing: 'clear',
  endsStanding: null,
  generation: 'as built',
  toldMarks: [],
  ...changes,
});
const matters = (before: ToldState | null, after: JudgedFence) =>
  decideNotices(before, after).map((draft) => draft.matter);

describe('decideNotices on the first forecast', () => {
  it.each([
    [
      'its standing, and not the marks it has crossed as well',
      judged({ standing: 'short', marks: ['two thirds', 'once in 10'] }),
      ['short'],
    ],
    [
      'the most severe mark where it is clear',
      judged({ marks: ['once in 25', 'two thirds', 'once in 50'] }),
      ['once in 25'],
    ],
    ['its ends where only they are short', judged({ ends: 'short', marks: ['two thirds'] }), ['ends short']],
    ['that it was short from new', judged({ standing: 'short from new', ends: 'short from new' }), ['short from new']],
    ['nothing where there is nothing', judged({ ends: 'closing' }), []],
  ] as const)('tells %s', (_what, after, expected) => {
    expect(matters(null, after)).toEqual(expected);
  });
});

describe('decideNotices later', () => {
  it.each([
    ['nothing while nothing changes', told({ standing: 'short' }), judged({ standing: 'short' }), []],
    ['a standing that worsens', told({ standing: 'closing' }), judged({ standing: 'short' }), ['short']],
    [
      'nothing of a standing that gets better without being clear',
      told({ standing: 'short' }),
      judged({ standing: 'closing' }),
      [],
    ],
    ['that it stands clear again', told({ standing: 'short' }), judged({}), ['better']],
    [
      'nothing of standing clear where a post is closed off',
      told({ standing: 'short' }),
      judged({ closedOff: [7] }),
      [],
    ],
    [
      'nothing of standing clear while the ends are short',
      told({ standing: 'short', endsStanding: 'short' }),
      judged({ ends: 'short' }),
      [],
    ],
    [
      'each mark newly crossed',
      told({ toldMarks: ['two thirds'] }),
      judged({ marks: ['two thirds', 'once in 50', 'once in 25'] }),
      ['once in 50', 'once in 25'],
    ],
    ['ends that went short', told({ endsStanding: 'closing' }), judged({ ends: 'short' }), ['ends short']],
    ['nothing of ends that only close', told({ endsStanding: 'clear' }), judged({ ends: 'closing' }), []],
    [
      'marks of a fence short from new',
      told({ standing: 'short from new' }),
      judged({ standing: 'short from new', marks: ['once in 50'] }),
      ['once in 50'],
    ],
  ] as const)('tells %s', (_what, before, after, expected) => {
    expect(matters(before, after)).toEqual(expected);
  });

  it('names the occasion so that a mark is told once a build and a standing once a season', () => {
    const drafts = decideNotices(told(), judged({ standing: 'short', marks: ['two thirds'] }));
    expect(drafts.map((draft) => `${draft.matter} | ${draft.occasion}`)).toEqual([
      'short | as built, season 2027',
      'two thirds | as built',
    ]);
  });
});

describe('toldMarksAfter', () => {
  it('keeps what was told though a reading takes it back, and forgets it once the fence is renewed', () => {
    expect(toldMarksAfter(told({ toldMarks: ['two thirds'] }), judged({}))).toEqual(['two thirds']);
    const renewed = judged({ generation: 'rebuild W-1 of 2027-01-10', marks: ['once in 50'] });
    expect(toldMarksAfter(told({ toldMarks: ['two thirds', 'once in 50'] }), renewed)).toEqual(['once in 50']);
  });
});

describe('stillHolds', () => {
  it.each([
    ['a standing that is still the same', 'short', judged({ standing: 'short' }), true],
    ['a standing that got better', 'short', judged({ standing: 'closing' }), false],
    ['a standing that got worse: another notice tells it', 'closing', judged({ standing: 'short' }), false],
    ['a mark that is still crossed', 'two thirds', judged({ marks: ['two thirds'] }), true],
    ['a mark that was only thought to be crossed', 'once in 10', judged({ marks: ['two thirds'] }), false],
    ['ends that are short', 'ends short', judged({ ends: 'short' }), true],
    [
      'ends of a fence that is judged by its ends alone',
      'ends short',
      judged({ standing: 'short', ends: null }),
      false,
    ],
    ['a fence that is clear again', 'better', judged({}), true],
    ['a fence that was clear again for a while', 'better', judged({ standing: 'closing' }), false],
  ] as const)('knows %s', (_what, matter, now, expected) => {
    expect(stillHolds(matter, now)).toBe(expected);
  });
});

it('tells nothing about ends that are no longer judged apart', () => {
  const before = told({ standing: 'short', endsStanding: 'short' });
  expect(matters(before, judged({ standing: 'short', ends: null }))).toEqual([]);
  expect(matters(null, judged({ standing: 'clear', ends: null }))).toEqual([]);
});
