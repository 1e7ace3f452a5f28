import { describe, expect, it } from 'vitest';
import { FENCE_SENTENCES } from '../../src/drawing/fence-sentences-es.ts';
import { drawFenceYears } from '../../src/drawing/fence-years.ts';
import { heldText, isNextToNothing } from '../../src/drawing/held-text.ts';
import { fenceSentences } from '../../src/drawing/report/fence-sentences-in.ts';
import { mpsFromKmh, mpsFromMph } from '../../src/units/speed.ts';
import { forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

/** A fence whose posts have been rotted through for years. */
const ROTTEN = forecastFixture({ ...MADE_UP_FENCES.old!, installed: '1985-05-02', rotMmPerYear: 3, newSnapMps: 8 });

describe('the gust that a fence holds, as a text', () => {
  it('is a speed, and under 5 mph or 8 km/h only that it is next to nothing', () => {
    expect(heldText(mpsFromMph(84), 'us', 'en')).toBe('84 mph');
    expect(heldText(mpsFromMph(4.6), 'us', 'en')).toBe('5 mph');
    expect(heldText(mpsFromMph(4.4), 'us', 'en')).toBe('under 5 mph');
    expect(heldText(0, 'us', 'es')).toBe('menos de 5 mph');
    expect(heldText(mpsFromKmh(7), 'metric', 'en')).toBe('under 8 km/h');
    expect(isNextToNothing(mpsFromKmh(8), 'metric')).toBe(false);
  });

  it('is never a gust of nothing in what a page or a report opens with', () => {
    const english = FENCE_SENTENCES.en.breaking(ROTTEN, 'us');
    expect(english).toBe(
      "Next to nothing sound is left to hold it: any wind may bring it down. Its site's design gust is 105 mph.",
    );
    const spanish = FENCE_SENTENCES.es.breaking(ROTTEN, 'metric');
    expect(spanish).toBe(
      'Casi nada sano queda que la sostenga: cualquier viento puede tirarla. La ráfaga de diseño de su sitio es 169 km/h.',
    );
    for (const language of ['en', 'es'] as const) {
      const told = { forecast: ROTTEN, standing: 'short', endsStanding: null, units: 'us' } as const;
      const { breaking } = fenceSentences(told, language);
      expect(breaking).toMatch(/any wind may bring it down|cualquier viento puede tirarla/);
      expect(breaking).not.toMatch(/\b0 mph/);
    }
  });

  it('is not nothing in what a chart says to whoever cannot see it', () => {
    const svg = drawFenceYears(ROTTEN, { units: 'us', language: 'en', widthPx: 960, heightPx: 440 });
    expect(/<desc[^>]*>([^<]*)/.exec(svg)?.[1]).toContain('it snaps at under 5 mph');
  });
});
