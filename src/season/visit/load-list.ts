import type { CatalogueKind } from '../catalogue-entry.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import { amountAt } from '../works-cost.ts';
import type { VisitWorks } from './visit.ts';

/** One material for some works, all of them together. */
export interface MaterialNeed {
  readonly name: string;
  /** What it is counted in: `bag`, `piece`, `kg`. */
  readonly unit: string;
  /** What the catalogue reckons with. */
  readonly quantity: number;
  /** What to take or order: whole units of what only comes whole. */
  readonly toTake: number;
  /** What one unit costs the office; the mean where kinds of works differ, in the register's currency. */
  readonly unitCost: number;
  /** Of what is taken. */
  readonly cost: number;
  /** Kinds of works that it is for, in the order of their names. */
  readonly kinds: readonly CatalogueKind[];
}

/** Units that come in parts: the rest is taken or ordered whole. */
const PARTED_UNITS: ReadonlySet<string> = new Set(
  'kg g lb lbs oz t l liter liters litre litres ml gal gallon gallons qt m cm mm ft in yd m2 m3 ft2 ft3 yd3'.split(' '),
);
/** Parts to which those are rounded up: tenths. */
const PARTS = 10;
/** What floating point leaves over is no further bag. */
const ROUNDING = 1e-9;

const roundedUp = (quantity: number, unit: string): number => {
  const parts = PARTED_UNITS.has(unit.trim().toLowerCase()) ? PARTS : 1;
  return Math.ceil(quantity * parts - ROUNDING) / parts;
};

interface Sum {
  readonly name: string;
  readonly unit: string;
  readonly kinds: Set<CatalogueKind>;
  quantity: number;
  cost: number;
}

/**
 * What works take, by material, in the order of the names: the same material counted in the same unit is added up over
 * fences and kinds, and rounded up once at the end. Materials of which nothing is needed are left out.
 * Source: quantities and unit costs of the catalogue.
 */
export function materialNeeds(works: readonly VisitWorks[], catalogue: WorksCatalogue): readonly MaterialNeed[] {
  // the same kind on the same number of posts takes the same: reckoned once for all of them
  const alike = new Map<string, { readonly kind: CatalogueKind; readonly postCount: number; times: number }>();
  for (const { kind, postCount } of works) {
    const key = `${kind} ${postCount}`;
    const known = alike.get(key);
    if (known) known.times += 1;
    else alike.set(key, { kind, postCount, times: 1 });
  }
  const sums = new Map<string, Sum>();
  for (const { kind, postCount, times } of alike.values()) {
    for (const { name, unit, quantity, unitCost } of catalogue[kind].materials) {
      const key = JSON.stringify([name, unit]);
      const sum = sums.get(key) ?? { name, unit, kinds: new Set(), quantity: 0, cost: 0 };
      const amount = times * amountAt(quantity, postCount);
      sums.set(key, {
        ...sum,
        kinds: sum.kinds.add(kind),
        quantity: sum.quantity + amount,
        cost: sum.cost + amount * unitCost,
      });
    }
  }
  return [...sums.entries()]
    .filter(([, { quantity }]) => quantity > 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { name, unit, kinds, quantity, cost }]) => {
      const toTake = roundedUp(quantity, unit);
      const unitCost = cost / quantity;
      return { name, unit, quantity, toTake, unitCost, cost: toTake * unitCost, kinds: [...kinds].sort() };
    });
}
