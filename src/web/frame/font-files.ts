import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const FACES = { 'source-sans-3-400.ttf': '400Regular', 'source-sans-3-600.ttf': '600SemiBold' } as const;

/** Name of a font file that the pages may ask for. */
export type FontName = keyof typeof FACES;

/** True where the name is one of the font files that the pages use. */
export const isFontName = (name: string): name is FontName => Object.hasOwn(FACES, name);

/** The bytes of one of the open fonts that ship with the program. Throws where the package is not installed. */
export function readFont(name: FontName): Promise<Uint8Array> {
  const root = dirname(createRequire(import.meta.url).resolve('@expo-google-fonts/source-sans-3/package.json'));
  const face = FACES[name];
  return readFile(join(root, face, `SourceSans3_${face}.ttf`));
}
