import { describe, expect, it } from 'vitest';
import { openImportFile } from '../../../src/register/csv/import-file.ts';
import { remarkText } from '../../../src/register/csv/import-report.ts';
import { parseNumber } from '../../../src/register/csv/number-cell.ts';
import { hidesCharacters } from '../../../src/register/value-schemas.ts';

describe('what cells hide', () => {
  it('refuses numbers no computer holds without suggesting Infinity', () => {
    expect(parseNumber('1e999')).toEqual({
      reason: 'a number too large to be meant; write the digits with a decimal point',
    });
    expect(parseNumber('1e-400')).toMatchObject({ reason: expect.stringContaining('too small') as string });
    expect(parseNumber('7.2e1')).toMatchObject({ reason: expect.stringContaining('as 72') as string });
  });

  it('repeats no more than the beginning of a huge value', () => {
    const text = remarkText({
      file: 'a.csv',
      line: 2,
      column: 'ref',
      value: 'x'.repeat(1_000_000),
      reason: 'too long',
    });
    expect(text.length).toBeLessThan(200);
  });

  it('says of a file of NULs that it is no UTF-8 text', () => {
    expect(openImportFile({ name: 'a.csv', text: 'r\0e\0f\0' })).toMatchObject({
      reason: expect.stringContaining('UTF-8') as string,
    });
  });

  it('names the first faults of a header that belongs to another file, not thousands', () => {
    const columns = Array.from({ length: 5000 }, (_, index) => `strange_${index}`).join(',');
    const opened = openImportFile({ name: 'fences.csv', text: `${columns}\n` });
    expect('faults' in opened && opened.faults.length).toBeLessThan(50);
  });

  it('refuses marks that turn the direction of what follows', () => {
    expect(hidesCharacters('Tam\u202Esin')).toBe(true);
    expect(hidesCharacters('Ñandú, עברית')).toBe(false);
  });
});
