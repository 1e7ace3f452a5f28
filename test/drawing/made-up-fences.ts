import type { FixtureShape } from './forecast-fixture.ts';

const MPH = 0.44704;

/** Fences whose charts differ most: new, old, short from new, sound for long, without line posts, crossing everything today. */
export const MADE_UP_FENCES: Readonly<Record<string, FixtureShape>> = {
  new: { installed: '2026-09-14', newSnapMps: 103 * MPH, leanMps: 48 * MPH, gustMps: 95 * MPH, rotMmPerYear: 0.6 },
  old: { installed: '2003-05-02', newSnapMps: 129 * MPH, leanMps: 60 * MPH, gustMps: 105 * MPH, rotMmPerYear: 1.1 },
  'short from new': {
    installed: '2015-05-02',
    newSnapMps: 92 * MPH,
    leanMps: 44 * MPH,
    gustMps: 115 * MPH,
    rotMmPerYear: 0.5,
  },
  'turning today': {
    installed: '2012-05-02',
    newSnapMps: 129 * MPH,
    leanMps: 80 * MPH,
    gustMps: 95 * MPH,
    rotMmPerYear: 0.9,
    wrapsYearEnd: true,
  },
  sound: { installed: '2020-05-02', newSnapMps: 150 * MPH, leanMps: 60 * MPH, gustMps: 95 * MPH, rotMmPerYear: 0.12 },
  'without line posts': {
    installed: '2018-05-02',
    newSnapMps: 129 * MPH,
    leanMps: 60 * MPH,
    gustMps: 95 * MPH,
    rotMmPerYear: 1,
    hasLine: false,
  },
};
