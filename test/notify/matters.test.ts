import { describe, expect, it } from 'vitest';
import type { EvidenceSummary, ReadPost } from '../../src/forecast/evidence/evidence-summary.ts';
import type { FenceStanding, Mark } from '../../src/forecast/fence-forecast.ts';
import type { JudgedFence, ToldState } from '../../src/notify/matters.ts';
import {
  dangerousFindings,
  decideNotices,
  decideOfficeNotices,
  stillHolds,
  toldMarksAfter,
} from '../../src/notify/matters.ts';
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
  today: '2027-01-15',
});
const told = (changes: Partial<ToldState> = {}): ToldState => ({
  standing: 'clear',
  endsStanding: null,
  generation: 'as built',
  toldMarks: [],
  toldFindings: [],
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
    ['what is dangerous, beside its standing', judged({ standing: 'short', closedOff: [2] }), ['dangerous', 'short']],
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
      told({ standing: 'short', toldFindings: ['closed off 7'] }),
      judged({ closedOff: [7] }),
      [],
    ],
    [
      'that a post was closed off, before anything else',
      told({ toldFindings: ['closed off 3'] }),
      judged({ standing: 'short', closedOff: [3, 7] }),
      ['dangerous', 'short'],
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
    expect(decideNotices(told(), judged({ standing: 'short from new' }))).toEqual([
      { matter: 'short from new', occasion: 'as built' },
    ]);
  });

  it('tells of a post found anew only, and again once it was mended and found again', () => {
    const found = judged({ closedOff: [3, 7] });
    expect(decideNotices(told({ toldFindings: ['closed off 3'] }), found)).toEqual([
      { matter: 'dangerous', occasion: 'closed off 7; told 2027-01-15' },
    ]);
    expect(dangerousFindings(judged({}).forecast)).toEqual([]);
    expect(decideNotices(told({ toldFindings: [] }), { ...found, today: '2027-03-01' })[0]?.occasion).toContain(
      '2027-03-01',
    );
  });
});

describe('decideOfficeNotices', () => {
  it('tells the office of what is dangerous, and of readings that disagree, which no owner is told of', () => {
    const after = judged({ closedOff: [7] });
    const read = { post: 4, day: '2026-10-02' } as ReadPost;
    const evidence = {
      disagrees: true,
      readPosts: [read, { ...read, day: '2026-03-01' }],
    } as unknown as EvidenceSummary;
    const disagreeing = { ...after, forecast: { ...after.forecast, evidence } };
    expect(decideOfficeNotices(told(), disagreeing)).toEqual([
      { matter: 'dangerous', occasion: 'closed off 7; told 2027-01-15' },
      { matter: 'readings disagree', occasion: 'readings to 2026-10-02' },
    ]);
    expect(matters(told({ toldFindings: ['closed off 7'] }), disagreeing)).toEqual([]);
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
    ['a post that is still closed off', 'dangerous', judged({ closedOff: [2] }), true],
    ['a post that was mended', 'dangerous', judged({}), false],
    ['a reminder of a fence that is still short', 'reminder', judged({ standing: 'short' }), true],
    ['a reminder of a fence that is not short any more', 'reminder', judged({ standing: 'closing' }), false],
    ['what works gained, whatever came after', 'works done', judged({ standing: 'short' }), true],
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
