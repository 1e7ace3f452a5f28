import { describe, expect, it } from 'vitest';
import { crewEntryText, ownerText, siteEntryText } from '../../src/drawing/calendar-words.ts';
import { alongText, amountText, longDay } from '../../src/drawing/day-sheet-words.ts';
import { reminderSentence, visitItemText, visitSummary } from '../../src/drawing/visit-words.ts';
import { madeUpVisit } from '../service/visiting-register.ts';

describe('a visit in words', () => {
  it('names works with their posts, and those of a whole fence without', () => {
    expect(
      visitItemText({
        works: [
          { kind: 'post-swap', posts: [2, 3, 4], postCount: 3 },
          { kind: 'groundline-treatment', posts: [1], postCount: 1 },
          { kind: 'added-posts', posts: [1, 2], postCount: 2 },
          { kind: 'drainage', posts: [1, 2, 3, 4], postCount: 4 },
        ],
      }),
    ).toBe('post swap, posts 2–4 + groundline treatment, post 1 + added posts, 2 more + drainage');
  });

  it('says first where a visit stands', () => {
    const line = (state: 'proposed' | 'confirmed' | 'missed') =>
      visitSummary(madeUpVisit({ uid: 'a', state }), 'Pelican Reach');
    expect(line('proposed')).toBe('Proposed: Pelican Reach – post swap, 1 fence');
    expect(line('confirmed')).toBe('Pelican Reach – post swap, 1 fence');
    expect(line('missed')).toBe('Missed: Pelican Reach – post swap, 1 fence');
  });

  it('tells owners no names and no prices, and the crew what it needs', () => {
    const visit = madeUpVisit({ uid: 'a', note: 'Ring first' });
    expect(siteEntryText(visit, 'North crew')).toBe('Crew: North crew\nPR-02: post swap, posts 2, 5');
    const owners = [{ name: 'Rosa Quinn', language: 'es', reachedAt: '7 Skerry Road\nNewhaven' }];
    const text = crewEntryText({
      visit,
      owners,
      accessNotes: new Map([
        ['PR-02', 'left gate'],
        ['PR-03', ''],
      ]),
      reminders: [],
    });
    expect(text.split('\n')).toEqual([
      'Ring first',
      '',
      'PR-02: post swap, posts 2, 5',
      "People's hours: 4.6 h at the site, 1.2 h on the way",
      'Getting to PR-02: left gate',
      'Owner: Rosa Quinn (es), 7 Skerry Road, Newhaven',
    ]);
    expect(ownerText({ name: 'Oda', language: 'en', reachedAt: null })).toBe('Oda');
  });

  it('words every reminder', () => {
    const base = { works: ['rebuild', 'drainage'], fenceRefs: ['A', 'B'] } as const;
    expect(reminderSentence({ ...base, kind: 'locate', askBy: '2027-01-08', noticeDays: 1 })).toBe(
      'Dig only where buried lines are marked (rebuild, drainage at A, B): 811 is to be called by 2027-01-08, 1 day before. No marks, no digging.',
    );
    expect(reminderSentence({ ...base, kind: 'permit' })).toBe(
      'A permit may be needed for rebuild, drainage at A, B: ask the office for it.',
    );
    expect(reminderSentence({ ...base, kind: 'licensed-applicator' })).toContain('Only a licensed applicator');
    expect(reminderSentence({ ...base, kind: 'frozen-ground' })).toContain('may be frozen');
  });
});

describe('figures of a day sheet', () => {
  it('names the day of the week', () => {
    expect(longDay('2027-01-11')).toBe('Monday, January 11, 2027');
    expect(longDay('1969-12-31')).toBe('Wednesday, December 31, 1969');
    expect(longDay('2028-02-29')).toBe('Tuesday, February 29, 2028');
  });

  it('counts units as people do', () => {
    expect(amountText(1, 'bag')).toBe('1 bag');
    expect(amountText(12, 'bag')).toBe('12 bags');
    expect(amountText(2.3, 'kg')).toBe('2.3 kg');
    expect(amountText(3, 'bucket')).toBe('3 bucket');
    expect(alongText(2.4384, 'us')).toBe('8 ft');
    expect(alongText(2.4384, 'metric')).toBe('2.4 m');
  });
});
