import { describe, expect, it } from 'vitest';
import { breakingSentence, endsSentence, standingSentence } from '../../src/drawing/fence-sentences.ts';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import type { FixtureShape } from './forecast-fixture.ts';
import { forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

const sound = forecastFixture(MADE_UP_FENCES.sound as FixtureShape);
const withOnce = (onceInYears: number): FenceForecast => ({
  ...sound,
  seasons: sound.seasons.map((season) => ({ ...season, line: season.line && { ...season.line, onceInYears } })),
});

describe("a fence's sentences", () => {
  it('do not say that it goes short, or no longer holds, where only the margin keeps its standing', () => {
    expect(standingSentence(sound, 'us', 'closing')).toBe(
      'Closing: its line posts hold the design gust of 95 mph, but soon by less than 3 %; it stays counted closing until they hold more.',
    );
    expect(standingSentence(sound, 'us', 'short')).toMatch(
      /^Short: its line posts hold \d+ mph, less than 3 % above the design gust of 95 mph; it stays counted short until they hold more\.$/,
    );
    expect(standingSentence({ ...sound, standing: 'short' }, 'us', 'short from new')).toBe(
      'Short from new: its line posts no longer hold the design gust, and as built they held less than 3 % above it; so it stays counted short from new.',
    );
    expect(endsSentence({ ...sound, endsStanding: 'clear' }, 'us', 'short')).toMatch(
      /^Ends short: its end posts hold \d+ mph, less than 3 % above the design gust of 95 mph; it stays counted short/,
    );
  });

  it('name the season in which it goes short', () => {
    const closing: FenceForecast = { ...sound, standing: 'closing', shortSeason: '2028' };
    expect(standingSentence(closing, 'us')).toBe('Closing: its line posts go short of the design gust in season 2028.');
  });

  it('say how often the gust comes in the words of the messages', () => {
    expect(breakingSentence(withOnce(24.4), 'us')).toContain('one that comes about once in 24 years;');
    expect(breakingSentence(withOnce(1.2), 'us')).toContain('one that comes in most years;');
    expect(breakingSentence(withOnce(5000), 'us')).toContain('one that comes less than once in 1,000 years;');
  });
});
