import type { FC } from 'hono/jsx';
import { countWords, dayWords, hoursWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import type { HoursAhead } from '../../service/hours-ahead.ts';
import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import { givePath } from '../frame/give-path.ts';
import { HoursLedger, openingName } from '../frame/hours-ledger.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

const DAYS_PER_WEEK = 7;

/** Properties of the ledger of hours. */
export interface HoursPageProps {
  readonly hours: HoursAhead;
  /** Proposed and confirmed ones of those weeks. */
  readonly visits: readonly Visit[];
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crewNames: ReadonlyMap<string, string>;
  /** The crew that was asked for; null for all of them. */
  readonly crewRef: string | null;
  readonly today: CalendarDay;
  readonly frame: PageFrame;
}

/** The ledger of hours left: what the crews have until each storm season opens, then week by week what takes the hours. */
export const HoursPage: FC<HoursPageProps> = ({ hours, visits, siteNames, crewNames, crewRef, today, frame }) => (
  <PageShell title="Hours left" section="plan" frame={frame} cautions={false}>
    <p class="back">
      <a href="/plan">Season plan</a>
    </p>
    <h1>Hours left</h1>
    {hours.crews.length === 0 ? (
      <p class="lead">The register holds no crew, so there are no hours.</p>
    ) : (
      <>
        <p class="lead">{leftSentence(hours, today)}</p>
        {crewNames.size > 1 && <CrewForm crewNames={crewNames} crewRef={crewRef} />}
        <p>
          {hours.daysOffAhead === 0
            ? 'No days off are entered, so holidays count as days on which the crews go out: '
            : `${sentenceCase(countWords(hours.daysOffAhead, 'row'))} of days off ${hours.daysOffAhead === 1 ? 'is' : 'are'} taken off, and no other holidays: `}
          <a href="/crews#days-off">see the days off</a> or{' '}
          <a href="/records/days-off/new">enter holidays and days off</a>, for a whole crew or for one of its people.
        </p>
        <Openings hours={hours} today={today} />
        <h2 id="weeks">Week by week</h2>
        <p>
          {hours.crews.some(({ ref }) => ref === '') &&
            'The crews are too many to stand side by side, so their hours are added up; choose a crew to see what takes its own. '}
          The day of a week leads to all its visits. Under the hours of a crew, the line with the small arrow opens to
          show what takes them: each visit there leads to its page, where you can confirm it or call it off. A fence of
          a proposed visit can be given another week: the page says what each week would cost, and no plan moves it
          afterwards. Weeks in which a storm season opens, and those after it, are shown with all their hours.
        </p>
        <HoursLedger
          hours={hours}
          today={today}
          under={(monday, crewRef) => (
            <Takes
              monday={monday}
              visits={visits.filter(
                (visit) =>
                  visit.crewRef === crewRef && mondayOf(visit.firstDay) <= monday && mondayOf(visit.lastDay) >= monday,
              )}
              siteNames={siteNames}
              today={today}
            />
          )}
        />
      </>
    )}
  </PageShell>
);

/** Narrows the ledger to a crew. */
const CrewForm: FC<Pick<HoursPageProps, 'crewNames' | 'crewRef'>> = ({ crewNames, crewRef }) => (
  <form class="narrow" method="get" action="/plan/hours">
    <div class="field">
      <label for="crew">Crew</label>
      <select id="crew" name="crew">
        <option value="">all</option>
        {[...crewNames].map(([ref, name]) => (
          <option value={ref} selected={ref === crewRef}>
            {name}
          </option>
        ))}
      </select>
    </div>
    <button type="submit">Show</button>
  </form>
);

/** What is left until the first season opens; where none opens, in the weeks that are shown. */
function leftSentence({ crews, weeks, openings }: HoursAhead, today: CalendarDay): string {
  const [first] = openings;
  const leftOf = (index: number): number =>
    first ? first.crews[index]!.left : weeks.reduce((sum, { cells }) => sum + Math.max(0, cells[index]!.left), 0);
  const parts = crews.map(({ name }, index) => {
    const left = hoursWords(leftOf(index));
    return `${name} has ${left} ${left === '1' ? 'hour' : 'hours'} left`;
  });
  return first
    ? `Before ${openingName(first)} opens, on ${dayWords(first.opensOn, today)}: ${parts.join('; ')}.`
    : `In ${countWords(weeks.length, 'week')} from ${dayWords(weeks[0]!.monday, today)}: ${parts.join('; ')}.`;
}

const Openings: FC<Pick<HoursPageProps, 'hours' | 'today'>> = ({ hours: { crews, openings }, today }) =>
  openings.length === 0 ? null : (
    <>
      <h2 id="openings">Until each season opens</h2>
      <ScrollFrame label="Hours left until each season opens">
        <table class="stacked">
          <caption>
            Hours left of those there are, from today to the day before the opening: of the week in which a season opens
            only the days before it are counted, and a week with more work than hours counts as none left. A crew’s
            hours are there once, whichever region takes them.
          </caption>
          <thead>
            <tr>
              <th scope="col">Opens</th>
              <th scope="col">Where</th>
              {crews.map(({ name }) => (
                <th scope="col" class="figure">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {openings.map((opening) => (
              <tr>
                <th scope="row" class="when">
                  {dayWords(opening.opensOn, today)}
                </th>
                <td data-label="Where">
                  {opening.regions.length === 0 ? 'no region said' : listWords(opening.regions)}
                </td>
                {opening.crews.map(({ left, thereAre }, index) => (
                  <td class="figure" data-label={crews[index]!.name}>
                    {`${hoursWords(left)} h of ${hoursWords(thereAre)}`}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );

const sinceWords = ({ firstDay }: Visit, monday: CalendarDay): string =>
  mondayOf(firstDay) === addDays(monday, -DAYS_PER_WEEK) ? 'the week before' : 'an earlier week';

/** What takes hours of a week: visits that begin in it, and those that run on from an earlier one. */
const Takes: FC<Pick<HoursPageProps, 'visits' | 'siteNames' | 'today'> & { readonly monday: CalendarDay }> = ({
  monday,
  visits,
  siteNames,
  today,
}) =>
  visits.length === 0 ? null : (
    <details>
      <summary>{`what takes them: ${countWords(visits.length, 'visit')}`}</summary>
      {visits.map((visit) => (
        <p class="small">
          <a
            href={`/visits/${encodeURIComponent(visit.uid)}`}
          >{`Visit to ${siteNames.get(visit.siteRef) ?? visit.siteRef}, ${dayWords(visit.firstDay, today)}`}</a>
          {visit.firstDay < monday && ` (from ${sinceWords(visit, monday)}, to ${dayWords(visit.lastDay, today)})`}
          {`, ${visit.state}${visit.planId === null && visit.state === 'proposed' ? ' by you' : ''}: `}
          {visit.items.map(({ fenceRef, personHours }, index) => (
            <>
              {index > 0 && ', '}
              {visit.state === 'proposed' && mondayOf(visit.firstDay) > today ? (
                <a href={givePath(visit.uid, fenceRef)}>{`give ${fenceRef} another week`}</a>
              ) : (
                fenceRef
              )}
              {` (${hoursWords(personHours)} h)`}
            </>
          ))}
        </p>
      ))}
    </details>
  );
