import { expect, it } from 'vitest';
import type { PostWood } from '../../src/forecast/post-wood.ts';
import type { Works } from '../../src/forecast/works.ts';
import { worksRecord } from '../../src/register/works-from-facts.ts';
import { worksFacts, worksSchema } from '../../src/register/works-record.ts';

const BASE = { ref: 'V1-1-aaaaaa.001', day: '2027-01-11', posts: [2, 5] } as const;
const SAWN: PostWood = {
  section: { kind: 'rectangular', widthMm: 88.9, depthMm: 139.7 },
  species: 'southern-pine',
  grade: 'no-2',
  incised: false,
  treatmentClass: 'heavy-duty',
  momentCapacityNm: null,
};
const ROUND: PostWood = { ...SAWN, section: { kind: 'round', diameterMm: 120 }, treatmentClass: 'round-pine-cca' };
const STEEL: PostWood = { ...SAWN, treatmentClass: 'does-not-rot', momentCapacityNm: 5200 };

const EVERY: readonly Works[] = [
  { ...BASE, kind: 'groundline-treatment', yearsEffective: 5 },
  { ...BASE, kind: 'liner' },
  { ...BASE, posts: 'all', kind: 'drainage' },
  { ...BASE, kind: 'trimmer-guard' },
  { ...BASE, kind: 'footing-reset', embedmentM: 0.914, footing: 'concrete', footingDiameterM: 0.254 },
  { ...BASE, kind: 'footing-reset', embedmentM: 0.9, footing: 'soil', footingDiameterM: null },
  { ...BASE, kind: 'post-swap', wood: SAWN },
  { ...BASE, kind: 'post-swap', wood: ROUND },
  { ...BASE, kind: 'post-swap', wood: STEEL },
  { ...BASE, kind: 'steel-sleeve', momentCapacityNm: 4881 },
  { ...BASE, posts: 'all', kind: 'added-posts', positionsM: [1.2, 3.6], wood: SAWN },
  { ...BASE, posts: 'all', kind: 'rebuild', wood: SAWN, postSpacingM: null },
];

it('works become records that keep their own rules and mean the same works', () => {
  for (const works of EVERY) {
    const record = worksRecord('PR-02', works);
    expect(worksSchema.parse(record), works.kind).toEqual(record);
    expect(record).toMatchObject({ fenceRef: 'PR-02', ref: works.ref, day: works.day, kind: works.kind });
    expect(worksFacts(record), works.kind).toEqual(works);
  }
});
