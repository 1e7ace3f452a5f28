import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseInstalled, writeInstalled } from '../../../src/register/csv/installed-cell.ts';
import { nearestName } from '../../../src/register/csv/nearest-name.ts';
import { parseSection, writeSection } from '../../../src/register/csv/section-cell.ts';
import { guardText, unguardText } from '../../../src/register/csv/text-cell.ts';

describe('an install date', () => {
  test.each([
    ['2014-05-03', '2014-05-03', '2014-05-03'],
    ['2012-02', '2012-02-01', '2012-02-29'],
    ['2014', '2014-01-01', '2014-12-31'],
    ['2008/2012', '2008-01-01', '2012-12-31'],
    ['2008-03/2009-04-05', '2008-03-01', '2009-04-05'],
    ['2026', '2026-01-01', '2026-11-25'],
    ['2024/2026', '2024-01-01', '2026-11-25'],
  ])('%s lies between %s and %s', (text, earliest, latest) => {
    expect(parseInstalled(text, '2026-11-25')).toEqual({ value: { earliest, latest } });
  });

  test.each(['2014-05-03', '2012-02', '2014', '2008-01-01/2012-12-31', '2008-03-01/2009-04-05'])(
    '%s is written back',
    (text) => {
      const parsed = parseInstalled(text, '2026-11-25');
      expect('value' in parsed && writeInstalled(parsed.value)).toBe(text);
    },
  );

  test.each(['', '2014-5-3', '2014-02-30', '14', '2014/', '/2014', '2010/2011/2012', '41762', '03.05.2014'])(
    '%j is refused',
    (text) => {
      expect(parseInstalled(text, '2026-11-25')).toHaveProperty('reason');
    },
  );
});

describe('a section', () => {
  test.each([
    ['4x4', '4x4'],
    ['6X6', '6x6'],
    ['round 5 in', 'round 127 mm'],
    ['round 125 mm', 'round 125 mm'],
    ['89x140 mm', '89x140 mm'],
    ['3.5x3.5 in', '4x4'],
  ])('%s is written back as %s', (text, written) => {
    const parsed = parseSection(text);
    expect('value' in parsed && writeSection(parsed.value)).toBe(written);
  });

  test.each(['4×4', '89 x 89', '3x3 ft', 'round', 'round 5', '2x2 in x', '20x89 mm'])('%s is refused', (text) => {
    expect(parseSection(text)).toHaveProperty('reason');
  });
});

describe('a text that a spreadsheet would run as a formula', () => {
  test.each(['=1+1', '+1', '-1', '@a', "'=1", "''-x"])('%s gets an apostrophe', (text) => {
    expect(guardText(text)).toBe(`'${text}`);
  });

  test.each(['plain', "'quoted'", "''", '', '1=1'])('%s gets none', (text) => {
    expect(guardText(text)).toBe(text);
  });

  test('any text comes back as it was', () => {
    fc.assert(fc.property(fc.string(), (text) => unguardText(guardText(text)) === text));
  });
});

test('the nearest name is offered only where it is near', () => {
  expect(nearestName('hieght_in', ['height_in', 'height_ft', 'style'])).toBe('height_in');
  expect(nearestName('colour', ['height_in', 'style'])).toBeNull();
});
