import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rowsOutside, WHY_OUTSIDE } from './hindcast-section.ts';
import { PICTURES } from './pictures.ts';
import { VALIDATION_FILE } from './validation-file.ts';
import { validationPage } from './validation-page.ts';

describe('docs/validation.md', () => {
  it('is what the checks write today', () => {
    const isCurrent = readFileSync(VALIDATION_FILE, 'utf8') === validationPage();
    expect(isCurrent, 'docs/validation.md is out of date: run npm run validation').toBe(true);
  });

  it('is written the same twice', () => {
    expect(validationPage()).toBe(validationPage());
  });

  it.each(PICTURES.map((picture) => [picture.name, picture] as const))('has %s as it is drawn today', (_, picture) => {
    const isCurrent = readFileSync(picture.url).equals(picture.bytes());
    expect(isCurrent, `docs/pictures/${picture.name} is out of date: run npm run validation`).toBe(true);
  });

  it('says why, of every field row that lies outside its band', () => {
    expect(
      rowsOutside()
        .filter((row) => !(row.id in WHY_OUTSIDE))
        .map((row) => row.id),
    ).toEqual([]);
  });
});
