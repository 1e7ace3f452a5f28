import { expect, it } from 'vitest';
import { aboveGroundSentence } from '../../src/drawing/above-ground-sentence.ts';
import { aboveGroundFlag } from '../../src/forecast/above-ground.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../forecast/example-fence.ts';

const told = (
  year: number,
  units: 'us' | 'metric',
  treatmentClass: typeof PINE_4X4.treatmentClass = 'untreated-softwood',
) => {
  const facts = { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, treatmentClass } };
  const day = `${year}-03-01`;
  return aboveGroundSentence(aboveGroundFlag(facts, day), day, { units });
};

it('says from which season on rails and infill are due for a look, in the units asked for', () => {
  const before = told(2016, 'metric');
  expect(before).toMatch(
    /^Rails and infill need no look before season \d{4}: if they are of the posts' wood, about \d\.\d mm of each exposed face is expected to be soft on 2016-03-01\.$/,
  );
  const from = Number(/season (\d{4})/.exec(before)?.[1]);
  expect(told(from - 1, 'us')).toMatch(/^Rails and infill need no look before season/);
  expect(told(from, 'us')).toMatch(/^Rails and infill are due for a look: .*, about 0\.\d\d in of each exposed face/);
});

it('tells it of rot alone where rails and boards count as worn out by their age', () => {
  const facts = { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, treatmentClass: 'untreated-softwood' as const } };
  const flag = aboveGroundFlag(facts, '2016-03-01');
  const asked = { units: 'us' as const, isOutworn: true };
  expect(aboveGroundSentence(flag, '2016-03-01', asked)).toMatch(
    /^By rot alone, rails and infill need no look before season \d{4}: .* By their age they count as worn out all the same\.$/,
  );
  expect(aboveGroundSentence(flag, '2016-03-01', { ...asked, language: 'es' })).toMatch(
    /^Solo por la pudrición, .* Por su edad cuentan como gastados de todos modos\.$/,
  );
});

it('says that no law tells where none does', () => {
  expect(told(2026, 'us', 'does-not-rot')).toContain('look at them at every visit');
});
