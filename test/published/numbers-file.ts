import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { NUMBER_ROOMS, SOURCE_ROOT } from './judged-names.ts';
import type { NumberEffect } from './number-effects.ts';

/** Where the effects of the numbers are committed. */
export const NUMBERS_FILE = new URL('../../docs/validation-numbers.json', import.meta.url);

/** The effects as stored, and of which program. */
export interface StoredEffects {
  readonly digest: string;
  readonly effects: readonly NumberEffect[];
}

const DEMO = fileURLToPath(new URL('../../seeds-demo', import.meta.url));
const HERE = fileURLToPath(new URL('.', import.meta.url));

/** Files of this folder that say which numbers are moved, how far, and what is looked at. */
const ROW_FILES = readdirSync(HERE).filter((name) =>
  /-numbers\.ts$|^(number-(row|rows|effects)|program-copy)\.ts$/.test(name),
);

const withoutComments = (path: string): string =>
  ts.transpileModule(readFileSync(path, 'utf8'), {
    compilerOptions: { removeComments: true, target: ts.ScriptTarget.ES2023, module: ts.ModuleKind.ES2022 },
  }).outputText;

/**
 * Digest of all that the effects depend on: the program's pure rooms without their comments and the words of its reasons, the
 * demo, and the rows. A change of a comment does not make the effects stale.
 */
export function effectsDigest(): string {
  const hash = createHash('sha256');
  for (const room of ['units', ...NUMBER_ROOMS]) {
    for (const name of readdirSync(join(SOURCE_ROOT, room), { recursive: true, encoding: 'utf8' }).sort()) {
      if (!name.endsWith('.ts') || /(^|\/)reasons(-[a-z]+)?\.ts$/.test(name)) continue;
      hash.update(`${room}/${name}\n${withoutComments(join(SOURCE_ROOT, room, name))}\n`);
    }
  }
  for (const name of readdirSync(DEMO).sort()) hash.update(`${name}\n${readFileSync(join(DEMO, name), 'utf8')}`);
  for (const name of ROW_FILES.sort()) hash.update(`${name}\n${withoutComments(join(HERE, name))}`);
  return hash.digest('hex');
}

/** The stored effects; null where none were ever stored. */
export const storedEffects = (): StoredEffects | null =>
  existsSync(NUMBERS_FILE) ? (JSON.parse(readFileSync(NUMBERS_FILE, 'utf8')) as StoredEffects) : null;
