import type { FC } from 'hono/jsx';
import { countWords, dayWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import type { Visit } from '../../season/visit/visit.ts';
import type { VisitDays } from '../../service/visit-days.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { TokenField } from '../frame/form-field.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

interface DaysProps {
  readonly days: VisitDays;
  readonly visit: Visit;
  readonly today: CalendarDay;
  readonly formToken: string;
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

const weekdayWords = (day: CalendarDay, today: CalendarDay): string =>
  `${WEEKDAYS[new Date(`${day}T00:00:00Z`).getUTCDay()] ?? ''}, ${dayWords(day, today)}`;

/** The days that the visit takes where it begins on one: `Tuesday, December 1, to Friday, December 4`. */
function spanFrom(day: CalendarDay, { days, today }: DaysProps): string {
  const lastDay = days.offered.find(({ firstDay }) => firstDay === day)?.lastDay ?? day;
  return `${weekdayWords(day, today)}${lastDay === day ? '' : `, to ${weekdayWords(lastDay, today)}`}`;
}

const namesOf = (refs: readonly string[], { ownerNames }: VisitDays): string =>
  listWords(refs.map((ref) => ownerNames.get(ref) ?? ref));

/** Which day suits most: what the owners marked, day by day, with those whom a day does not suit, and one button. */
export const DaysPart: FC<DaysProps> = (props) => {
  const { days, formToken, visit } = props;
  const { answered, silent, best } = days;
  const all = answered.length + silent.length;
  return (
    <section>
      <h2 id="days">Which day suits its owners</h2>
      <p>{`The visit goes to the fences of ${countWords(all, 'owner')}. On their pages each marks the days to begin on that suit, one voice each; you confirm one for all. ${saidSentence(days)}`}</p>
      {answered.length > 0 && days.days.length > 0 && <Table {...props} />}
      {days.days.length === 0 && (
        <p>
          It can begin on no day of its week that is left: the crew has not the hours beside its other visits, or the
          rules of the works forbid it. Give its fences another week, or confirm a day below and see what speaks against
          it.
        </p>
      )}
      {best && (
        <form class="act" method="post" action={`/visits/${encodeURIComponent(visit.uid)}/confirm`}>
          <TokenField token={formToken} />
          <input type="hidden" name="day" value={best.day} />
          <input type="hidden" name="because" value={`suits ${best.suits.length} of ${all} owners`} />
          <button type="submit">{`Confirm ${spanFrom(best.day, props)}`}</button>
          <p class="muted">{bestSentence(props)}</p>
        </form>
      )}
    </section>
  );
};

function saidSentence(days: VisitDays): string {
  const { answered, silent } = days;
  if (answered.length === 0) return 'Nobody has marked a day yet.';
  return silent.length === 0
    ? 'All have marked their days.'
    : `${sentenceCase(countWords(answered.length, 'has', 'have'))} marked; nothing yet from ${namesOf(silent, days)}.`;
}

function bestSentence({ days, visit }: DaysProps): string {
  const { best } = days;
  if (!best) return '';
  const most = `It suits ${best.suits.length} of the ${days.answered.length} who marked${best.day === visit.firstDay ? ', and is the day that was proposed' : ''}.`;
  const against =
    best.doesNotSuit.length === 0
      ? 'Nobody said that it does not suit.'
      : `It does not suit ${namesOf(best.doesNotSuit, days)}: call them first.`;
  return `${most} ${against} All owners are told of the day you confirm.`;
}

const Table: FC<DaysProps> = (props) => (
  <ScrollFrame label="Days and owners">
    <table class="stacked spaced">
      <caption>
        Days on which it can begin, with all that it then takes: the crew has the hours beside its other visits, and the
        rules of the works are kept
      </caption>
      <thead>
        <tr>
          <th scope="col">Begins</th>
          <th scope="col" class="figure">
            Suits
          </th>
          <th scope="col">Does not suit</th>
        </tr>
      </thead>
      <tbody>
        {props.days.days.map(({ day, suits, doesNotSuit }) => (
          <tr>
            <th scope="row" class="when">
              {spanFrom(day, props)}
              {day === props.visit.firstDay && <span class="small">proposed</span>}
            </th>
            <td class="figure" data-label="Suits">
              {`${suits.length} of ${props.days.answered.length}`}
            </td>
            <td data-label="Does not suit">{doesNotSuit.length === 0 ? 'nobody' : namesOf(doesNotSuit, props.days)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);
