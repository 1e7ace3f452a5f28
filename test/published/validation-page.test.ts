import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { PROVENANCES } from './number-standing.ts';
import { VALIDATION_FILE } from './validation-file.ts';
import { validationPage } from './validation-page.ts';

const SOURCE_ROOT = fileURLToPath(new URL('../../src', import.meta.url));

describe('docs/validation.md', () => {
  it('is what the checks write today', () => {
    const isCurrent = readFileSync(VALIDATION_FILE, 'utf8') === validationPage();
    expect(isCurrent, 'docs/validation.md is out of date: run npm run validation').toBe(true);
  });

  it('is written the same twice', () => {
    expect(validationPage()).toBe(validationPage());
  });

  it('misses no provenance constant of the program', () => {
    const declared = readdirSync(SOURCE_ROOT, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file))
      .flatMap((file) => [
        ...readFileSync(join(SOURCE_ROOT, file), 'utf8').matchAll(/export const (\w+_PROVENANCE)\b/g),
      ])
      .map((match) => match[1]!);
    expect(declared.length).toBeGreaterThan(10);
    expect(declared.sort()).toEqual(Object.keys(PROVENANCES).sort());
  });
});
