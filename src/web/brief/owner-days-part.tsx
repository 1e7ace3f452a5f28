import type { FC } from 'hono/jsx';
import { countWords, dayWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import type { ChosenDay, MarkedVisit, OwnerDays } from '../../service/owner-days.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';

/** Visits that are named of each kind; the rest is counted. */
const NAMED = 6;

/** What owners chose and marked of the days of visits, with what the office does next; nothing where they said nothing. */
export const OwnerDaysPart: FC<{ readonly said: OwnerDays; readonly today: CalendarDay }> = ({ said, today }) => {
  const { chosen, marked, siteNames } = said;
  if (chosen.length + marked.length === 0) return null;
  return (
    <section>
      <h2 id="owner-days">Days that owners chose</h2>
      {marked.length > 0 && (
        <p>{`${sentenceCase(countWords(marked.length, 'visit waits', 'visits wait'))} for you to confirm the day that suits most owners:`}</p>
      )}
      <ul class="plain">
        {marked.slice(0, NAMED).map((each) => (
          <Marked each={each} siteNames={siteNames} today={today} />
        ))}
      </ul>
      {chosen.length > 0 && (
        <p>
          {`${sentenceCase(countWords(chosen.length, 'day is', 'days are'))} promised because the owner chose ${chosen.length === 1 ? 'it' : 'them'}. `}
          You need not do anything; open a visit to give it an hour, and if the day does not do after all, call the
          owner and confirm another.
        </p>
      )}
      <ul class="plain">
        {chosen.slice(0, NAMED).map((each) => (
          <Chosen each={each} siteNames={siteNames} today={today} />
        ))}
      </ul>
      {(marked.length > NAMED || chosen.length > NAMED) && (
        <p>
          {`Named are the first ${NAMED} of each; `}
          <a href="/answers">what owners answered</a> and <a href="/visits">the visits</a> have them all.
        </p>
      )}
    </section>
  );
};

interface LineProps<T> {
  readonly each: T;
  readonly siteNames: ReadonlyMap<string, string>;
  readonly today: CalendarDay;
}

/** Where no day suits anybody who answered: whom it is said of, and whether more is to come. */
function noneSuits({ answered, silent, ownerNames }: MarkedVisit['days']): string {
  const names = answered.map((ref) => ownerNames.get(ref) ?? ref);
  const said = `: none of the days suits ${names.length > NAMED ? `these ${names.length}` : listWords(names)}`;
  if (silent.length === 0) return `${said}, so give it another week`;
  return `${said}; ${silent.length === 1 ? 'one has' : `${silent.length} have`} not answered yet`;
}

const Marked: FC<LineProps<MarkedVisit>> = ({ each: { visit, days }, siteNames, today }) => {
  const { best, answered, silent } = days;
  const all = answered.length + silent.length;
  return (
    <li>
      <a
        href={`/visits/${encodeURIComponent(visit.uid)}#days`}
      >{`Visit to ${siteNames.get(visit.siteRef) ?? visit.siteRef}, proposed for ${dayWords(visit.firstDay, today)}`}</a>
      {`: ${answered.length} of ${all} owners ${answered.length === 1 ? 'has' : 'have'} answered${best ? `; to begin on ${dayWords(best.day, today)} suits ${best.suits.length} of them` : noneSuits(days)}.`}
    </li>
  );
};

const Chosen: FC<LineProps<ChosenDay>> = ({ each: { visit, ownerName, proposed, at }, siteNames, today }) => (
  <li>
    {`${ownerName} chose ${dayWords(visit.firstDay, today)} for the `}
    <a
      href={`/visits/${encodeURIComponent(visit.uid)}`}
    >{`visit to ${siteNames.get(visit.siteRef) ?? visit.siteRef}`}</a>
    {` (${listWords(visit.items.map(({ fenceRef }) => fenceRef))})${proposed === visit.firstDay ? ', the day proposed' : `, proposed for ${dayWords(proposed, today)}`}; said ${dayWords(at.slice(0, 10), today)}.`}
  </li>
);
