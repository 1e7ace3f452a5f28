import { percentText } from '../drawing/quantity-text.ts';
import type { WorksKind } from '../forecast/works.ts';
import type { FenceNews } from './fence-news.ts';
import { at, foundAt, keptShort, listed, once, posts } from './fence-phrases-en.ts';
import type { MatterWords } from './message-words.ts';
import { dayInWords } from './plain-words.ts';

const share = (news: FenceNews): string => percentText(news.strengthLeft, 'en');

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

const WORKS: Readonly<Record<WorksKind, string>> = {
  'groundline-treatment': 'groundline treatment',
  liner: 'liner',
  drainage: 'drainage',
  'trimmer-guard': 'trimmer guard',
  'footing-reset': 'footing reset',
  'post-swap': 'post swap',
  'steel-sleeve': 'steel sleeves',
  'added-posts': 'added posts',
  rebuild: 'rebuild',
};

/** What works gained, against the same seasons without them. */
function gained({ gain }: FenceNews): string {
  if (!gain) return 'Works were done.';
  const done = listed(gain.works.map(({ kind, day }) => `${WORKS[kind]} of ${dayInWords(day, 'en')}`));
  const now = `In season ${gain.season} it snaps at ${gain.with.snap} and leans at ${gain.with.lean}`;
  if (!gain.without) return `Done: ${done}. ${now}. What they gained cannot be told apart from what was seen since.`;
  const later =
    gain.with.laterSnap && gain.without.laterSnap && gain.laterSeason
      ? ` In season ${gain.laterSeason} it would snap at ${gain.with.laterSnap}, without them at ${gain.without.laterSnap}.`
      : '';
  return `Done: ${done}. ${now}; without them it would snap at ${gain.without.snap} and lean at ${gain.without.lean}.${later}`;
}

/** What would have made a fence hold that was short from new. */
const mend = ({ bayShare }: FenceNews): string =>
  bayShare === null || bayShare > 0.97
    ? ''
    : ` What would mend it, in sound wood: posts at about ${Math.round(bayShare * 100)} % of the distance they stand apart, or about ${(1 / bayShare).toFixed(1)} times as strong.`;

/** What each matter says in English. */
export const MATTER_WORDS_EN: MatterWords = {
  subject: {
    dangerous: (n) => `${at(n)}: keep away, ${foundAt(n)}`,
    reminder: (n) =>
      n.reminded === null
        ? `${at(n)}: still short of its design gust`
        : `${at(n)}: season ${n.reminded.season} opens on ${dayInWords(n.reminded.day, 'en')}, and it is still short`,
    'works done': (n) =>
      n.gain?.without
        ? `${at(n)}: it now snaps at ${n.gain.with.snap}; without the works, at ${n.gain.without.snap}`
        : `${at(n)}: the works are done, it snaps at ${n.holds}`,
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
    dangerous: (n) =>
      `On record now: ${foundAt(n)}. What the posts beside them take over is not counted in the speeds of this message.`,
    reminder: (n) =>
      n.reminded === null
        ? 'It is still short.'
        : `Season ${n.reminded.season} opens on ${dayInWords(n.reminded.day, 'en')}. It is still short: it does not hold the design gust of ${n.shouldHold}.`,
    'works done': (n) => gained(n),
    'short from new': (n) =>
      n.keptShort
        ? changedKept(n)
        : `As built, with sound wood, its ${posts(n)} did not reach the design gust of ${n.shouldHold}. That is not rot: it is how it was built for this site.${n.strengthFell && n.heldNew ? ` Since then rot has taken it from ${n.heldNew} to ${n.holds}.` : ''}${mend(n)}`,
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
  suggestion: {
    dangerous: () =>
      'Keep people and vehicles away from it, and do not lean on it or climb it. Call us: a crew has to prop or take down what is loose before anything else is planned.',
    reminder: (by) =>
      `Have the weak posts replaced, or the fence rebuilt, ${by}. Crews’ weeks before a season fill early.`,
    'works done': () => 'Nothing for now. We go on watching it and write when something changes.',
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
  inShort: {
    dangerous: 'dangerous now',
    reminder: 'still short',
    'works done': 'works done',
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
};
