import { listed } from './fence-phrases-en.ts';
import { dayInWords, daysInWords, weekdayInWords } from './plain-words.ts';
import type { VisitDays } from './visit-facts.ts';
import type { VisitWords } from './visit-words.ts';

const day = (text: string): string => weekdayInWords(text, 'en');

function hour(startsAt: string): string {
  const [hours = 0, minutes = 0] = startsAt.split(':').map(Number);
  const twelve = hours % 12 === 0 ? 12 : hours % 12;
  return `${twelve}:${String(minutes).padStart(2, '0')} ${hours < 12 ? 'am' : 'pm'}`;
}

const when = ({ firstDay, lastDay, startsAt }: VisitDays): string => {
  const [from, to] = daysInWords(firstDay, lastDay, 'en');
  const days = firstDay === lastDay ? `on ${day(firstDay)}` : `from ${from} to ${to}`;
  return startsAt === null ? days : `${days}, from ${hour(startsAt)}`;
};

/** Days without `on` or `from`: `Monday, November 30 to Friday, December 4`. */
const span = ({ firstDay, lastDay }: VisitDays): string =>
  firstDay === lastDay ? day(firstDay) : daysInWords(firstDay, lastDay, 'en').join(' to ');

const someTime = ({ firstDay, lastDay, startsAt }: VisitDays): string =>
  startsAt === null && firstDay === lastDay ? ', some time that day' : '';

