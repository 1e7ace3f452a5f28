import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SOIL_CLASS_KEYS } from '../../src/capacity/soil-class.ts';
import { SPECIES_KEYS } from '../../src/capacity/wood-strength.ts';
import { TREATMENT_CLASS_KEYS } from '../../src/decay/treatment-class.ts';
import { INSPECTION_METHODS } from '../../src/forecast/evidence/inspection.ts';
import { STORM_RESULTS } from '../../src/forecast/evidence/storm-outcome.ts';
import { RECORD_FIELDS } from '../../src/register/csv/record-columns.ts';
import { CONSEQUENCES, END_KINDS, FENCE_STYLES } from '../../src/register/fence-record.ts';
import { WORKS_KINDS } from '../../src/register/works-record.ts';

const page = readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'csv.md'), 'utf8');
/** The part of the page under the heading of a kind: `climate-zones` is `## Climate zones`. */
function sectionOf(kind: string): string {
  const title = `## ${kind[0]!.toUpperCase()}${kind.slice(1).replaceAll('-', ' ')}\n`;
  const from = page.indexOf(title);
  expect(from, title).toBeGreaterThan(0);
  const next = page.indexOf('\n## ', from + 3);
  return page.slice(from, next < 0 ? undefined : next);
}

describe('the page about the CSV files', () => {
  for (const [kind, fields] of Object.entries(RECORD_FIELDS)) {
    it(`names every column of ${kind}`, () => {
      const section = sectionOf(kind);
      for (const field of fields) {
        const named = field.columns.some((column) => section.includes(`\`${column}\``));
        expect(named, field.columns.join(' or ')).toBe(true);
      }
    });
    it(`marks what must be filled in ${kind}`, () => {
      const section = sectionOf(kind);
      for (const field of fields.filter((each) => each.required)) {
        const row = section.split('\n').find((line) => field.columns.some((column) => line.includes(`\`${column}\``)));
        expect(row, field.columns.join(' or ')).toContain('*');
      }
    });
  }
  it('names every choice', () => {
    for (const word of [
      ...TREATMENT_CLASS_KEYS,
      ...SPECIES_KEYS,
      ...SOIL_CLASS_KEYS,
      ...WORKS_KINDS,
      ...FENCE_STYLES,
      ...END_KINDS,
      ...CONSEQUENCES,
      ...INSPECTION_METHODS,
      ...STORM_RESULTS,
    ]) {
      const known = page.includes(`\`${word}\``) || /^heartwood-class-[23]$/.test(word);
      expect(known, word).toBe(true);
    }
  });
});
