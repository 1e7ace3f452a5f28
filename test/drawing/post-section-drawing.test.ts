import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sectionArea } from '../../src/capacity/section-properties.ts';
import { drawPostSections, postSectionSummary } from '../../src/drawing/post-section-drawing.ts';
import { lossAt } from '../../src/drawing/post-section-words.ts';
import { SOUND_CONDITION } from '../../src/forecast/post-state.ts';
import { faultsOf, numberOf, shapesOf } from './drawn-shapes.ts';
import { drawnTexts } from './drawn-text.ts';
import { anyPost, madeUpMoment, madeUpPost } from './made-up-posts.ts';

const OPTIONS = { units: 'us', language: 'en', widthPx: 680 } as const;
const THREE = [
  madeUpMoment({ depthMm: { p10: 3, p50: 6, p90: 11 }, oneFaceMm: 4 }),
  madeUpMoment({ label: '2032', season: 6, depthMm: { p10: 6, p50: 12, p90: 20 }, oneFaceMm: 5 }),
  madeUpMoment({ label: '2037', season: 11, depthMm: { p10: 9, p50: 18, p90: 30 }, oneFaceMm: 6 }),
];

const area = (element: string): number =>
  element.startsWith('<circle')
    ? Math.PI * numberOf(element, 'r') ** 2
    : numberOf(element, 'width') * numberOf(element, 'height');