const many = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** What is said of visits in English. */
export const VISIT_WORDS_EN: VisitWords = {
  works: {
    inspect: 'inspection at the groundline',
    'groundline-treatment': 'groundline treatment',
    liner: 'liners',
    drainage: 'drainage',
    'trimmer-guard': 'trimmer guards',
    'footing-reset': 'footings reset',
    'post-swap': 'new posts in place of old ones',
    'steel-sleeve': 'steel sleeves',
    'added-posts': 'added posts',
    rebuild: 'rebuild',
  },
  posts: (numbers, count) => `${count === 1 ? 'post' : 'posts'} ${numbers}`,
  morePosts: (count) => `${count} more`,
  when,
  fences: (refs) =>
    `${refs.length === 1 ? 'Fence' : 'Fences'} ${refs.length > 3 ? `${refs.slice(0, 2).join(', ')} and ${refs.length - 2} more` : listed(refs)}`,
  subject: {
    'visit proposed': (v, fences, on) => `${fences} at ${v.siteName}: a crew could come ${on}`,
    'visit confirmed': (v, fences, on) => `${fences} at ${v.siteName}: the crew comes ${on}`,
    'visit changed': (v, fences, on) => `${fences} at ${v.siteName}: the visit has changed, now ${on}`,
    'visit missed': (v, fences) => `${fences} at ${v.siteName}: the crew did not come, and what happens next`,
    'visit cancelled': (v, fences, on) => `${fences} at ${v.siteName}: no crew comes ${on}`,
  },
  answer: {
    'visit proposed': (v, on) => [
      `A crew could come ${on}${someTime(v)}. It is a proposal: nothing is promised until we confirm it.`,
      `If the day does not suit, tell us by ${dayInWords(v.answerBy, 'en')}.`,
    ],
    'visit confirmed': (v, on) => [
      `The crew (${v.crewName}) comes ${on}${someTime(v)}.`,
      v.before !== null && v.before.firstDay !== v.firstDay
        ? `That is in place of ${span(v.before)}, which we had proposed.`
        : 'The day is promised: we move it only by telling you.',
    ],
    'visit changed': (v, on) => [
      `The visit is now ${on}, by ${v.crewName}${v.state === 'proposed' ? '; it is still a proposal' : ''}.`,
      v.before === null ||
      (v.before.firstDay === v.firstDay && v.before.lastDay === v.lastDay && v.before.startsAt === v.startsAt)
        ? 'The day is the same; the crew or what is done has changed, as below.'
        : `It was ${when(v.before)}. That no longer holds.`,
    ],
    'visit missed': (_, on) => [
      `The crew was to come ${on}, and did not. We are sorry.`,
      'Nothing was done. The work is back in our plan, and we write to you with a new day.',
    ],
    'visit cancelled': (v, on) => [
      `The visit ${on} is called off: no crew comes to ${v.siteName} for you then.`,
      'Nothing is lost: the work is back in our plan, and we write again when there is a new day.',
    ],
  },
  covering: {
    'visit proposed': 'This is what our plan for the season has for you.',
    'visit confirmed': 'Below is what is done, what it may cost and what helps on the day.',
    'visit changed': 'Below is the visit as it stands now.',
    'visit missed': 'Below is what was to be done.',
    'visit cancelled': 'Below is what was to be done.',
  },
  next: {
    'visit proposed': (answerBy) =>
      `If the day suits, you need not do anything. If it does not, answer this message or call us by ${dayInWords(answerBy, 'en')}, and we look for another.`,
    'visit confirmed': () => 'If something comes between, answer this message or call us as early as you can.',
    'visit changed': (answerBy) =>
      `If the new day does not suit, answer this message or call us by ${dayInWords(answerBy, 'en')}.`,
    'visit missed': () => 'You need not do anything. If you would rather settle a day now, call us.',
    'visit cancelled': () => 'You need not do anything. If you want it done all the same, call us.',
  },
  dayChoice: {
    choose: 'Or choose another day of that week yourself, by the link to your visits below.',
    mark: 'This visit goes to fences of others too: by the link to your visits below, mark every day of that week that suits you for it to begin, with the days that it then takes. Each owner has one voice, and we confirm the day that suits most.',
  },
  several: {
    subject: (matter, visits, first, last) => {
      const days =
        first === last ? `on ${dayInWords(first, 'en')}` : `${dayInWords(first, 'en')} to ${dayInWords(last, 'en')}`;
      if (matter === 'visit proposed') return `${many(visits, 'visit')} to your fences could be made, ${days}`;
      if (matter === 'visit confirmed')
        return `${many(visits, 'visit')} to your fences, ${days}: the days are promised`;
      return `News of ${many(visits, 'visit')} to your fences, ${days}`;
    },
    counted: (matter, visits) =>
      ({
        'visit proposed': `A crew could come ${visits === 1 ? 'once' : `${visits} times`}: ${visits === 1 ? 'it is a proposal' : 'these are proposals'}, and nothing is promised until we confirm it.`,
        'visit confirmed': `A crew comes ${visits === 1 ? 'once' : `${visits} times`} on ${visits === 1 ? 'a promised day' : 'promised days'}.`,
        'visit changed': `${visits === 1 ? 'A visit' : `${visits} visits`} that you know of ${visits === 1 ? 'has' : 'have'} changed.`,
        'visit missed': `The crew did not come ${visits === 1 ? 'once' : `${visits} times`}. We are sorry.`,
        'visit cancelled': `${visits === 1 ? 'A visit is' : `${visits} visits are`} called off.`,
      })[matter],
    covering: 'Below is each visit by itself: its day, what is done, and what it may cost.',
    heading: 'Each visit on your pages',
    open: (visit, on) => `The visit to ${visit.siteName} ${on}`,
    openNote: 'Each of these leads to that visit among all of yours.',
    calendar:
      'The attached calendar file holds all these visits; a later message about one of them changes that entry alone.',
  },
  budget:
    'A budget figure, not a quote: before tax, from our usual prices. What the crew finds in the ground may change it.',
  totalCost: (range) => `Together ${range}.`,
  reminder: {
    locate:
      'Posts are dug. We have buried public lines marked before; please show the crew private ones that nobody else knows of: sprinklers, lighting, drains.',
    permit:
      'A permit may be needed. The office asks for it; tell us if your association or city has told you anything.',
    'licensed-applicator': 'Preservative is applied by a licensed applicator where the law says so.',
    'frozen-ground': 'If the ground is frozen that day, the work waits, and we tell you.',
  },
  onTheDay: [
    'Please let the crew reach both sides of the fence: unlock gates, and move cars, pots and furniture away from it.',
    'Keep children and animals away while it works, and for as long as a fence is open.',
  ],
  calendar: {
    state: { proposed: 'Proposed: ', confirmed: '', done: '', missed: 'Missed: ', cancelled: 'Called off: ' },
    request: 'The attached calendar entry puts the day into your calendar; a later message changes the same entry.',
    cancel: 'The attached calendar entry takes the day out of your calendar.',
  },
  headings: {
    works: 'What is done, and what it may cost',
    next: 'What we ask of you',
    onTheDay: 'On the day',
    why: 'Why, and why now',
  },
  board: {
    subject: (visits, sites, firstDay, lastDay) =>
      `Season plan: ${many(visits, 'visit')} at ${many(sites, 'site')}, ${firstDay === lastDay ? `on ${dayInWords(firstDay, 'en')}` : `${dayInWords(firstDay, 'en')} to ${dayInWords(lastDay, 'en')}`}`,
    answer: ({ visits, fences, sites, firstDay, lastDay, total }) => [
      `Our plan for the season has ${many(visits, 'visit')} to ${many(fences, 'fence')} of yours at ${many(sites, 'site')}, done by ${dayInWords(lastDay, 'en')}; the first is on ${dayInWords(firstDay, 'en')}.`,
      `In all ${total}: a budget figure, not a quote.`,
    ],
    nothingPlanned: [
      'Our new plan for the season has no visit to your fences.',
      'What was proposed before is called off, as below.',
    ],
    covering: 'Below is what is planned at each of your sites, by when and at what cost, for your meeting.',
    siteCost: (site, range, lastDay) => `${site}, all visits: done by ${dayInWords(lastDay, 'en')}, ${range}.`,
    columns: ['Fence', 'What is done', 'May cost'],
    standing: { proposed: 'proposed', confirmed: 'promised' },
    noLonger: 'These days were proposed before and are called off; the fences stay in our plan:',
    next: 'Proposed days become promised ones when the office confirms them; each is then told with an entry for the calendar. If your board wants another order or other days, answer this message before then.',
    csv: 'The attached file holds the same for a spreadsheet.',
    more: (rows) => `And ${rows} more: see the attached table.`,
    headings: {
      planned: 'What is planned, site by site',
      noLonger: 'No longer planned',
      next: 'What we ask of you',
      why: 'Why these fences',
    },
  },
};
