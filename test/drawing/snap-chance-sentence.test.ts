import { describe, expect, it } from 'vitest';
import { snapChanceSentence } from '../../src/drawing/snap-chance-sentence.ts';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import { forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

const old = forecastFixture(MADE_UP_FENCES.old!);
const withChance = (pSnap: number | null, onceInYears: number | null): FenceForecast => ({
  ...old,
  seasons: old.seasons.map((season) => ({
    ...season,
    pSnap: season.season === 1 ? pSnap : season.pSnap,
    line: season.line && { ...season.line, onceInYears },
  })),
});

describe('the chance that wind snaps a fence this season', () => {
  it('is told with why it is not one in the years of the gust', () => {
    expect(snapChanceSentence(withChance(0.29, 36.4), 'en')).toBe(
      'Chance that wind snaps it in season 2027: 29 %, more than 1 in 36, because it may be weaker than its middle value.',
    );
    expect(snapChanceSentence(withChance(0.29, 36.4), 'es')).toBe(
      'Que el viento la rompa en la temporada 2027: 29 %, más que 1 en 36, porque puede ser más débil que su valor medio.',
    );
  });

  it('is told alone where it is about that, or the gust is rarer than it makes sense to say', () => {
    expect(snapChanceSentence(withChance(0.04, 25), 'en')).toBe('Chance that wind snaps it in season 2027: 4 %.');
    expect(snapChanceSentence(withChance(0.02, 4000), 'en')).toBe('Chance that wind snaps it in season 2027: 2 %.');
    expect(snapChanceSentence(withChance(0.9, 1.3), 'en')).toBe('Chance that wind snaps it in season 2027: 90 %.');
    expect(snapChanceSentence(withChance(0.6, 2.43), 'en')).toContain('60 %, more than 1 in 2, because');
    expect(snapChanceSentence(withChance(0.001, null), 'es')).toBe(
      'Que el viento la rompa en la temporada 2027: menos del 1 %.',
    );
  });

  it('is not told where the site has no wind curve', () => {
    expect(snapChanceSentence(withChance(null, null), 'en')).toBeNull();
  });
});
