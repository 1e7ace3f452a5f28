import type { FC } from 'hono/jsx';
import { countWords, dayWords, hoursWords, listWords, sentenceCase } from '../../drawing/day-words.ts';
import { riskTable, wholeMoney } from '../../drawing/plan-table.ts';
import {
  brokenPromiseText,
  HOURS_NOTE,
  ORDER_NOTE,
  stageText,
  WHY_SERVED,
  WHY_SERVED_NOTE,
} from '../../drawing/plan-words.ts';
import { ageFigure } from '../../drawing/quantity-text.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import { worksName } from '../../drawing/what-if-words.ts';
import type { StoredPlan } from '../../register/plan-store.ts';
import type { WeekVisit } from '../../season/visit/visits-of-plan.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { LeftOutPart } from './left-out-part.tsx';
import { planStateWords } from './plan-state-words.ts';

/** Properties of the page of one plan. */
export interface PlanPageProps {
  readonly plan: StoredPlan;
  readonly siteNames: ReadonlyMap<string, string>;
  readonly crewNames: ReadonlyMap<string, string>;
  readonly currency: string;
  readonly today: CalendarDay;
  readonly frame: PageFrame;
}

const hoursOf = ({ items, travelPersonHours }: WeekVisit): number =>
  items.reduce((sum, { personHours }) => sum + personHours, travelPersonHours);
const priceOf = (visits: readonly WeekVisit[]): number =>
  visits.reduce((sum, { items }) => sum + items.reduce((all, { price }) => all + price, 0), 0);

/** One stored plan: what it comes to, its visits by week, and what it leaves out with the reasons. */
export const PlanPage: FC<PlanPageProps> = (props) => {
  const { plan, today, frame } = props;
  const { content } = plan;
  const canAccept = plan.state === 'made' && plan.firstWeek >= today;
  return (
    <PageShell title={`Season plan ${plan.number}`} section="plan" frame={frame} cautions={true}>
      <p class="back">
        <a href="/plan">All plans</a>
      </p>
      <h1>{`Season plan ${plan.number}`}</h1>
      <p class="where">
        {`Made ${dayWords(plan.asOf, today)} for ${countWords(plan.weeks, 'week')} from ${dayWords(plan.firstWeek, today)}; ${planStateWords(plan, today)}.`}
      </p>
      <Summary {...props} />
      {canAccept ? (
        <p class="act">
          <a href={`/plan/${plan.number}/accept`}>Accept this plan</a>
          <span class="muted">You see first what that would change.</span>
        </p>
      ) : (
        plan.state === 'made' && (
          <p class="done">
            Its first week has begun, so it cannot be accepted any more. <a href="/plan">Make a new plan</a>.
          </p>
        )
      )}
      <Visits {...props} />
      <LeftOutPart plan={plan} crewNames={props.crewNames} today={today} currency={props.currency} />
      <h2 id="bound">How good it is</h2>
      <ul class="plain">
        {content.stages.map((stage) => (
          <li>{`${stageText(stage, (amount) => `${wholeMoney(amount)} ${props.currency}`)}.`}</li>
        ))}
      </ul>
      <p class="muted">
        Counted one after the other: promises, then what must be done, then the worth. The worth is the expected loss of
        the next 30 years that the plan takes away, less the price of its works and the cost of its ways.
        {content.safetyTimeStruck && ' The search ran out of its time: another run may find another plan.'}
      </p>
      {content.hours.length > 0 && (
        <>
          <h2 id="learned">Hours that crews have taught it</h2>
          <ul class="plain">
            {content.hours.map(({ kind, factor, visits }) => (
              <li>{`${sentenceCase(worksName(kind))}: ${factor.toFixed(2)} times the hours of the catalogue, from ${countWords(visits, 'visit')}.`}</li>
            ))}
          </ul>
        </>
      )}
    </PageShell>
  );
};

