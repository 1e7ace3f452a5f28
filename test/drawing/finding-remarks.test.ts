import { describe, expect, it } from 'vitest';
import { latestFindings, remarksBesideFindings } from '../../src/drawing/finding-remarks.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { groundlineOf } from '../forecast/evidence/read-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../forecast/example-fence.ts';

const found = (day: string, posts: readonly number[]): FenceFacts['inspections'][number] => ({
  ref: day,
  day,
  method: 'awl-or-probe',
  readings: posts.map((post) => ({ ...groundlineOf(post, { kind: 'broken' }), closedOff: true })),
});
const forecastOf = (facts: FenceFacts) => forecastFence(facts, 2027, DEFAULT_SETTINGS);

describe('what was found at the posts', () => {
  it('stands with the most pressing first, and out of the other remarks', () => {
    const facts = { ...EXAMPLE_FENCE, inspections: [found('2026-05-12', [4])] };
    const forecast = forecastOf(facts);
    const findings = latestFindings(facts, forecast);
    expect(findings[0]).toBe('Post 4 is recorded dangerous and closed off: keep people away.');
    expect(findings[1]).toMatch(/^Post 4 is recorded broken/);
    expect(forecast.remarks).toEqual(expect.arrayContaining([...findings]));
    expect(remarksBesideFindings(facts, forecast)).toEqual(forecastOf(EXAMPLE_FENCE).remarks);
  });

  it('is told at once where it was found after the season opened, by the forecast too', () => {
    const facts = { ...EXAMPLE_FENCE, inspections: [found('2026-05-12', [4]), found('2027-04-02', [7])] };
    const forecast = forecastOf(facts);
    expect(forecast.found.closedOff).toEqual([4, 7]);
    expect(latestFindings(facts, forecast)[0]).toMatch(/^Posts 4, 7 are recorded dangerous and closed off/);
    expect(remarksBesideFindings(facts, forecast).join()).not.toContain('closed off');
  });

  it('is gone once works have mended it', () => {
    const facts: FenceFacts = {
      ...EXAMPLE_FENCE,
      inspections: [found('2027-04-02', [7])],
      works: [{ ref: 'W', kind: 'post-swap', day: '2027-04-20', posts: [7], wood: PINE_4X4 }],
    };
    expect(latestFindings(facts, forecastOf(facts))).toEqual([]);
  });
});
