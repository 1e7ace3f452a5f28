import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type RenderedImage, Resvg } from '@resvg/resvg-js';
import { sha256 } from './canonical-json.ts';
import { palettePng } from './palette-png.ts';

const require = createRequire(import.meta.url);
const fontFolder = dirname(require.resolve('@expo-google-fonts/source-sans-3/package.json'));
const FONT_FILES = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'].map((file) =>
  join(fontFolder, file),
);
/** Pixels drawn for each pixel shown, so that fine screens show fine lines; fewer where a mail has several pictures. */
const PIXEL_RATIO = { alone: 1.6, several: 1.25 } as const;

function drawn(svg: string, widthPx: number): RenderedImage {
  return new Resvg(svg, {
    fitTo: { mode: 'width', value: Math.round(widthPx) },
    font: { loadSystemFonts: false, fontFiles: FONT_FILES, defaultFontFamily: 'Source Sans 3' },
  }).render();
}

/**
 * Rasterises an SVG picture to PNG with the font that ships with the program; system fonts play no part, so that the same
 * picture has the same bytes everywhere.
 * @param widthPx width at which it will be shown [px]
 */
export function picturePng(svg: string, widthPx: number): Buffer {
  return drawn(svg, widthPx * PIXEL_RATIO.alone).asPng();
}

function drawnInFewColours(svg: string, widthPx: number): Buffer {
  const { width, height, pixels } = drawn(svg, widthPx);
  return palettePng({ width, height, rgba: pixels });
}

/** Pictures of mails drawn last, by what they show: whoever looks at a message again, or with another sentence, need not wait for them. */
const drawnLast = new Map<string, Buffer>();
const MOST_KEPT = 64;

/**
 * As `picturePng`, in a quarter of the bytes and sixteen colours: what a mail can carry.
 * @param widthPx width at which it will be shown [px]
 * @param among whether its mail has other pictures
 */
export function mailPicturePng(svg: string, widthPx: number, among: keyof typeof PIXEL_RATIO): Buffer {
  const key = sha256(`${widthPx} ${among} ${svg}`);
  const known = drawnLast.get(key);
  drawnLast.delete(key);
  const png = known ?? drawnInFewColours(svg, widthPx * PIXEL_RATIO[among]);
  drawnLast.set(key, png);
  const [oldest] = drawnLast.keys();
  if (drawnLast.size > MOST_KEPT && oldest !== undefined) drawnLast.delete(oldest);
  return png;
}
