import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { daySheetHtml } from '../../src/drawing/day-sheet-html.ts';
import { postStrip, postStripKey } from '../../src/drawing/post-strip.ts';
import { widthBar } from '../../src/drawing/width-bar.ts';
import { loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { type CheckedPost, checkList } from '../../src/season/visit/check-list.ts';
import { crewSheets } from '../../src/service/crew-sheets.ts';
import { madeUpVisit, storeVisits, visitingRegister } from '../service/visiting-register.ts';

describe('a day sheet as a page', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  let posts: readonly CheckedPost[];
  let html: string;
  beforeAll(async () => {
    sample = await visitingRegister();
    const works = [
      { kind: 'post-swap', posts: [2, 5], postCount: 2 },
      { kind: 'groundline-treatment', posts: [1], postCount: 1 },
      { kind: 'added-posts', posts: [7], postCount: 1 },
    ] as const;
    const visit = madeUpVisit({ uid: 'V-1', note: '<b>not bold</b>' });
    await storeVisits(sample.register, [{ ...visit, items: [{ ...visit.items[0]!, works }] }]);
    posts = checkList((await loadFenceFacts(sample.register, ['PR-02'])).get('PR-02')!, works, '2027-01-11').posts;
    const sheets = await crewSheets(sample.register, 'north', ['2027-01-11']);
    if (sheets.kind !== 'sheets') throw new Error('the crew of the sample is gone');
    html = daySheetHtml(sheets.sheets, 'en');
  });
  afterAll(() => sample.remove());

  it('has a box for every post, every new post, every material and every reminder, and a place for the hours used', () => {
    const boxes = (html.match(/class="box"/g) ?? []).length;
    // 11 posts, 1 new one, 5 materials, 2 reminders, 1 for all done.
    expect(boxes).toBe(11 + 1 + 5 + 2 + 1);
    expect(html).toContain('People’s hours used (planned 4.6)');
    expect(html).toContain('new post, midway between post 7 and the next');
  });

  it('lets no text of the register become markup', () => {
    expect(html).toContain('&lt;b&gt;not bold&lt;/b&gt;');
    expect(html).not.toContain('<b>not bold</b>');
  });

  it('carries the cautions', () => {
    expect(html).toContain('not a structural certification');
    expect(html).toContain('Treated wood and its dust need care');
  });

  it('draws each post where it stands and says what its marks mean', () => {
    const svg = postStrip(posts, 'Fence "PR-02" & posts');
    expect(svg).toContain('aria-label="Fence &quot;PR-02&quot; &amp; posts"');
    expect(svg.match(/stroke-dasharray/g)).toHaveLength(1);
    expect([...svg.matchAll(/<text[^>]*>(\d+)<\/text>/g)].map(([, number]) => Number(number))).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11,
    ]);
    expect(postStripKey(posts)).toBe(
      'Filled: set anew. Filled at the ground: something to do there. Dashed: one post more. Crossed: broken.',
    );
    expect(postStripKey(posts.filter(({ number }) => number === 3))).toBe('');
  });

  it('leaves numbers out where posts crowd, but none of a post with works', () => {
    const many = Array.from(
      { length: 90 },
      (_, index): CheckedPost => ({
        ...posts[2]!,
        number: index + 1,
        positionM: index,
        todo: index === 40 ? ['post-swap'] : [],
      }),
    );
    const numbers = [...postStrip(many, 'long').matchAll(/<text[^>]*>(\d+)<\/text>/g)].map(([, number]) =>
      Number(number),
    );
    expect(numbers).toContain(41);
    expect(numbers).toContain(1);
    expect(numbers).toContain(90);
    expect(numbers.length).toBeLessThan(40);
  });

  it('draws what is believed of a width inside the width as set, and nothing where there is nothing', () => {
    expect(widthBar(posts.find(({ number }) => number === 5)!)).toBe('');
    const bar = widthBar({ ...posts[1]!, believedWidthMm: { p10: 0, p50: 44.45, p90: 500 } });
    const xs = [...bar.matchAll(/ x1="([\d.]+)"/g)].map(([, x]) => Number(x));
    expect(xs).toEqual([42]);
    expect(bar).not.toMatch(/width="(8[5-9]|9\d|\d{3,})"/);
  });
});
