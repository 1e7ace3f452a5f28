import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PostSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionArea } from '../../src/capacity/section-properties.ts';
import { type SoundCore, soundCore } from '../../src/drawing/sound-core.ts';

const areaOf = (core: SoundCore): number =>
  core.kind === 'nothing' ? 0 : core.kind === 'circle' ? Math.PI * core.radius ** 2 : core.width * core.height;

const sections = fc.oneof(
  fc.record({
    kind: fc.constant('rectangular' as const),
    widthMm: fc.double({ min: 30, max: 300, noNaN: true }),
    depthMm: fc.double({ min: 30, max: 300, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('round' as const), diameterMm: fc.double({ min: 30, max: 300, noNaN: true }) }),
);
const losses = fc.record({
  depthMm: fc.double({ min: 0, max: 160, noNaN: true }),
  oneFaceMm: fc.double({ min: 0, max: 160, noNaN: true }),
});

describe('the sound core of a section', () => {
  it('takes rot off every face and the cut off one, and is the section itself where nothing is lost', () => {
    const section: PostSection = { kind: 'rectangular', widthMm: 89, depthMm: 140 };
    expect(soundCore(section, NO_LOSS)).toEqual({ kind: 'rectangle', x: -44.5, y: -70, width: 89, height: 140 });
    expect(soundCore(section, { depthMm: 10, oneFaceMm: 6 })).toEqual({
      kind: 'rectangle',
      x: -34.5,
      y: -54,
      width: 69,
      height: 114,
    });
    expect(soundCore({ kind: 'round', diameterMm: 100 }, { depthMm: 10, oneFaceMm: 6 })).toEqual({
      kind: 'circle',
      x: 0,
      y: 3,
      radius: 37,
    });
  });

  it('has the area that the capacity is worked out from, whatever is lost', () => {
    fc.assert(
      fc.property(sections, losses, (section, loss) => {
        expect(areaOf(soundCore(section, loss))).toBeCloseTo(sectionArea(section, { ...loss, cavityDiameterMm: 0 }), 6);
      }),
    );
  });

  it('lies within the post as set', () => {
    fc.assert(
      fc.property(sections, losses, (section, loss) => {
        const core = soundCore(section, loss);
        if (core.kind === 'nothing') return;
        const [halfX, halfY] =
          section.kind === 'round'
            ? [section.diameterMm / 2, section.diameterMm / 2]
            : [section.widthMm / 2, section.depthMm / 2];
        const box =
          core.kind === 'circle'
            ? [core.x - core.radius, core.y - core.radius, core.x + core.radius, core.y + core.radius]
            : [core.x, core.y, core.x + core.width, core.y + core.height];
        expect(box[0]).toBeGreaterThanOrEqual(-halfX - 1e-9);
        expect(box[1]).toBeGreaterThanOrEqual(-halfY - 1e-9);
        expect(box[2]).toBeLessThanOrEqual(halfX + 1e-9);
        expect(box[3]).toBeLessThanOrEqual(halfY + 1e-9);
      }),
    );
  });
});
