import type { FC } from 'hono/jsx';
import { countWords, dayWords, sentenceCase } from '../../drawing/day-words.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import type { SeasonBrief } from '../../service/season-brief.ts';

/** The visits of this week, what was missed, and what nobody has said anything about. */
export const VisitsPart: FC<{ readonly brief: SeasonBrief }> = ({ brief }) => {
  const { today, visits } = brief;
  const { thisWeek, missed, overdue, toCome } = visits;
  const inState = (state: string): number => thisWeek.filter((visit) => visit.state === state).length;
  const open = thisWeek.filter(({ state }) => state === 'proposed' || state === 'confirmed');
  const week = `/visits?week=${mondayOf(today)}`;
  return (
    <section>
      <h2 id="visits">Visits</h2>
      <p>
        {thisWeek.length === 0 ? (
          'There are no visits this week. '
        ) : (
          <>
            <a href={week}>{`${sentenceCase(countWords(thisWeek.length, 'visit'))} this week`}</a>
            {`: ${inState('confirmed')} confirmed, ${inState('proposed')} proposed, ${inState('done')} done, ${inState('missed')} missed. `}
          </>
        )}
        {toCome === 0 ? (
          <>
            Nothing is ahead; <a href="/plan">a plan that is accepted</a> proposes visits.
          </>
        ) : (
          <>
            <a href="/visits">{`${sentenceCase(countWords(toCome, 'visit is', 'visits are'))} ahead`}</a>.
          </>
        )}
      </p>
      {open.length > 0 && (
        <ul class="plain">
          {open.slice(0, 6).map((visit) => (
            <li>
              <a
                href={`/visits/${encodeURIComponent(visit.uid)}`}
              >{`${visit.siteRef}, ${dayWords(visit.firstDay, today)}`}</a>
              {`: crew ${visit.crewRef}, ${countWords(visit.items.length, 'fence')}, ${visit.state}`}
            </li>
          ))}
        </ul>
      )}
      {overdue > 0 && (
        <p>
          {`${sentenceCase(countWords(overdue, 'visit was', 'visits were'))} promised for days that are past, and nobody has said what became of ${overdue === 1 ? 'it' : 'them'}: `}
          <a href="/visits?state=overdue">say whether done or missed</a>.
        </p>
      )}
      {missed > 0 && (
        <p>
          <a href="/visits?state=missed">{sentenceCase(countWords(missed, 'visit was', 'visits were'))}</a>
          {' missed in the last two weeks; their fences are back in the plan.'}
        </p>
      )}
    </section>
  );
};

/** What waits for somebody of the office: notices, letters, what could not be delivered. */
export const WaitingPart: FC<{ readonly brief: SeasonBrief; readonly catchesMail: boolean }> = ({
  brief,
  catchesMail,
}) => {
  const { held, office, outbox } = brief.mail;
  const printing = outbox['to print'];
  const under = outbox.queued + outbox.leased;
  const nothing = held.notices + office + outbox.parked + printing === 0;
  return (
    <section>
      <h2 id="waiting">What waits for you</h2>
      {nothing && <p>Nothing waits: no notice is held, nothing is parked, no letter is to be printed.</p>}
      <ul class="plain">
        {held.notices > 0 && (
          <li>
            <a href="/notices">{`${sentenceCase(countWords(held.notices, 'notice'))} to ${countWords(held.owners, 'owner')}`}</a>
            {` ${held.notices === 1 ? 'waits' : 'wait'} until you release ${held.notices === 1 ? 'it' : 'them'}.`}
          </li>
        )}
        {office > 0 && (
          <li>
            <a href="/notices#office">{`${sentenceCase(countWords(office, 'finding'))} of the sweep`}</a>
            {` ${office === 1 ? 'is' : 'are'} for the office itself.`}
          </li>
        )}
        {outbox.parked > 0 && (
          <li>
            <a href="/outbox?state=parked">{`${sentenceCase(countWords(outbox.parked, 'message'))} ${outbox.parked === 1 ? 'is' : 'are'} parked`}</a>
            {': the mail server refused for good, in words that the outbox shows.'}
          </li>
        )}
        {printing > 0 && (
          <li>
            <a href="/outbox?state=to%20print">{sentenceCase(countWords(printing, 'letter'))}</a>
            {` ${printing === 1 ? 'is' : 'are'} to be printed and posted.`}
          </li>
        )}
        {under > 0 && (
          <li>
            <a href="/outbox?state=queued">{sentenceCase(countWords(under, 'message'))}</a>
            {` ${under === 1 ? 'is' : 'are'} on the way.`}
          </li>
        )}
        {catchesMail && (
          <li>
            No mail server is set, so <a href="/mail">mail is caught here</a> and reaches nobody.
          </li>
        )}
      </ul>
    </section>
  );
};