const Summary: FC<PlanPageProps> = ({ plan, currency }) => {
  const { visits, risk, promised, brokenPromises } = plan.content;
  const hours = visits.reduce((sum, visit) => sum + hoursOf(visit), 0);
  const fences = visits.reduce((sum, { items }) => sum + items.length, 0);
  const { headings, rows } = riskTable(risk);
  return (
    <>
      <p class="lead">
        {`${sentenceCase(countWords(visits.length, 'visit'))} to ${countWords(fences, 'fence')} take ${hoursWords(hours)} hours and are priced ${wholeMoney(priceOf(visits))} ${currency} before tax. They take the expected loss of the coming season from ${wholeMoney(risk.lossBefore)} to ${wholeMoney(risk.lossAfter)} ${currency}.`}
      </p>
      {promised.length > 0 && (
        <p>{`${sentenceCase(countWords(promised.length, 'fence stays', 'fences stay'))} where you promised or gave ${promised.length === 1 ? 'it' : 'them'} a week: ${listWords(promised.slice(0, 12))}${promised.length > 12 ? ' and more' : ''}.`}</p>
      )}
      {brokenPromises.map(({ jobRef, reason }) => (
        <p class="alert">
          {'What was promised for fence '}
          <a href={`/fences/${encodeURIComponent(jobRef)}`}>{jobRef}</a>
          {` cannot be kept: ${brokenPromiseText(reason)}.`}
        </p>
      ))}
      <ScrollFrame label="Risk of the coming season">
        <table class="stacked">
          <caption>{`The coming season with nothing done and with the plan done; loss in ${currency}`}</caption>
          <thead>
            <tr>
              {headings.map((heading, index) => (
                <th scope="col" class={index > 0 ? 'figure' : undefined}>
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, ...figures]) => (
              <tr>
                <th scope="row">{name}</th>
                {figures.map((figure, index) => (
                  <td class="figure" data-label={headings[index + 1]}>
                    {figure}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </>
  );
};

const Visits: FC<PlanPageProps> = ({ plan, siteNames, crewNames, currency, today }) => {
  const { visits, wornOut = [] } = plan.content;
  const ages = new Map(wornOut.map(({ fenceRef, ageYears }) => [fenceRef, ageYears]));
  if (visits.length === 0) return <p>It proposes no visit.</p>;
  return (
    <section>
      <h2 id="visits">Its visits</h2>
      <p>
        {'This is the plan as it was made. '}
        {plan.state === 'made' ? (
          'Once it is accepted you can give its fences other weeks.'
        ) : (
          <>
            What became of its visits since is under <a href="/visits">visits</a>, where a fence can be given another
            week.
          </>
        )}
      </p>
      <p class="muted">{ORDER_NOTE}</p>
      <p class="muted">{`${HOURS_NOTE} ${WHY_SERVED_NOTE}`}</p>
      {wornOut.length > 0 && (
        <p id="worn-out">
          {`At ${countWords(wornOut.length, 'fence')} the plan mends posts though rails and boards count as worn out, at 25 years: the plan goes by the posts, for they break in the coming season; the money of the fence goes by rails and boards too, and says to replace it. Follow the plan, unless the owner has it rebuilt before the season opens: then cancel the visit.`}
        </p>
      )}
      <ScrollFrame label="Visits of the plan">
        <table class="stacked">
          <caption>{`By week, crew and site; hours of all people together; prices in ${currency} before tax`}</caption>
          <thead>
            <tr>
              <th scope="col">Week of</th>
              <th scope="col">Crew</th>
              <th scope="col">Site and fences</th>
              <th scope="col" class="figure">
                Hours
              </th>
              <th scope="col" class="figure">
                Price
              </th>
            </tr>
          </thead>
          <tbody>
            {visits.map((visit) => (
              <tr>
                <th scope="row" class="when">
                  {dayWords(visit.week, today)}
                </th>
                <td data-label="Crew">{crewNames.get(visit.crewRef) ?? visit.crewRef}</td>
                <td data-label="Site and fences" class="whole">
                  {siteNames.get(visit.siteRef) ?? visit.siteRef}
                  {visit.items.map((item) => (
                    <span class="small">
                      <a href={`/fences/${encodeURIComponent(item.fenceRef)}`}>{item.fenceRef}</a>
                      {`: ${visitItemText(item)} (${WHY_SERVED[item.mustRank]})`}
                      {ages.has(item.fenceRef) && (
                        <>
                          {`; rails and boards are at their end, ${ageFigure(ages.get(item.fenceRef)!)} years old: `}
                          <a href={`/fences/${encodeURIComponent(item.fenceRef)}#money`}>see replacement</a>
                        </>
                      )}
                    </span>
                  ))}
                </td>
                <td data-label="Hours" class="figure">
                  {hoursOf(visit).toFixed(1)}
                  {visit.travelPersonHours >= 0.05 && (
                    <span class="small">{`${visit.travelPersonHours.toFixed(1)} of them on the way`}</span>
                  )}
                </td>
                <td data-label="Price" class="figure">
                  {wholeMoney(priceOf([visit]))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
    </section>
  );
};
