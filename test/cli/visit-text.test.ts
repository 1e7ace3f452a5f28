import { describe, expect, it } from 'vitest';
import { visitText } from '../../src/cli/visit-text.ts';
import { tallyDays } from '../../src/season/visit/day-tally.ts';
import { madeUpVisit } from '../service/visiting-register.ts';

const visit = madeUpVisit({ uid: 'V1-1-aaaaaa' });
const details = { visit, history: [], entries: [], hours: [], returned: [] };
const ownerNames = new Map([
  ['A', 'Rosa Quinn'],
  ['B', 'Pelican Reach Association'],
]);
const days = (said: Parameters<typeof tallyDays>[0]['said']) => ({
  ...tallyDays({ offered: ['2027-01-11', '2027-01-12'], proposed: '2027-01-11', owners: ['A', 'B'], said }),
  ownerNames,
  offered: [
    { firstDay: '2027-01-11', lastDay: '2027-01-11' },
    { firstDay: '2027-01-12', lastDay: '2027-01-14' },
  ],
});

describe('a visit as text', () => {
  it('says which days suit its owners, whom they do not, and how to confirm the best', () => {
    const text = visitText({
      ...details,
      days: days([{ ownerRef: 'A', offered: ['2027-01-11', '2027-01-12'], suits: ['2027-01-12'] }]),
    });
    expect(text).toContain('one voice each (1 of 2 have marked theirs; nothing yet from Pelican Reach Association):');
    expect(text).toContain('  2027-01-11 (proposed) suits 0; not Rosa Quinn\n  2027-01-12 to 2027-01-14 suits 1\n');
    expect(text).toContain('stormpale visit confirm V1-1-aaaaaa --day 2027-01-12');
  });

  it('offers none to confirm where nobody marked one, and says nothing where owners are not asked', () => {
    expect(visitText({ ...details, days: days([]) })).not.toContain('visit confirm');
    expect(visitText({ ...details, days: null })).not.toContain('suit');
  });
});
