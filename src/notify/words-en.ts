import { onceInWords, percentText } from '../drawing/quantity-text.ts';
import type { FenceNews } from './fence-news.ts';
import type { MessageWords } from './message-words.ts';
import { officeName } from './office-name.ts';
import { dayInWords, likelihoodInWords } from './plain-words.ts';

const at = (news: FenceNews): string => `Fence ${news.ref} at ${news.site}`;
const posts = (news: FenceNews): string => (news.judged === 'line' ? 'line posts' : 'posts');
const once = (years: number): string => onceInWords(years, 'en');
const share = (news: FenceNews): string => percentText(news.strengthLeft, 'en');

const keptShort = (holds: string): string =>
  `holds ${holds}, less than 3 % above the design gust, and stays counted short`;

const RENEWED: Readonly<Record<string, string>> = {
  rebuild: 'rebuild',
  'post-swap': 'post swap',
  'steel-sleeve': 'fitting of steel sleeves',
  'added-posts': 'adding of posts',
};
const after = ({ renewal }: FenceNews): string =>
  renewal ? ` after the ${RENEWED[renewal.kind] ?? 'works'} of ${dayInWords(renewal.day, 'en')}` : '';
const footings = (news: FenceNews): string =>
  news.leansFirstAt === null
    ? ''
    : ` The footings ${news.renewal?.kind === 'rebuild' ? '' : 'are as before and '}lean at about ${news.leansFirstAt}.`;

/** The chance told in N years beside the gust's own, where it is higher. */
function higherThan({ pSnap, onceInYears }: FenceNews): string {
  if (pSnap === null || onceInYears === null || onceInYears > 1000 || pSnap < 1.05 / onceInYears) return '';
  return `, higher than one in ${Number(onceInYears.toPrecision(2))}, because the fence may be much weaker than the middle value`;
}

const count = (number: number, one: string, many: string): string =>
  number === 0 ? '' : `${number} ${number === 1 ? one : many}`;
const listed = (parts: readonly string[]): string => {
  const told = parts.filter(Boolean);
  return told.length < 2 ? told.join('') : `${told.slice(0, -1).join(', ')} and ${told[told.length - 1]}`;
};

function goesShort(news: FenceNews): string {
  if (news.keptShort) return `It ${keptShort(news.holds)}.`;
  if (news.standing === 'short from new') return 'It has been short of that since it was built.';
  if (news.shortNow) return `It is short in season ${news.season}.`;
  if (news.shortSeason) return `It goes short in season ${news.shortSeason}.`;
  return 'It does not go short within the next 30 seasons.';
}

const markSubject = (news: FenceNews): string =>
  news.onceInYears === null
    ? `${at(news)}: holds ${news.holds}, and falling`
    : `${at(news)}: the gust that snaps it comes ${once(news.onceInYears)}`;
const markChanged =
  (years: number) =>
  (news: FenceNews): string =>
    `The gust that snaps it now comes more often than once in ${years} years${
      news.onceInYears === null ? '' : `: ${once(news.onceInYears)}`
    }.`;

const changedKept = (news: FenceNews): string =>
  `Its ${posts(news)} hold ${news.holds} where they should hold ${news.shouldHold}: less than 3 % above it, which is less than we can tell apart. It stays counted short until it holds more.`;

