import { deflateSync } from 'node:zlib';

/** Colours of a picture at most: chart lines, text and the shades at their edges need no more. */
const MOST_COLOURS = 16;
/** Step of the grid that colours are first rounded to, of 255 [-]; finer steps cannot be seen at an edge. */
const COLOUR_STEP = 8;

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** Remainders of single bytes. Source: PNG specification, third edition (W3C), annex D. */
const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (CRC_TABLE[(rest ^ byte) & 0xff] ?? 0) ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}

/** A picture as rows of red, green, blue and opacity, a byte each. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

function chunk(type: string, content: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), content]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(content.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}

const channels = (colour: number): readonly [number, number, number] => [
  (colour >> 16) & 0xff,
  (colour >> 8) & 0xff,
  colour & 0xff,
];

function distance(a: number, b: number): number {
  const [from, to] = [channels(a), channels(b)];
  return (from[0] - to[0]) ** 2 + (from[1] - to[1]) ** 2 + (from[2] - to[2]) ** 2;
}

/** One channel of a pixel laid over white, 0 to 255. */
const overWhite = (channel: number, opacity: number): number =>
  opacity === 255 ? channel : Math.round((channel * opacity) / 255 + 255 - opacity);

/** Every pixel's colour as one number, laid over white. */
function colours({ width, height, rgba }: Pixels): Uint32Array {
  const found = new Uint32Array(width * height);
  for (let at = 0, from = 0; at < found.length; at += 1, from += 4) {
    const opacity = rgba[from + 3] ?? 255;
    found[at] =
      (overWhite(rgba[from] ?? 0, opacity) << 16) |
      (overWhite(rgba[from + 1] ?? 0, opacity) << 8) |
      overWhite(rgba[from + 2] ?? 0, opacity);
  }
  return found;
}

/**
 * The colours kept: of those that fall into one cell of the grid the most frequent stands for all, and the cells with most pixels are
 * kept.
 */
function paletteOf(pixels: Uint32Array): readonly number[] {
  const counts = new Map<number, number>();
  for (const colour of pixels) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  const cells = new Map<string, { colour: number; most: number; pixels: number }>();
  for (const [colour, count] of counts) {
    const key = channels(colour)
      .map((value) => Math.round(value / COLOUR_STEP))
      .join();
    const cell = cells.get(key) ?? { colour, most: 0, pixels: 0 };
    const leads = count > cell.most || (count === cell.most && colour < cell.colour);
    cells.set(key, {
      colour: leads ? colour : cell.colour,
      most: leads ? count : cell.most,
      pixels: cell.pixels + count,
    });
  }
  return [...cells.values()]
    .sort((a, b) => b.pixels - a.pixels || a.colour - b.colour)
    .slice(0, MOST_COLOURS)
    .map(({ colour }) => colour);
}

/**
 * A picture as an indexed PNG of at most 16 colours: a quarter of the bytes of one in full colour, and no different to
 * the eye where it is drawn in few colours. The same picture has the same bytes.
 * Source: PNG specification, third edition (W3C), 11.2 and 12.
 */
export function palettePng(picture: Pixels): Buffer {
  const { width, height } = picture;
  const pixels = colours(picture);
  const palette = paletteOf(pixels);
  const indexOf = new Map<number, number>();
  const nearest = (colour: number): number => {
    const known = indexOf.get(colour);
    if (known !== undefined) return known;
    let best = 0;
    for (let at = 1; at < palette.length; at += 1) {
      if (distance(palette[at] ?? 0, colour) < distance(palette[best] ?? 0, colour)) best = at;
    }
    indexOf.set(colour, best);
    return best;
  };
  // each row begins with the number of its filter, 0: none
  const rowBytes = 1 + Math.ceil(width / 2);
  const rows = Buffer.alloc(rowBytes * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * rowBytes + 1 + (x >> 1);
      rows[at] = (rows[at] ?? 0) | (nearest(pixels[y * width + x] ?? 0) << (x & 1 ? 0 : 4));
    }
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  // four bits a pixel, palette, deflate, no interlacing
  head.set([4, 3, 0, 0, 0], 8);
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', head),
    chunk('PLTE', Buffer.from(palette.flatMap((colour) => [...channels(colour)]))),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