describe('the drawing of a post cut through at the ground', () => {
  it('keeps areas to scale: the sound wood to the post as set as in the capacity, in every panel', () => {
    for (const section of [
      { kind: 'rectangular', widthMm: 88.9, depthMm: 139.7 },
      { kind: 'round', diameterMm: 120 },
    ] as const) {
      const post = madeUpPost({ section, moments: THREE });
      const svg = drawPostSections(post, OPTIONS);
      const [built, middle, worst] = ['ps-built', 'ps-middle', 'ps-sound'].map((name) => shapesOf(svg, name));
      const whole = sectionArea(section, { depthMm: 0, oneFaceMm: 0, cavityDiameterMm: 0 });
      for (const [index, moment] of THREE.entries()) {
        const share = (element: string): number => area(element) / area(built![index]!);
        expect(share(middle![index]!)).toBeCloseTo(sectionArea(section, lossAt(moment, 'p50')) / whole, 3);
        expect(share(worst![index]!)).toBeCloseTo(sectionArea(section, lossAt(moment, 'p90')) / whole, 3);
      }
    }
  });

  it('draws every panel at one scale, so that a post is as large in ten seasons as it was set', () => {
    const svg = drawPostSections(madeUpPost({ moments: THREE }), OPTIONS);
    const widths = shapesOf(svg, 'ps-built').map((element) => numberOf(element, 'width'));
    expect(widths).toHaveLength(3);
    expect(new Set(widths).size).toBe(1);
  });

  it('takes a cut off one face only', () => {
    const svg = drawPostSections(madeUpPost({ moments: [madeUpMoment({ oneFaceMm: 10 })] }), OPTIONS);
    const [built, middle] = ['ps-built', 'ps-middle'].map((name) => shapesOf(svg, name)[0]!);
    const gap = (from: number, to: number): number => Math.round((to - from) * 10) / 10;
    const pxPerMm = numberOf(built!, 'width') / 88.9;
    const above = gap(numberOf(built!, 'y'), numberOf(middle!, 'y'));
    const left = gap(numberOf(built!, 'x'), numberOf(middle!, 'x'));
    expect(left / pxPerMm).toBeCloseTo(8, 1);
    expect(above / pxPerMm).toBeCloseTo(18, 1);
    expect(svg).toContain('trimmers have cut off one face');
  });

  it('draws a cavity to scale and a sleeve around, and says what they are', () => {
    const post = madeUpPost({
      sleeved: true,
      condition: { ...SOUND_CONDITION, cavityDiameterMm: 20 },
      moments: [madeUpMoment({ cavityDiameterMm: 20 })],
    });
    const svg = drawPostSections(post, OPTIONS);
    const pxPerMm = numberOf(shapesOf(svg, 'ps-built')[0]!, 'width') / 88.9;
    expect(numberOf(shapesOf(svg, 'ps-cavity')[0]!, 'r')).toBeCloseTo(10 * pxPerMm, 1);
    expect(shapesOf(svg, 'ps-sleeve')).toHaveLength(1);
    expect(svg).toContain('cavity as found');
    expect(svg).toContain('steel sleeve');
  });

  it('says in words what it shows: size, strength and its range, a season at a time', () => {
    const said = postSectionSummary(madeUpPost({ moments: THREE }), OPTIONS);
    expect(said).toContain('2027, now: 3.0 × 2.9 in sound, 55 % of its strength (32–75 %).');
    expect(said).toContain('2037, in 10 seasons: 2.1 × 1.8 in sound');
    expect(drawPostSections(madeUpPost({ moments: THREE }), OPTIONS)).toContain(said);
  });

  it('gives no range where all of it is nothing', () => {
    const moments = THREE.map((moment) => ({ ...moment, strengthLeft: { p10: 0, p50: 0.001, p90: 0.004 } }));
    const said = postSectionSummary(madeUpPost({ moments }), OPTIONS);
    expect(said).toContain('under 1 % of its strength.');
    expect(said).not.toContain('(0–0 %)');
  });

  it('crosses out a broken post and gives it no strength', () => {
    const post = madeUpPost({ condition: { ...SOUND_CONDITION, broken: true } });
    expect(shapesOf(drawPostSections(post, OPTIONS), 'ps-crossed')).toHaveLength(1);
    expect(postSectionSummary(post, OPTIONS)).toBe('2027, now: broken: holds nothing.');
  });

  it('says of a shell that is too thin, and of a post without sound wood, that it counts as nothing', () => {
    const said = (changes: Parameters<typeof madeUpMoment>[0]): string =>
      postSectionSummary(madeUpPost({ moments: [madeUpMoment(changes)] }), OPTIONS);
    expect(said({ depthMm: { p10: 20, p50: 26, p90: 30 }, cavityDiameterMm: 34 })).toContain('shell too thin to count');
    expect(said({ depthMm: { p10: 40, p50: 44.45, p90: 44.45 } })).toContain('nothing sound');
  });

  it('speaks Spanish', () => {
    const svg = drawPostSections(madeUpPost({ moments: THREE }), { ...OPTIONS, units: 'metric', language: 'es' });
    expect(svg).toContain('Poste 1 cortado a ras de suelo, a escala');
    expect(svg).toContain('en 5 temporadas');
    expect(
      drawnTexts(svg)
        .map(({ text }) => text)
        .join(' '),
    ).not.toMatch(/sound|seasons|strength/);
  });

  it('is empty for a post that does not stand in any season asked for', () => {
    expect(drawPostSections(madeUpPost({ moments: [] }), OPTIONS)).toBe('');
  });

  it('never draws outside its frame, nor a number that is none, nor text over text', () => {
    fc.assert(
      fc.property(
        anyPost,
        fc.constantFrom(300, 358, 680, 1080),
        fc.constantFrom('en' as const, 'es' as const),
        fc.constantFrom('us' as const, 'metric' as const),
        (post, widthPx, language, units) => {
          const svg = drawPostSections(post, { widthPx, language, units });
          expect(faultsOf(svg)).toEqual([]);
          const texts = drawnTexts(svg);
          for (const [index, one] of texts.entries()) {
            for (const other of texts.slice(index + 1)) {
              const apart =
                one.box.right <= other.box.left + 1 ||
                other.box.right <= one.box.left + 1 ||
                one.box.bottom <= other.box.top + 2 ||
                other.box.bottom <= one.box.top + 2;
              if (!apart) expect(`${one.text} over ${other.text}`).toBe('');
            }
          }
        },
      ),
    );
  });
});
