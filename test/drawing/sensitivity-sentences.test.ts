import { describe, expect, it } from 'vitest';
import type { SensitivityRow } from '../../src/drawing/sensitivity-rows.ts';
import { knownText, unknownFirst, weighsMostSentences } from '../../src/drawing/sensitivity-sentences.ts';
import type { UnknownInput } from '../../src/forecast/fence-forecast.ts';
import type { Sensitivity, SensitivityBar, SensitivityEnd } from '../../src/forecast/sensitivity.ts';
import type { NarrowedBy } from '../../src/forecast/sensitivity-unknowns.ts';

const end = (text: string, yearsAhead: number): SensitivityEnd => ({
  yearsAhead,
  fromNew: false,
  label: { us: text, metric: text },
});
/** A bar of so many years about year 10; recorded where nothing narrows it. */
const bar = (input: string, swingYears: number, narrowedBy: NarrowedBy | null = null): SensitivityBar => ({
  input,
  kind: narrowedBy === null ? 'recorded' : 'unknown',
  narrowedBy,
  low: end('low', 10 - swingYears / 2),
  high: end('high', 10 + swingYears / 2),
  swingYears,
});
const made = (bars: readonly SensitivityBar[], leanSwings: Sensitivity['leanSwings'] = []): Sensitivity => ({
  fenceRef: 'EX-1',
  fromDay: '2027-03-01',
  seasonOneLabel: '2027',
  baseline: { yearsAhead: 10, fromNew: false, label: 'short from 2037' },
  bars,
  without: [],
  leanSwings,
});
const ALL_RECORDED = 'Every input that can be recorded is.';

describe('what weighs most', () => {
  it('names the largest of all inputs first, and parts what an inspection can narrow from what none can', () => {
    const bars = [
      bar('rot pace', 12, 'rot readings'),
      bar('exposure category', 9),
      bar('install date', 4, 'papers'),
      bar('shelter and shape', 3, 'storms only'),
      bar('embedment', 2.5, 'digging'),
      bar('fibre strength', 2, 'storms only'),
      bar('grade', 1.5),
    ];
    expect(weighsMostSentences(made(bars), [], 'us')).toEqual([
      'Rot pace weighs most of all on when this fence goes short: it moves it by 12 years and is not known; an inspection narrows it by readings of rot depth.',
      'Not known too, and to be narrowed by an inspection or papers: install date (4.0 years), embedment (2.5 years).',
      'Not known too, and narrowed by no inspection, only by storms: shelter and shape (3.0 years), fibre strength (2.0 years).',
      'Of what is recorded, exposure category weighs most: 9.0 years if its record is as far off as is plausible.',
      ALL_RECORDED,
    ]);
  });

  it('says so where a recorded input weighs more than all that is not known', () => {
    const bars = [bar('exposure category', 9), bar('shelter and shape', 3, 'storms only'), bar('grade', 2)];
    expect(weighsMostSentences(made(bars), [], 'us')).toEqual([
      'Exposure category weighs most of all on when this fence goes short: it is recorded, but moves it by 9.0 years if its record is as far off as is plausible.',
      'Of what is not known, shelter and shape weighs most: 3.0 years; no inspection narrows it, only what storms do to the fence.',
      ALL_RECORDED,
    ]);
    expect(weighsMostSentences(made([bar('design gust', 3)]), [], 'us')[1]).toBe('Nothing that is not known moves it.');
  });

  it('speaks of nothing recorded where only what is not known moves it, and of nothing at all where nothing does', () => {
    expect(weighsMostSentences(made([bar('rot pace', 12, 'rot readings')]), [], 'us')).toHaveLength(2);
    expect(weighsMostSentences(made([]), [], 'us')).toEqual([
      'No input, moved by itself, changes when this fence goes short (2037).',
      ALL_RECORDED,
    ]);
  });

  it('names what weighs most on the lean speed, in the units of the site', () => {
    const lean = [
      { input: 'footing strength', narrowedBy: 'storms only', swingMps: 10 },
      { input: 'embedment', narrowedBy: 'digging', swingMps: 5 },
    ] as const;
    // 10 m/s = 36 km/h.
    expect(weighsMostSentences(made([], lean), [], 'metric')[1]).toBe(
      'On the lean speed footing strength weighs most of what is not known: 36 km/h between its likely ends; no inspection narrows it, only what storms do to the fence.',
    );
  });

  it('ends with what the register could be told, and how to find it out', () => {
    const depth: UnknownInput = { input: 'embedment', standsIn: 'about 24 in', moves: 'lean', swingMps: 10 };
    const species: UnknownInput = { input: 'species', standsIn: 'a low strength', moves: 'snap', swingMps: 5 };
    expect(weighsMostSentences(made([]), [depth], 'metric').at(-1)).toBe(
      'One input could be recorded and is not. The embedment: about 24 in stands in. It moves the lean speed by 36 km/h between its likely ends. An inspection measures it by digging at a post.',
    );
    expect(weighsMostSentences(made([]), [depth, species], 'metric').at(-1)).toMatch(
      /^Of 2 inputs that could be recorded and are not, one weighs most\. The embedment: /,
    );
  });
});

it('puts rows of what is not known first and keeps their order', () => {
  const row = (input: string, kind: SensitivityRow['kind']) => ({ input, kind }) as SensitivityRow;
  const rows = [row('a', 'recorded'), row('b', 'unknown'), row('c', 'recorded'), row('d', 'unknown')];
  expect(unknownFirst(rows).map(({ input }) => input)).toEqual(['b', 'd', 'a', 'c']);
  expect(knownText({ narrowedBy: null })).toBe('recorded');
  expect(knownText({ narrowedBy: 'papers' })).toBe('not known; papers of the build settle it');
});
