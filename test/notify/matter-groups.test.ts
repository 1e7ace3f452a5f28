import { describe, expect, it } from 'vitest';
import {
  groupOf,
  MATTER_GROUP_WORDS,
  MATTER_GROUPS,
  ORDINARY_GROUPS,
  toldByWishes,
} from '../../src/notify/matter-groups.ts';
import { OWNER_MATTERS } from '../../src/notify/matter-rules.ts';

describe('the groups of matters', () => {
  it('hold every matter that owners are told of, danger alone in its own', () => {
    for (const matter of OWNER_MATTERS) expect(MATTER_GROUPS, matter).toContain(groupOf(matter));
    expect(OWNER_MATTERS.filter((matter) => groupOf(matter) === 'danger')).toEqual(['dangerous']);
    expect(ORDINARY_GROUPS).not.toContain('danger');
    expect(groupOf('nothing of the kind')).toBeNull();
  });

  it('are told apart by their words in both languages', () => {
    for (const language of ['en', 'es'] as const) {
      expect(new Set(Object.values(MATTER_GROUP_WORDS[language])).size).toBe(MATTER_GROUPS.length);
    }
  });

  it.each([
    ['short', null, '2027-01-01', 'yes'],
    ['short', { muted: [], pausedUntil: null }, '2027-01-01', 'yes'],
    ['short', { muted: ['standing'], pausedUntil: null }, '2027-01-01', 'no'],
    ['short', { muted: ['marks'], pausedUntil: null }, '2027-01-01', 'yes'],
    ['short', { muted: [], pausedUntil: '2027-01-01' }, '2027-01-01', 'later'],
    ['short', { muted: [], pausedUntil: '2027-01-01' }, '2027-01-02', 'yes'],
    ['short', { muted: ['standing'], pausedUntil: '2027-01-01' }, '2027-01-01', 'no'],
    ['dangerous', { muted: [...ORDINARY_GROUPS], pausedUntil: '2027-01-01' }, '2027-01-01', 'yes'],
    ['dangerous', { muted: ['danger'], pausedUntil: null }, '2027-01-01', 'no'],
    ['a matter of tomorrow', { muted: [...MATTER_GROUPS], pausedUntil: null }, '2027-01-01', 'yes'],
  ] as const)('%s with %o on %s: %s', (matter, wishes, today, told) => {
    expect(toldByWishes(matter, wishes, today)).toBe(told);
  });
});
