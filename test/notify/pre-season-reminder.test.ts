import { describe, expect, it } from 'vitest';
import type { LateNotice } from '../../src/notify/pre-season-reminder.ts';
import { reminderDraft, seasonToRemindOf } from '../../src/notify/pre-season-reminder.ts';

const ATLANTIC = { opens: '06-01', closes: '11-30', share: 0.9 };
const WINTER = { opens: '10-01', closes: '03-31', share: 0.9 };

describe('seasonToRemindOf', () => {
  it.each([
    ['61 days before it opens', '2027-04-01', null],
    ['60 days before it opens', '2027-04-02', { label: '2027', opens: '2027-06-01' }],
    ['on the eve', '2027-05-31', { label: '2027', opens: '2027-06-01' }],
    ['on the day it opens', '2027-06-01', null],
    ['in the season', '2027-09-10', null],
  ] as const)('answers %s', (_what, today, season) => {
    expect(seasonToRemindOf(ATLANTIC, today, 60)).toEqual(season);
  });

  it('knows a season that wraps the year end, and one that lasts all year', () => {
    expect(seasonToRemindOf(WINTER, '2027-08-20', 60)).toEqual({ label: '2027/28', opens: '2027-10-01' });
    expect(seasonToRemindOf(WINTER, '2027-03-20', 60)).toBeNull();
    const always = { opens: '01-01', closes: '12-31', share: 1 };
    expect(seasonToRemindOf(always, '2027-11-10', 60)).toEqual({ label: '2028', opens: '2028-01-01' });
    expect(seasonToRemindOf(always, '2027-01-01', 60)).toBeNull();
  });

  it('reminds of nothing where the office wants no reminders', () => {
    expect(seasonToRemindOf(ATLANTIC, '2027-05-31', 0)).toBeNull();
  });
});

describe('reminderDraft', () => {
  const season = { label: '2027', opens: '2027-06-01' };
  const told = (matter: string, day: string, occasion = ''): LateNotice => ({ ownerRef: 'ANN', matter, day, occasion });
  const draft = (late: readonly LateNotice[], standing: 'short' | 'closing' | 'short from new' = 'short') =>
    reminderDraft({ standing, season, today: '2027-04-10', told: late });

  it('is due once a season, and not within 90 days of news of a standing', () => {
    expect(draft([])).toEqual({ matter: 'reminder', occasion: 'season 2027' });
    expect(draft([told('reminder', '2027-04-03', 'season 2027')])).toBeNull();
    expect(draft([told('reminder', '2026-04-03', 'season 2026'), told('short', '2026-12-01')])).not.toBeNull();
    expect(draft([told('short', '2027-01-10')])).toBeNull();
    expect(draft([told('short', '2027-01-09')])).not.toBeNull();
  });

  it('is for fences that went short: one that is short from new was told so, once', () => {
    expect(draft([], 'closing')).toBeNull();
    expect(draft([], 'short from new')).toBeNull();
  });
});