/** English, as owners in the United States read it. */
export const WORDS_EN: MessageWords = {
  standing: { clear: 'clear', closing: 'closing', short: 'short', 'short from new': 'short from new' },
  unknown: {
    'install date': 'when it was built',
    embedment: 'how deep the posts stand in the ground',
    footing: 'what kind of footing holds them',
    'treatment class': 'how the wood was treated',
    species: 'the kind of wood',
    'end kind': 'what its ends meet',
  },
  subject: {
    'short from new': (n) =>
      n.keptShort
        ? `${at(n)}: ${keptShort(n.holds)}`
        : `${at(n)}: ${n.rottedThrough ? 'rotted through, and short' : 'short'} of its design gust since it was built${n.rottedThrough ? '' : `: ${n.holdsFigure} of ${n.shouldHold}`}`,
    short: (n) =>
      n.keptShort
        ? `${at(n)}: ${keptShort(n.holds)}`
        : `${at(n)}: ${n.running ? 'no longer holds' : 'will not hold'} its design gust in season ${n.season}`,
    closing: (n) =>
      n.shortSeason === null
        ? `${at(n)}: comes within 3 % of its design gust`
        : `${at(n)}: goes short in season ${n.shortSeason}`,
    'ends short': (n) =>
      n.endsKeptShort && n.endsHold
        ? `${at(n)}: its end posts hold ${n.endsHold}, less than 3 % above the design gust, and stay counted short`
        : `${at(n)}: its end posts no longer hold the design gust`,
    'two thirds': (n) => `${at(n)}: less than two thirds of its built strength is left`,
    'once in 50': markSubject,
    'once in 25': markSubject,
    'once in 10': markSubject,
    better: (n) => `${at(n)}: stands clear again`,
  },
  changed: {
    'short from new': (n) =>
      n.keptShort
        ? changedKept(n)
        : `As built, with sound wood, its ${posts(n)} did not reach the design gust of ${n.shouldHold}. That is not rot: it is how it was built for this site.${n.strengthFell && n.heldNew ? ` Since then rot has taken it from ${n.heldNew} to ${n.holds}.` : ''}`,
    short: (n) =>
      n.keptShort
        ? changedKept(n)
        : `Its ${posts(n)} ${n.running ? 'no longer reach' : 'will not reach'} the design gust of the site, ${n.shouldHold}${n.running ? '' : `, in season ${n.season}`}.`,
    closing: (n) =>
      n.shortSeason === null
        ? `Its ${posts(n)} hold the design gust of ${n.shouldHold}, but in the seasons ahead by less than 3 %: it stays counted closing.`
        : `Its ${posts(n)} still hold the design gust, but not for long: they go short in season ${n.shortSeason}.`,
    'ends short': (n) =>
      n.endsKeptShort && n.endsHold
        ? `The posts near its ends carry more wind than the others. They hold ${n.endsHold}, less than 3 % above the design gust, and stay counted short. If they break, that is a repair, not a new fence.`
        : `The posts near its ends carry more wind than the others and no longer hold the design gust${n.endsHold ? `: they hold ${n.endsHold}` : ''}. If they break, that is a repair, not a new fence.`,
    'two thirds': (n) =>
      `Rot has taken more than a third of the strength its posts were built with: ${share(n)} is left.`,
    'once in 50': markChanged(50),
    'once in 25': markChanged(25),
    'once in 10': markChanged(10),
    better: (n) =>
      `It stands clear again${after(n)}: its posts hold the design gust with some margin.${footings(n)} You need not do anything.`,
  },
  sameTime: 'at the same time',
  suggestion: {
    'short from new': (by, fell) =>
      fell
        ? `Have the weak posts replaced ${by}, and have us look at closer posts, heavier posts or a more open infill at the same time. When the fence is replaced, it should be built for this wind.`
        : `Have us look at closer posts, heavier posts or a more open infill, and plan one of them ${by}. When the fence is replaced, it should be built for this wind.`,
    short: (by) => `Have the weak posts replaced, or the fence rebuilt, ${by}.`,
    closing: (by) => `Have the posts checked at the groundline, and plan their replacement ${by}.`,
    'ends short': (by) => `Have the posts at its ends replaced or strengthened ${by}.`,
    'two thirds': (by) =>
      `Have the posts checked at the groundline ${by}. A groundline treatment slows rot for some years and is worth most while there is sound wood left.`,
    'once in 50': (by) => `Have the posts checked at the groundline ${by}.`,
    'once in 25': (by) => `Have the posts checked at the groundline ${by}, and set money aside for their replacement.`,
    'once in 10': (by) => `Have the posts replaced, or the fence rebuilt, ${by}.`,
    better: () => 'Nothing for now. We go on watching it and write when something changes.',
  },
  greeting: (name) => `Dear ${name},`,
  about: (n) => `${at(n)}, ${n.place}`,
  answer: (n) => [
    n.rottedThrough
      ? `Its posts are rotted through by our estimate; any strong wind may break it. Keep people away and have it checked first. It should hold ${n.shouldHold}, the design gust of its site.`
      : `Its posts hold a gust of ${n.holds} in season ${n.season}; they should hold ${n.shouldHold}, the design gust of its site.`,
    `${goesShort(n)}${n.onceInYears === null ? '' : ` A gust that snaps it comes ${once(n.onceInYears)}.`}`,
  ],
  ends: (n) =>
    n.endsHold && n.endsStanding && n.endsStanding !== 'clear' && !n.matters.includes('ends short')
      ? `Its end posts, judged apart, hold ${n.endsHold} (${n.endsStanding}).`
      : null,
  by: ({ actBy }) => {
    if (actBy.kind === 'before') return `before season ${actBy.season} opens on ${dayInWords(actBy.day, 'en')}`;
    const next = actBy.next ? `, at the latest before the next one opens on ${dayInWords(actBy.next, 'en')}` : '';
    return `as soon as a crew can come, since season ${actBy.season} is running${next}`;
  },
  nothingDone: (n) => [
    ...(n.later
      ? [
          `By season ${n.later.season} we expect it to hold ${n.later.holds}${n.later.onceInYears === null ? '' : `, a gust that comes ${once(n.later.onceInYears)}`}.`,
        ]
      : []),
    ...(n.pSnap === null
      ? ['We cannot say how likely it is to snap this season: the site has no curve of gusts.']
      : [
          `The chance that wind snaps it ${n.wellUnderWay ? `over a whole season like ${n.season}` : `in season ${n.season}`} is ${percentText(n.pSnap, 'en')}${higherThan(n)}.`,
        ]),
  ],
  sureness: (n) => [
    ...(n.pShortNow === null
      ? []
      : [`That it is short in season ${n.season} is ${likelihoodInWords(n.pShortNow, 'en')}.`]),
    ...(n.pShortThen === null || n.shortNow
      ? []
      : [`That it is short in season ${n.shortSeason ?? ''} is ${likelihoodInWords(n.pShortThen, 'en')}.`]),
    `8 chances in 10 that it holds between ${n.holdsFrom} and ${n.holdsTo}.`,
  ],
  basis:
    'Speeds are 3-second gusts at 33 ft (10 m) in open country, as on a wind map. The wood at the groundline is computed from age, treatment, climate and soil, and from readings and storms where any were reported.',
  designGust: (n) =>
    n.shouldHoldYears === null
      ? `The design gust of ${n.shouldHold} is the local rule for fences at this site.`
      : `The design gust of ${n.shouldHold} is the gust that this site sees about once in ${Math.round(n.shouldHoldYears)} years.`,
  unknowns: (inputs) =>
    `Not on record, and it weighs most: ${inputs.join('; ')}. If you know, tell us: the answer gets sharper.`,
  leanAt: (n) =>
    n.lean && `The ground gives way in a gust of about ${n.lean.at} (between ${n.lean.from} and ${n.lean.to}).`,
  leanMeans: 'Then the fence leans, which is a repair. This is the least certain number here and we mention it once.',
  quote: 'What it costs depends on what is found: the office quotes on request.',
  call: (office, byMail) =>
    `${officeName(office, 'en')}, ${office.phone ? `${office.phone}, ` : ''}${office.email}.${byMail ? ' You can also just answer this message.' : ''}`,
  pictureAlt: (n) =>
    `Chart of fence ${n.ref}, from new to 30 seasons ahead: it snaps at ${n.holds} in season ${n.season} (between ${n.holdsFrom} and ${n.holdsTo}), its design gust is ${n.shouldHold}, ${n.shortSeason ? `short from season ${n.shortSeason}` : 'not short within 30 seasons'}.`,
  why: (office, byMail) =>
    `You get this because ${officeName(office, 'en')} looks after this fence for you. We write when something changes, not otherwise. To get no more of these, ${office.phone ? `call ${office.phone} or ` : ''}write to ${office.email}${!byMail && office.postalAddress ? ` or to ${officeName(office, 'en')}, ${office.postalAddress.replace(/\s*\n\s*/g, ', ')}` : ''}.`,
  headings: {
    changed: 'What changed',
    suggestion: 'What we suggest, and by when',
    nothingDone: 'If nothing is done',
    sureness: 'How sure we are',
    basis: 'What this rests on',
    ground: 'The ground',
    call: 'Who to call',
    cautions: 'Please note',
    table: 'Your fences in this message',
    worst: 'The three that need it most',
  },
  digest: {
    subject: (fences, short) =>
      `${fences} of your fences have news${short > 0 ? `: ${short} short of the design gust` : ''}`,
    answer: (fences, counts, furthest) => [
      `Of the ${fences} fences in this message ${listed([
        count(counts.short + counts['short from new'], 'is short of its design gust', 'are short of their design gust'),
        count(counts.closing, 'is closing', 'are closing'),
        count(counts.clear, 'stands clear', 'stand clear'),
      ])}.`,
      `Furthest below its design gust is ${furthest.ref} at ${furthest.site}: its posts ${furthest.rottedThrough ? 'are rotted through by our estimate' : `hold ${furthest.holds}`} and should hold ${furthest.shouldHold}. ${goesShort(furthest)}`,
    ],
    columns: ['Fence', 'Standing', 'Holds', 'Should hold', 'Goes short', 'A gust that snaps it comes', 'News'],
    notShort: 'not in 30 seasons',
    noCurve: 'not known',
    csv: 'The attached file holds the same table for a spreadsheet.',
    matter: {
      'short from new': 'short from new',
      short: 'now short',
      closing: 'closing',
      'ends short': 'ends short',
      'two thirds': 'two thirds of built strength',
      'once in 50': 'once in 50 years',
      'once in 25': 'once in 25 years',
      'once in 10': 'once in 10 years',
      better: 'clear again',
    },
  },
};
