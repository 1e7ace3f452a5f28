import { describe, expect, it } from 'vitest';
import { entryReasonInSpanish } from '../../../src/web/crew/entry-reasons-es.ts';
import { englishLeft } from '../spanish/english-left.ts';

/** Reasons as the checks of the register write them. */
const REASONS = [
  'not a number; write digits with a decimal point, as 5.5',
  "a unit is written in the cell; write the number only, the unit is in the column's name",
  "outside the allowed 0 to 12 in; check the number and the unit in the column's name",
  'a residual width, but an inspection by eye gives no number at the groundline; enter it with an inspection by caliper, or correct the column',
  'wider than the post as installed, 88.9 mm (3.5 in); correct the number, or the section',
  'less than a third of the installed width, 88.9 mm (3.5 in); if it is the depth lost, it belongs under depth',
  'post 3: 4.0 mm of depth on 2026-11-24 (inspection I-2), but 9.0 mm of depth on 2025-05-01 (inspection I-1), more than the errors of both allow, and no swap is recorded between; check both, or enter the swap',
  'fence PR-02, post swap: none of these posts rots and none is broken',
  'fence PR-02: 900 hours cannot be',
  'fence PR-02: 40.0 hours, and 3.0 were planned',
  'it was missed, and its fences are back in the plan',
] as const;

describe('why an entry is doubtful or not taken', () => {
  it.each(REASONS)('is said in Spanish: %s', (reason) => {
    expect(englishLeft(entryReasonInSpanish(reason), [])).toEqual([]);
  });

  it('keeps what differs', () => {
    expect(entryReasonInSpanish('fence PR-02: 40.0 hours, and 3.0 were planned')).toBe(
      'cerca PR-02: 40.0 horas, y se habían planeado 3.0',
    );
    expect(entryReasonInSpanish('fence PR-02, post swap: none of these posts rots and none is broken')).toBe(
      'cerca PR-02, cambio de postes: ninguno de estos postes se pudre y ninguno está roto',
    );
  });

  it('stands as it is where no phrase has it', () => {
    expect(entryReasonInSpanish('something nobody wrote yet')).toBe('something nobody wrote yet');
  });
});
