import { describe, expect, it } from 'vitest';
import { leftOutClause } from '../../src/drawing/left-out-words.ts';
import { stageText } from '../../src/drawing/plan-words.ts';
import type { NearestOption } from '../../src/season/plan/season-plan.ts';

const names = { crewNames: new Map([['north', 'North crew']]), today: '2026-11-26', currency: 'USD' };
const works = [{ kind: 'steel-sleeve', posts: [3, 4, 5], postCount: 3 }] as const;
const frozen = { bar: 'frozen-ground', weeks: 14, firstWeek: '2026-11-30', lastWeek: '2027-03-01' } as const;
const closed = { bar: 'closed', weeks: 2, firstWeek: '2027-04-05', lastWeek: '2027-04-12' } as const;
const nearest: NearestOption = {
  optionKey: 'steel-sleeve at 3 4 5',
  weeks: 20,
  openWeeks: 4,
  bars: [frozen, closed],
  best: {
    week: '2027-03-08',
    crewRef: 'north',
    neededHours: 9.1,
    wayHours: 2.5,
    leftHours: 4,
    thereAreHours: 60,
    worth: 300,
  },
  options: 3,
  barredOptions: 1,
};

describe('why nothing is done at a fence, with numbers', () => {
  it('tells hours that other works have from weeks that rules bar', () => {
    expect(leftOutClause({ reason: 'no-crew-hours', nearest, works }, names)).toBe(
      'steel sleeves, posts 3–5 could be done in 4 of the 20 weeks (frozen ground bars 14 of the 20 weeks, until that of March 1, 2027 and the opening of the storm season 2, from that of April 5, 2027), but there works that come first or are worth more have the hours; it takes 9.1 h, 2.5 of them on the way, and the nearest, the week of March 8, 2027 of North crew, has 4 of 60 h left; 1 of the 3 works that would do are barred in every week',
    );
  });

  it('says that no week allows it, and until when the ground is frozen', () => {
    const barred = { ...nearest, openWeeks: 0, best: null, bars: [{ ...frozen, weeks: 20 }] };
    expect(leftOutClause({ reason: 'ground-frozen', nearest: barred, works }, names)).toBe(
      'no week of the plan allows steel sleeves, posts 3–5: frozen ground bars every week, until that of March 1, 2027',
    );
  });

  it('says how long it takes and how long the longest week is, or that nobody goes out', () => {
    const long = { ...nearest, bars: [], openWeeks: 20 };
    expect(leftOutClause({ reason: 'longer-than-any-crew-week', nearest: long, works }, names)).toContain(
      'for steel sleeves, posts 3–5 it takes 9.1 h, 2.5 of them on the way, and no crew has so many in one of the 20 weeks; the most fitting, the week of March 8, 2027 of North crew, has 60 h',
    );
    const away = { ...long, best: { ...nearest.best!, thereAreHours: 0 } };
    expect(leftOutClause({ reason: 'longer-than-any-crew-week', nearest: away, works }, names)).toContain(
      'no crew that can do it goes out in the 20 weeks',
    );
  });

  it('says what a rebuild would leave of a fence that must be served and cannot be', () => {
    const rebuild = {
      key: 'rebuild + footing-reset',
      price: 4600,
      standing: 'short from new',
      endsStanding: 'short',
      dangerPosts: [],
    } as const;
    expect(leftOutClause({ reason: 'nothing-to-do', remedy: { rebuild } }, names)).toBe(
      'no works of the catalogue bring it to where it must be: after a rebuild with footing reset as the catalogue builds it, for 4,600 USD, it would still be short from new and its ends would still be short (larger posts or footings in the catalogue might change that), and nothing else pays for itself',
    );
    expect(leftOutClause({ reason: 'nothing-to-do', remedy: { rebuild: null } }, names)).toContain(
      'a rebuild makes no sense there',
    );
  });

  it('says the reason alone of a plan that kept no numbers', () => {
    expect(leftOutClause({ reason: 'no-crew-hours' }, names)).toBe('no crew hours are left in the weeks that would do');
  });
});

describe('how far a stage of a plan got', () => {
  const money = (amount: number): string => `${amount} USD`;
  it('says what is counted', () => {
    const done = { stage: 'must-1', value: 8, bound: 8, gap: 0 } as const;
    expect(stageText(done, money)).toBe('Dangerous fences made safe: 8 fences; no plan does more of them');
    expect(stageText({ ...done, stage: 'promised', value: 1, bound: 2, gap: 0.5 }, money)).toBe(
      'Promised dates kept: 1 date; no plan does more than 2 dates',
    );
    expect(stageText({ ...done, stage: 'benefit', value: 90, bound: 100, gap: 0.1 }, money)).toBe(
      'Worth of the plan: 90 USD; no plan is worth more than 100 USD, so it is at most 10.0 % from the best',
    );
    expect(stageText({ ...done, value: 0, bound: 0 }, money)).toBe('Dangerous fences made safe: no fences to count');
  });
});
