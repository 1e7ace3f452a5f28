import type { Standing } from '../../src/units/provenance.ts';
import { markedValue } from './number-row.ts';
import { table } from './page-table.ts';

/** A number of the season plan or the money that nobody has read in a source. It moves no speed and no short season. */
export interface SeasonNumberRow {
  readonly what: string;
  /** File under src/. */
  readonly file: string;
  /** Text that stands in the file exactly once, the number between « and ». */
  readonly text: string;
  readonly moves: 'plan' | 'money' | 'plan and money';
  readonly tag: Extract<Standing, 'memory' | 'judgement'>;
  readonly source: string;
  /** Names (`file#name`) that this row answers for. */
  readonly speaksFor: readonly string[];
}

type Rest = Omit<SeasonNumberRow, 'speaksFor' | 'tag'> & {
  readonly tag?: SeasonNumberRow['tag'];
  readonly names: readonly string[];
};

const row = ({ names, tag = 'judgement', ...rest }: Rest): SeasonNumberRow => ({
  ...rest,
  tag,
  speaksFor: names.map((name) => `${rest.file}#${name}`),
});

/** A number that is the whole of a constant. */
const constant = (name: string, value: string, rest: Omit<Rest, 'names' | 'text'>): SeasonNumberRow =>
  row({ ...rest, names: [name], text: `const ${name} = «${value}»;` });

const CONSEQUENCE = 'season/snap-consequence.ts';
const CATALOGUE = 'season/works-catalogue.ts';

const consequenceRows = (
  [
    ['ordinary', 'ordinary', '500', "name: 'ordinary',"],
    ['pool-barrier', 'pool barrier', '12_000', "name: 'pool barrier',"],
    ['over-footpath', 'over a footpath', '8_000', "name: 'over a footpath',"],
    ['livestock', 'keeps livestock', '4_000', "name: 'keeps livestock',"],
    ['other-high', 'other high consequence', '10_000', "name: 'other high consequence',"],
  ] as const
).map(([key, what, value, line]) =>
  row({
    file: CONSEQUENCE,
    what: `loss beside the rebuild when a fence snaps: ${what}`,
    text: `${line}\n    statedLoss: «${value}»,`,
    moves: 'plan and money',
    source: 'expected over what may happen; the reason stands beside it in the source',
    names: [`SNAP_CONSEQUENCES.${key}`],
  }),
);

const catalogueRows = (
  [
    ['inspect', "entry('inspect', «[0.3, 0.08], [60, 6]», NO_RULES"],
    ['groundline-treatment', "'groundline-treatment',\n    «[0.5, 0.35],\n    [90, 38]»,"],
    ['liner', "entry('liner', «[0.2, 0.15], [20, 26]», NO_RULES"],
    ['drainage', "entry('drainage', «[6, 0.8], [500, 90]», DUG"],
    ['trimmer-guard', "entry('trimmer-guard', «[0.2, 0.1], [30, 18]», NO_RULES"],
    ['footing-reset', "entry('footing-reset', «[1, 2], [150, 160]», CAST"],
    ['post-swap', "entry('post-swap', «[1, 1.8], [150, 185]», CAST"],
    ['steel-sleeve', "entry('steel-sleeve', «[0.5, 0.6], [90, 115]», DUG"],
    ['added-posts', "entry('added-posts', «[1, 2.2], [150, 220]», CAST"],
    ['rebuild', "entry('rebuild', «[4, 3.5], [400, 420]», { ...CAST"],
  ] as const
).map(([kind, text]) =>
  row({
    file: CATALOGUE,
    what: `${kind}: hours, then price, each a fence and a post; where the office enters none`,
    text,
    moves: 'plan and money',
    source: 'order of what a practised crew needs and of what is charged, in round US dollars',
    names: [`SHIPPED_CATALOGUE.${kind}`],
  }),
);

