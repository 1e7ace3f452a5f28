import { expect, it } from 'vitest';
import { judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import type { Works } from '../../src/forecast/works.ts';
import { doneBy, worksGain, worksToTell } from '../../src/notify/works-gain.ts';
import { noticedFence } from './noticed-fence.ts';

const liner = (ref: string, day: string): Works => ({ ref, day, posts: 'all', kind: 'liner' });
const works = [
  liner('OLD', '2025-05-01'),
  liner('KNOWN', '2026-10-01'),
  liner('NEW', '2026-12-20'),
  liner('AHEAD', '2027-02-01'),
];

it('tells works of the last year that were not on record, and none before they are done', () => {
  expect(worksToTell(works, ['KNOWN'], '2027-01-15').map(({ ref }) => ref)).toEqual(['NEW']);
  expect(worksToTell(works, ['KNOWN', 'NEW'], '2027-02-01').map(({ ref }) => ref)).toEqual(['AHEAD']);
  expect(doneBy(works, '2027-01-15')).toHaveLength(3);
});

it('tells nothing where the register did not note yet which works it knew', () => {
  expect(worksToTell(works, null, '2027-01-15')).toEqual([]);
});

it('holds the same season with the works against it without them', () => {
  const [with_, without] = [noticedFence({ installed: '2024-04-15' }).forecast, noticedFence().forecast];
  const gain = worksGain([liner('B', '2026-12-20'), liner('A', '2026-12-01')], with_, without);
  expect(gain.works.map(({ day }) => day)).toEqual(['2026-12-01', '2026-12-20']);
  expect([gain.season, gain.laterSeason]).toEqual(['2027', '2032']);
  expect(gain.with.snapMps).toBe(judgedGroup(seasonOne(with_)).snapMps.p50);
  expect(gain.without?.snapMps).toBe(judgedGroup(seasonOne(without)).snapMps.p50);
  expect(gain.with.laterSnapMps).toBeGreaterThan(gain.without?.laterSnapMps ?? Number.POSITIVE_INFINITY);
  expect(worksGain([], with_, null).without).toBeNull();
});
