import { picturePng } from '../../src/service/picture-png.ts';
import { HINDCAST_WIDTHS, hindcastPicture } from './hindcast-picture.ts';

const FOLDER = new URL('../../docs/pictures/', import.meta.url);

/** A picture of the page as committed, and what it is drawn as today. */
export interface PageFile {
  readonly name: string;
  readonly url: URL;
  readonly bytes: () => Buffer;
}

/** The generated pictures of the page, each as SVG and as PNG. */
export const PICTURES: readonly PageFile[] = (
  [
    ['validation-hindcast', HINDCAST_WIDTHS.wide],
    ['validation-hindcast-phone', HINDCAST_WIDTHS.phone],
  ] as const
).flatMap(([name, widthPx]): PageFile[] => [
  { name: `${name}.svg`, url: new URL(`${name}.svg`, FOLDER), bytes: () => Buffer.from(hindcastPicture(widthPx)) },
  {
    name: `${name}.png`,
    url: new URL(`${name}.png`, FOLDER),
    bytes: () => picturePng(hindcastPicture(widthPx), widthPx),
  },
]);
