import { describe, expect, it } from 'vitest';
import { unknownSentence, wayToKnowSentence } from '../../src/drawing/unknown-sentence.ts';

const embedment = { input: 'embedment', standsIn: '24 in', moves: 'lean' } as const;

describe('what a fence does not know', () => {
  it('moves the answer by a speed in the units of the site', () => {
    expect(unknownSentence({ ...embedment, swingMps: 4.4704 }, 'us')).toBe(
      'The embedment: 24 in stands in. It moves the lean speed by 10 mph between its likely ends.',
    );
  });

  it('hardly moves it where the shown number would stay the same', () => {
    expect(unknownSentence({ ...embedment, swingMps: 0.2 }, 'us')).toBe(
      'The embedment: 24 in stands in. It hardly moves the lean speed.',
    );
    expect(unknownSentence({ ...embedment, swingMps: 0.27 }, 'metric')).toContain('hardly');
    expect(unknownSentence({ ...embedment, swingMps: 0.3 }, 'metric')).toContain('by 1 km/h');
  });

  it('can be told by papers, or by an inspection that looks or digs', () => {
    expect(wayToKnowSentence({ input: 'install date' })).toBe('Papers of the build settle it.');
    expect(wayToKnowSentence(embedment)).toBe('An inspection measures it by digging at a post.');
    for (const input of ['treatment class', 'species', 'footing', 'end kind'] as const) {
      expect(wayToKnowSentence({ input })).toMatch(/inspection/);
    }
  });
});