/** Every number of the season plan and the money from memory or judgement, in the order of docs/engineering.md. */
export const SEASON_NUMBER_ROWS: readonly SeasonNumberRow[] = [
  constant('EMERGENCY_FACTOR', '1.4', {
    file: CONSEQUENCE,
    what: 'rebuild in a bad week over one in a quiet week',
    moves: 'plan and money',
    source: 'crews and posts are short, the old fence is cleared first',
  }),
  ...consequenceRows,
  constant('YEARLY_DISCOUNT_RATE', '0.04', {
    file: CONSEQUENCE,
    what: 'discount rate above inflation [1/a]',
    moves: 'plan',
    source: "between a saver's and a borrower's",
  }),
  ...catalogueRows,
  row({
    file: CATALOGUE,
    what: 'locate notice before digging [d]',
    text: 'const DUG: CatalogueRules = { ...NO_RULES, locateNoticeDays: «3», notOnFrozenGround: true };',
    moves: 'plan',
    tag: 'memory',
    source: "states' one-call laws",
    names: [],
  }),
  row({
    file: CATALOGUE,
    what: 'cure time of a footing before the season [d]',
    text: 'const CAST: CatalogueRules = { ...DUG, cureDays: «7» };',
    moves: 'plan',
    source: 'concrete is left a week before it has to hold a storm',
    names: [],
  }),
  row({
    file: 'season/planned-works.ts',
    what: 'bays under twice this are not halved by added posts [m]',
    text: 'const SHORTEST_HALF_BAY_M = «0.9»;',
    moves: 'plan',
    source: 'an auger needs room',
    names: ['SHORTEST_HALF_BAY_M'],
  }),
  constant('WEAKEST_WITHIN', '0.02', {
    file: 'season/post-choice.ts',
    what: 'posts within this share of the lowest speed count as the weakest',
    moves: 'plan',
    source: 'only where no post is short',
  }),
  constant('MOST_POSTS_READ', '8', {
    file: 'season/candidates.ts',
    what: 'posts read at an inspection that is thought of',
    moves: 'plan',
    source: 'hours against what more posts would tell',
  }),
  constant('READING_BINS', '24', {
    file: 'season/candidates.ts',
    what: 'outcomes of an inspection told apart',
    moves: 'plan',
    source: 'fewer would value an inspection lower',
  }),
  constant('WAIT_SHARE', '0.001', {
    file: 'season/season-problem.ts',
    what: 'part of the worth that a week of waiting takes off',
    moves: 'plan',
    source: 'gusts come outside the season too',
  }),
  constant('DANGER_WAIT', '100', {
    file: 'season/season-problem.ts',
    what: 'what a week with a dangerous post counts',
    moves: 'plan',
    source: 'the sooner the better, musts being equal',
  }),
  constant('TRAVEL_COST_PER_PERSON_HOUR', '45', {
    file: 'season/travel.ts',
    what: 'an hour of one person on the road [1/h]',
    moves: 'plan',
    source: 'wages and truck, in round US dollars',
  }),
  constant('EARTH_RADIUS_M', '6_371_008.8', {
    file: 'season/travel.ts',
    what: 'mean radius of the earth [m]',
    moves: 'plan',
    tag: 'memory',
    source: 'IUGG mean radius R1',
  }),
  constant('CHANGE_PENALTY', '40', {
    file: 'service/make-season-plan.ts',
    what: 'what it costs to move planned works, a fence',
    moves: 'plan',
    source: 'somebody is told again, a day is moved',
  }),
  constant('PRIOR_VISITS', '5', {
    file: 'season/visit/corrected-hours.ts',
    what: "visits that the catalogue's hours count as",
    moves: 'plan',
    source: 'after five visits what was used counts half',
  }),
  constant('MOST_RATIO', '4', {
    file: 'season/visit/corrected-hours.ts',
    what: 'hours of one visit count at most so many times those planned',
    moves: 'plan',
    source: 'more is a slip of the pen',
  }),
  row({
    file: 'service/usual-terms.ts',
    text: 'longestServiceYears: «25»,',
    what: 'age at which rails and boards are worn out [a]',
    moves: 'money',
    source: 'only posts are forecast; --life',
    names: [],
  }),
  row({
    file: 'service/usual-terms.ts',
    text: 'inspectEveryYears: «5»,',
    what: 'years between inspections [a]',
    moves: 'money',
    source: '--inspect-every',
    names: [],
  }),
  row({
    file: 'service/usual-terms.ts',
    text: 'inflationPercent: «3»,',
    what: 'rise of prices [%/a]',
    moves: 'money',
    source: '--inflation',
    names: [],
  }),
  row({
    file: 'service/usual-terms.ts',
    text: 'interestPercent: «2»,',
    what: 'what a fund earns [%/a]',
    moves: 'money',
    source: '--interest',
    names: [],
  }),
  row({
    file: 'season/money/budget-range.ts',
    what: 'price that the office set, told in a mail: from and to',
    text: 'office: «{ below: 0.9, above: 1.25 }»,',
    moves: 'money',
    source: 'what turns up once the ground is open',
    names: ['OFF_BY.office', 'budgetRange'],
  }),
  row({
    file: 'season/money/budget-range.ts',
    what: 'price that ships with the program, told in a mail: from and to',
    text: 'shipped: «{ below: 0.75, above: 1.4 }»,',
    moves: 'money',
    source: 'an order of magnitude, and what turns up once the ground is open',
    names: ['OFF_BY.shipped'],
  }),
  constant('WORN_OUT_SHARE', '2 / 3', {
    file: 'season/fence-life.ts',
    what: 'share of built strength at which a fence short from new is worn out',
    moves: 'money',
    tag: 'memory',
    source: 'two-thirds rule for wood poles, NESC 261',
  }),
  constant('EARLY_YEARS', '2', {
    file: 'season/money/set-aside.ts',
    what: 'years at the beginning of a plan for which it is too late to set aside [a]',
    moves: 'money',
    source: 'arrears would set the yearly amount for decades',
  }),
];

