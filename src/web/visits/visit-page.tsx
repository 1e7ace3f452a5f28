import type { FC } from 'hono/jsx';
import { countWords, hoursWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import { wholeMoney } from '../../drawing/plan-table.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import type { VisitChange } from '../../register/visit-store.ts';
import type { VisitEntry, VisitHours } from '../../register/visit-work-store.ts';
import type { Visit } from '../../season/visit/visit.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import type { VisitDays } from '../../service/visit-days.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { TokenField } from '../frame/form-field.tsx';
import { givePath } from '../frame/give-path.ts';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import type { SeasonNames } from '../frame/season-names.ts';
import { DaysPart } from './days-part.tsx';
import { type FormsState, VisitForms } from './visit-forms.tsx';
import { daysWords } from './visits-page.tsx';

/** Properties of the page of one visit. */
export interface VisitPageProps extends SeasonNames, FormsState {
  readonly visit: Visit;
  readonly history: readonly VisitChange[];
  readonly entries: readonly VisitEntry[];
  readonly hours: readonly VisitHours[];
  /** What owners said of its days; null where they are not asked. */
  readonly days: VisitDays | null;
  /** Fences that went back to the plan when it was done. */
  readonly returned: readonly string[];
  readonly today: CalendarDay;
  /** What was just done, or would come of it. */
  readonly done: readonly string[];
  /** What stands against what was asked for. */
  readonly faults: readonly string[];
  readonly frame: PageFrame;
}

/** True for a visit that can still become something else. */
const isOpenVisit = ({ state }: Pick<Visit, 'state'>): boolean => state === 'proposed' || state === 'confirmed';

const isOffices = ({ state, planId }: Visit): boolean => state === 'proposed' && planId === null;

/** One visit: what is done where, what can become of it, and what became of it. */
export const VisitPage: FC<VisitPageProps> = (props) => {
  const { visit, siteNames, crewNames, today, frame, done, faults, returned } = props;
  const site = siteNames.get(visit.siteRef) ?? visit.siteRef;
  const crew = crewNames.get(visit.crewRef) ?? visit.crewRef;
  const hours = visit.items.reduce((sum, { personHours }) => sum + personHours, visit.travelPersonHours);
  return (
    <PageShell title={`Visit to ${site}`} section="visits" frame={frame} cautions={false}>
      <p class="back">
        <a href="/visits">All visits</a>
      </p>
      <h1>{`Visit to ${site}, ${daysWords(visit, today)}`}</h1>
      <p class="where">{visit.uid}</p>
      {faults.length > 0 && (
        <div class="alert" role="alert">
          {faults.length === 1 ? (
            `${sentenceCase(faults[0]!)}. Nothing was changed.`
          ) : (
            <>
              Nothing was changed:
              <ul class="plain">
                {faults.map((fault) => (
                  <li>{`${sentenceCase(fault)}.`}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
      {done.length > 0 && (
        <div class="done" role="status">
          {done.map((sentence) => (
            <p>{sentence}</p>
          ))}
        </div>
      )}
      <p class="lead">
        {`${stateSentence(visit)} ${crew} goes there, for ${countWords(visit.items.length, 'fence')}; ${hoursWords(hours)} hours with the way.`}
      </p>
      <p>
        <a href={`/sheets/${encodeURIComponent(visit.crewRef)}?day=${visit.firstDay}`}>Day sheet of the crew</a>
        {', '}
        <a href={`/visits?week=${mondayOf(visit.firstDay)}`}>visits of that week</a>
        {visit.planId !== null && (
          <>
            {', '}
            <a href={`/plan/${visit.planId}`}>{`plan ${visit.planId}`}</a>
          </>
        )}
        .
      </p>
      <Items {...props} />
      {returned.length > 0 && <p>{`Went back to the plan: ${listWords(returned)}.`}</p>}
      {props.days && <DaysPart days={props.days} visit={visit} today={today} formToken={props.formToken} />}
      {isOffices(visit) && <LeaveForm {...props} />}
      {isOpenVisit(visit) && <VisitForms {...props} />}
      <History {...props} />
    </PageShell>
  );
};

function stateSentence(visit: Visit): string {
  switch (visit.state) {
    case 'proposed':
      return isOffices(visit)
        ? 'It is proposed by you: no plan moves it, and its day is not promised to the owner yet.'
        : 'It is proposed: the next plan that is accepted may move it.';
    case 'confirmed':
      return 'It is confirmed: its day is promised, and no plan moves it.';
    case 'done':
      return 'It is done, and what was done is in the register.';
    case 'missed':
      return 'It was missed; its fences are back in the plan.';
    case 'cancelled':
      return 'It is cancelled; its fences are back in the plan.';
  }
}

const Items: FC<VisitPageProps> = ({ visit, entries, hours, today, frame }) => (
  <ScrollFrame label="Fences of the visit">
    <table class="stacked spaced">
      <caption>{`What ${visit.state === 'done' ? 'was' : 'is'} done at each fence; prices in ${frame.office.currency} before tax`}</caption>
      <thead>
        <tr>
          <th scope="col">Fence</th>
          <th scope="col">{visit.state === 'done' ? 'What was done' : 'What is done'}</th>
          <th scope="col" class="figure">
            Hours planned
          </th>
          <th scope="col" class="figure">
            Price
          </th>
          <th scope="col">{visit.state === 'proposed' ? 'Another week' : 'In the register'}</th>
        </tr>
      </thead>
      <tbody>
        {visit.items.map((item) => (
          <tr>
            <th scope="row">
              <a href={`/fences/${encodeURIComponent(item.fenceRef)}`}>{item.fenceRef}</a>
            </th>
            <td data-label={visit.state === 'done' ? 'What was done' : 'What is done'}>{visitItemText(item)}</td>
            <td data-label="Hours planned" class="figure">
              {hoursWords(item.personHours)}
            </td>
            <td data-label="Price" class="figure">
              {wholeMoney(item.price)}
            </td>
            <td data-label={visit.state === 'proposed' ? 'Another week' : 'In the register'}>
              {visit.state === 'proposed' && mondayOf(visit.firstDay) > today ? (
                <a href={givePath(visit.uid, item.fenceRef)}>{`Give ${item.fenceRef} another week`}</a>
              ) : (
                enteredText(item.fenceRef, entries, hours)
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);

function enteredText(fenceRef: string, entries: readonly VisitEntry[], hours: readonly VisitHours[]): string {
  const used = hours.find((each) => each.fenceRef === fenceRef);
  const refs = entries.filter((entry) => entry.fenceRef === fenceRef).map(({ kind, ref }) => `${kind} ${ref}`);
  return [...(used ? [`${hoursWords(used.personHours)} h used`] : []), ...refs].join(', ') || 'nothing yet';
}

const LeaveForm: FC<VisitPageProps> = ({ visit, formToken }) => (
  <form class="act" method="post" action="/plan/leave">
    <TokenField token={formToken} />
    <input type="hidden" name="visit" value={visit.uid} />
    <button type="submit" class="quiet">
      Leave it to the plans again
    </button>
    <p class="muted">The next plan that is accepted may then move it.</p>
  </form>
);

const History: FC<VisitPageProps> = ({ history, crewNames, today }) => (
  <section>
    <h2 id="history">What became of it</h2>
    <ul class="plain">
      {history.map(({ at, state, crewRef, firstDay, lastDay, by, because }) => (
        <li>
          <Moment at={at} />
          {`: ${state}, ${daysWords({ firstDay, lastDay, startsAt: null }, today)}, ${crewNames.get(crewRef) ?? crewRef}${by === '' ? '' : `, by ${by}`}${because === '' ? '.' : `: ${because}.`}`}
        </li>
      ))}
    </ul>
  </section>
);
