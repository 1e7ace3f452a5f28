import { expect, it } from 'vitest';
import { INSPECTION_METHODS } from '../../../src/forecast/evidence/inspection.ts';
import { READING_METHODS } from '../../../src/forecast/evidence/reading-method.ts';

it('lists every method that says what it can read, once', () => {
  expect([...INSPECTION_METHODS].sort()).toEqual(Object.keys(READING_METHODS).sort());
  expect(INSPECTION_METHODS).toHaveLength(6);
});
