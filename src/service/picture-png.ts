import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';

const require = createRequire(import.meta.url);
const fontFolder = dirname(require.resolve('@expo-google-fonts/source-sans-3/package.json'));
const FONT_FILES = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'].map((file) =>
  join(fontFolder, file),
);
/** Pixels drawn for each pixel shown, so that fine screens show fine lines. */
const PIXEL_RATIO = 1.6;

/**
 * Rasterises an SVG picture to PNG with the font that ships with the program; system fonts play no part, so that the same
 * picture has the same bytes everywhere.
 * @param widthPx width at which it will be shown [px]
 */
export function picturePng(svg: string, widthPx: number): Buffer {
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: widthPx * PIXEL_RATIO },
    font: { loadSystemFonts: false, fontFiles: FONT_FILES, defaultFontFamily: 'Source Sans 3' },
  });
  return image.render().asPng();
}
