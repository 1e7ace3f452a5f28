import type { Provenance } from '../units/provenance.ts';
import type {
  CatalogueBuild,
  CatalogueEntry,
  CatalogueKind,
  CatalogueMaterial,
  CatalogueRules,
} from './catalogue-entry.ts';

/** What a crew can be sent to do, with what it takes and costs: one entry a kind. */
export type WorksCatalogue = Readonly<Record<CatalogueKind, CatalogueEntry>>;

/** Parts of an entry whose numbers have a source of their own. */
export type CataloguePart =
  | 'personHours'
  | 'materials'
  | 'price'
  | 'cureDays'
  | 'locateNoticeDays'
  | 'otherRules'
  | 'build';

const judged = (source: string): Provenance => ({ source, tag: 'judgement' });

const HOURS = judged('order of what a practised crew needs on easy ground; hours really used correct it');
const MATERIALS = judged('order of what is used and of its shelf price, in round US dollars');
const PRICE = judged('order of what is charged in the United States, in round US dollars, tax not included');
const CURE = judged('concrete is left a week before it has to hold a storm');
const LOCATE: Provenance = {
  source: "states' one-call laws on buried utilities: two to three working days in most; three days stand for them",
  tag: 'memory',
};
const NO_DAYS = judged('nothing is cast and nothing is dug');
const RULES = judged('what law and ground may ask for, the stricter side; the office knows its own state');
const BUILD = judged('the next heavier of the usual ways to build');

/** Where the numbers of the shipped catalogue come from, part by part. Nearly all are judgement, and say so. */
const CATALOGUE_PROVENANCE: Readonly<Record<CataloguePart, Provenance>> = {
  personHours: HOURS,
  materials: MATERIALS,
  price: PRICE,
  cureDays: CURE,
  locateNoticeDays: LOCATE,
  otherRules: RULES,
  build: BUILD,
};

/** Where one number of the shipped catalogue comes from. */
export function catalogueProvenance(entry: CatalogueEntry, part: CataloguePart): Provenance {
  if (part === 'cureDays' && entry.rules.cureDays === 0) return NO_DAYS;
  if (part === 'locateNoticeDays' && entry.rules.locateNoticeDays === 0) return NO_DAYS;
  return CATALOGUE_PROVENANCE[part];
}

const SOURCE = `hours: ${HOURS.source}; materials: ${MATERIALS.source}; price: ${PRICE.source} (judgement throughout)`;

/** Embedment 36 in and collar 10 in [m]: a foot deeper and an inch wider than the usual. */
const BUILD_DEFAULTS: CatalogueBuild = {
  embedmentM: 0.914,
  footing: 'concrete',
  footingDiameterM: 0.254,
  // 3,600 lbf ft: more than the median of a sound No.2 4x4, so that the wood above the sleeve decides.
  sleeveMomentNm: 4881,
  yearsEffective: 5,
  treatmentClass: 'heavy-duty',
};

const NO_RULES: CatalogueRules = {
  cureDays: 0,
  locateNoticeDays: 0,
  notOnFrozenGround: false,
  licensedApplicator: false,
  permit: false,
};
const DUG: CatalogueRules = { ...NO_RULES, locateNoticeDays: 3, notOnFrozenGround: true };
const CAST: CatalogueRules = { ...DUG, cureDays: 7 };

type Pair = readonly [fixed: number, perPost: number];

const material = (name: string, unit: string, [fixed, perPost]: Pair, unitCost: number): CatalogueMaterial => ({
  name,
  unit,
  quantity: { fixed, perPost },
  unitCost,
});

function entry(
  kind: CatalogueKind,
  [hoursFixed, hoursPerPost]: Pair,
  [priceFixed, pricePerPost]: Pair,
  rules: CatalogueRules,
  materials: readonly CatalogueMaterial[],
): CatalogueEntry {
  return {
    kind,
    personHours: { fixed: hoursFixed, perPost: hoursPerPost },
    materials,
    price: { fixed: priceFixed, perPost: pricePerPost },
    rules,
    build: BUILD_DEFAULTS,
    source: SOURCE,
  };
}

const POST = material('treated post, 10 ft', 'piece', [0, 1], 24);
const CONCRETE = material('concrete mix, 80 lb', 'bag', [0, 3], 6.5);

/**
 * The catalogue a register begins with: person-hours [h], materials, prices in round US dollars, rules in days [d]. All of
 * it is meant to be corrected by the office.
 * Source: see `CATALOGUE_PROVENANCE`; judgement but for the locate notice (memory).
 */
export const SHIPPED_CATALOGUE: WorksCatalogue = {
  inspect: entry('inspect', [0.3, 0.08], [60, 6], NO_RULES, []),
  'groundline-treatment': entry(
    'groundline-treatment',
    [0.5, 0.35],
    [90, 38],
    {
      ...NO_RULES,
      notOnFrozenGround: true,
      licensedApplicator: true,
    },
    [material('preservative paste', 'kg', [0, 0.25], 18), material('groundline wrap', 'piece', [0, 1], 6)],
  ),
  liner: entry('liner', [0.2, 0.15], [20, 26], NO_RULES, [material('full-height post liner', 'piece', [0, 1], 14)]),
  drainage: entry('drainage', [6, 0.8], [500, 90], DUG, [
    material('drain pipe, 10 ft', 'piece', [1, 0.8], 12),
    material('drain gravel, 50 lb', 'bag', [4, 4], 6),
  ]),
  'trimmer-guard': entry('trimmer-guard', [0.2, 0.1], [30, 18], NO_RULES, [
    material('trimmer guard', 'piece', [0, 1], 8),
  ]),
  'footing-reset': entry('footing-reset', [1, 2], [150, 160], CAST, [
    material('concrete mix, 80 lb', 'bag', [0, 4], 6.5),
  ]),
  'post-swap': entry('post-swap', [1, 1.8], [150, 185], CAST, [
    POST,
    CONCRETE,
    material('brackets and screws, set', 'set', [0, 1], 7),
  ]),
  'steel-sleeve': entry('steel-sleeve', [0.5, 0.6], [90, 115], DUG, [material('steel sleeve', 'piece', [0, 1], 45)]),
  'added-posts': entry('added-posts', [1, 2.2], [150, 220], CAST, [
    POST,
    CONCRETE,
    material('brackets and screws, set', 'set', [0, 1], 7),
  ]),
  rebuild: entry('rebuild', [4, 3.5], [400, 420], { ...CAST, permit: true }, [
    POST,
    CONCRETE,
    material('rail, 2x4, 8 ft', 'piece', [0, 3], 7),
    material('board, 6 ft', 'piece', [0, 17], 4),
    material('screws and nails, set', 'set', [1, 0.2], 30),
  ]),
};
