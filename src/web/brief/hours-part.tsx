import type { FC } from 'hono/jsx';
import { countWords, dayWords, hoursWords, listWords } from '../../drawing/day-words.ts';
import type { LedgerCell, LedgerWeek } from '../../season/visit/hours-ledger.ts';
import type { SeasonBrief } from '../../service/season-brief.ts';
import { HoursLedger, openingName } from '../frame/hours-ledger.tsx';

const sumOf = (weeks: readonly LedgerWeek[], of: (cell: LedgerCell) => number): number =>
  weeks.reduce((sum, { cells }) => sum + cells.reduce((all, cell) => all + of(cell), 0), 0);

/** Hours that the visits need against those that the crews have, week by week. */
export const HoursPart: FC<{ readonly brief: SeasonBrief }> = ({ brief }) => {
  const { hours, plan, today } = brief;
  const { crews, weeks } = hours;
  if (crews.length === 0) {
    return (
      <section>
        <h2 id="hours">Hours</h2>
        <p>
          The register holds no crew, so there are no weeks to fill. Import crews and crew-members, and{' '}
          <a href="/plan">a season plan</a> can be made.
        </p>
      </section>
    );
  }
  const [next] = hours.openings;
  const thereAre = sumOf(weeks, (cell) => cell.thereAre);
  const confirmed = sumOf(weeks, (cell) => cell.confirmed);
  const proposed = sumOf(weeks, (cell) => cell.proposed);
  // as until a season opens: a week with more work than hours takes none of another's
  const left = sumOf(weeks, (cell) => Math.max(0, cell.left));
  const full = weeks.filter(({ cells }) => cells.some(({ left }) => left < -0.05));
  return (
    <section>
      <h2 id="hours">Hours</h2>
      <p>
        {`In the ${weeks.length} weeks from ${dayWords(weeks[0]!.monday, today)} the crews have ${hoursWords(thereAre)} hours. `}
        <a href="/visits">Visits</a>
        {` take ${hoursWords(confirmed + proposed)} of them, ${confirmed > 0 ? hoursWords(confirmed) : 'none'} on promised days; `}
        <a href="/plan/hours">{`${hoursWords(left)} are left`}</a>.
        {full.length > 0 &&
          ` The week of ${listWords(full.slice(0, 3).map(({ monday }) => dayWords(monday, today)))} has more work than hours, and counts as none left.`}
      </p>
      {next && (
        <p>
          {`Before ${openingName(next)} opens, on ${dayWords(next.opensOn, today)}, ${hoursWords(next.crews.reduce((sum, { left }) => sum + left, 0))} hours are left: only days before the opening are counted, and a week with more work than hours counts as none left. `}
          <a href="/plan/hours#openings">Until each season opens</a>.
        </p>
      )}
      <PlanSentence plan={plan} today={today} />
      <HoursLedger hours={hours} today={today} />
    </section>
  );
};

const PlanSentence: FC<Pick<SeasonBrief, 'plan' | 'today'>> = ({ plan, today }) => {
  const { inForce, newest } = plan;
  if (!newest) {
    return (
      <p>
        No season plan has been made yet. <a href="/plan">Make one</a>: it fills these weeks.
      </p>
    );
  }
  const waiting = newest.state === 'made' ? newest : null;
  return (
    <p>
      {inForce ? (
        <>
          <a href={`/plan/${inForce.number}`}>{`Plan ${inForce.number}`}</a>
          {` of ${dayWords(inForce.asOf, today)} is in force${inForce.unservedMusts > 0 ? `; it found no place for ${countWords(inForce.unservedMusts, 'fence')} that must be served` : ''}. `}
        </>
      ) : (
        'No plan is in force. '
      )}
      {waiting && (
        <>
          <a href={`/plan/${waiting.number}`}>{`Plan ${waiting.number}`}</a>
          {` of ${dayWords(waiting.asOf, today)} waits for you to accept it.`}
        </>
      )}
    </p>
  );
};
