import type { FC } from 'hono/jsx';
import { countWords, dayWords, hoursWords, sentenceCase } from '../../drawing/day-words.ts';
import type { VisitPage, VisitRow } from '../../register/visit-page.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import type { SeasonNames } from '../frame/season-names.ts';
import { type AskedVisits, STATE_CHOICES, visitsPath } from './visit-query.ts';

/** Properties of the list of visits. */
export interface VisitsPageProps extends Pick<SeasonNames, 'crewNames'> {
  readonly page: VisitPage;
  /** Sites to choose from; null where there are too many: the ref is typed then. */
  readonly sites: ReadonlyMap<string, string> | null;
  readonly asked: AskedVisits;
  readonly today: CalendarDay;
  readonly frame: PageFrame;
}

/** The days of a visit in words: `January 5, 08:30`, `January 5 to January 6`. */
export const daysWords = (
  { firstDay, lastDay, startsAt }: Pick<VisitRow, 'firstDay' | 'lastDay' | 'startsAt'>,
  today: CalendarDay,
): string =>
  `${dayWords(firstDay, today)}${startsAt === null ? '' : `, ${startsAt}`}${lastDay === firstDay ? '' : ` to ${dayWords(lastDay, today)}`}`;

/** The list of visits, narrowed by week, crew, state and site. */
export const VisitsPage: FC<VisitsPageProps> = (props) => {
  const { page, asked, today, frame } = props;
  const { week } = asked;
  const WEEK = 7;
  return (
    <PageShell title="Visits" section="visits" frame={frame} cautions={false}>
      <h1>{week === null ? 'Visits' : `Visits, week of ${dayWords(week, today)}`}</h1>
      <p class="lead">{foundSentence(page, asked)}</p>
      <p>
        {week !== null && (
          <>
            <a href={visitsPath(asked, { week: addDays(week, -WEEK) })}>The week before</a>
            {', '}
            <a href={visitsPath(asked, { week: addDays(week, WEEK) })}>the week after</a>
            {', '}
            <a href={visitsPath(asked, { week: null })}>every week</a>
            {'. '}
          </>
        )}
        {week === null && (
          <>
            <a href={visitsPath(asked, { week: mondayOf(today) })}>This week</a>
            {'. '}
          </>
        )}
        See also what <a href="/materials">materials</a> they take, and the <a href="/feeds">calendar links</a> of crews
        and sites.
      </p>
      <NarrowForm {...props} />
      {page.rows.length > 0 && <Table {...props} />}
      {page.pages > 1 && (
        <nav class="pages" aria-label="Pages of the list">
          {page.page > 1 && <a href={visitsPath(asked, { page: page.page - 1 })}>Earlier ones</a>}
          {page.page < page.pages && <a href={visitsPath(asked, { page: page.page + 1 })}>Later ones</a>}
        </nav>
      )}
    </PageShell>
  );
};

function foundSentence({ found }: VisitPage, { state, week, crew, site }: AskedVisits): string {
  if (found > 0) {
    const which = state === '' && week === null ? 'ahead' : 'here';
    return `${sentenceCase(countWords(found, 'visit is', 'visits are'))} ${which}.`;
  }
  if (state !== '' || week !== null || crew !== '' || site !== '') return 'No visit is like that.';
  return 'No visits are ahead. A season plan that is accepted proposes them.';
}

const NarrowForm: FC<VisitsPageProps> = ({ asked, sites, crewNames }) => (
  <search aria-label="Visits">
    <form class="narrow" method="get" action="/visits">
      {asked.week !== null && <input type="hidden" name="week" value={asked.week} />}
      <Select name="state" label="State" chosen={asked.state} choices={STATE_CHOICES} />
      <Select name="crew" label="Crew" chosen={asked.crew} choices={[['', 'all'], ...crewNames]} />
      {sites === null ? (
        <div class="field">
          <label for="site">Ref of the site</label>
          <input id="site" name="site" type="text" maxlength={40} value={asked.site} />
        </div>
      ) : (
        <Select name="site" label="Site" chosen={asked.site} choices={[['', 'all'], ...sites]} />
      )}
      <button type="submit">Show</button>
    </form>
  </search>
);

const Select: FC<{
  readonly name: string;
  readonly label: string;
  readonly chosen: string;
  readonly choices: readonly (readonly [value: string, text: string])[];
}> = ({ name, label, chosen, choices }) => (
  <div class="field">
    <label for={name}>{label}</label>
    <select id={name} name={name}>
      {choices.map(([value, text]) => (
        <option value={value} selected={value === chosen}>
          {text}
        </option>
      ))}
    </select>
  </div>
);

const Table: FC<VisitsPageProps> = ({ page, today, crewNames }) => (
  <ScrollFrame label="Visits">
    <table class="stacked">
      <caption>
        By day and crew{page.pages > 1 && `, page ${page.page} of ${page.pages}`}. Hours are those of all people
        together, the way counted.
      </caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">Site</th>
          <th scope="col">Crew</th>
          <th scope="col">State</th>
          <th scope="col" class="figure">
            Fences
          </th>
          <th scope="col" class="figure">
            Hours
          </th>
        </tr>
      </thead>
      <tbody>
        {page.rows.map((row) => (
          <tr>
            <th scope="row">
              <a href={`/visits/${encodeURIComponent(row.uid)}`}>{daysWords(row, today)}</a>
            </th>
            <td data-label="Site">{row.siteName}</td>
            <td data-label="Crew">{crewNames.get(row.crewRef) ?? row.crewRef}</td>
            <td data-label="State">
              <span class={`state-${row.state}`}>{row.state}</span>
              {row.isOffices && <span class="small">given by you</span>}
              {row.state === 'confirmed' && row.lastDay < today && <span class="small">past: done or missed?</span>}
            </td>
            <td data-label="Fences" class="figure">
              {row.fences}
            </td>
            <td data-label="Hours" class="figure">
              {hoursWords(row.personHours)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);
