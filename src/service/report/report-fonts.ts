import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { ReportFonts } from './pdf-pen.ts';

let read: Promise<ReportFonts> | null = null;

/** The open font that ships with the program, read once. Throws where its package is not installed. */
export function reportFonts(): Promise<ReportFonts> {
  const folder = dirname(createRequire(import.meta.url).resolve('@expo-google-fonts/source-sans-3/package.json'));
  const face = (name: string): Promise<Uint8Array> => readFile(join(folder, name, `SourceSans3_${name}.ttf`));
  read ??= Promise.all([face('400Regular'), face('600SemiBold')]).then(([regular, semibold]) => ({
    regular,
    semibold,
  }));
  return read;
}
