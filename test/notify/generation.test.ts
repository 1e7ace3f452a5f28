import { expect, it } from 'vitest';
import type { Works } from '../../src/forecast/works.ts';
import { generationOf } from '../../src/notify/generation.ts';

const works = (ref: string, day: string, kind: 'liner' | 'drainage'): Works => ({ ref, day, posts: 'all', kind });
const sleeve = (ref: string, day: string): Works => ({
  ref,
  day,
  posts: [1],
  kind: 'steel-sleeve',
  momentCapacityNm: 3000,
});

it('names the last works that renewed posts, whatever order they come in', () => {
  expect(generationOf([], '2027-01-15')).toBe('as built');
  expect(
    generationOf([works('W-1', '2020-01-01', 'liner'), works('W-2', '2021-01-01', 'drainage')], '2027-01-15'),
  ).toBe('as built');
  const done = [sleeve('W-9', '2019-05-01'), sleeve('W-1', '2022-05-01'), sleeve('W-5', '2020-05-01')];
  expect(generationOf(done, '2027-01-15')).toBe('steel-sleeve W-1 of 2022-05-01');
  expect(generationOf(done, '2021-01-15')).toBe('steel-sleeve W-5 of 2020-05-01');
});
