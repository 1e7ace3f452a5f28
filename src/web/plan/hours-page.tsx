import type { FC } from 'hono/jsx';
import { countWords, dayWords, hoursWords } from '../../drawing/day-words.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import type { HoursAhead } from '../../service/hours-ahead.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { givePath } from '../frame/give-path.ts';
import { HoursCell } from '../frame/hours-cell.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Properties of the ledger of hours. */
export interface HoursPageProps {
  readonly hours: HoursAhead;
  /** Proposed and confirmed ones of those weeks. */
  readonly visits: readonly Visit[];
  readonly siteNames: ReadonlyMap<string, string>;
  readonly today: CalendarDay;
  readonly frame: PageFrame;
}

/** The ledger of hours left: a row a week, a column a crew, and what takes the hours. */
export const HoursPage: FC<HoursPageProps> = ({ hours, visits, siteNames, today, frame }) => {
  const { crews, weeks } = hours;
  const left = crews.map((_, index) => weeks.reduce((sum, { cells }) => sum + Math.max(0, cells[index]!.left), 0));
  return (
    <PageShell title="Hours left" section="plan" frame={frame} cautions={false}>
      <p class="back">
        <a href="/plan">Season plan</a>
      </p>
      <h1>Hours left</h1>
      {crews.length === 0 ? (
        <p class="lead">The register holds no crew, so there are no hours.</p>
      ) : (
        <>
          <p class="lead">
            {`In ${countWords(weeks.length, 'week')} from ${dayWords(weeks[0]!.monday, today)}: ${crews.map(({ name }, index) => `${name} has ${hoursWords(left[index]!)} ${hoursWords(left[index]!) === '1' ? 'hour' : 'hours'} left`).join('; ')}.`}
          </p>
          <p>
            Open a week to see what takes its hours. A fence of a proposed visit can be given another week: the page
            says what each week would cost, and no plan moves it afterwards.
          </p>
          <ScrollFrame label="Hours left by week and crew">
            <table class="stacked ledger">
              <caption>
                Hours left of those there are, days off and weather reserve taken off. In the bar the full part is
                promised, the half part proposed, the rest is free.
              </caption>
              <thead>
                <tr>
                  <th scope="col">Week of</th>
                  {crews.map(({ name }) => (
                    <th scope="col">{name}</th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {weeks.map(({ monday, cells }) => (
                  <tr>
                    <th scope="row">
                      <a href={`/visits?week=${monday}`}>{dayWords(monday, today)}</a>
                    </th>
                    {cells.map((cell, index) => (
                      <td data-label={crews[index]!.name}>
                        <HoursCell cell={cell} />
                        <Takes
                          visits={visits.filter(
                            (visit) => visit.crewRef === cell.crewRef && mondayOf(visit.firstDay) === monday,
                          )}
                          siteNames={siteNames}
                          today={today}
                        />
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollFrame>
        </>
      )}
    </PageShell>
  );
};

const Takes: FC<Pick<HoursPageProps, 'visits' | 'siteNames' | 'today'>> = ({ visits, siteNames, today }) =>
  visits.length === 0 ? null : (
    <details>
      <summary>{countWords(visits.length, 'visit')}</summary>
      {visits.map((visit) => (
        <p class="small">
          <a href={`/visits/${encodeURIComponent(visit.uid)}`}>{siteNames.get(visit.siteRef) ?? visit.siteRef}</a>
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
