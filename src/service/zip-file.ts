import { deflateRawSync } from 'node:zlib';

/** The CRC-32 of every byte. Source: ISO 3309, polynomial 0xEDB88320 (memory). */
const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest >>> 0;
});

const crc32 = (bytes: Buffer): number =>
  (bytes.reduce((crc, byte) => (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

/** 1 January 1980, 00:00, as an archive writes it: the same content gives the same bytes whenever it is packed. */
const DOS_DAY = 0x0021;
const VERSION_NEEDED = 20;
/** Names are UTF-8. */
const FLAGS = 0x0800;
const DEFLATED = 8;

/** The fields that an entry has in both of its headers. */
function common(name: Buffer, packed: Buffer, plain: Buffer): Buffer {
  const fields = Buffer.alloc(26);
  fields.writeUInt16LE(VERSION_NEEDED, 0);
  fields.writeUInt16LE(FLAGS, 2);
  fields.writeUInt16LE(DEFLATED, 4);
  fields.writeUInt16LE(0, 6);
  fields.writeUInt16LE(DOS_DAY, 8);
  fields.writeUInt32LE(crc32(plain), 10);
  fields.writeUInt32LE(packed.byteLength, 14);
  fields.writeUInt32LE(plain.byteLength, 18);
  fields.writeUInt16LE(name.byteLength, 22);
  return fields;
}

const signed = (signature: number, ...rest: readonly Buffer[]): Buffer => {
  const head = Buffer.alloc(4);
  head.writeUInt32LE(signature, 0);
  return Buffer.concat([head, ...rest]);
};

/**
 * An archive of one file, so that a long table stays small in a mail. The same file gives the same bytes.
 * Source: the archive format as published by its makers (memory): local header, data, central directory, end record.
 */
export function zipFile(fileName: string, text: string): Buffer {
  const name = Buffer.from(fileName, 'utf8');
  const plain = Buffer.from(text, 'utf8');
  const packed = deflateRawSync(plain, { level: 9 });
  const fields = common(name, packed, plain);
  const local = signed(0x04034b50, fields, name, packed);
  const madeBy = Buffer.alloc(2);
  madeBy.writeUInt16LE(VERSION_NEEDED, 0);
  // no comment, first disk, no attributes, local header at the very beginning
  const central = signed(0x02014b50, madeBy, fields, Buffer.alloc(14), name);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(1, 4);
  end.writeUInt16LE(1, 6);
  end.writeUInt32LE(central.byteLength, 8);
  end.writeUInt32LE(local.byteLength, 12);
  return Buffer.concat([local, central, signed(0x06054b50, end)]);
}
