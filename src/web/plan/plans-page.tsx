import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { countWords, dayWords, numberWords, sentenceCase } from '../../drawing/day-words.ts';
import { drawPartsBar } from '../../drawing/parts-bar.ts';
import type { PlanHead } from '../../register/plan-store.ts';
import type { PlanState } from '../../service/plan-runner.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { planStateWords } from './plan-state-words.ts';

const BAR_PX = 240;

/** Properties of the page of all plans. */
export interface PlansPageProps {
  readonly plans: readonly PlanHead[];
  readonly state: PlanState;
  readonly hasCrews: boolean;
  readonly today: CalendarDay;
  readonly formToken: string;
  readonly frame: PageFrame;
}

/** The page of all season plans, with the button that makes another. */
export const PlansPage: FC<PlansPageProps> = ({ plans, state, hasCrews, today, formToken, frame }) => (
  <PageShell title="Season plan" section="plan" frame={frame} cautions={false}>
    <h1>Season plan</h1>
    <p class="lead">
      A plan looks at every fence, weighs what could be done, and fills the crews’ weeks before the season: what is done
      where, when and by whom.
    </p>
    <p>
      Nothing changes until you accept a plan; then its visits are proposed. Visits that you confirmed or gave a week
      stay where they are. See the <a href="/plan/hours">hours left</a>, week by week and crew by crew.
    </p>
    <Making state={state} hasCrews={hasCrews} formToken={formToken} />
    {plans.length > 0 && <PlanTable plans={plans} today={today} />}
  </PageShell>
);

const Making: FC<Pick<PlansPageProps, 'state' | 'hasCrews' | 'formToken'>> = ({ state, hasCrews, formToken }) => {
  if (state.kind === 'at work') return <AtWork state={state} />;
  return (
    <>
      {state.kind === 'failed' && (
        <FormAlert>
          {'The plan that ended '}
          <Moment at={state.at} />
          {` could not be made: ${state.reason}. Nothing was stored; the plans below are as they were.`}
        </FormAlert>
      )}
      {state.kind === 'made' && (
        <p class="done">
          {'Made '}
          <Moment at={state.at} />
          {': '}
          <a href={`/plan/${state.number}`}>{`plan ${state.number}`}</a>. Look at it, then accept it.
        </p>
      )}
      {hasCrews ? (
        <form class="act" method="post" action="/plan">
          <TokenField token={formToken} />
          <button type="submit">Make a plan</button>
          <p class="muted">It takes from seconds to some minutes, by the number of fences; you can go on working.</p>
        </form>
      ) : (
        <p class="done">
          The register holds no crew, so there are no weeks to fill. Import crews and crew-members (docs/csv.md) first.
        </p>
      )}
    </>
  );
};

const AtWork: FC<{ readonly state: Extract<PlanState, { kind: 'at work' }> }> = ({ state }) => {
  const { done, total } = state.progress;
  const filling = total > 0 && done >= total;
  return (
    <div class="done" role="status">
      <p>
        {filling
          ? `Every one of ${numberWords(total)} fences is looked at; the weeks of the crews are being filled.`
          : total === 0
            ? 'A plan is being made.'
            : `A plan is being made: ${numberWords(done)} of ${numberWords(total)} fences looked at.`}
        {raw(
          drawPartsBar(
            [
              { amount: done, ink: 'full' },
              { amount: total - done, ink: 'rest' },
            ],
            total,
            BAR_PX,
          ),
        )}
      </p>
      <p class="muted">
        {'Begun '}
        <Moment at={state.startedAt} />
        {`${state.by === '' ? '' : ` by ${state.by}`}. This page asks again by itself; `}
        <a href="/plan">ask now</a>.
      </p>
    </div>
  );
};

const PlanTable: FC<{ readonly plans: readonly PlanHead[]; readonly today: CalendarDay }> = ({ plans, today }) => (
  <ScrollFrame label="Season plans">
    <table class="stacked">
      <caption>{`${sentenceCase(countWords(plans.length, 'plan'))}, the newest first`}</caption>
      <thead>
        <tr>
          <th scope="col">Plan</th>
          <th scope="col">Made</th>
          <th scope="col">Weeks</th>
          <th scope="col" class="figure">
            Visits
          </th>
          <th scope="col" class="figure">
            Musts without a place
          </th>
          <th scope="col">State</th>
        </tr>
      </thead>
      <tbody>
        {plans.map((plan) => (
          <tr>
            <th scope="row">
              <a href={`/plan/${plan.number}`}>{`Plan ${plan.number}`}</a>
            </th>
            <td data-label="Made">{dayWords(plan.asOf, today)}</td>
            <td data-label="Weeks">{`${plan.weeks} from ${dayWords(plan.firstWeek, today)}`}</td>
            <td data-label="Visits" class="figure">
              {plan.visits}
            </td>
            <td data-label="Musts without a place" class="figure">
              {plan.unservedMusts}
            </td>
            <td data-label="State">{planStateWords(plan, today)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);
