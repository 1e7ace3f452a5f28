import type { FC } from 'hono/jsx';
import { amountText } from '../../drawing/day-sheet-words.ts';
import { countWords, dayWords, hoursWords, sentenceCase } from '../../drawing/day-words.ts';
import { wholeMoney } from '../../drawing/plan-table.ts';
import { worksName } from '../../drawing/what-if-words.ts';
import type { MaterialsAhead } from '../../service/materials-ahead.ts';
import { type CalendarDay, isCalendarDay } from '../../units/calendar-day.ts';
import { FormAlert } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Properties of the page of materials. */
interface MaterialsPageProps {
  readonly ahead: MaterialsAhead;
  /** The days as they were written. */
  readonly asked: { readonly from: string; readonly to: string };
  readonly today: CalendarDay;
  readonly frame: PageFrame;
}

/** Why days that were written were not taken; null where they were. */
function faultOf({ from, to }: MaterialsPageProps['asked'], first: CalendarDay): string | null {
  const bad = [from, to].find((day) => day !== '' && !isCalendarDay(day));
  if (bad !== undefined) return `${JSON.stringify(bad)} is no day; write it as 2027-01-05.`;
  return to !== '' && to < first ? `${to} lies before ${first}; name a later last day.` : null;
}

/** The page of what to order for the visits that are proposed or confirmed. */
export const MaterialsPage: FC<MaterialsPageProps> = ({ ahead, asked, today, frame }) => {
  const { from, to, days, visits, confirmedVisits, materials, cost } = ahead;
  const fault = faultOf(asked, from);
  const range =
    to !== null
      ? `from ${dayWords(from, today)} to ${dayWords(to, today)}`
      : days === null
        ? `from ${dayWords(from, today)} on`
        : `from ${dayWords(days.first, today)} to ${dayWords(days.last, today)}`;
  return (
    <PageShell title="Materials" section="visits" frame={frame} cautions={false}>
      <p class="back">
        <a href="/visits">All visits</a>
      </p>
      <h1>Materials</h1>
      {fault !== null && <FormAlert>{fault}</FormAlert>}
      <p class="lead">
        {visits === 0
          ? `No visits are proposed or confirmed ${range}, so nothing is to be ordered.`
          : `${sentenceCase(countWords(visits, 'visit'))} ${range}, ${confirmedVisits} of them confirmed: materials for ${wholeMoney(cost)} ${frame.office.currency}.`}
      </p>
      <search aria-label="Days">
        <form class="narrow" method="get" action="/materials">
          <div class="field">
            <label for="from">First day</label>
            <input id="from" name="from" value={asked.from} placeholder={from} autocomplete="off" />
          </div>
          <div class="field">
            <label for="to">Last day</label>
            <input id="to" name="to" value={asked.to} placeholder="the last visit" autocomplete="off" />
          </div>
          <button type="submit">Show</button>
        </form>
      </search>
      {materials.length > 0 && (
        <ScrollFrame label="Materials">
          <table class="stacked">
            <caption>
              Quantities and unit costs are the catalogue’s; what comes whole is rounded up once, over all visits.
              Confirmed: how much of it is for visits on promised days.
            </caption>
            <thead>
              <tr>
                <th scope="col">Material</th>
                <th scope="col" class="figure">
                  Order
                </th>
                <th scope="col" class="figure">
                  Confirmed
                </th>
                <th scope="col" class="figure">
                  Cost
                </th>
                <th scope="col" class="figure">
                  Visits
                </th>
                <th scope="col" class="when">
                  Needed by
                </th>
              </tr>
            </thead>
            <tbody>
              {materials.map(
                ({ name, unit, toTake, confirmedQuantity, cost: price, visits: takers, neededBy, kinds }) => (
                  <tr>
                    <th scope="row">
                      {name}
                      <span class="small">{kinds.map(worksName).join(', ')}</span>
                    </th>
                    <td data-label="Order" class="figure">
                      {amountText(toTake, unit)}
                    </td>
                    <td data-label="Confirmed" class="figure">
                      {hoursWords(confirmedQuantity)}
                    </td>
                    <td data-label="Cost" class="figure">
                      {wholeMoney(price)}
                    </td>
                    <td data-label="Visits" class="figure">
                      {takers}
                    </td>
                    <td data-label="Needed by" class="when">
                      {dayWords(neededBy, today)}
                    </td>
                  </tr>
                ),
              )}
            </tbody>
          </table>
        </ScrollFrame>
      )}
    </PageShell>
  );
};
