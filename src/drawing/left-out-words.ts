import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { MustRemedy } from '../season/must-remedy.ts';
import type { WeekBar } from '../season/plan/plan-problem.ts';
import type { CrewWeek, LeftOutReason, NearestOption } from '../season/plan/season-plan.ts';
import type { VisitWorks } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { dayWords, hoursWords, listWords } from './day-words.ts';
import { wholeMoney } from './plan-table.ts';
import { leftOutText } from './plan-words.ts';
import { visitItemText } from './visit-words.ts';
import { postNumbersText } from './what-if-words.ts';

/** A fence for which a plan does nothing, with what is known of the reason. */
interface LeftOutFence {
  readonly reason: LeftOutReason;
  readonly nearest?: NearestOption | null;
  readonly works?: readonly VisitWorks[];
  readonly remedy?: MustRemedy | null;
}

/** What the words of a reason are written with. */
export interface LeftOutNames {
  readonly crewNames: ReadonlyMap<string, string>;
  readonly today: CalendarDay;
  readonly currency: string;
}

type Bars = NearestOption['bars'];

const BARS: Readonly<Record<WeekBar, string>> = {
  'frozen-ground': 'frozen ground',
  'locate-notice': 'the notice to have buried lines marked',
  'cure-time': 'the time that a footing needs before the season opens',
  closed: 'the opening of the storm season',
};

/** What bars weeks, the most first: `frozen ground bars 14 of the 20 weeks, until that of March 29, and the opening of the storm season 3`. */
function barsText(bars: Bars, weeks: number, today: CalendarDay): string {
  const parts = [...bars].sort((a, b) => b.weeks - a.weeks);
  return listWords(
    parts.map(({ bar, weeks: barred, firstWeek, lastWeek }, index) => {
      const until =
        bar === 'frozen-ground'
          ? `, until that of ${dayWords(lastWeek, today)}`
          : bar === 'closed'
            ? `, from that of ${dayWords(firstWeek, today)}`
            : '';
      const count = barred === weeks ? 'every week' : index === 0 ? `${barred} of the ${weeks} weeks` : String(barred);
      return `${BARS[bar]}${index === 0 ? ' bars' : ''} ${count}${until}`;
    }),
  );
}

const alsoBarred = ({ options, barredOptions }: NearestOption, doing: string): string => {
  if (barredOptions === 0 || barredOptions === options) return '';
  return `; ${barredOptions} of the ${options} works that ${doing} are barred in every week`;
};

/** A week of a crew in words: `the week of March 1 of North crew`. */
const weekText = ({ week, crewRef }: CrewWeek, { crewNames, today }: LeftOutNames): string =>
  `the week of ${dayWords(week, today)} of ${crewNames.get(crewRef) ?? crewRef}`;

/** What it takes: `8.4 h`, `84 h, 76 of them on the way`. */
const needText = ({ neededHours, wayHours }: CrewWeek): string =>
  `${hoursWords(neededHours)} h${wayHours >= 0.05 ? `, ${hoursWords(wayHours)} of them on the way` : ''}`;

function hoursText(nearest: NearestOption, what: string, names: LeftOutNames): string {
  const { weeks, openWeeks, bars, best } = nearest;
  const open =
    openWeeks === weeks
      ? `${what} could be done in any of the ${weeks} weeks`
      : `${what} could be done in ${openWeeks} of the ${weeks} weeks (${barsText(bars, weeks, names.today)})`;
  const short = best
    ? `; it takes ${needText(best)}, and the nearest, ${weekText(best, names)}, has ${hoursWords(Math.max(0, best.leftHours))} of ${hoursWords(best.thereAreHours)} h left`
    : '';
  return `${open}, but there works that come first or are worth more have the hours${short}${alsoBarred(nearest, 'would do')}`;
}

function lengthText(nearest: NearestOption, what: string, names: LeftOutNames): string {
  const { best, weeks, openWeeks, bars } = nearest;
  const open =
    openWeeks === weeks
      ? `the ${weeks} weeks`
      : `the ${openWeeks} weeks that are not barred (${barsText(bars, weeks, names.today)})`;
  if (!best || best.thereAreHours <= 0)
    return `${what} could be done, but no crew that can do it goes out in ${open}: days off, or nobody in the crew then`;
  return `for ${what} it takes ${needText(best)}, and no crew has so many in one of ${open}; the most fitting, ${weekText(best, names)}, has ${hoursWords(best.thereAreHours)} h`;
}

const STANDS: Readonly<Record<FenceStanding, string>> = {
  clear: 'clear',
  closing: 'closing',
  short: 'short',
  'short from new': 'short from new',
};

/** What the most that can be done would leave: why a fence that must be served cannot be. */
function remedyText({ rebuild }: MustRemedy, { currency }: LeftOutNames): string {
  const none = 'no works of the catalogue bring it to where it must be';
  if (rebuild === null) return `${none}, and a rebuild makes no sense there`;
  const { price, standing, endsStanding, dangerPosts, key } = rebuild;
  const parts = [
    ...(standing === 'clear' ? [] : [`it would still be ${STANDS[standing]}`]),
    ...(endsStanding === null || endsStanding === 'clear' || endsStanding === standing
      ? []
      : [`its ends would still be ${STANDS[endsStanding]}`]),
    ...(dangerPosts.length > 0 ? [`posts ${postNumbersText(dangerPosts)} would stay dangerous`] : []),
  ];
  const more =
    key === 'rebuild' ? 'a rebuild' : `a rebuild with ${key.replace(/^rebuild \+ /, '').replaceAll('-', ' ')}`;
  return `${none}: after ${more} as the catalogue builds it, for ${wholeMoney(price)} ${currency}, ${listWords(parts)} (larger posts or footings in the catalogue might change that)`;
}

const BARRED: readonly LeftOutReason[] = [
  'locate-notice-too-late',
  'cure-time-too-late',
  'ground-frozen',
  'weeks-closed',
];

/**
 * Why nothing is done at a fence, as a clause with the numbers: which rules bar how many weeks, how many hours it takes and how
 * many are left, what a rebuild would leave. Plans that keep no numbers give the reason alone.
 */
export function leftOutClause(fence: LeftOutFence, names: LeftOutNames): string {
  const { reason, nearest, works = [], remedy } = fence;
  const remedied = remedy ? `${remedyText(remedy, names)}${reason === 'nothing-to-do' ? '' : '; of what helps: '}` : '';
  if (remedy && reason === 'nothing-to-do') return `${remedied}, and nothing else pays for itself`;
  if (!nearest) return `${remedied}${leftOutText(reason)}`;
  const what = works.length > 0 ? visitItemText({ works }) : 'what would do';
  if (reason === 'no-crew-hours') return `${remedied}${hoursText(nearest, what, names)}`;
  if (reason === 'too-far-for-any-crew' || reason === 'longer-than-any-crew-week')
    return `${remedied}${lengthText(nearest, what, names)}`;
  return BARRED.includes(reason) && nearest.weeks > 0
    ? `${remedied}no week of the plan allows ${what}: ${barsText(nearest.bars, nearest.weeks, names.today)}`
    : `${remedied}${leftOutText(reason)}`;
}
