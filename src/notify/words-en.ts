import type { FenceNews } from './fence-news.ts';
import type { MessageWords } from './message-words.ts';
import { dayInWords, likelihoodInWords, onceInWords, percentInWords } from './plain-words.ts';

const at = (news: FenceNews): string => `Fence ${news.ref} at ${news.site}`;
const posts = (news: FenceNews): string => (news.judged === 'line' ? 'line posts' : 'posts');
const once = (years: number): string => onceInWords(years, 'en');
const share = (news: FenceNews): string => percentInWords(news.strengthLeft, 'en');

const keptShort = (holds: string): string =>
  `holds ${holds}, less than 3 % above the design gust, and stays counted short`;

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
        : `${at(n)}: holds ${n.holds}, should hold ${n.shouldHold}, since it was built`,
    short: (n) =>
      n.keptShort
        ? `${at(n)}: ${keptShort(n.holds)}`
        : `${at(n)}: no longer holds its design gust in season ${n.season}`,
    closing: (n) =>
      n.shortSeason === null
        ? `${at(n)}: comes within 3 % of its design gust`
        : `${at(n)}: goes short in season ${n.shortSeason}`,
    'ends short': (n) =>
      n.endsKeptShort && n.endsHold
        ? `${at(n)}: its end posts hold ${n.endsHold}, less than 3 % above the design gust, and stay counted short`
        : `${at(n)}: its end posts no longer hold the design gust`,
    'two thirds': (n) => `${at(n)}: two thirds of its built strength are left`,
    'once in 50': markSubject,
    'once in 25': markSubject,
    'once in 10': markSubject,
    better: (n) => `${at(n)}: stands clear again`,
  },
  changed: {
    'short from new': (n) =>
      n.keptShort
        ? changedKept(n)
        : `As built, with sound wood, its ${posts(n)} did not reach the design gust of ${n.shouldHold}. That is not rot: it is how it was built for this site.`,
    short: (n) =>
      n.keptShort ? changedKept(n) : `Its ${posts(n)} have fallen under the design gust of the site, ${n.shouldHold}.`,
    closing: (n) =>
      n.shortSeason === null
        ? `Its ${posts(n)} hold the design gust of ${n.shouldHold}, but in the seasons ahead by less than 3 %: it stays counted closing.`
        : `Its ${posts(n)} still hold the design gust, but not for long: they go short in season ${n.shortSeason}.`,
    'ends short': (n) =>
      n.endsKeptShort && n.endsHold
        ? `The posts near its ends carry more wind than the others. They hold ${n.endsHold}, less than 3 % above the design gust, and stay counted short. Losing posts at an end is a repair, not a fence.`
        : `The posts near its ends carry more wind than the others and no longer hold the design gust${n.endsHold ? `: they hold ${n.endsHold}` : ''}. Losing posts at an end is a repair, not a fence.`,
    'two thirds': (n) => `Rot has taken a third of the strength its posts were built with: ${share(n)} is left.`,
    'once in 50': markChanged(50),
    'once in 25': markChanged(25),
    'once in 10': markChanged(10),
    better: () => 'It stands clear again: its posts hold the design gust with some margin. You need not do anything.',
  },
  suggestion: {
    'short from new': (by) =>
      `Have us look at closer posts, heavier posts or a more open infill, and plan one of them ${by}. When the fence is replaced, it should be built for this wind.`,
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
    `Your fence holds a gust of ${n.holds} in season ${n.season}; it should hold ${n.shouldHold}, the design gust of its site.`,
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
      : [`The chance that wind snaps it in season ${n.season} is ${percentInWords(n.pSnap, 'en')}.`]),
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
  basis: (n) => [
    'Speeds are 3-second gusts at 33 ft (10 m) in open country, as on a wind map. The wood at the groundline is computed from age, treatment, climate and soil; nobody has to have measured it.',
    n.shouldHoldYears === null
      ? `The design gust of ${n.shouldHold} is the local rule for fences at this site.`
      : `The design gust of ${n.shouldHold} is the gust that this site sees about once in ${Math.round(n.shouldHoldYears)} years.`,
  ],
  unknowns: (inputs) =>
    `Not on record, and it weighs most: ${inputs.join('; ')}. If you know, tell us: the answer gets sharper.`,
  lean: (n) =>
    n.lean &&
    `The ground gives way in a gust of about ${n.lean.at} (between ${n.lean.from} and ${n.lean.to}): then the fence leans, which is a repair. This is the least certain number here and we mention it once.`,
  quote: 'What it costs depends on what is found: the office quotes on request.',
  call: (office, byMail) =>
    `${office.name}, ${office.phone ? `${office.phone}, ` : ''}${office.email}.${byMail ? ' You can also just answer this message.' : ''}`,
  pictureAlt: (n) =>
    `Chart of fence ${n.ref}, from new to 30 seasons ahead: it snaps at ${n.holds} in season ${n.season} (between ${n.holdsFrom} and ${n.holdsTo}), its design gust is ${n.shouldHold}, ${n.shortSeason ? `short from season ${n.shortSeason}` : 'not short within 30 seasons'}.`,
  cautions: [
    'These numbers are planning estimates, not a structural certification. Local codes and the authority having jurisdiction decide; ask a licensed engineer for anything that matters to life safety.',
    'Stay away from a leaning fence in wind.',
    'Call before you dig: 811 has buried lines marked.',
    'Treated wood and its dust need care: gloves and a mask, and never burn it. Preservatives only by licensed applicators where the law says so.',
  ],
  why: (office) =>
    `You get this because ${office.name} looks after this fence for you. We write when something changes, not otherwise. To get no more of these, write to ${office.email}.`,
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
    answer: (fences, counts, worst) => [
      `Of the ${fences} fences in this message ${counts.short + counts['short from new']} are short of their design gust, ${counts.closing} are closing and ${counts.clear} stand clear.`,
      `The weakest is ${worst.ref} at ${worst.site}: it holds ${worst.holds} and should hold ${worst.shouldHold}. ${goesShort(worst)}`,
    ],
    columns: ['Fence', 'Standing', 'Holds', 'Should hold', 'Goes short', 'Snaps', 'News'],
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
