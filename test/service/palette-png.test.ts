import { inflateSync } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { palettePng } from '../../src/service/palette-png.ts';

/** The picture as a browser's decoder reads it: drawn by another program, from the PNG alone. */
function decoded(png: Buffer, width: number, height: number): Buffer {
  const href = `data:image/png;base64,${png.toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image href="${href}" width="${width}" height="${height}" image-rendering="optimizeSpeed"/></svg>`;
  return Buffer.from(new Resvg(svg).render().pixels);
}

const pixels = (colours: readonly (readonly [number, number, number, number])[]) => Uint8Array.from(colours.flat());

describe('palettePng', () => {
  it('keeps every pixel of a picture in few colours, in rows of odd width too', () => {
    const [red, navy, white] = [
      [200, 16, 24, 255],
      [16, 40, 96, 255],
      [255, 255, 255, 255],
    ] as const;
    const rgba = pixels([red, navy, white, navy, red, red, white, white, navy]);
    const png = palettePng({ width: 3, height: 3, rgba });
    expect([...decoded(png, 3, 3)]).toEqual([...rgba]);
  });

  it('lays what is transparent over white, and holds to sixteen colours, each pixel by the nearest', () => {
    const many = Array.from({ length: 400 }, (_, at) => [at % 256, (at * 7) % 256, 90, 255] as const);
    const rgba = pixels([...many.slice(0, 399), [0, 0, 0, 0]]);
    const png = palettePng({ width: 20, height: 20, rgba });
    const seen = decoded(png, 20, 20);
    const colours = new Set(Array.from({ length: 400 }, (_, at) => seen.readUInt32BE(4 * at)));
    expect(colours.size).toBeLessThanOrEqual(16);
    expect(
      palettePng({ width: 1, height: 1, rgba: pixels([[0, 0, 0, 0]]) }).includes(Buffer.from([255, 255, 255])),
    ).toBe(true);
  });

  it('is the same bytes each time, and packs two pixels into a byte', () => {
    const rgba = pixels(Array.from({ length: 64 }, () => [10, 20, 30, 255] as const));
    const png = palettePng({ width: 8, height: 8, rgba });
    expect(palettePng({ width: 8, height: 8, rgba }).equals(png)).toBe(true);
    const from = png.indexOf('IDAT') + 4;
    expect(inflateSync(png.subarray(from)).length).toBe(8 * (1 + 4));
  });
});
