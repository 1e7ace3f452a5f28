import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { loadFenceFacts } from '../../../src/register/fence-facts-store.ts';
import { newPostWood } from '../../../src/season/planned-works.ts';
import { believedWidths } from '../../../src/season/visit/believed-width.ts';
import { checkList } from '../../../src/season/visit/check-list.ts';
import type { VisitWorks } from '../../../src/season/visit/visit.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { visitingRegister } from '../../service/visiting-register.ts';

const DAY = '2027-01-11';
const works = (kind: VisitWorks['kind'], posts: readonly number[]): VisitWorks => ({
  kind,
  posts,
  postCount: posts.length,
});

describe('a fence post by post', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  let facts: FenceFacts;
  beforeAll(async () => {
    sample = await visitingRegister();
    facts = (await loadFenceFacts(sample.register, ['PR-02'])).get('PR-02')!;
  });
  afterAll(() => sample.remove());

  const post = (number: number, list = checkList(facts, [], DAY)) => list.posts.find((each) => each.number === number)!;

  it('has every post where it stands, from end A', () => {
    const { posts } = checkList(facts, [], DAY);
    expect(posts.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    // Eighty feet in bays of eight.
    expect(posts[10]!.positionM).toBeCloseTo(24.384, 6);
    expect(posts[1]!.positionM).toBeCloseTo(2.4384, 6);
  });

  it('says what was last read, and what was found and not mended', () => {
    expect(post(2).lastReading).toMatchObject({ day: '2026-05-04', method: 'caliper', reading: { leanDegrees: 2 } });
    expect(post(3).lastReading).toBeNull();
    expect(post(5).condition.broken).toBe(true);
    expect(checkList(facts, [], DAY).findings[0]).toContain('Post 5 is recorded broken');
  });

  it('does not pass what was read of an old post on to its successor', () => {
    const swapped: FenceFacts = {
      ...facts,
      works: [
        ...facts.works,
        {
          ref: 'W',
          day: '2026-06-01',
          kind: 'post-swap',
          posts: [2],
          wood: newPostWood(facts.wood, SHIPPED_CATALOGUE['post-swap'].build),
        },
      ],
    };
    expect(post(2, checkList(swapped, [], DAY)).lastReading).toBeNull();
    expect(post(6, checkList(swapped, [], DAY)).lastReading?.reading.leanDegrees).toBe(0);
    // Before the swap the old post stands.
    expect(post(2, checkList(swapped, [], '2026-05-20')).lastReading?.day).toBe('2026-05-04');
  });

  it('takes the last of two readings, and none that lies ahead', () => {
    const first = facts.inspections[0]!;
    const again: FenceFacts = { ...facts, inspections: [{ ...first, ref: 'I-2', day: '2026-10-01' }, first] };
    expect(post(2, checkList(again, [], DAY)).lastReading?.day).toBe('2026-10-01');
    expect(post(2, checkList(again, [], '2026-09-30')).lastReading?.day).toBe('2026-05-04');
  });

  it('lists what is done at each post in the order in which it is done', () => {
    const list = checkList(
      facts,
      [works('footing-reset', [2, 3]), works('post-swap', [2]), works('drainage', [1, 2, 3])],
      DAY,
    );
    expect(post(1, list).todo).toEqual([]);
    expect(post(2, list).todo).toEqual(['footing-reset', 'post-swap']);
    expect(post(3, list).todo).toEqual(['footing-reset']);
  });

  it('sets added posts into the bays that are named by their lower number', () => {
    const list = checkList(facts, [works('added-posts', [1, 4])], DAY);
    expect(list.posts.filter(({ newPostAfter }) => newPostAfter).map(({ number }) => number)).toEqual([1, 4]);
    expect(list.posts.every(({ todo }) => todo.length === 0)).toBe(true);
  });

  it('believes less width of an old fence as it grows older, and never more than was set', () => {
    const [now, later] = [believedWidths(facts, DAY), believedWidths(facts, '2035-01-11')];
    for (const [number, band] of now) {
      expect(band.p10).toBeLessThanOrEqual(band.p50);
      expect(band.p50).toBeLessThanOrEqual(band.p90);
      expect(band.p90).toBeLessThanOrEqual(88.9);
      expect(later.get(number)!.p50).toBeLessThan(band.p50);
    }
  });

  it('believes near what a caliper just read, and surer of it than of a post that nobody read', () => {
    const widths = believedWidths(facts, '2026-05-05');
    const [read, sound, unread] = [widths.get(2)!, widths.get(6)!, widths.get(3)!];
    // 2.4 in and 3.1 in were read.
    expect(Math.abs(read.p50 - 60.96)).toBeLessThan(2);
    expect(Math.abs(sound.p50 - 78.74)).toBeLessThan(2);
    expect(read.p90 - read.p10).toBeLessThan((unread.p90 - unread.p10) / 4);
  });

  it('has no width for a broken post, and none for a post that does not rot', () => {
    expect(believedWidths(facts, DAY).has(5)).toBe(false);
    const steel: FenceFacts = {
      ...facts,
      inspections: [],
      wood: { ...facts.wood, momentCapacityNm: 9000, treatmentClass: 'does-not-rot' },
    };
    expect(believedWidths(steel, DAY).size).toBe(0);
  });
});