/** What the sources of the season call memory or judgement and no row answers for, with the reason. */
export const SEASON_WITHOUT_ROW: Readonly<Record<string, string>> = {
  'season/money/fence-money.ts#fenceMoney': 'Composes numbers that have rows.',
  'season/money/survival-curve.ts#meanLifeYears':
    'Holds the last risk beyond the forecast; a longest service ends before that.',
  'season/money/waiting-season.ts#waitingSeason': 'Composes numbers that have rows.',
  'season/planned-works.ts#newPostWood': 'What a new post is made of, by the catalogue; no number.',
  'season/planned-works.ts#plannedWorks': 'Which works make sense at which posts; no number.',
  'season/travel.ts#greatCircleM': 'Geometry of the sphere; the radius has a row.',
  'season/value-of-inspection.ts#valueOfInformation': 'Arithmetic of expected values; no number.',
  'season/visit/corrected-hours.ts#correctedHours': 'The weighting; its two numbers have rows.',
  'season/visit/room-for-visit.ts#LEAST_ON_FIRST_DAY_H':
    'Bars days on which nearly nothing of a long visit could be done as its beginning; no speed, price or worth comes of it.',
  'season/works-cost.ts#worksCost': 'Of what is counted once a fence the largest counts; no number.',
};

const oneLine = (text: string): string => text.replace(/\s+/g, ' ');

/** The numbers of the season plan and the money, as a table. */
export const seasonNumbersTable = (): string =>
  table(
    ['number', 'file under src/', 'value', 'moves', 'tag', 'source or reason'],
    SEASON_NUMBER_ROWS.map(({ what, file, text, moves, tag, source }) => [
      what,
      `\`${file}\``,
      oneLine(markedValue(text)),
      moves,
      tag,
      source,
    ]),
  );
