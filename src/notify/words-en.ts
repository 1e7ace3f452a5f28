import type { FenceNews } from './fence-news.ts';
import { at, foundAt, keptShort, listed, once } from './fence-phrases-en.ts';
import { MATTER_WORDS_EN } from './matter-words-en.ts';
import type { MessageWords } from './message-words.ts';
import { officeName } from './office-name.ts';
import { dayInWords, likelihoodInWords } from './plain-words.ts';
import type { OfferKind } from './works-offer.ts';

/** The chance told in N years beside the gust's own, where it is higher. */
function higherThan({ pSnap, onceInYears }: FenceNews): string {
  if (pSnap === null || onceInYears === null || onceInYears > 1000 || pSnap < 1.05 / onceInYears) return '';
  return `, higher than one in ${Number(onceInYears.toPrecision(2))}, because the fence may be much weaker than the middle value`;
}

const count = (number: number, one: string, many: string): string =>
  number === 0 ? '' : `${number} ${number === 1 ? one : many}`;

/** What is suggested, in the middle of a sentence. */
const OFFERED: Readonly<Record<OfferKind, string>> = {
  inspect: 'a check at the groundline',
  'groundline-treatment': 'a groundline treatment',
  'post-swap': 'new posts',
  'end-posts': 'new posts at the ends',
  'added-posts': 'added posts',
  rebuild: 'a rebuild',
};

function goesShort(news: FenceNews): string {
  if (news.keptShort) return `It ${keptShort(news.holds)}.`;
  if (news.standing === 'short from new') return 'It has been short of that since it was built.';
  if (news.shortNow) return `It is short in season ${news.season}.`;
  if (news.shortSeason) return `It goes short in season ${news.shortSeason}.`;
  return 'It does not go short within the next 30 seasons.';
}

function shortInChart({ standing, shortSeason }: FenceNews): string {
  if (standing === 'short from new') return 'short since it was built';
  if (standing === 'short') return 'short now';
  return shortSeason ? `short from season ${shortSeason}` : 'not short within 30 seasons';
}

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
  matter: MATTER_WORDS_EN,
  sameTime: 'at the same time',
  danger: (n) =>
    n.isDangerous
      ? `Dangerous now: ${foundAt(n)}. Keep people away from the fence, above all in wind, until a crew has been there.`
      : null,
  covering: (fences) =>
    fences === 1
      ? 'We have news of this fence: below is what it holds, what we suggest and how sure we are.'
      : 'We have news of these fences: below is what they hold, what we suggest and how sure we are.',
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
    if (actBy.kind === 'before' && actBy.latest !== null)
      return `by ${dayInWords(actBy.latest, 'en')}, so that new footings are ready when season ${actBy.season} opens on ${dayInWords(actBy.day, 'en')}`;
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
          `That wind snaps it ${n.wellUnderWay ? `over a whole season like ${n.season}` : `in season ${n.season}`} is ${likelihoodInWords(n.pSnap, 'en')}${higherThan(n)}.`,
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
  offered: ({ kind, postCount }, range) => {
    const posts = `${postCount} post${postCount === 1 ? '' : 's'}`;
    switch (kind) {
      case 'post-swap':
        return `New posts for all ${posts}: ${range}.`;
      case 'end-posts':
        return `New posts at its ends, ${posts}: ${range}.`;
      case 'added-posts':
        return `A post more in each bay, ${posts}: ${range}.`;
      case 'groundline-treatment':
        return `Groundline treatment of ${posts}: ${range}.`;
      case 'inspect':
        return `Having ${posts} checked at the groundline: ${range}.`;
      case 'rebuild':
        return `A rebuild with ${posts}: ${range}.`;
    }
  },
  budget: 'Budget figures, not a quote: before tax, from our usual prices. Where only some posts are weak it is less.',
  wayOut: (by, offers) => {
    const all = offers.map(({ kind, range }) => `${OFFERED[kind]} (${range})`);
    return `We suggest ${all.join(offers[0]?.kind === 'inspect' ? ', then, as found, ' : ' or ')}, ${by}. Budget figures, not a quote.`;
  },
  waiting: (extra) =>
    `If it does, putting it right costs ${extra} more than in good time, on the average: crews and posts are short in a bad week, and a fence seldom falls alone.`,
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
    `Chart of fence ${n.ref}, from new to 30 seasons ahead: it snaps at ${n.holds} in season ${n.season} (between ${n.holdsFrom} and ${n.holdsTo}), its design gust is ${n.shouldHold}, ${shortInChart(n)}.`,
  why: (office, byMail) =>
    `You get this because ${officeName(office, 'en')} looks after this fence for you. We write when something changes, and once before a storm season while it is short; not otherwise. To get no more of these, ${office.phone ? `call ${office.phone} or ` : ''}write to ${office.email}${!byMail && office.postalAddress ? ` or to ${officeName(office, 'en')}, ${office.postalAddress.replace(/\s*\n\s*/g, ', ')}` : ''}.`,
  headings: {
    changed: 'What changed',
    suggestion: 'What we suggest, and by when',
    nothingDone: 'If nothing is done',
    sureness: 'How sure we are',
    basis: 'What this rests on',
    ground: 'The ground',
    cost: 'What it may cost',
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
    sinceBuilt: 'since it was built',
    now: 'now',
    noCurve: 'not known',
    csv: 'The attached file holds all of them for a spreadsheet, with what works may cost at each.',
    more: (count) => `And ${count} more: see the attached table.`,
    moreFences: (count) => ` and ${count} more`,
    total: (fences, range) =>
      `We suggest works at ${fences === 1 ? 'one of them' : `${fences} of them`}: the least of it comes to ${range}, a budget figure and not a quote.`,
    waiting: (extra) =>
      `Leaving all of them for a season costs ${extra} more, on the average over what may happen: rebuilds in a bad week, and what a fence brings down with it.`,
    danger: (fences, all) =>
      `Dangerous now: ${fences.map((n) => `${n.ref} (${foundAt(n)})`).join('; ')}${all > fences.length ? `; and ${all - fences.length} more, in the attached table` : ''}. Keep people away from ${all === 1 ? 'it' : 'them'}, above all in wind, until a crew has been there.`,
  },
};
