import type { CatalogueEntry } from './catalogue-entry.ts';

/** Why a number of a catalogue entry is refused. */
export interface CatalogueFault {
  /** Where: `price.perPost`, `materials[2].unitCost`. */
  readonly field: string;
  readonly value: number | string;
  readonly reason: string;
  readonly wayOut: string;
}

type Range = readonly [lowest: number, highest: number];

/**
 * Lowest and highest value taken, both allowed, in the unit of the name: wide enough for any crew and any currency, narrow
 * enough to catch minutes entered as hours. Judgement.
 */
const CATALOGUE_RANGES = {
  personHoursFixed: [0, 200],
  personHoursPerPost: [0, 40],
  quantityFixed: [0, 10_000],
  quantityPerPost: [0, 1000],
  unitCost: [0, 10_000_000],
  priceFixed: [0, 100_000_000],
  pricePerPost: [0, 10_000_000],
  cureDays: [0, 60],
  locateNoticeDays: [0, 60],
  embedmentM: [0.15, 2.5],
  footingDiameterM: [0.08, 1.2],
  sleeveMomentNm: [50, 200_000],
  yearsEffective: [0.5, 20],
} as const satisfies Record<string, Range>;
type Ranged = keyof typeof CATALOGUE_RANGES;

const WHOLE: readonly Ranged[] = ['cureDays', 'locateNoticeDays'];

/** What is wrong with the numbers of a catalogue entry, each with its place, the reason and the way out; nothing where all is well. */
export function catalogueFaults(entry: CatalogueEntry): readonly CatalogueFault[] {
  const faults: CatalogueFault[] = [];
  const check = (field: string, value: number, range: Ranged): void => {
    const [lowest, highest] = CATALOGUE_RANGES[range];
    const whole = WHOLE.includes(range);
    if (value >= lowest && value <= highest && (!whole || Number.isInteger(value))) return;
    faults.push({
      field,
      value,
      reason:
        whole && !Number.isInteger(value) ? 'is not a whole number of days' : `is not from ${lowest} to ${highest}`,
      wayOut: `write a ${whole ? 'whole number' : 'number'} from ${lowest} to ${highest}`,
    });
  };
  check('personHours.fixed', entry.personHours.fixed, 'personHoursFixed');
  check('personHours.perPost', entry.personHours.perPost, 'personHoursPerPost');
  check('price.fixed', entry.price.fixed, 'priceFixed');
  check('price.perPost', entry.price.perPost, 'pricePerPost');
  check('rules.cureDays', entry.rules.cureDays, 'cureDays');
  check('rules.locateNoticeDays', entry.rules.locateNoticeDays, 'locateNoticeDays');
  check('build.embedmentM', entry.build.embedmentM, 'embedmentM');
  check('build.footingDiameterM', entry.build.footingDiameterM, 'footingDiameterM');
  check('build.sleeveMomentNm', entry.build.sleeveMomentNm, 'sleeveMomentNm');
  check('build.yearsEffective', entry.build.yearsEffective, 'yearsEffective');
  const names = new Set<string>();
  for (const [index, { name, quantity, unitCost }] of entry.materials.entries()) {
    const at = `materials[${index}]`;
    check(`${at}.quantity.fixed`, quantity.fixed, 'quantityFixed');
    check(`${at}.quantity.perPost`, quantity.perPost, 'quantityPerPost');
    check(`${at}.unitCost`, unitCost, 'unitCost');
    if (name.trim() === '') {
      faults.push({ field: `${at}.name`, value: name, reason: 'is empty', wayOut: 'say what is to be loaded' });
    } else if (names.has(name)) {
      faults.push({
        field: `${at}.name`,
        value: name,
        reason: 'is listed twice',
        wayOut: 'join the two into one line',
      });
    }
    names.add(name);
  }
  const { fixed, perPost } = entry.personHours;
  if (fixed === 0 && perPost === 0) {
    faults.push({
      field: 'personHours',
      value: 0,
      reason: 'takes no time at all, so a plan would do it everywhere',
      wayOut: 'write the hours of one person, once a fence or a post',
    });
  }
  return faults;
}
