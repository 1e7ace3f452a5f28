import { describe, expect, it } from 'vitest';
import { figureText, onceInWords, onceInYearsCell, percentText } from '../../src/drawing/quantity-text.ts';
import { quantityText } from '../../src/drawing/reason-text.ts';

describe('quantities in words', () => {
  it('never claim certainty in percent', () => {
    expect([0, 0.0099, 0.01, 0.624, 0.99, 0.995, 1].map((share) => percentText(share, 'en'))).toEqual([
      'under 1 %',
      'under 1 %',
      '1 %',
      '62 %',
      '99 %',
      'over 99 %',
      'over 99 %',
    ]);
    expect(percentText(0, 'es')).toBe('menos del 1 %');
  });

  it('say a return period to two figures, the same in a sentence and in a cell', () => {
    expect(onceInWords(123, 'en')).toBe('about once in 120 years');
    expect(onceInYearsCell(123)).toBe('120');
    expect(onceInWords(999, 'en')).toBe('about once in 1,000 years');
    expect(onceInWords(8.4, 'es')).toBe('más o menos una vez en 8 años');
    expect(onceInYearsCell(1.2)).toBe('1');
    expect(onceInYearsCell(null)).toBe('–');
  });

  it('group thousands and keep no more figures than asked', () => {
    expect(figureText(1234567.8, 6)).toBe('1,234,570');
    expect(figureText(-1234.56, 6)).toBe('-1,234.56');
    expect(figureText(0.0821234, 4)).toBe('0.08212');
    expect(figureText(999, 4)).toBe('999');
  });

  it('write a step of the reasons with its unit, small numbers with a power of ten', () => {
    expect(quantityText({ value: 117342.4, unit: 'mm3' })).toBe('117,342 mm³');
    expect(quantityText({ value: 12.3456, unit: 'degC' })).toBe('12.35 °C');
    expect(quantityText({ value: 0.00012345, unit: '-' })).toBe('1.23e-4');
    expect(quantityText({ value: 'bending', unit: '' })).toBe('bending');
  });
});
