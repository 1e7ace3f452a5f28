import { raw } from 'hono/html';
import type { Child, FC } from 'hono/jsx';
import { dayWords, hoursWords, listWords } from '../../drawing/day-words.ts';
import { drawPartsBar } from '../../drawing/parts-bar.ts';
import type { LedgerCell } from '../../season/visit/hours-ledger.ts';
import type { HoursAhead, OpeningAhead } from '../../service/hours-ahead.ts';
import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import { ScrollFrame } from './scroll-frame.tsx';

/** Length of the bar of a week [px]. */
const BAR_PX = 116;
const DAYS_PER_WEEK = 7;

/** What the regions of an opening are called in a sentence. */
export const openingName = ({ regions }: Pick<OpeningAhead, 'regions'>): string =>
  regions.length === 0 ? 'the storm season' : `the season of ${listWords(regions)}`;

/** One cell of hours: what is left in words, what is taken as a bar. */
const HoursCell: FC<{ readonly cell: LedgerCell }> = ({ cell }) => {
  const { thereAre, confirmed, proposed, left } = cell;
  if (thereAre <= 0 && confirmed + proposed <= 0) return <span class="muted">does not go out</span>;
  return (
    <>
      {left < -0.05
        ? `${hoursWords(-left)} h too many`
        : `${hoursWords(Math.max(0, left))} h of ${hoursWords(thereAre)}`}
      {raw(
        drawPartsBar(
          [
            { amount: confirmed, ink: 'full' },
            { amount: proposed, ink: 'half' },
            ...(left > 0 ? [{ amount: left, ink: 'rest' as const }] : []),
          ],
          thereAre,
          BAR_PX,
        ),
      )}
    </>
  );
};

/** The hours left, a row a week and a column a crew, with the weeks marked in which a storm season opens. */
export const HoursLedger: FC<{
  readonly hours: HoursAhead;
  readonly today: CalendarDay;
  /** What stands under the hours of a week of a crew; nothing where not given. */
  readonly under?: (monday: CalendarDay, crewRef: string) => Child;
}> = ({ hours, today, under }) => {
  const { crews, weeks, openings } = hours;
  return (
    <ScrollFrame label="Hours left by week and crew">
      <table class="stacked ledger">
        <caption>
          Hours left of those there are, days off and weather reserve taken off. In the bar the full part is promised,
          the half part proposed, the rest is free.
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
                {openings
                  .filter(({ opensOn }) => monday <= opensOn && opensOn < addDays(monday, DAYS_PER_WEEK))
                  .map((opening) => (
                    <span class="small">{`${openingName(opening)} opens ${dayWords(opening.opensOn, today)}`}</span>
                  ))}
              </th>
              {cells.map((cell, index) => (
                <td data-label={crews[index]!.name}>
                  <HoursCell cell={cell} />
                  {under?.(monday, cell.crewRef)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );
};
