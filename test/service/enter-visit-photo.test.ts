import { describe, expect, it } from 'vitest';
import { photoType } from '../../src/service/enter-visit-photo.ts';

describe('what kind of picture some bytes are', () => {
  it.each([
    [[0xff, 0xd8, 0xff, 0xe0], 'image/jpeg'],
    [[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a], 'image/png'],
    [[...Buffer.from('RIFF\0\0\0\0WEBPVP8 ')], 'image/webp'],
    [[...Buffer.from('RIFF\0\0\0\0WAVE')], null],
    [[...Buffer.from('<svg xmlns=')], null],
    [[], null],
  ])('%j: %s', (bytes, type) => {
    expect(photoType(new Uint8Array(bytes))).toBe(type);
  });
});
